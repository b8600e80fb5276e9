//! What one canvas takes.

use super::Batch;
use crate::lesson::{CanvasLayer, Colour, Finish};
use crate::quantity::{Area, Length, Mass, MassDensity, Share, Spread, Volume};
use std::sync::Arc;

/// Areas of one canvas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Areas {
    pub face: Area,
    /// Perimeter of the face.
    pub perimeter: Length,
    /// Perimeter times depth, zero when the edge stays bare.
    pub edge: Area,
    /// Face and edge.
    pub painted: Area,
}

/// What one canvas takes.
#[derive(Debug, Clone)]
pub struct CanvasPlan {
    pub name: String,
    pub areas: Areas,
    /// Layers of the technique, in the order of the work.
    pub layers: Vec<LayerPlan>,
    pub finishes: Vec<FinishPlan>,
    /// All layers of the technique together, without cup loss.
    pub paint: Spread<Volume>,
    /// All layers with what stays in cups and on sticks.
    pub to_mix: Volume,
}

impl CanvasPlan {
    /// What the paint of all layers weighs, without what stays in the cups.
    pub fn paint_mass(&self) -> Mass {
        let cups = self.layers.iter().flat_map(|layer| &layer.cups);
        cups.map(|cup| cup.paint * cup.density()).fold(Mass::default(), |sum, mass| sum + mass)
    }
}

/// What one layer of one canvas takes.
#[derive(Debug, Clone)]
pub struct LayerPlan {
    pub name: String,
    pub film: Spread<Length>,
    /// Painted area times film.
    pub paint: Spread<Volume>,
    pub layer: CanvasLayer,
    /// One for each colour of the layer, in its order.
    pub cups: Vec<CupPlan>,
}

/// One cup of one colour for one layer of one canvas.
#[derive(Debug, Clone)]
pub struct CupPlan {
    pub colour: Arc<Colour>,
    pub share: Share,
    /// Share of the layer, without what stays in the cup.
    pub paint: Volume,
    /// What is filled into it: the paint and what stays in the cup, up to a whole step of
    /// the scale.
    pub fill: Mass,
    /// That much, mixed for this one cup. Drops come in whole ones, so its mass may miss
    /// the fill by less than the scale shows.
    pub batch: Batch,
}

impl CupPlan {
    /// What one volume of the fill weighs.
    pub fn density(&self) -> MassDensity {
        if self.batch.volume > Volume::default() {
            self.fill / self.batch.volume
        } else {
            self.batch.density
        }
    }
}

/// A finish on one canvas.
#[derive(Debug, Clone)]
pub struct FinishPlan {
    pub finish: Arc<Finish>,
    /// All coats.
    pub paint: Spread<Volume>,
}
