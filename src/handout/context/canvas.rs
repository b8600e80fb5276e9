//! Canvases, their layers and cups.

use super::adding::{Amounts, canvas_paint, grams, ingredients};
use super::batch::{IngredientText, batch, consistency, hex};
use super::compare::{CompareText, compare};
use super::range::{RangeText, painted_range, used_range};
use super::spelled;
use super::step::{StepText, operand_of, result_of, steps, sum_of};
use super::technique::coverage;
use crate::handout::words::{Words, fill};
use crate::lesson::{Canvas, CanvasLayer, PolygonSize, Shape};
use crate::plan::{
    CanvasPlan, CupPlan, FinishPlan, LayerPlan, Plan, StepKind, WorkedExample, rule_film,
};
use crate::quantity::show::Show;
use crate::quantity::{Area, Date, Length, Mass};
use serde::Serialize;
use std::f64::consts::PI;

/// One kind of canvas.
#[derive(Debug, Clone, Serialize)]
pub struct CanvasText {
    pub name: String,
    pub shape: String,
    /// As the lesson gives it.
    pub size: String,
    /// Whether its face has corners.
    pub corners: bool,
    /// Empty for a flat panel.
    pub depth: String,
    pub each: String,
    /// How many the class paints, demonstrations and spares included.
    pub in_class: String,
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
    /// Round figures between which the painted area and what all cups lose are plausible.
    pub painted_range: RangeText,
    pub used_range: RangeText,
    pub to_mix: String,
    /// All layers of the technique together.
    pub film: String,
    pub coverage: String,
    /// What the rule of thumb says for the same area.
    pub rule_paint: String,
    pub rule_share: String,
    /// What one unit of the colours together weighs, in the mean of this canvas.
    pub mean_weight: String,
    /// The other comparisons, worked with what is planned.
    pub compare: Option<CompareText>,
    /// What the cups of one canvas should lose.
    pub paint_mass: String,
    /// The area worked out, from one step to the next; empty for a step that a bare
    /// edge leaves out.
    /// The factor of an oval's way around; empty for other shapes.
    pub perimeter_factor: String,
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
    /// What the paint weighs: what the cup should lose.
    pub paint_mass: String,
    /// What is filled into the cup.
    pub fill_volume: String,
    pub fill_mass: String,
    pub density: String,
    /// Layer to colour, and colour to grams in the cup, worked.
    pub paint_sum: String,
    pub fill_sum: String,
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
    /// The day of the first coat at the earliest; empty in a lesson without a date.
    pub date: String,
    pub basis: String,
}

pub(super) fn canvases(plan: &Plan, words: &Words, show: &Show) -> Vec<CanvasText> {
    plan.lesson
        .canvases
        .iter()
        .zip(&plan.canvases)
        .zip(&plan.worked)
        .enumerate()
        .map(|(at, ((canvas, worked_out), worked))| {
            let both = (canvas_paint(worked_out, show), used(worked_out, show));
            (canvas, worked_out, worked, both, at)
        })
        .map(|(canvas, worked_out, worked, (paint, (used, cups)), at)| CanvasText {
            name: canvas.name.clone(),
            shape: shape_word(canvas, words),
            size: size(canvas, words, show),
            depth: if canvas.depth > Length::default() {
                show.length(canvas.depth)
            } else {
                String::new()
            },
            corners: has_corners(canvas.shape),
            each: canvas.each.to_string(),
            in_class: plan.heads.sets().saturating_mul(canvas.each.get()).to_string(),
            technique: canvas.technique.name.clone(),
            consistency: consistencies(canvas, words),
            face: result_of(worked, &StepKind::Face, words),
            edge: if worked_out.areas.edge > Area::default() {
                result_of(worked, &StepKind::EdgeArea, words)
            } else {
                String::new()
            },
            perimeter: show.length(worked_out.areas.perimeter),
            painted: result_of(worked, &StepKind::PaintedArea, words),
            paint: paint.whole,
            paint_low: show.volume(worked_out.paint.low()),
            paint_high: show.volume(worked_out.paint.high()),
            painted_range: painted_range(worked_out, show),
            used_range: used_range(worked_out, show),
            to_mix: show.volume(worked_out.to_mix),
            film: show.film(worked_out.paint.typical() / worked_out.areas.painted),
            coverage: coverage(worked_out.paint.typical() / worked_out.areas.painted, words, show),
            rule_paint: show.volume(worked_out.areas.painted * rule_film()),
            rule_share: show.percent(rule_share(worked_out)),
            mean_weight: mean_weight(worked_out, show),
            paint_mass: used,
            compare: compare(plan, at, words, show),
            perimeter_factor: operand_of(worked, &StepKind::Perimeter, 3, words),
            perimeter_sum: sum_of(worked, &StepKind::Perimeter, words),
            edge_sum: sum_of(worked, &StepKind::EdgeArea, words),
            painted_sum: sum_of(worked, &StepKind::PaintedArea, words),
            layers: worked_out
                .layers
                .iter()
                .zip(&paint.parts)
                .zip(&cups)
                .map(|((layer, paint), used)| layer_text(layer, (paint, used), worked, words, show))
                .collect(),
            finishes: worked_out
                .finishes
                .iter()
                .map(|finish| finish_text(finish, plan.lesson.heading.date, words, show))
                .collect(),
            steps: steps(canvas, worked, words),
        })
        .collect()
}

/// What one unit of the colours weighs in the mean of a canvas, with the digits printed.
fn mean_weight(canvas: &CanvasPlan, show: &Show) -> String {
    show.density(canvas.paint_mass() / canvas.paint.typical())
}

/// What the cups of a canvas should lose, altogether and cup by cup of each layer: whole
/// grams, as on the scale, that add up.
pub(super) fn used(canvas: &CanvasPlan, show: &Show) -> (String, Vec<Vec<String>>) {
    let cups = canvas.layers.iter().flat_map(|layer| &layer.cups);
    let masses: Vec<Mass> = cups.map(|cup| cup.paint * cup.density()).collect();
    let (whole, parts) = grams(&masses, show);
    let mut parts = parts.into_iter();
    let layers = canvas.layers.iter();
    (whole, layers.map(|layer| parts.by_ref().take(layer.cups.len()).collect()).collect())
}

/// Paint of the canvas as a part of what the rule of thumb says.
fn rule_share(canvas: &CanvasPlan) -> f64 {
    (canvas.paint.typical() / (canvas.areas.painted * rule_film())).value
}

fn layer_text(
    plan: &LayerPlan,
    (paint, used): (&Amounts, &[String]),
    worked: &WorkedExample,
    words: &Words,
    show: &Show,
) -> LayerText {
    let layer = &plan.name;
    LayerText {
        name: layer.clone(),
        mix: plan.layer.mix.name.clone(),
        consistency: consistency(plan.layer.mix.consistency, words),
        film: show.film(plan.film.typical()),
        coverage: coverage(plan.film.typical(), words, show),
        covers: operand_of(worked, &StepKind::LayerPaint { layer: layer.clone() }, 1, words),
        paint: paint.whole.clone(),
        sum: sum_of(worked, &StepKind::LayerPaint { layer: layer.clone() }, words),
        cups: plan
            .cups
            .iter()
            .zip(&paint.parts)
            .zip(used)
            .map(|((cup, paint), used)| CupText {
                paint: paint.whole.clone(),
                paint_mass: used.clone(),
                ..cup_text(cup, layer, worked, words, show)
            })
            .collect(),
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
    let amounts = ingredients(&cup.batch, show);
    let (layer, colour) = (layer.to_string(), cup.colour.name.clone());
    let paint = StepKind::ColourPaint { layer: layer.clone(), colour: colour.clone() };
    let mass = StepKind::ColourMass { layer, colour };
    CupText {
        colour: cup.colour.name.clone(),
        swatch: hex(cup.colour.swatch),
        share: show.share(cup.share),
        paint: show.volume(cup.paint),
        paint_mass: String::new(),
        fill_volume: amounts.whole,
        fill_mass: show.mass(cup.fill),
        density: mixed.density,
        paint_sum: sum_of(worked, &paint, words),
        fill_sum: sum_of(worked, &mass, words),
        ingredients: mixed
            .ingredients
            .into_iter()
            .zip(amounts.parts)
            .map(|(poured, amount)| IngredientText { volume: amount.whole, ..poured })
            .collect(),
    }
}

fn finish_text(plan: &FinishPlan, class: Option<Date>, words: &Words, show: &Show) -> FinishText {
    let days = jiff::Span::new().try_days(plan.finish.after_days);
    let date = class.zip(days.ok()).and_then(|(class, days)| class.checked_add(days).ok());
    FinishText {
        name: plan.finish.name.clone(),
        material: plan.finish.material.name.clone(),
        paint: show.volume(plan.paint.typical()),
        coats: plan.finish.coats.to_string(),
        after_days: plan.finish.after_days.to_string(),
        date: date.map(|date| spelled(date, words)).unwrap_or_default(),
        basis: plan.finish.basis.clone(),
    }
}

/// The consistency of the paint, layer by layer where they differ.
pub(in crate::handout) fn consistencies(canvas: &Canvas, words: &Words) -> String {
    let of = |layer: &CanvasLayer| consistency(layer.mix.consistency, words);
    let mut all: Vec<String> = canvas.layers.iter().map(of).collect();
    all.dedup();
    if let [one] = all.as_slice() {
        return one.clone();
    }
    let layers = canvas.technique.layers.iter().zip(&canvas.layers).map(|(named, layer)| {
        let blanks = [("layer", named.name.as_str()), ("consistency", &of(layer))];
        fill(&words.mixes.of_layer, &blanks)
    });
    layers.collect::<Vec<_>>().join(&words.mixes.between)
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

fn has_corners(shape: Shape) -> bool {
    match shape {
        Shape::Rectangle { .. } | Shape::Polygon { .. } => true,
        Shape::Round { .. } | Shape::Oval { .. } => false,
    }
}

/// Half the angle that a side of a regular polygon takes up, seen from its middle.
fn angle(sides: u32) -> f64 {
    PI / f64::from(sides)
}

/// How large it is, in words and by the size that the lesson gives.
pub(in crate::handout) fn size(canvas: &Canvas, words: &Words, show: &Show) -> String {
    let sizes = &words.sizes;
    match canvas.shape {
        Shape::Rectangle { width, height } | Shape::Oval { width, height } => fill(
            &sizes.rectangle,
            &[("width", &show.length_figure(width)), ("height", &show.length(height))],
        ),
        Shape::Round { diameter } => fill(&sizes.round, &[("width", &show.length(diameter))]),
        Shape::Polygon { side, given: PolygonSize::Side, .. } => {
            fill(&sizes.polygon, &[("side", &show.length(side))])
        }
        Shape::Polygon { sides, side, given: PolygonSize::AcrossFlats } => {
            let width = side / angle(sides).tan();
            fill(&sizes.polygon_flats, &[("width", &show.length(width))])
        }
        Shape::Polygon { sides, side, given: PolygonSize::AcrossCorners } => {
            let width = side / angle(sides).sin();
            fill(&sizes.polygon_corners, &[("width", &show.length(width))])
        }
    }
}
