use super::super::desk::{Catalogue, Desk};
use super::super::field::{At, Entries, Field, Written};
use super::super::legible::DropRate;
use super::super::limits;
use super::super::model::{Drops, Ingredient, Material, MaterialKind, Mix, Part, PartsBy};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use super::super::tree::NodeId;
use std::sync::Arc;

/// The word for the paint of the colour that is being mixed.
const THE_PAINT: &str = "paint";

/// The recipes.
pub(super) fn mixes(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Material>>,
) -> Catalogue<Arc<Mix>> {
    Catalogue::of(Sort::Mix, &raw.mixes, |entry, raw| {
        let consistency = desk.need(entry.node, "consistency", &raw.consistency).copied();
        let by = super::super::desk::word_or(&raw.by, PartsBy::Volume);
        let parts = desk.need(entry.node, "parts", &raw.parts);
        let parts = parts.and_then(|at| parts_of(desk, at, materials));
        let drops = drops_of(desk, &raw.drops, materials);
        let name = entry.name.clone();
        Some(Arc::new(Mix {
            name,
            consistency: consistency?,
            by: by?,
            parts: parts?,
            drops: drops?,
        }))
    })
}

fn parts_of(
    desk: Desk<'_>,
    at: &At<Entries<Written<f64>>>,
    materials: &Catalogue<Arc<Material>>,
) -> Option<Vec<Part>> {
    if !at.value.0.iter().any(|entry| entry.name == THE_PAINT) {
        desk.fault(at.node, ProblemKind::NoPaintInMix);
        return None;
    }
    let parts: Vec<Option<Part>> = at
        .value
        .0
        .iter()
        .map(|entry| {
            let parts =
                entry.value.as_ref().and_then(|written| desk.bounded(written, &limits::PARTS));
            let what = if entry.name == THE_PAINT {
                Some(Ingredient::ThePaint)
            } else {
                let material = materials.find_key(desk, entry);
                material.and_then(|material| ingredient(desk, entry.node, material))
            };
            Some(Part { what: what?, parts: parts? })
        })
        .collect();
    parts.into_iter().collect()
}

/// A material that may go into a mix.
fn ingredient(desk: Desk<'_>, node: NodeId, material: Arc<Material>) -> Option<Ingredient> {
    match material.kind {
        MaterialKind::Medium | MaterialKind::Water | MaterialKind::Additive => {
            Some(Ingredient::Other(material))
        }
        MaterialKind::Paint | MaterialKind::Varnish => {
            let name = material.name.clone();
            desk.fault_of_name(node, ProblemKind::NotAnIngredient { name }, None);
            None
        }
    }
}

fn drops_of(
    desk: Desk<'_>,
    field: &Field<Entries<Written<DropRate>>>,
    materials: &Catalogue<Arc<Material>>,
) -> Option<Vec<Drops>> {
    let Field::Present(entries) = field else {
        return matches!(field, Field::Absent).then(Vec::new);
    };
    let drops: Vec<Option<Drops>> = entries
        .0
        .iter()
        .map(|entry| {
            let rate = entry.value.as_ref().and_then(|written| {
                let rate = desk.read(written)?;
                let fine = desk.holds(written.node, &rate.count, &limits::DROPS);
                (desk.holds(written.node, &rate.per, &limits::DROPS_PER) && fine).then_some(rate)
            });
            let material = materials.find_key(desk, entry)?;
            if material.drop.is_none() {
                let kind = ProblemKind::NoDropSize { material: material.name.clone() };
                desk.fault_of_name(entry.node, kind, materials.get(&entry.name).map(|(at, _)| at));
                return None;
            }
            let DropRate { count, per } = rate?;
            Some(Drops { material, count, per })
        })
        .collect();
    drops.into_iter().collect()
}
