use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::{At, Entries, Field, Written};
use super::super::limits;
use super::super::model::{Consistency, Films, Finish, MaterialKind, Technique, TechniqueLayer};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use super::super::tree::NodeId;
use super::materials::Stuff;
use super::weighed;
use crate::quantity::{Length, Spread};
use std::collections::BTreeSet;
use std::num::NonZeroU32;
use std::sync::Arc;

/// A technique as far as it is right.
#[derive(Debug)]
pub(super) struct Way {
    pub(super) name: String,
    /// The names of its layers; of none when they are wrong altogether.
    pub(super) layers: Vec<String>,
    pub(super) technique: Option<Arc<Technique>>,
}

/// The ways of pouring.
pub(super) fn techniques(desk: Desk<'_>, raw: &raw::Lesson) -> Catalogue<Arc<Way>> {
    let section = ("techniques", &raw.techniques);
    Catalogue::of(desk, Sort::Technique, section, |entry, raw| {
        let names = match &raw.layers {
            Field::Present(at) => at.value.0.iter().map(|entry| entry.name.clone()).collect(),
            _ => Vec::new(),
        };
        let summary = desk.need_text(entry.node, "summary", &raw.summary);
        let practices = super::practices(desk, &raw.practices);
        let layers = desk.need(entry.node, "layers", &raw.layers);
        let layers = layers.and_then(|at| layers_of(desk, at));
        let name = entry.name.clone();
        let technique = || {
            let (name, summary) = (name.clone(), summary?);
            Some(Arc::new(Technique { name, summary, layers: layers?, practices: practices? }))
        };
        let technique = technique();
        Some(Arc::new(Way { name, layers: names, technique }))
    })
}

fn layers_of(desk: Desk<'_>, at: &At<Entries<raw::Layer>>) -> Option<Vec<TechniqueLayer>> {
    if at.value.0.is_empty() && !desk.may_say_more(at.node) {
        desk.fault(at.node, ProblemKind::NoLayers);
    }
    let layers: Vec<Option<TechniqueLayer>> = at
        .value
        .0
        .iter()
        .map(|entry| {
            let raw = entry.value.as_ref()?;
            let film = |key, field| {
                let at = desk.need(entry.node, key, field)?;
                let film = layer_film(desk, at);
                let weighed = weighed::film(desk, at);
                Some((film?, weighed?))
            };
            let thin = film("thin", &raw.thin);
            let medium = film("medium", &raw.medium);
            let thick = film("thick", &raw.thick);
            let basis = desk.need_text(entry.node, "basis", &raw.basis);
            let name = entry.name.clone();
            let ((thin, a), (medium, b), (thick, c)) = (thin?, medium?, thick?);
            let weighed = Consistency::ALL.into_iter().zip([a, b, c]);
            let weighed = weighed.filter_map(|(of, weighed)| Some((of, weighed?))).collect();
            let films = Films { thin, medium, thick };
            Some(TechniqueLayer { name, films, basis: basis?, weighed })
        })
        .collect();
    layers.into_iter().collect()
}

fn layer_film(desk: Desk<'_>, at: &At<raw::LayerFilm>) -> Option<Spread<Length>> {
    let raw::LayerFilm { low, typical, high, .. } = &at.value;
    spread(desk, at.node, [low, typical, high])
}

/// A film of its own.
pub(super) fn film(desk: Desk<'_>, at: &At<raw::Film>) -> Option<Spread<Length>> {
    let raw::Film { low, typical, high } = &at.value;
    spread(desk, at.node, [low, typical, high])
}

/// Low, typical and high, in that order of size.
fn spread(
    desk: Desk<'_>,
    node: NodeId,
    [low, typical, high]: [&Field<Written<Length>>; 3],
) -> Option<Spread<Length>> {
    let read = |key, field| desk.need_bounded(node, key, field, &limits::FILM);
    let low = read("low", low);
    let typical = read("typical", typical);
    let high = read("high", high);
    let known: Vec<Length> = [low, typical, high].into_iter().flatten().collect();
    if !known.is_sorted() && !is_patchwork(desk, node) {
        desk.fault(node, ProblemKind::SpreadOrder);
    }
    Spread::new(low?, typical?, high?)
}

/// Whether values come from several files, while a further one may change some of them.
fn is_patchwork(desk: Desk<'_>, node: NodeId) -> bool {
    let files = desk.tree.children(node).iter().map(|value| desk.tree.file(*value));
    let files: BTreeSet<_> = files.collect();
    files.len() > 1 && desk.may_say_more(node)
}

/// What goes over a dry canvas.
pub(super) fn finishes(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Stuff>>,
) -> Catalogue<Arc<Finish>> {
    Catalogue::of(desk, Sort::Finish, ("finishes", &raw.finishes), |entry, raw| {
        let material = desk.need(entry.node, "material", &raw.material).and_then(|written| {
            let stuff = materials.find(desk, written)?;
            if matches!(stuff.kind?, MaterialKind::Varnish | MaterialKind::Medium) {
                return stuff.material.clone();
            }
            let kind = ProblemKind::NotAFinish { material: stuff.name.clone() };
            desk.fault(written.node, kind);
            None
        });
        let film = desk.need(entry.node, "film", &raw.film).and_then(|at| self::film(desk, at));
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
