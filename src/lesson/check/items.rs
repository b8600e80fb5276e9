use super::super::catalogue::{Catalogue, Reach};
use super::super::desk::Desk;
use super::super::field::Field;
use super::super::model::{Colour, paint_of};
use super::super::problem::{ProblemKind, Sold, Sort};
use super::super::raw;
use super::super::tree::NodeId;
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
    let reach = materials.reach().and(reach(desk, colours));
    let reach = reach.and(Reach::of(desk, "supplies", &raw.supplies));
    let mut items = Catalogue::new(Sort::Item, reach);
    for (name, node, _) in materials.entries() {
        items.add(name.to_owned(), node, Some(Sold::ByVolumeOrWeight));
    }
    for (name, node, colour) in colours.entries() {
        let paint = match colour {
            Some(colour) if !desk.is_misspelt(node, PAINT) => colour.paint.name.clone(),
            _ => said_paint(desk, node).map_or_else(|| paint_of(name), str::to_owned),
        };
        items.add(paint, node, Some(Sold::ByVolumeOrWeight));
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

/// What is said to be the paint of a colour that is wrong, under a misspelt key as well.
fn said_paint<'t>(desk: Desk<'t>, colour: NodeId) -> Option<&'t str> {
    let is_paint = |key: &str| key == PAINT || nearest(key, [PAINT]).is_some();
    let mut children = desk.tree.children(colour).iter();
    let paint = children.find(|child| desk.tree.key(**child).is_some_and(is_paint))?;
    Some(desk.tree.text(*paint))
}

/// Whether all paints are known by name: a paint whose name cannot be read may be any.
fn reach(desk: Desk<'_>, colours: &Catalogue<Arc<Colour>>) -> Reach {
    let is_named = |node| said_paint(desk, node) != Some("");
    let named = colours.entries().all(|(_, node, _)| is_named(node));
    if named { colours.reach() } else { Reach::Part }
}
