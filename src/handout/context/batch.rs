//! Batches and their ingredients.

use crate::handout::words::Words;
use crate::lesson::Consistency;
use crate::plan::{Batch, Poured};
use crate::quantity::show::Show;
use serde::Serialize;

/// One colour mixed in one go.
#[derive(Debug, Clone, Serialize)]
pub struct BatchText {
    pub colour: String,
    /// `#RRGGBB`.
    pub swatch: String,
    pub mix: String,
    pub consistency: String,
    pub cups: String,
    pub need: String,
    pub volume: String,
    pub mass: String,
    pub density: String,
    pub ingredients: Vec<IngredientText>,
}

/// One ingredient on the scale.
#[derive(Debug, Clone, Serialize)]
pub struct IngredientText {
    pub name: String,
    pub volume: String,
    /// What to add on the scale.
    pub mass: String,
    /// What the tared scale shows after it.
    pub reading: String,
    /// Empty unless it is counted in drops.
    pub drops: String,
}

pub(super) fn batch(batch: &Batch, words: &Words, show: &Show) -> BatchText {
    BatchText {
        colour: batch.colour.name.clone(),
        swatch: hex(batch.colour.swatch),
        mix: batch.mix.name.clone(),
        consistency: consistency(batch.mix.consistency, words),
        cups: batch.cups.to_string(),
        need: show.volume(batch.need),
        volume: show.measured(batch.volume),
        mass: show.mass(batch.mass),
        density: show.density(batch.density),
        ingredients: batch.ingredients.iter().map(|poured| ingredient(poured, show)).collect(),
    }
}

fn ingredient(poured: &Poured, show: &Show) -> IngredientText {
    IngredientText {
        name: poured.material.name.clone(),
        volume: show.volume(poured.volume),
        mass: show.mass(poured.weighed),
        reading: show.mass(poured.reading),
        drops: poured.drops.map(|drops| drops.to_string()).unwrap_or_default(),
    }
}

/// A colour as `#RRGGBB`.
pub(super) fn hex(swatch: crate::lesson::Rgb) -> String {
    format!("#{:02X}{:02X}{:02X}", swatch.0, swatch.1, swatch.2)
}

/// The word for a consistency.
pub(in crate::handout) fn consistency(consistency: Consistency, words: &Words) -> String {
    match consistency {
        Consistency::Thin => words.consistency.thin.clone(),
        Consistency::Medium => words.consistency.medium.clone(),
        Consistency::Thick => words.consistency.thick.clone(),
    }
}
