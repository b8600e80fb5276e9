//! Worked examples as data: from the size of a canvas to the cup on the scale.
//!
//! In: the lesson and the canvases as planned, at full precision. Out: steps whose
//! printed figures can be worked again with a pocket calculator: the formula on the
//! printed operands gives the printed result within half a unit of its last digit. No
//! result is ever computed from a rounded one; every figure is the plan's own.

mod draft;
mod formula;
mod outline;
mod units;

pub use formula::Formula;

use super::{CanvasPlan, CupPlan, FigureUnit, LayerPlan, StepKind, WorkedExample};
use crate::lesson::{Canvas, Edge, Lesson};
use draft::{Draft, FigureId};
use units::Units;

/// One example a canvas, in the order of the lesson.
pub(super) fn examples(lesson: &Lesson, canvases: &[CanvasPlan]) -> Vec<WorkedExample> {
    let units = Units::of(lesson);
    lesson
        .canvases
        .iter()
        .zip(canvases)
        .map(|(canvas, plan)| {
            let mut sum = Sum { draft: Draft::default(), units };
            let painted = sum.painted_area(canvas, plan);
            for layer in &plan.layers {
                sum.layer(layer, painted, lesson);
            }
            WorkedExample { canvas: plan.name.clone(), steps: sum.draft.finish() }
        })
        .collect()
}

struct Sum {
    draft: Draft,
    units: Units,
}

impl Sum {
    fn painted_area(&mut self, canvas: &Canvas, plan: &CanvasPlan) -> FigureId {
        let (draft, units) = (&mut self.draft, self.units);
        let face = units.area(draft, plan.areas.face);
        outline::face(draft, units, canvas.shape, face);
        let edge = units.area(draft, plan.areas.edge);
        if canvas.edge == Edge::Painted {
            let perimeter = units.computed_length(draft, plan.areas.perimeter);
            outline::perimeter(draft, units, canvas.shape, perimeter);
            let depth = units.given_length(draft, canvas.depth);
            draft.step(StepKind::EdgeArea, Formula::Product, [perimeter, depth], edge);
        }
        let painted = units.area(draft, plan.areas.painted);
        draft.step(StepKind::PaintedArea, Formula::Sum, [face, edge], painted);
        painted
    }

    fn layer(&mut self, plan: &LayerPlan, painted: FigureId, lesson: &Lesson) {
        let (draft, units) = (&mut self.draft, self.units);
        let coverage = units.coverage(draft, plan.film.typical());
        let paint = units.volume(draft, plan.paint.typical());
        let what = StepKind::LayerPaint { layer: plan.name.clone() };
        draft.step(what, Formula::Quotient, [painted, coverage], paint);
        for cup in &plan.cups {
            self.cup(cup, &plan.name, paint, lesson);
        }
    }

    fn cup(&mut self, cup: &CupPlan, layer: &str, layer_paint: FigureId, lesson: &Lesson) {
        let (draft, units) = (&mut self.draft, self.units);
        let (layer, colour) = (layer.to_owned(), cup.colour.name.clone());
        let share = units::percent(draft, cup.share);
        let paint = units.volume(draft, cup.paint);
        let what = StepKind::ColourPaint { layer: layer.clone(), colour: colour.clone() };
        draft.step(what, Formula::PercentOf, [layer_paint, share], paint);

        let loss = units.volume(draft, lesson.mixing.cup_loss);
        let density = units.density(draft, cup.density());
        let step = units.mass(draft, lesson.mixing.scale_step, lesson);
        let mass = units.mass(draft, cup.fill, lesson);
        let what = StepKind::ColourMass { layer, colour };
        draft.step(what, Formula::SumProductRoundedUp, [paint, loss, density, step], mass);
    }
}

/// A pure number.
fn number(draft: &mut Draft, value: f64, decimals: u8) -> FigureId {
    draft.figure(value, FigureUnit::None, decimals)
}
