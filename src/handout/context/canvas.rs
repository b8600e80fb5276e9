//! Canvases, their layers and cups.

use super::batch::{IngredientText, batch, consistency, hex};
use super::step::{StepText, operand_of, steps, sum_of};
use super::technique::coverage;
use crate::handout::words::{Words, fill};
use crate::lesson::{Canvas, Shape};
use crate::plan::{
    CanvasPlan, CupPlan, FinishPlan, LayerPlan, Plan, StepKind, WorkedExample, rule_film,
};
use crate::quantity::show::{Show, trimmed, with_unit};
use crate::quantity::units::{in_gram, ml, us_fl_oz};
use crate::quantity::{Area, Length, UnitSystem};
use serde::Serialize;

/// One kind of canvas.
#[derive(Debug, Clone, Serialize)]
pub struct CanvasText {
    pub name: String,
    pub shape: String,
    pub size: String,
    /// Empty for a flat panel.
    pub depth: String,
    pub each: String,
    pub technique: String,
    pub consistency: String,
    pub face: String,
    /// Empty when the edge stays bare.
    pub edge: String,
    pub perimeter: String,
    pub painted: String,
    pub paint: String,
    pub paint_low: String,
    pub paint_high: String,
    pub to_mix: String,
    /// All layers of the technique together.
    pub film: String,
    pub coverage: String,
    /// What the rule of thumb says for the same area.
    pub rule_paint: String,
    pub rule_share: String,
    /// The rule's amount in grams, worked with the weight of the mix used most of.
    pub rule_mass_sum: String,
    /// The area worked out, from one step to the next; empty for a step that a bare
    /// edge leaves out.
    pub perimeter_sum: String,
    pub edge_sum: String,
    pub painted_sum: String,
    pub layers: Vec<LayerText>,
    pub finishes: Vec<FinishText>,
    /// All steps, from the face to the last cup on the scale.
    pub steps: Vec<StepText>,
}

/// One layer.
#[derive(Debug, Clone, Serialize)]
pub struct LayerText {
    pub name: String,
    pub mix: String,
    pub consistency: String,
    pub film: String,
    pub coverage: String,
    /// What one unit of paint covers, to divide by.
    pub covers: String,
    pub paint: String,
    /// Painted area to paint, worked.
    pub sum: String,
    pub cups: Vec<CupText>,
}

/// One cup.
#[derive(Debug, Clone, Serialize)]
pub struct CupText {
    pub colour: String,
    pub swatch: String,
    pub share: String,
    pub paint: String,
    pub batch_volume: String,
    pub batch_mass: String,
    pub density: String,
    /// Layer to colour, colour to batch and batch to grams, worked.
    pub paint_sum: String,
    pub batch_sum: String,
    pub mass_sum: String,
    pub ingredients: Vec<IngredientText>,
}

/// A layer that follows days later.
#[derive(Debug, Clone, Serialize)]
pub struct FinishText {
    pub name: String,
    pub material: String,
    pub paint: String,
    pub coats: String,
    pub after_days: String,
    pub basis: String,
}

pub(super) fn canvases(plan: &Plan, words: &Words, show: &Show) -> Vec<CanvasText> {
    plan.lesson
        .canvases
        .iter()
        .zip(&plan.canvases)
        .zip(&plan.worked)
        .map(|((canvas, worked_out), worked)| CanvasText {
            name: canvas.name.clone(),
            shape: shape_word(canvas, words),
            size: size(canvas, words, show),
            depth: if canvas.depth > Length::default() {
                show.length(canvas.depth)
            } else {
                String::new()
            },
            each: canvas.each.to_string(),
            technique: canvas.technique.name.clone(),
            consistency: consistencies(canvas, words),
            face: show.area(worked_out.areas.face),
            edge: if worked_out.areas.edge > Area::default() {
                show.area(worked_out.areas.edge)
            } else {
                String::new()
            },
            perimeter: show.length(worked_out.areas.perimeter),
            painted: show.area(worked_out.areas.painted),
            paint: show.volume(worked_out.paint.typical()),
            paint_low: show.volume(worked_out.paint.low()),
            paint_high: show.volume(worked_out.paint.high()),
            to_mix: show.volume(worked_out.to_mix),
            film: show.film(worked_out.paint.typical() / worked_out.areas.painted),
            coverage: coverage(worked_out.paint.typical() / worked_out.areas.painted, words, show),
            rule_paint: show.volume(worked_out.areas.painted * rule_film()),
            rule_share: show.percent(rule_share(worked_out)),
            rule_mass_sum: rule_mass_sum(worked_out, words, show),
            perimeter_sum: sum_of(worked, &StepKind::Perimeter, words),
            edge_sum: sum_of(worked, &StepKind::EdgeArea, words),
            painted_sum: sum_of(worked, &StepKind::PaintedArea, words),
            layers: worked_out
                .layers
                .iter()
                .map(|layer| layer_text(layer, worked, words, show))
                .collect(),
            finishes: worked_out.finishes.iter().map(|finish| finish_text(finish, show)).collect(),
            steps: steps(canvas, worked, words),
        })
        .collect()
}

/// The rule's paint times the weight of one unit, from figures as they are printed.
fn rule_mass_sum(canvas: &CanvasPlan, words: &Words, show: &Show) -> String {
    let cups = canvas.layers.iter().flat_map(|layer| &layer.cups);
    let Some(most) = cups.reduce(|a, b| if b.paint > a.paint { b } else { a }) else {
        return String::new();
    };
    let rule = canvas.areas.painted * rule_film();
    let (one, pattern, digits) = match show.units() {
        UnitSystem::Us => (us_fl_oz(1.0), &words.steps.per_fluid_ounce, 1),
        UnitSystem::Metric => (ml(1.0), &words.steps.per_millilitre, 2),
    };
    let printed = |value: f64, digits: i32| {
        let tens = 10_f64.powi(digits);
        (value * tens).round() / tens
    };
    let weight = printed(in_gram(one * most.batch.density), digits);
    let rule_shown = show.volume(rule);
    let amount = printed(show.volume_number(rule), i32::from(digits == 1) * 2);
    format!(
        "{rule_shown} × {} = {}",
        fill(pattern, &[("amount", &with_unit(&trimmed(weight, 2), "g"))]),
        with_unit(&trimmed(amount * weight, 0), "g")
    )
}

/// Paint of the canvas as a part of what the rule of thumb says.
fn rule_share(canvas: &CanvasPlan) -> f64 {
    (canvas.paint.typical() / (canvas.areas.painted * rule_film())).value
}

fn layer_text(plan: &LayerPlan, worked: &WorkedExample, words: &Words, show: &Show) -> LayerText {
    let layer = &plan.name;
    LayerText {
        name: layer.clone(),
        mix: plan.layer.mix.name.clone(),
        consistency: consistency(plan.layer.mix.consistency, words),
        film: show.film(plan.film.typical()),
        coverage: coverage(plan.film.typical(), words, show),
        covers: operand_of(worked, &StepKind::LayerPaint { layer: layer.clone() }, 1, words),
        paint: show.volume(plan.paint.typical()),
        sum: sum_of(worked, &StepKind::LayerPaint { layer: layer.clone() }, words),
        cups: plan.cups.iter().map(|cup| cup_text(cup, layer, worked, words, show)).collect(),
    }
}

fn cup_text(
    cup: &CupPlan,
    layer: &str,
    worked: &WorkedExample,
    words: &Words,
    show: &Show,
) -> CupText {
    let mixed = batch(&cup.batch, words, show);
    let (layer, colour) = (layer.to_string(), cup.colour.name.clone());
    let paint = StepKind::ColourPaint { layer: layer.clone(), colour: colour.clone() };
    let to_mix = StepKind::ColourBatch { layer: layer.clone(), colour: colour.clone() };
    let mass = StepKind::ColourMass { layer, colour };
    CupText {
        colour: cup.colour.name.clone(),
        swatch: hex(cup.colour.swatch),
        share: show.share(cup.share),
        paint: show.volume(cup.paint),
        batch_volume: mixed.volume,
        batch_mass: mixed.mass,
        density: mixed.density,
        paint_sum: sum_of(worked, &paint, words),
        batch_sum: sum_of(worked, &to_mix, words),
        mass_sum: sum_of(worked, &mass, words),
        ingredients: mixed.ingredients,
    }
}

fn finish_text(plan: &FinishPlan, show: &Show) -> FinishText {
    FinishText {
        name: plan.finish.name.clone(),
        material: plan.finish.material.name.clone(),
        paint: show.volume(plan.paint.typical()),
        coats: plan.finish.coats.to_string(),
        after_days: plan.finish.after_days.to_string(),
        basis: plan.finish.basis.clone(),
    }
}

/// The consistencies of the layers, each named once.
pub(in crate::handout) fn consistencies(canvas: &Canvas, words: &Words) -> String {
    let mut named: Vec<String> = Vec::new();
    for layer in &canvas.layers {
        let word = consistency(layer.mix.consistency, words);
        if !named.contains(&word) {
            named.push(word);
        }
    }
    named.join(&words.mixes.between)
}

/// What an outline is called.
pub(in crate::handout) fn shape_word(canvas: &Canvas, words: &Words) -> String {
    let shapes = &words.shapes;
    match canvas.shape {
        Shape::Rectangle { width, height } if width == height => shapes.square.clone(),
        Shape::Rectangle { .. } => shapes.rectangle.clone(),
        Shape::Round { .. } => shapes.round.clone(),
        Shape::Oval { .. } => shapes.oval.clone(),
        Shape::Polygon { sides: 3, .. } => shapes.triangle.clone(),
        Shape::Polygon { sides: 6, .. } => shapes.hexagon.clone(),
        Shape::Polygon { sides: 8, .. } => shapes.octagon.clone(),
        Shape::Polygon { sides, .. } => fill(&shapes.polygon, &[("sides", &sides.to_string())]),
    }
}

/// How large it is, in words.
pub(in crate::handout) fn size(canvas: &Canvas, words: &Words, show: &Show) -> String {
    let sizes = &words.sizes;
    match canvas.shape {
        Shape::Rectangle { width, height } | Shape::Oval { width, height } => fill(
            &sizes.rectangle,
            &[("width", &show.length_figure(width)), ("height", &show.length(height))],
        ),
        Shape::Round { diameter } => fill(&sizes.round, &[("width", &show.length(diameter))]),
        Shape::Polygon { side, .. } => fill(&sizes.polygon, &[("side", &show.length(side))]),
    }
}
