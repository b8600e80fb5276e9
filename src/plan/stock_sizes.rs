//! Paint for canvases as shops have them, technique by technique.

use super::Plan;
use super::film::technique_film;
use crate::lesson::{Consistency, StockSize};
use crate::quantity::{Area, Mass, MassDensity, UnitSystem, Volume};

/// The area of face and edge; the edge is the four sides laid flat.
pub fn stock_area(size: &StockSize) -> Area {
    size.width * size.height + 2.0 * (size.width + size.height) * size.depth
}

/// Paint for each size of a list.
#[derive(Debug, Clone, PartialEq)]
pub struct StockPaint {
    /// The techniques that take so much.
    pub techniques: Vec<String>,
    /// All layers of the technique together, typical, in the order of the sizes.
    pub paint: Vec<Volume>,
}

impl Plan {
    /// What each technique takes for the sizes of the shops, in one consistency.
    pub fn stock_paint(&self, units: UnitSystem, consistency: Consistency) -> Vec<StockPaint> {
        let sizes = self.lesson.sizes.of(units);
        let mut all: Vec<StockPaint> = Vec::new();
        for technique in &self.lesson.techniques {
            let film = technique_film(technique, consistency).typical();
            let paint = sizes.iter().map(|size| stock_area(size) * film).collect();
            match all.iter_mut().find(|alike| alike.paint == paint) {
                Some(alike) => alike.techniques.push(technique.name.clone()),
                None => all.push(StockPaint { techniques: vec![technique.name.clone()], paint }),
            }
        }
        all
    }

    /// What one volume of the lesson's mixed paint weighs, in the mean over its cups.
    pub fn mean_density(&self) -> MassDensity {
        let layers = self.canvases.iter().flat_map(|canvas| &canvas.layers);
        let cups = layers.flat_map(|layer| &layer.cups);
        let nothing = (Mass::default(), Volume::default());
        let (mass, volume) = cups.fold(nothing, |(mass, volume), cup| {
            (mass + cup.paint * cup.density(), volume + cup.paint)
        });
        if volume > Volume::default() { mass / volume } else { MassDensity::default() }
    }
}
