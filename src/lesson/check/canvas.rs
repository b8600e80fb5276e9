use super::super::desk::{Catalogue, Desk, word_or};
use super::super::field::{Entry, Field};
use super::super::limits;
use super::super::model::{Canvas, Edge, Finish, Mix, Technique};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use super::palettes::Palette;
use super::{layers, outline};
use std::num::NonZeroU32;
use std::sync::Arc;

/// What canvases choose from.
pub(super) struct Shelf<'a> {
    pub(super) techniques: &'a Catalogue<Arc<Technique>>,
    pub(super) mixes: &'a Catalogue<Arc<Mix>>,
    pub(super) palettes: &'a Catalogue<Arc<Palette>>,
    pub(super) finishes: &'a Catalogue<Arc<Finish>>,
}

/// What is painted; at least one.
pub(super) fn canvases(
    desk: Desk<'_>,
    root: NodeId,
    raw: &raw::Lesson,
    shelf: &Shelf<'_>,
) -> Option<Vec<Canvas>> {
    let entries = desk.need(root, "canvases", &raw.canvases)?;
    let count = entries.0.len();
    if count == 0 || count > limits::CANVASES {
        let kind = if count == 0 { ProblemKind::NoCanvases } else { ProblemKind::TooManyCanvases };
        desk.fault(desk.tree.under(root, "canvases").unwrap_or(root), kind);
        return None;
    }
    unused_layers(desk, raw, shelf);
    let canvases: Vec<Option<Canvas>> =
        entries.0.iter().map(|entry| canvas(desk, entry, entry.value.as_ref()?, shelf)).collect();
    canvases.into_iter().collect()
}

fn canvas(
    desk: Desk<'_>,
    entry: &Entry<raw::Canvas>,
    raw: &raw::Canvas,
    shelf: &Shelf<'_>,
) -> Option<Canvas> {
    let shape = outline::shape(desk, entry, raw);
    let depth = outline::depth(desk, &raw.depth, shape);
    let edge = word_or(&raw.edge, Edge::Painted);
    let each = desk.bounded_or(&raw.each, &limits::EACH, 1);
    let technique = desk.need(entry.node, "technique", &raw.technique);
    let technique = technique.and_then(|written| shelf.techniques.find(desk, written));
    let choice = desk.need(entry.node, "consistency", &raw.consistency);
    let palette = desk.need(entry.node, "palette", &raw.palette).and_then(|written| {
        let palette = shelf.palettes.find(desk, written)?;
        let stands = shelf.palettes.get(&written.text).map(|(node, _)| node);
        Some((written.node, stands, palette))
    });
    let finishes = finishes(desk, raw, shelf);
    let technique = technique?;
    let mixes = choice.and_then(|choice| layers::mixes(desk, &technique, choice, shelf.mixes));
    let (node, stands, palette) = palette?;
    if !layers::covers(desk, &technique, &palette, node, stands) {
        return None;
    }
    let layers = layers::layers(&technique, &palette, mixes?);
    Some(Canvas {
        name: entry.name.clone(),
        shape: shape?,
        depth: depth?,
        edge: edge?,
        each: NonZeroU32::new(each?)?,
        layers: layers?,
        technique,
        finishes: finishes?,
    })
}

fn finishes(desk: Desk<'_>, raw: &raw::Canvas, shelf: &Shelf<'_>) -> Option<Vec<Arc<Finish>>> {
    match &raw.finishes {
        Field::Absent => Some(Vec::new()),
        Field::Broken => None,
        Field::Present(items) => {
            let found = super::distinct(desk, items, super::name_twice, |written| {
                shelf.finishes.find(desk, written)
            });
            Some(found.into_iter().map(|(_, finish)| finish).collect())
        }
    }
}

/// A palette may serve several techniques; a layer that none of them has is a slip.
fn unused_layers(desk: Desk<'_>, raw: &raw::Lesson, shelf: &Shelf<'_>) {
    let Field::Present(canvases) = &raw.canvases else { return };
    let text = |field: &Field<super::Written<String>>| match field {
        Field::Present(written) => Some(written.text.clone()),
        _ => None,
    };
    for name in shelf.palettes.names() {
        let Some((_, Some(palette))) = shelf.palettes.get(name) else { continue };
        let poured = canvases.0.iter().filter_map(|entry| entry.value.as_ref());
        let poured = poured.filter(|canvas| text(&canvas.palette).as_deref() == Some(name));
        let techniques: Option<Vec<_>> = poured
            .map(|canvas| {
                let technique = text(&canvas.technique)?;
                shelf.techniques.get(&technique)?.1.cloned()
            })
            .collect();
        layers::leftovers(desk, palette, &techniques.unwrap_or_default());
    }
}
