use super::super::desk::{Catalogue, Desk};
use super::super::field::{At, Entries};
use super::super::limits;
use super::super::model::{Films, Finish, Material, MaterialKind, Technique, TechniqueLayer};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use crate::quantity::{Length, Spread};
use std::num::NonZeroU32;
use std::sync::Arc;

/// The ways of pouring.
pub(super) fn techniques(desk: Desk<'_>, raw: &raw::Lesson) -> Catalogue<Arc<Technique>> {
    Catalogue::of(Sort::Technique, &raw.techniques, |entry, raw| {
        let summary = desk.need_text(entry.node, "summary", &raw.summary);
        let practices = super::practices(desk, &raw.practices);
        let layers = desk.need(entry.node, "layers", &raw.layers);
        let layers = layers.and_then(|at| layers_of(desk, at));
        let name = entry.name.clone();
        Some(Arc::new(Technique {
            name,
            summary: summary?,
            layers: layers?,
            practices: practices?,
        }))
    })
}

fn layers_of(desk: Desk<'_>, at: &At<Entries<raw::Layer>>) -> Option<Vec<TechniqueLayer>> {
    if at.value.0.is_empty() {
        desk.fault(at.node, ProblemKind::NoLayers);
    }
    let layers: Vec<Option<TechniqueLayer>> = at
        .value
        .0
        .iter()
        .map(|entry| {
            let raw = entry.value.as_ref()?;
            let film =
                |key, field| desk.need(entry.node, key, field).and_then(|film| spread(desk, film));
            let thin = film("thin", &raw.thin);
            let medium = film("medium", &raw.medium);
            let thick = film("thick", &raw.thick);
            let basis = desk.need_text(entry.node, "basis", &raw.basis);
            let films = Films { thin: thin?, medium: medium?, thick: thick? };
            Some(TechniqueLayer { name: entry.name.clone(), films, basis: basis? })
        })
        .collect();
    layers.into_iter().collect()
}

/// Low, typical and high, in that order of size.
fn spread(desk: Desk<'_>, at: &At<raw::Film>) -> Option<Spread<Length>> {
    let read = |key, field| desk.need_bounded(at.node, key, field, &limits::FILM);
    let low = read("low", &at.value.low);
    let typical = read("typical", &at.value.typical);
    let high = read("high", &at.value.high);
    let spread = Spread::new(low?, typical?, high?);
    if spread.is_none() {
        desk.fault(at.node, ProblemKind::SpreadOrder);
    }
    spread
}

/// What goes over a dry canvas.
pub(super) fn finishes(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Material>>,
) -> Catalogue<Arc<Finish>> {
    Catalogue::of(Sort::Finish, &raw.finishes, |entry, raw| {
        let material = desk.need(entry.node, "material", &raw.material).and_then(|written| {
            let material = materials.find(desk, written)?;
            if matches!(material.kind, MaterialKind::Varnish | MaterialKind::Medium) {
                return Some(material);
            }
            let kind = ProblemKind::NotAFinish { material: material.name.clone() };
            desk.fault(written.node, kind);
            None
        });
        let film = desk.need(entry.node, "film", &raw.film).and_then(|at| spread(desk, at));
        let coats = desk.bounded_or(&raw.coats, &limits::COATS, 1);
        let after = desk.need_bounded(entry.node, "after", &raw.after, &limits::DAYS);
        let basis = desk.need_text(entry.node, "basis", &raw.basis);
        let name = entry.name.clone();
        Some(Arc::new(Finish {
            name,
            material: material?,
            film: film?,
            coats: NonZeroU32::new(coats?)?,
            after_days: after?.0,
            basis: basis?,
        }))
    })
}
