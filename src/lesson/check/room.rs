use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::{At, Field};
use super::super::limits;
use super::super::model::{Room, TableSize, Washing};
use super::super::problem::Sort;
use super::super::raw;
use super::super::tree::NodeId;

/// Tables, and where canvases dry.
pub(super) fn room(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<Room> {
    let At { node, value: raw } = desk.need(root, "room", &raw.room)?;
    let table = match &raw.table {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(at) => table(desk, at).map(Some),
    };
    let level_surface = match &raw.level_surface {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(written) => desk.bounded(written, &limits::LEVEL_SURFACE).map(Some),
    };
    let gap = desk.need_bounded(*node, "gap", &raw.gap, &limits::DRYING_GAP);
    let drying = desk.need_bounded(*node, "drying", &raw.drying, &limits::DAYS);
    Some(Room { table: table?, level_surface: level_surface?, gap: gap?, drying_days: drying?.0 })
}

fn table(desk: Desk<'_>, at: &At<raw::Table>) -> Option<TableSize> {
    let side = |key, field| desk.need_bounded(at.node, key, field, &limits::TABLE_SIZE);
    let length = side("length", &at.value.length);
    let width = side("width", &at.value.width);
    Some(TableSize { length: length?, width: width? })
}

/// Water for washing up; what it is for must be a supply.
pub(super) fn washing(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<Washing> {
    let supplies = Catalogue::of(desk, Sort::Supply, ("supplies", &raw.supplies), |_, _| Some(()));
    let At { node, value: raw } = desk.need(root, "washing", &raw.washing)?;
    let water = &limits::WASH_WATER;
    let after = desk.need_bounded(*node, "after each batch", &raw.after_each_batch, water);
    let bucket = desk.need_bounded(*node, "bucket", &raw.bucket, &limits::BUCKET);
    let pieces = match &raw.each_piece {
        Field::Absent => Vec::new(),
        Field::Broken => return None,
        Field::Present(entries) => {
            let pieces = entries.0.iter().map(|entry| {
                let known = supplies.find_key(desk, entry);
                let water = desk.bounded(entry.value.as_ref()?, water);
                known.and(Some((entry.name.clone(), water?)))
            });
            // Every one is looked at, so that all problems are told.
            let pieces: Vec<_> = pieces.collect();
            pieces.into_iter().collect::<Option<_>>()?
        }
    };
    Some(Washing { after_each_batch: after?, each_piece: pieces, bucket: bucket? })
}
