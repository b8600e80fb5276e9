use super::super::catalogue::{Catalogue, Reach};
use super::super::desk::Desk;
use super::super::field::Field;
use super::super::model::{Colour, Language, paint_of};
use super::super::problem::{ProblemKind, Sold, Sort};
use super::super::raw;
use super::super::tree::NodeId;
use super::heading;
use super::materials::Stuff;
use crate::quantity::nearest::nearest;
use std::collections::BTreeSet;
use std::sync::Arc;

/// The key of what is bought for a colour.
const PAINT: &str = "paint";

/// Everything that can stand on a price list or in a cupboard: paints, materials and
/// supplies. One name, one thing.
pub(super) fn items(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Stuff>>,
    colours: &Catalogue<Arc<Colour>>,
) -> Catalogue<Sold> {
    let language = heading::language(raw);
    let paints = colours.entries().map(|(name, node, colour)| {
        let right = colour.filter(|_| !desk.is_misspelt(node, PAINT));
        let paint = right.map(|colour| colour.paint.name.clone());
        (node, paint.or_else(|| said_paint(desk, node, name, language)))
    });
    let paints: Vec<(NodeId, Option<String>)> = paints.collect();
    // A paint whose name cannot be read may be any.
    let is_named = paints.iter().all(|(_, paint)| paint.is_some());
    let reach = if is_named { colours.reach() } else { Reach::Part };
    let reach = reach.and(materials.reach()).and(Reach::of(desk, "supplies", &raw.supplies));
    let mut items = Catalogue::new(Sort::Item, reach);
    for (name, node, _) in materials.entries() {
        items.add(name.to_owned(), node, Some(Sold::ByVolumeOrWeight));
    }
    for (node, paint) in paints {
        if let Some(paint) = paint {
            items.add(paint, node, Some(Sold::ByVolumeOrWeight));
        }
    }
    let Field::Present(entries) = &raw.supplies else { return items };
    let mut supplies = BTreeSet::new();
    for entry in entries.0.iter().filter(|entry| supplies.insert(entry.name.as_str())) {
        if let Some((other, _)) = items.get(&entry.name) {
            let kind = ProblemKind::NameTaken { name: entry.name.clone() };
            desk.fault_of_name(entry.node, kind, Some(other));
        } else {
            items.add(entry.name.clone(), entry.node, Some(Sold::ByThePiece));
        }
    }
    items
}

/// The paint of a colour that is wrong: what is said, under a misspelt key as well, or
/// what it is called when nothing is. `None` when it cannot be read, or nobody knows in which
/// language it is called.
fn said_paint(
    desk: Desk<'_>,
    colour: NodeId,
    name: &str,
    language: Option<Language>,
) -> Option<String> {
    let is_paint = |key: &str| key == PAINT || nearest(key, [PAINT]).is_some();
    let mut children =
        desk.tree.children(colour).iter().filter(|child| !desk.tree.is_empty(**child));
    match children.find(|child| desk.tree.key(**child).is_some_and(is_paint)) {
        Some(paint) => Some(desk.tree.text(*paint).to_owned()).filter(|paint| !paint.is_empty()),
        None => language.map(|language| paint_of(name, language)),
    }
}
