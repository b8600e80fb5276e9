//! Batches and their ingredients.

use super::caution::{LabelText, label};
use crate::handout::words::Words;
use crate::lesson::Consistency;
use crate::plan::{Batch, Plan, Poured};
use crate::quantity::show::Show;
use crate::quantity::{Mass, Volume};
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
    /// What is expected to be used.
    pub expected: String,
    /// What is mixed on top; empty when that is nothing.
    pub reserve: String,
    /// Both together.
    pub need: String,
    /// What comes out of jars that were mixed before; empty when that is nothing.
    pub from_jars: String,
    /// What the scale shows when the jars are poured in last; empty without them.
    pub jar_reading: String,
    pub volume: String,
    pub mass: String,
    pub density: String,
    pub ingredients: Vec<IngredientText>,
    /// What the labels of the colour and of what goes with it warn of.
    pub labels: Vec<LabelText>,
    /// The cups to fill from it; empty for the batch of a single cup.
    pub fills: Vec<FillText>,
    /// What stays in the jug when they are filled; empty when that is nothing to speak of.
    pub left: String,
}

/// Cups that are filled alike.
#[derive(Debug, Clone, Serialize)]
pub struct FillText {
    pub canvas: String,
    pub layer: String,
    pub cups: String,
    /// Into each cup.
    pub volume: String,
    pub mass: String,
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
    let from_jars = batch.from_jars * batch.density;
    BatchText {
        colour: batch.colour.name.clone(),
        swatch: hex(batch.colour.swatch),
        mix: batch.mix.name.clone(),
        consistency: consistency(batch.mix.consistency, words),
        cups: batch.cups.to_string(),
        expected: show.volume(batch.expected),
        reserve: unless_nothing(batch.reserve, show),
        need: show.volume(batch.need()),
        from_jars: unless_no_mass(from_jars, show),
        jar_reading: if from_jars > Mass::default() {
            show.mass(batch.mass + from_jars)
        } else {
            String::new()
        },
        volume: show.measured(batch.volume),
        mass: show.mass(batch.mass),
        density: show.density(batch.density),
        ingredients: batch.ingredients.iter().map(|poured| ingredient(poured, show)).collect(),
        labels: labels(batch),
        fills: Vec::new(),
        left: String::new(),
    }
}

fn labels(batch: &Batch) -> Vec<LabelText> {
    let colour = label(&batch.colour.name, batch.colour.caution.as_deref());
    let others = batch.ingredients.iter().map(|poured| &poured.material);
    let others = others.filter_map(|material| label(&material.name, material.caution.as_deref()));
    colour.into_iter().chain(others).collect()
}

fn unless_no_mass(mass: Mass, show: &Show) -> String {
    if mass > Mass::default() { show.mass(mass) } else { String::new() }
}

/// A volume, empty when it is nothing.
pub(super) fn unless_nothing(volume: Volume, show: &Show) -> String {
    if volume > Volume::default() { show.volume(volume) } else { String::new() }
}

/// The batches of the class, each with the cups it fills.
pub(super) fn class_batches(plan: &Plan, words: &Words, show: &Show) -> Vec<BatchText> {
    plan.mixing
        .iter()
        .map(|mixed| {
            let fills = fills(plan, mixed);
            let filled: Mass = fills.iter().map(|fill| fill.mass * f64::from(fill.cups)).sum();
            let left = mixed.mass + mixed.from_jars * mixed.density - filled;
            BatchText {
                left: if left < plan.lesson.mixing.scale_step {
                    String::new()
                } else {
                    show.mass(
                        (left / plan.lesson.mixing.scale_step).value.round()
                            * plan.lesson.mixing.scale_step,
                    )
                },
                fills: fills.iter().map(|fill| fill.text(show)).collect(),
                ..batch(mixed, words, show)
            }
        })
        .collect()
}

/// Cups of one layer of one kind of canvas.
struct Fill<'a> {
    canvas: &'a str,
    /// Empty where the technique has but one.
    layer: &'a str,
    cups: u32,
    volume: Volume,
    mass: Mass,
}

impl Fill<'_> {
    fn text(&self, show: &Show) -> FillText {
        FillText {
            canvas: self.canvas.to_owned(),
            layer: self.layer.to_owned(),
            cups: self.cups.to_string(),
            volume: show.volume(self.volume),
            mass: show.mass(self.mass),
        }
    }
}

fn fills<'a>(plan: &'a Plan, mixed: &Batch) -> Vec<Fill<'a>> {
    let mut fills = Vec::new();
    for (canvas, worked_out) in plan.lesson.canvases.iter().zip(&plan.canvases) {
        let has_layers = worked_out.layers.len() > 1;
        for layer in worked_out.layers.iter().filter(|layer| layer.layer.mix.name == mixed.mix.name)
        {
            for cup in layer.cups.iter().filter(|cup| cup.colour.name == mixed.colour.name) {
                fills.push(Fill {
                    canvas: &worked_out.name,
                    layer: if has_layers { &layer.name } else { "" },
                    cups: plan.heads.sets().saturating_mul(canvas.each.get()),
                    volume: cup.batch.need(),
                    mass: cup.fill,
                });
            }
        }
    }
    fills
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
