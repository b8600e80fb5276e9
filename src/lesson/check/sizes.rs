use super::super::desk::Desk;
use super::super::field::{At, Field, Items};
use super::super::limits;
use super::super::model::{StockSize, StockSizes};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use crate::quantity::Length;

/// Canvas sizes for the table of paint.
pub(super) fn sizes(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<StockSizes> {
    let At { node, value: raw } = desk.need(root, "sizes", &raw.sizes)?;
    let us = list(desk, *node, ("us", &raw.us));
    let metric = list(desk, *node, ("metric", &raw.metric));
    Some(StockSizes { us: us?, metric: metric? })
}

fn list(
    desk: Desk<'_>,
    parent: NodeId,
    (key, field): (&'static str, &Field<At<Items<raw::Size>>>),
) -> Option<Vec<StockSize>> {
    let At { node, value: items } = desk.need(parent, key, field)?;
    if items.0.len() > limits::SIZES {
        desk.fault(*node, ProblemKind::TooManySizes);
        return None;
    }
    // Every one is looked at, so that all problems are told.
    let sizes: Vec<Option<StockSize>> =
        items.0.iter().map(|item| size(desk, item.node, item.value.as_ref()?)).collect();
    sizes.into_iter().collect()
}

fn size(desk: Desk<'_>, node: NodeId, raw: &raw::Size) -> Option<StockSize> {
    let side = |key, field| desk.need_bounded(node, key, field, &limits::CANVAS_SIZE);
    let width = side("width", &raw.width);
    let height = side("height", &raw.height);
    let depth = match &raw.depth {
        Field::Absent => Some(Length::default()),
        Field::Broken => None,
        Field::Present(written) => {
            let depth = desk.bounded(written, &limits::DEPTH);
            let across = [width, height].into_iter().flatten().reduce(Length::min);
            match (depth, across) {
                (Some(depth), Some(across)) if depth > across => {
                    desk.fault(written.node, ProblemKind::EdgeTooDeep { depth, across });
                    None
                }
                _ => depth,
            }
        }
    };
    Some(StockSize { width: width?, height: height?, depth: depth? })
}
