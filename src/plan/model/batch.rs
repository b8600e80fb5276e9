//! What is mixed and needed for the class.

use crate::lesson::{Colour, Life, Material, Mix};
use crate::quantity::{Mass, MassDensity, Volume};
use std::sync::Arc;

/// A colour mixed in one go.
#[derive(Debug, Clone)]
pub struct Batch {
    pub colour: Arc<Colour>,
    pub mix: Arc<Mix>,
    /// Cups to fill from it.
    pub cups: u32,
    /// What is expected to be used, cup loss included.
    pub expected: Volume,
    /// What is mixed on top of it so that the colour is enough; nothing in the batch of a single
    /// cup.
    pub reserve: Volume,
    /// What its cups are filled with, each to a whole step of the scale.
    pub fills: Volume,
    /// Taken out of jars that were mixed before.
    pub from_jars: Volume,
    /// What is mixed: expected and reserve, or what fills the cups where that is more, less what
    /// the jars give, rounded up to what can be measured: a step of volume for the class and
    /// of the scale for one cup. Nothing when the jars have it all.
    pub volume: Volume,
    pub mass: Mass,
    /// By ideal mixing: sum of masses over sum of volumes.
    pub density: MassDensity,
    /// In the order of the recipe; volumes and masses add up to the batch.
    pub ingredients: Vec<Poured>,
}

impl Batch {
    /// What is needed: expected and reserve; never more than `volume` and `from_jars`.
    pub fn need(&self) -> Volume {
        self.expected + self.reserve
    }
}

/// One ingredient on the scale.
#[derive(Debug, Clone)]
pub struct Poured {
    pub material: Arc<Material>,
    pub volume: Volume,
    pub mass: Mass,
    /// What to add on the scale: `mass` in whole steps of it, so that the readings are the
    /// running sum of what was added.
    pub weighed: Mass,
    /// Reading of the scale after it, cup tared.
    pub reading: Mass,
    /// For additives that are counted.
    pub drops: Option<u32>,
}

/// A material for the whole class.
#[derive(Debug, Clone)]
pub struct MaterialNeed {
    pub material: Arc<Material>,
    /// What is expected to be used.
    pub expected: Volume,
    /// What is kept in reserve.
    pub reserve: Volume,
    /// Expected and reserve, and what the rounding of batches adds.
    pub volume: Volume,
    pub mass: Mass,
}

/// A supply for the whole class.
#[derive(Debug, Clone)]
pub struct SupplyNeed {
    pub item: String,
    pub pieces: u32,
    pub life: Life,
}
