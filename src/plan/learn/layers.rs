//! What each layer of each canvas took.
//!
//! Film = sum over the cups of the layer of (used mass / density of the mix) / painted area.
//! Density and area are the plan's and taken as exact. A layer counts when every colour of
//! its palette was weighed.

use super::cups::{self, CanvasKey, FilmKey, canvas_key, film_key, palette};
use super::reading::combined;
use super::{CanvasUse, LeftOut};
use crate::lesson::{Colour, TechniqueLayer, WeighedClass, WeighedCup};
use crate::plan::area::areas;
use crate::plan::batch::mix_density;
use crate::quantity::units::{in_g_per_ml, in_gram, ml};
use crate::quantity::{Area, Length, Mass, Spread, Volume};
use std::sync::Arc;

/// One layer of one canvas that counts.
#[derive(Debug)]
pub(super) struct WeighedLayer<'a> {
    /// Place among the classes.
    pub class: usize,
    /// One for each colour; never empty.
    pub cups: Vec<&'a WeighedCup>,
    pub canvas: CanvasKey<'a>,
    pub film: FilmKey<'a>,
    pub area: Area,
    pub used_mass: Mass,
    /// As little and as much as the readings allow.
    pub used: Spread<Volume>,
    /// Standard uncertainty of the used volume that the scale brings.
    pub uncertainty: Volume,
    /// What ran off, if the tray was weighed.
    pub tray: Option<Mass>,
}

impl WeighedLayer<'_> {
    /// Its film equivalent.
    pub(super) fn thickness(&self) -> Length {
        self.used.typical() / self.area
    }

    /// Standard uncertainty of the film that the scale brings.
    pub(super) fn scale_uncertainty(&self) -> Length {
        self.uncertainty / self.area
    }

    /// For the report; `film` is what was planned with.
    pub(super) fn canvas_use(&self, film: Length) -> CanvasUse {
        CanvasUse {
            class: self.class,
            student: self.canvas.student.to_owned(),
            canvas: self.canvas.canvas.to_owned(),
            piece: self.canvas.piece,
            area: self.area,
            planned: self.area * film,
            used: self.used,
        }
    }
}

/// Layers that count and layers that do not.
#[derive(Debug, Default)]
pub(super) struct Weighed<'a> {
    pub layers: Vec<WeighedLayer<'a>>,
    pub left_out: Vec<LeftOut>,
}

/// The layers of all classes in the order in which they first appear.
pub(super) fn weighed(classes: &[WeighedClass]) -> Weighed<'_> {
    let mut weighed = Weighed::default();
    for (class, cups) in classes.iter().enumerate() {
        for cups in grouped(&cups.cups) {
            let Some(first) = cups.first() else { continue };
            let missing = missing(first, &cups);
            if missing.is_empty() {
                weighed.layers.push(layer(class, first, cups));
            } else {
                weighed.left_out.push(left_out(class, first, missing));
            }
        }
    }
    weighed
}

/// Cups of one layer of one canvas together.
fn grouped(cups: &[WeighedCup]) -> Vec<Vec<&WeighedCup>> {
    let mut groups: Vec<Vec<&WeighedCup>> = Vec::new();
    for cup in cups {
        let is_its = |group: &&mut Vec<&WeighedCup>| {
            group.first().is_some_and(|first| {
                canvas_key(first) == canvas_key(cup) && film_key(first) == film_key(cup)
            })
        };
        match groups.iter_mut().rev().find(is_its) {
            Some(group) => group.push(cup),
            None => groups.push(vec![cup]),
        }
    }
    groups
}

/// Colours of the palette without a cup.
fn missing(first: &WeighedCup, cups: &[&WeighedCup]) -> Vec<Arc<Colour>> {
    let wanted = palette(first).into_iter().flat_map(|layer| &layer.colours);
    wanted
        .map(|(colour, _)| colour)
        .filter(|colour| !cups.iter().any(|cup| cup.colour.name == colour.name))
        .map(Arc::clone)
        .collect()
}

fn layer<'a>(class: usize, first: &'a WeighedCup, cups: Vec<&'a WeighedCup>) -> WeighedLayer<'a> {
    let mut used = Spread::exactly(Volume::default());
    let mut used_mass = Mass::default();
    for cup in &cups {
        let limits = cups::used(cup).limits;
        let density = mix_density(&cup.colour, &cup.mix);
        used = used + limits.map_rising(|mass| mass / density);
        used_mass += limits.typical();
    }
    let uncertainty = combined(cups.iter().map(|cup| {
        let ml_per_gram = 1.0 / in_g_per_ml(mix_density(&cup.colour, &cup.mix));
        (ml_per_gram, in_gram(cups::used(cup).uncertainty))
    }));
    let trays: Vec<Mass> = cups.iter().filter_map(|cup| cup.tray).collect();
    WeighedLayer {
        class,
        canvas: canvas_key(first),
        film: film_key(first),
        area: areas(&first.canvas).painted,
        used_mass,
        used,
        uncertainty: ml(uncertainty),
        tray: (!trays.is_empty()).then(|| trays.into_iter().sum()),
        cups,
    }
}

fn left_out(class: usize, first: &WeighedCup, missing: Vec<Arc<Colour>>) -> LeftOut {
    LeftOut {
        class,
        student: first.student.clone(),
        canvas: first.canvas.name.clone(),
        piece: first.piece,
        layer: first.layer.clone(),
        missing,
    }
}

/// The film that a layer was planned with before anything was weighed: of a film that has been
/// learned, the one that it stands instead of, so that nothing is learned twice.
pub(super) fn planned_before(layer: &TechniqueLayer, key: FilmKey<'_>) -> Spread<Length> {
    let of = key.consistency;
    layer.weighed(of).map_or_else(|| layer.films.of(of), |weighed| weighed.instead_of)
}
