use super::caution::Practice;
use super::colour::Material;
use super::recipe::Consistency;
use super::weighing::WeighedFilm;
use crate::quantity::{Length, Spread};
use std::num::NonZeroU32;
use std::sync::Arc;

/// A way of pouring: its layers and how much paint each takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Technique {
    pub name: String,
    /// One sentence on how it is done.
    pub summary: String,
    /// Never empty; the order of the work.
    pub layers: Vec<TechniqueLayer>,
    /// What it brings with it, such as a hair dryer.
    pub practices: Vec<Practice>,
}

/// One layer of a technique.
#[derive(Debug, Clone, PartialEq)]
pub struct TechniqueLayer {
    pub name: String,
    pub films: Films,
    /// Where the figures come from.
    pub basis: String,
    /// Which of the films have been weighed.
    pub weighed: Vec<(Consistency, WeighedFilm)>,
}

impl TechniqueLayer {
    /// Where the film for a consistency comes from, if it has been weighed.
    pub fn weighed(&self, consistency: Consistency) -> Option<&WeighedFilm> {
        self.weighed.iter().find(|(of, _)| *of == consistency).map(|(_, weighed)| weighed)
    }
}

/// Wet film equivalents (mixed paint per painted area, run-off included).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Films {
    pub thin: Spread<Length>,
    pub medium: Spread<Length>,
    pub thick: Spread<Length>,
}

impl Films {
    /// The film for a consistency.
    pub fn of(&self, consistency: Consistency) -> Spread<Length> {
        match consistency {
            Consistency::Thin => self.thin,
            Consistency::Medium => self.medium,
            Consistency::Thick => self.thick,
        }
    }
}

/// A layer that goes on when the paint has dried, straight from its bottle.
#[derive(Debug, Clone, PartialEq)]
pub struct Finish {
    pub name: String,
    pub material: Arc<Material>,
    /// Wet film of one coat.
    pub film: Spread<Length>,
    pub coats: NonZeroU32,
    /// Days of drying before the first coat.
    pub after_days: u32,
    pub basis: String,
}
