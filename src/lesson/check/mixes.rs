use super::super::catalogue::Catalogue;
use super::super::desk::{Desk, word_or};
use super::super::field::{At, Entries, Field, Written};
use super::super::legible::DropRate;
use super::super::limits;
use super::super::model::{Drops, Ingredient, MaterialKind, Mix, Part, PartsBy};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use super::super::tree::NodeId;
use super::materials::Stuff;
use crate::quantity::nearest::nearest;
use std::sync::Arc;

/// The word for the paint of the colour that is being mixed.
const THE_PAINT: &str = "paint";

/// The recipes.
pub(super) fn mixes(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Stuff>>,
) -> Catalogue<Arc<Mix>> {
    Catalogue::of(desk, Sort::Mix, ("mixes", &raw.mixes), |entry, raw| {
        let consistency = desk.need(entry.node, "consistency", &raw.consistency).copied();
        let by = word_or(&raw.by, PartsBy::Volume);
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
    materials: &Catalogue<Arc<Stuff>>,
) -> Option<Vec<Part>> {
    let paint = paint(desk, at, materials);
    let parts: Vec<Option<Part>> = at
        .value
        .0
        .iter()
        .map(|entry| {
            let parts =
                entry.value.as_ref().and_then(|written| desk.bounded(written, &limits::PARTS));
            let what = if paint == Some(entry.node) {
                Some(Ingredient::ThePaint)
            } else {
                let stuff = materials.find_key(desk, entry);
                stuff.and_then(|stuff| ingredient(desk, entry.node, &stuff))
            };
            Some(Part { what: what?, parts: parts? })
        })
        .collect();
    parts.into_iter().collect()
}

/// The entry of the paint, or what was most likely meant to be it.
fn paint(
    desk: Desk<'_>,
    at: &At<Entries<Written<f64>>>,
    materials: &Catalogue<Arc<Stuff>>,
) -> Option<NodeId> {
    let entries = &at.value.0;
    if let Some(paint) = entries.iter().find(|entry| entry.name == THE_PAINT) {
        return Some(paint.node);
    }
    if desk.may_say_more(at.node) {
        return None;
    }
    let misspelt = entries.iter().find(|entry| {
        materials.get(&entry.name).is_none() && nearest(&entry.name, [THE_PAINT]).is_some()
    });
    match misspelt {
        Some(entry) => {
            let (name, nearest) = (entry.name.clone(), Some(THE_PAINT.to_owned()));
            let (sort, known) = (Sort::Material, vec![THE_PAINT.to_owned()]);
            let kind = ProblemKind::UnknownName { sort, name, nearest, known };
            desk.fault_of_name(entry.node, kind, None);
            Some(entry.node)
        }
        None => {
            desk.fault(at.node, ProblemKind::NoPaintInMix);
            None
        }
    }
}

/// A material that may go into a mix.
fn ingredient(desk: Desk<'_>, node: NodeId, stuff: &Stuff) -> Option<Ingredient> {
    match stuff.kind? {
        MaterialKind::Medium | MaterialKind::Water | MaterialKind::Additive => {
            stuff.material.clone().map(Ingredient::Other)
        }
        MaterialKind::Paint | MaterialKind::Varnish => {
            let name = stuff.name.clone();
            desk.fault_of_name(node, ProblemKind::NotAnIngredient { name }, None);
            None
        }
    }
}

fn drops_of(
    desk: Desk<'_>,
    field: &Field<Entries<Written<DropRate>>>,
    materials: &Catalogue<Arc<Stuff>>,
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
            let stuff = materials.find_key(desk, entry)?;
            if stuff.drop == Some(None) {
                let at = materials.get(&entry.name).map(|(at, _)| at);
                if !at.is_some_and(|at| desk.may_say_more(at)) {
                    let kind = ProblemKind::NoDropSize { material: stuff.name.clone() };
                    desk.fault_of_name(entry.node, kind, at);
                }
                return None;
            }
            let DropRate { count, per } = rate?;
            Some(Drops { material: stuff.material.clone()?, count, per })
        })
        .collect();
    drops.into_iter().collect()
}
