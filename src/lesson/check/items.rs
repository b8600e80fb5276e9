use super::super::desk::{Catalogue, Desk};
use super::super::field::Field;
use super::super::model::{Colour, Material};
use super::super::problem::{ProblemKind, Sold, Sort};
use super::super::raw;
use std::sync::Arc;

/// Everything that can stand on a price list or in a cupboard: paints, materials and
/// supplies. One name, one thing.
pub(super) fn items(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Material>>,
    colours: &Catalogue<Arc<Colour>>,
) -> Catalogue<Sold> {
    let mut items = Catalogue::new(Sort::Item);
    for (name, node, _) in materials.entries() {
        items.add(name.to_owned(), node, Some(Sold::ByVolumeOrWeight));
    }
    for (name, node, colour) in colours.entries() {
        // The paint of a broken colour is known by the name that it would have.
        let paint = match colour {
            Some(colour) => colour.paint.name.clone(),
            None => desk.tree.under(node, "paint").map_or_else(
                || format!("{name} acrylic"),
                |paint| desk.tree.text(paint).to_owned(),
            ),
        };
        if items.get(&paint).is_none() {
            items.add(paint, node, Some(Sold::ByVolumeOrWeight));
        }
    }
    if let Field::Present(entries) = &raw.supplies {
        for entry in &entries.0 {
            if let Some((other, _)) = items.get(&entry.name) {
                let kind = ProblemKind::NameTaken { name: entry.name.clone() };
                desk.fault_of_name(entry.node, kind, Some(other));
            } else {
                items.add(entry.name.clone(), entry.node, Some(Sold::ByThePiece));
            }
        }
    }
    items
}
