use super::{LIMIT_OF_ERROR, Matter, Warning, path, written};
use crate::plan::{CupPlan, Plan};
use crate::quantity::Mass;
use crate::quantity::units::gram;

/// Steps in which kitchen and pocket scales show grams, coarse ones first (common practice,
/// no source).
const STEPS_G: [f64; 8] = [10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.01];

/// What is weighed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Scales {
    /// An ingredient of the batch of a colour.
    Ingredient { material: String, colour: String, mix: String },
    /// A colour into the cup of a canvas.
    Cup { colour: String, canvas: String },
}

/// A scale that shows the smallest amount too coarsely.
pub(super) fn coarse(plan: &Plan) -> Option<Warning> {
    let step = plan.lesson.mixing.scale_step;
    let amounts = ingredients(plan).chain(cups(plan));
    let (least, what) = amounts.min_by(|(one, _), (other, _)| one.value.total_cmp(&other.value))?;
    let error = (step / least).value / 2.0;
    // A millionth is noise of the arithmetic.
    if error <= LIMIT_OF_ERROR * (1.0 + 1e-6) {
        return None;
    }
    let enough = |grams: &f64| gram(*grams) <= least * (2.0 * LIMIT_OF_ERROR);
    let better = gram(STEPS_G.into_iter().find(enough).unwrap_or(0.01));
    let canvas = match &what {
        Scales::Cup { canvas, .. } => canvas.clone(),
        Scales::Ingredient { colour, mix, .. } => canvas_of(plan, colour, mix),
    };
    let path = written(&plan.lesson, [path(["mixing", "scale step"]), path(["canvases", &canvas])]);
    Some(Warning { matter: Matter::CoarseScale { step, least, what, error, better }, path })
}

/// What goes into each batch by weight; drops are counted.
fn ingredients(plan: &Plan) -> impl Iterator<Item = (Mass, Scales)> {
    let batches = plan.mixing.iter().flat_map(|batch| {
        let poured = batch.ingredients.iter().filter(|poured| poured.drops.is_none());
        poured.map(move |poured| (batch, poured))
    });
    let amounts = batches.map(|(batch, poured)| {
        let what = Scales::Ingredient {
            material: poured.material.name.clone(),
            colour: batch.colour.name.clone(),
            mix: batch.mix.name.clone(),
        };
        (poured.mass, what)
    });
    amounts.filter(|(mass, _)| *mass > Mass::default())
}

/// What goes into each cup, before it is rounded to what the scale shows.
fn cups(plan: &Plan) -> impl Iterator<Item = (Mass, Scales)> {
    let cups = plan.canvases.iter().flat_map(|canvas| {
        let cups = canvas.layers.iter().flat_map(|layer| &layer.cups);
        cups.map(move |cup| (canvas, cup))
    });
    cups.map(|(canvas, cup)| {
        let (colour, canvas) = (cup.colour.name.clone(), canvas.name.clone());
        (exact(cup, plan), Scales::Cup { colour, canvas })
    })
}

fn exact(cup: &CupPlan, plan: &Plan) -> Mass {
    (cup.paint + plan.lesson.mixing.cup_loss) * cup.density()
}

/// The first canvas that takes of a batch.
fn canvas_of(plan: &Plan, colour: &str, mix: &str) -> String {
    let takes = |cup: &CupPlan| cup.colour.name == colour && cup.batch.mix.name == mix;
    let mut canvases = plan.canvases.iter();
    let canvas =
        canvases.find(|canvas| canvas.layers.iter().flat_map(|layer| &layer.cups).any(takes));
    canvas.map(|canvas| canvas.name.clone()).unwrap_or_default()
}
