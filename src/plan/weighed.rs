//! What of a plan has been weighed, and what it would be otherwise.

use super::Plan;
use crate::lesson::{Consistency, WeighedFilm};
use crate::quantity::{Length, Volume};
use std::collections::BTreeMap;

/// What the films of a plan rest on that have been weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WeighedBasis {
    pub cups: u32,
    /// Of layers on the same canvas the one that was weighed most often counts.
    pub canvases: u32,
    /// In which any one of the films was weighed; of all together there may be more.
    pub classes: u32,
}

/// A plan beside what it would be with the films from before anything was weighed.
#[derive(Debug, Clone)]
pub struct Compared<'a> {
    /// The layers with a weighed film, canvas by canvas; never empty.
    pub layers: Vec<ComparedLayer<'a>>,
    /// Mixed paint of the whole class with the films from before, as in [`Plan::class_paint`].
    pub class_before: Volume,
    pub class_now: Volume,
}

/// A layer of a canvas whose film was weighed.
#[derive(Debug, Clone, Copy)]
pub struct ComparedLayer<'a> {
    pub canvas: &'a str,
    pub layer: &'a str,
    pub technique: &'a str,
    pub consistency: Consistency,
    /// Typical film and paint for one canvas from before anything was weighed.
    pub film_before: Length,
    pub paint_before: Volume,
    pub film_now: Length,
    pub paint_now: Volume,
    pub weighed: &'a WeighedFilm,
}

impl Plan {
    /// What the films of this lesson rest on; `None` when none of them has been weighed.
    pub fn weighed(&self) -> Option<WeighedBasis> {
        let mut films = BTreeMap::new();
        for (_, layer) in self.weighed_layers() {
            films.insert((layer.technique, layer.layer, layer.consistency), layer.weighed);
        }
        let cups = films.values().fold(0_u32, |sum, film| sum.saturating_add(film.cups));
        let classes = films.values().map(|film| film.classes).max()?;
        let mut by_layer: BTreeMap<(&str, &str), u32> = BTreeMap::new();
        for ((technique, layer, _), film) in &films {
            let canvases = by_layer.entry((technique, layer)).or_default();
            *canvases = canvases.saturating_add(film.canvases);
        }
        let mut by_technique: BTreeMap<&str, u32> = BTreeMap::new();
        for ((technique, _), canvases) in by_layer {
            let most = by_technique.entry(technique).or_default();
            *most = canvases.max(*most);
        }
        let canvases = by_technique.values().fold(0_u32, |sum, more| sum.saturating_add(*more));
        Some(WeighedBasis { cups, canvases, classes })
    }

    /// This plan beside the one without weighings; `None` when no film has been weighed.
    pub fn compared(&self) -> Option<Compared<'_>> {
        let sets = f64::from(self.heads.sets());
        let mut class_before = self.class_paint.typical();
        let mut layers = Vec::new();
        for (each, layer) in self.weighed_layers() {
            class_before += (layer.paint_before - layer.paint_now) * each * sets;
            layers.push(layer);
        }
        let class_now = self.class_paint.typical();
        (!layers.is_empty()).then_some(Compared { layers, class_before, class_now })
    }

    /// Layers with a weighed film, and how many canvases of their kind are in a set.
    fn weighed_layers(&self) -> impl Iterator<Item = (f64, ComparedLayer<'_>)> {
        self.lesson.canvases.iter().zip(&self.canvases).flat_map(|(canvas, plan)| {
            let layers = canvas.technique.layers.iter().zip(&plan.layers);
            layers.filter_map(|(technique, layer)| {
                let consistency = layer.layer.mix.consistency;
                let weighed = technique.weighed(consistency)?;
                let film_before = weighed.instead_of.typical();
                let compared = ComparedLayer {
                    canvas: &canvas.name,
                    layer: &layer.name,
                    technique: &canvas.technique.name,
                    consistency,
                    film_before,
                    paint_before: plan.areas.painted * film_before,
                    film_now: layer.film.typical(),
                    paint_now: layer.paint.typical(),
                    weighed,
                };
                Some((f64::from(canvas.each.get()), compared))
            })
        })
    }
}
