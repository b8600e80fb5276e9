use super::colour::Material;
use crate::quantity::Volume;
use schemars::JsonSchema;
use serde::Deserialize;
use std::sync::Arc;

/// A recipe that turns paint into pouring paint.
#[derive(Debug, Clone, PartialEq)]
pub struct Mix {
    pub name: String,
    pub consistency: Consistency,
    pub by: PartsBy,
    /// At least one part, paint among them; every number of parts is positive.
    pub parts: Vec<Part>,
    /// Drops into the finished mix.
    pub drops: Vec<Drops>,
}

/// How the parts of a mix are measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum PartsBy {
    /// In cups, spoons or millilitres.
    Volume,
    /// On the scale.
    Weight,
}

/// One line of a recipe.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    pub what: Ingredient,
    pub parts: f64,
}

/// What a part consists of.
#[derive(Debug, Clone, PartialEq)]
pub enum Ingredient {
    /// The paint of the colour that is being mixed.
    ThePaint,
    Other(Arc<Material>),
}

/// So many drops for so much mixed paint.
#[derive(Debug, Clone, PartialEq)]
pub struct Drops {
    /// Has a `drop` volume.
    pub material: Arc<Material>,
    pub count: f64,
    pub per: Volume,
}

/// How a mix runs off the stick.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Consistency {
    /// Runs off the stick like cream.
    Thin,
    /// Runs off the stick like warm honey.
    Medium,
    /// Runs off the stick like cold honey.
    Thick,
}

impl Consistency {
    /// All three, thin first.
    pub const ALL: [Self; 3] = [Self::Thin, Self::Medium, Self::Thick];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Thin => "thin",
            Self::Medium => "medium",
            Self::Thick => "thick",
        }
    }
}
