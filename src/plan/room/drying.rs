//! Where the canvases dry, and for how long.

use super::{Extent, rows};
use crate::lesson::{Lesson, TableSize};
use crate::plan::class::canvases_in_class;
use crate::plan::{Heads, Impossible};
use crate::quantity::{Area, Date, Length};
use jiff::SignedDuration;

/// The level surface that the wet canvases of a class take.
#[derive(Debug, Clone)]
pub struct DryingPlan {
    /// One for each kind of canvas, in the order of the lesson.
    pub places: Vec<DryingPlace>,
    /// Between two canvases.
    pub gap: Length,
    /// All places together.
    pub area: Area,
    /// What the lesson says there is.
    pub level_surface: Option<Area>,
    /// Tables of the lesson's size that would hold them all.
    pub on_tables: Option<Lying>,
    /// From pouring until the canvases are dry to the touch.
    pub days: u32,
    /// When they are poured and when they can be moved; `None` when the lesson has no date.
    pub from: Option<Date>,
    pub until: Option<Date>,
    /// In the order of days; canvases lie level again for each until its last coat is dry.
    pub finishes: Vec<FinishDay>,
}

impl DryingPlan {
    /// Whether the level surface has the area for all canvases, gaps included; `None` when the
    /// lesson does not say what there is. Area alone: a long shelf may be too narrow all the same.
    pub fn fits(&self) -> Option<bool> {
        self.level_surface.map(|there| there.value >= self.area.value * (1.0 - 1e-9))
    }
}

/// The place of all canvases of one kind.
#[derive(Debug, Clone)]
pub struct DryingPlace {
    pub canvas: String,
    /// Demonstrations and spares included.
    pub pieces: u32,
    pub extent: Extent,
    /// Of one canvas: the rectangle around it, a gap wider and higher.
    pub each: Area,
    /// Of all of them.
    pub area: Area,
}

/// Drying on tables of one size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lying {
    pub table: TableSize,
    /// `None` when a canvas is larger than the table.
    pub tables: Option<u32>,
}

/// A finish of one kind of canvas.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FinishDay {
    pub canvas: String,
    pub finish: String,
    pub coats: u32,
    /// After pouring, before the first coat.
    pub after_days: u32,
    /// `None` when the lesson has no date.
    pub date: Option<Date>,
}

pub(super) fn drying(lesson: &Lesson, heads: Heads) -> Result<DryingPlan, Impossible> {
    let room = &lesson.room;
    let places = lesson
        .canvases
        .iter()
        .map(|canvas| {
            let pieces = canvases_in_class(canvas, heads)?;
            let extent = Extent::of(canvas.shape);
            let each = (extent.width + room.gap) * (extent.height + room.gap);
            let area = each * f64::from(pieces);
            Ok(DryingPlace { canvas: canvas.name.clone(), pieces, extent, each, area })
        })
        .collect::<Result<Vec<_>, Impossible>>()?;
    let kinds: Vec<_> = places.iter().map(|place| (place.extent, place.pieces)).collect();
    let on_tables =
        room.table.map(|table| Lying { table, tables: rows::tables(&kinds, table, room.gap) });
    let from = lesson.heading.date;
    let later = |days: u32| {
        let days = SignedDuration::from_hours(i64::from(days) * 24);
        from.and_then(|date| date.checked_add(days).ok())
    };
    let mut finishes: Vec<FinishDay> = lesson
        .canvases
        .iter()
        .flat_map(|canvas| canvas.finishes.iter().map(move |finish| (canvas, finish)))
        .map(|(canvas, finish)| FinishDay {
            canvas: canvas.name.clone(),
            finish: finish.name.clone(),
            coats: finish.coats.get(),
            after_days: finish.after_days,
            date: later(finish.after_days),
        })
        .collect();
    finishes.sort_by_key(|finish| finish.after_days);
    Ok(DryingPlan {
        area: places.iter().map(|place| place.area).fold(Area::default(), |sum, area| sum + area),
        places,
        gap: room.gap,
        level_surface: room.level_surface,
        on_tables,
        days: room.drying_days,
        from,
        until: later(room.drying_days),
        finishes,
    })
}
