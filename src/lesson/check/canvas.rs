use super::super::catalogue::Catalogue;
use super::super::desk::{Desk, word_or};
use super::super::field::{Entry, Field};
use super::super::limits;
use super::super::model::{Canvas, Edge, Finish, Mix};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use super::palettes::Palette;
use super::techniques::Way;
use super::{layers, outline};
use std::num::NonZeroU32;
use std::sync::Arc;

/// What canvases choose from.
pub(super) struct Shelf<'a> {
    pub(super) techniques: &'a Catalogue<Arc<Way>>,
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
    }
    let entries = entries.0.get(..limits::CANVASES).unwrap_or(&entries.0);
    unused_layers(desk, entries, shelf);
    let canvases: Vec<Option<Canvas>> =
        entries.iter().map(|entry| canvas(desk, entry, entry.value.as_ref()?, shelf)).collect();
    canvases.into_iter().collect()
}

fn canvas(
    desk: Desk<'_>,
    entry: &Entry<raw::Canvas>,
    raw: &raw::Canvas,
    shelf: &Shelf<'_>,
) -> Option<Canvas> {
    let shape = outline::shape(desk, entry, raw);
    let depth = outline::depth(desk, raw, shape);
    let edge = word_or(&raw.edge, Edge::Painted);
    let each = desk.bounded_or(&raw.each, &limits::EACH, 1);
    let technique = desk.need(entry.node, "technique", &raw.technique);
    let way = technique.and_then(|written| shelf.techniques.find(desk, written));
    let choice = desk.need(entry.node, "consistency", &raw.consistency);
    let palette = desk.need(entry.node, "palette", &raw.palette).and_then(|written| {
        let palette = shelf.palettes.find(desk, written)?;
        let stands = shelf.palettes.get(&written.text).map(|(node, _)| node);
        Some((written.node, stands, palette))
    });
    let finishes = finishes(desk, raw, shelf);
    let mixes = choice.and_then(|choice| layers::mixes(desk, way.as_deref(), choice, shelf.mixes));
    let (way, (node, stands, palette)) = (way?, palette?);
    layers::covers(desk, &way, &palette, node, stands);
    let technique = way.technique.clone()?;
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

/// A palette may serve several techniques; a layer that none of them has is a slip. Only
/// where all canvases can be read as far as that is it known who uses a palette.
fn unused_layers(desk: Desk<'_>, canvases: &[Entry<raw::Canvas>], shelf: &Shelf<'_>) {
    let poured: Option<Vec<_>> = canvases
        .iter()
        .map(|entry| {
            let Field::Present(palette) = &entry.value.as_ref()?.palette else { return None };
            let (.., palette) = shelf.palettes.get(&palette.text)?;
            Some((palette, &entry.value.as_ref()?.technique))
        })
        .collect();
    for palette in shelf.palettes.values() {
        let with = poured.iter().flatten();
        let with = with.filter(|(other, _)| other.is_some_and(|other| Arc::ptr_eq(other, palette)));
        let ways: Option<Vec<&Way>> = with
            .map(|(_, technique)| match technique {
                Field::Present(written) => shelf.techniques.get(&written.text)?.1.map(Arc::as_ref),
                _ => None,
            })
            .collect();
        layers::leftovers(desk, palette, &ways.unwrap_or_default());
    }
}
