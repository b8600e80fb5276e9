//! Worked examples in words and figures.

use crate::handout::words::{StepWords, Words, fill};
use crate::lesson::{Canvas, Shape};
use crate::plan::{Figure, FigureUnit, Formula, Step, StepKind, WorkedExample};
use crate::quantity::show::{fixed, number_of, with_unit};
use serde::Serialize;

/// One step: what it is about, the formula in words, the sum in figures.
#[derive(Debug, Clone, Serialize)]
pub struct StepText {
    pub heading: String,
    pub words: String,
    /// With the result: `10 in × 10 in = 100 in²`.
    pub sum: String,
    pub result: String,
}

pub(super) fn steps(canvas: &Canvas, worked: &WorkedExample, words: &Words) -> Vec<StepText> {
    worked.steps.iter().map(|step| step_text(canvas.shape, step, words)).collect()
}

/// The sum of the step of that kind, with its result; empty when there is none.
pub(super) fn sum_of(worked: &WorkedExample, what: &StepKind, words: &Words) -> String {
    worked
        .steps
        .iter()
        .find(|step| step.what == *what)
        .map(|step| format!("{} = {}", sum(step, words), figure(&step.gives, words)))
        .unwrap_or_default()
}

/// What the step of that kind gives, as it is printed; empty when there is none.
pub(in crate::handout) fn result_of(
    worked: &WorkedExample,
    what: &StepKind,
    words: &Words,
) -> String {
    let step = worked.steps.iter().find(|step| step.what == *what);
    step.map(|step| figure(&step.gives, words)).unwrap_or_default()
}

/// One operand of the step of that kind as it is printed in its sum.
pub(in crate::handout) fn operand_of(
    worked: &WorkedExample,
    what: &StepKind,
    at: usize,
    words: &Words,
) -> String {
    let step = worked.steps.iter().find(|step| step.what == *what);
    step.and_then(|step| step.from.get(at)).map(|from| figure(from, words)).unwrap_or_default()
}

fn step_text(shape: Shape, step: &Step, words: &Words) -> StepText {
    let result = figure(&step.gives, words);
    let (heading, formula) = headings(shape, &step.what, &words.steps);
    StepText {
        heading,
        words: formula.clone(),
        sum: format!("{} = {result}", sum(step, words)),
        result,
    }
}

fn headings<'w>(shape: Shape, what: &StepKind, words: &'w StepWords) -> (String, &'w String) {
    match what {
        StepKind::Face => (
            words.face.clone(),
            match shape {
                Shape::Rectangle { .. } => &words.face_rectangle,
                Shape::Round { .. } => &words.face_round,
                Shape::Oval { .. } => &words.face_oval,
                Shape::Polygon { .. } => &words.face_polygon,
            },
        ),
        StepKind::Perimeter => (
            words.perimeter.clone(),
            match shape {
                Shape::Rectangle { .. } => &words.perimeter_rectangle,
                Shape::Round { .. } => &words.perimeter_round,
                Shape::Oval { .. } => &words.perimeter_oval,
                Shape::Polygon { .. } => &words.perimeter_polygon,
            },
        ),
        StepKind::EdgeArea => (words.edge.clone(), &words.edge_words),
        StepKind::PaintedArea => (words.painted.clone(), &words.painted_words),
        StepKind::LayerPaint { layer } => {
            (fill(&words.layer, &[("layer", layer)]), &words.layer_words)
        }
        StepKind::ColourPaint { layer, colour } => {
            (fill(&words.colour, &[("layer", layer), ("colour", colour)]), &words.colour_words)
        }
        StepKind::ColourMass { layer, colour } => {
            (fill(&words.mass, &[("layer", layer), ("colour", colour)]), &words.mass_words)
        }
    }
}

/// The left side of the sum.
fn sum(step: &Step, words: &Words) -> String {
    let all: Vec<String> = step.from.iter().map(|from| figure(from, words)).collect();
    match (step.formula, all.as_slice()) {
        (Formula::HalfProduct, all) => format!("{} ÷ 2", all.join(" × ")),
        (Formula::TwiceSum, [a, b]) => format!("2 × ({a} + {b})"),
        (Formula::ProductAroundSum, [a, b, c, d]) => format!("{a} × ({b} + {c}) × {d}"),
        (Formula::Sum, all) => all.join(" + "),
        (Formula::Quotient, [a, b]) => format!("{a} ÷ {b}"),
        (Formula::PercentOf, [a, b]) => format!("{a} × {b}"),
        // The unit of both amounts once, as the line is long.
        (Formula::SumProductRoundedUp, [a, b, c, _]) => {
            let (one, other) = (number_of(a), number_of(b));
            let unit = a.strip_prefix(one).unwrap_or_default();
            format!("({one} + {other}){unit} × {c}, {}", words.steps.rounded_up)
        }
        (_, all) => all.join(" × "),
    }
}

fn figure(figure: &Figure, words: &Words) -> String {
    let number = fixed(figure.shown, usize::from(figure.decimals));
    let number = words.numbers.decimal.put(number);
    let per = &words.steps;
    match figure.unit {
        FigureUnit::None => number,
        FigureUnit::Percent => with_unit(&number, "%"),
        FigureUnit::Inch => with_unit(&number, "in"),
        FigureUnit::Centimetre => with_unit(&number, "cm"),
        FigureUnit::SquareInch => with_unit(&number, "in²"),
        FigureUnit::SquareCentimetre => with_unit(&number, "cm²"),
        FigureUnit::FluidOunce => with_unit(&number, "fl\u{a0}oz"),
        FigureUnit::Millilitre => with_unit(&number, "mL"),
        FigureUnit::Gram => with_unit(&number, "g"),
        FigureUnit::SquareInchPerFluidOunce => {
            fill(&per.per_fluid_ounce, &[("amount", &with_unit(&number, "in²"))])
        }
        FigureUnit::SquareCentimetrePerMillilitre => {
            fill(&per.per_millilitre, &[("amount", &with_unit(&number, "cm²"))])
        }
        FigureUnit::GramPerFluidOunce => {
            fill(&per.per_fluid_ounce, &[("amount", &with_unit(&number, "g"))])
        }
        FigureUnit::GramPerMillilitre => {
            fill(&per.per_millilitre, &[("amount", &with_unit(&number, "g"))])
        }
    }
}
