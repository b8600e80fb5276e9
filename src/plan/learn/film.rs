//! What to plan with from now on.

use super::cups::{FilmKey, count, technique_layer};
use super::layers::{WeighedLayer, planned_before};
use super::mean::{Classes, Varies, estimate};
use super::reading::combined;
use super::shrink::{EIGHT_IN_TEN, relative_variance, shrink};
use super::{Estimate, LearnedFilm, LearnedSpread, RunOff};
use crate::quantity::units::{in_mm, mm};
use crate::quantity::{Length, Mass, Spread};
use std::sync::Arc;

/// One for each technique, layer and consistency, in the order in which they first appear.
pub(super) fn films(
    layers: &[WeighedLayer<'_>],
    planned: Varies,
    spread: &LearnedSpread,
) -> Vec<LearnedFilm> {
    let mut groups: Vec<(FilmKey<'_>, Vec<&WeighedLayer<'_>>)> = Vec::new();
    for layer in layers {
        match groups.iter_mut().find(|(key, _)| *key == layer.film) {
            Some((_, layers)) => layers.push(layer),
            None => groups.push((layer.film, vec![layer])),
        }
    }
    groups.iter().filter_map(|(key, layers)| film(*key, layers, planned, spread)).collect()
}

/// The film that was planned with is that of the first canvas. `None` for a layer that its
/// technique does not have.
fn film(
    key: FilmKey<'_>,
    layers: &[&WeighedLayer<'_>],
    planned: Varies,
    spread: &LearnedSpread,
) -> Option<LearnedFilm> {
    let first = layers.first()?.cups.first()?;
    let before = planned_before(technique_layer(first)?, key);
    let values = layers.iter().map(|layer| (layer.class, in_mm(layer.thickness())));
    let classes = Classes::new(values)?;
    let from_scale = from_scale(layers, &classes);
    let mean = estimate(&classes, planned, from_scale);
    let variance = relative_variance(&classes, planned, from_scale);
    let shrunk = shrink(before.map_rising(in_mm), mean.value, variance);
    Some(LearnedFilm {
        technique: Arc::clone(&first.technique),
        layer: key.layer.to_owned(),
        consistency: key.consistency,
        cups: count(layers.iter().map(|layer| layer.cups.len()).sum()),
        classes: count(classes.number()),
        canvases: layers.iter().map(|layer| layer.canvas_use(before.typical())).collect(),
        mean: Estimate { value: mm(mean.value), low: mm(mean.low), high: mm(mean.high) },
        from_scale: mm(from_scale),
        run_off: run_off(layers),
        before,
        own_weight: shrunk.map_or(0.0, |shrunk| shrunk.own_weight),
        film: shrunk.map_or(before, |shrunk| of_eight_hands(mm(shrunk.typical), spread)),
    })
}

/// Standard uncertainty of the mean of the class means that the scale alone brings, in
/// millimetres.
fn from_scale(layers: &[&WeighedLayer<'_>], classes: &Classes) -> f64 {
    combined(layers.iter().map(|layer| {
        let alike = layers.iter().filter(|other| other.class == layer.class).count();
        (classes.weight(alike), in_mm(layer.scale_uncertainty()))
    }))
}

/// From the low to the high of 8 hands in 10: typical x exp(-+ 1.2816 s), with s^2 the sum of
/// both relative variances. Those of a whole canvas stand for those of each of its layers.
fn of_eight_hands(typical: Length, spread: &LearnedSpread) -> Spread<Length> {
    let Varies { class, student } = spread.from_now_on;
    let factor = (EIGHT_IN_TEN * class.hypot(student)).exp();
    Spread::new(typical / factor, typical, typical * factor).unwrap_or(Spread::exactly(typical))
}

/// Of the layers whose tray was weighed, total over total. More in the tray than left the cups
/// is all of it.
fn run_off(layers: &[&WeighedLayer<'_>]) -> Option<RunOff> {
    let caught = |layer: &&&WeighedLayer<'_>| layer.tray.is_some();
    let caught: Vec<&&WeighedLayer<'_>> = layers.iter().filter(caught).collect();
    let used: Mass = caught.iter().map(|layer| layer.used_mass).sum();
    let tray: Mass = caught.iter().filter_map(|layer| layer.tray).sum();
    (used > Mass::default())
        .then(|| RunOff { canvases: count(caught.len()), share: (tray / used).value.min(1.0) })
}
