//! The only places where the engine rounds physical amounts.

use crate::quantity::{Mass, Volume};

/// A need that passes a step by less than this part of a step is noise of the
/// arithmetic (a millionth of 5 mL is far below any drop), not another step.
const NOISE: f64 = 1e-9;

/// The smallest whole number of steps that holds `need`. A step that is not positive
/// rounds nothing.
pub(super) fn up_to_step(need: Volume, step: Volume) -> Volume {
    if step <= Volume::default() {
        return need;
    }
    // Where noise was cut off, the need itself is already a whole number of steps.
    (whole_steps((need / step).value) * step).max(need)
}

/// The smallest whole number of scale steps that holds `need`.
pub(super) fn up_to_scale(need: Mass, step: Mass) -> Mass {
    if step <= Mass::default() {
        return need;
    }
    (whole_steps((need / step).value) * step).max(need)
}

fn whole_steps(steps: f64) -> f64 {
    (steps - NOISE).ceil().max(0.0)
}

/// What to add of each of `masses` on a scale that shows whole steps. Together they are the
/// total rounded to a step; the steps are shared out by largest remainder, so none is off
/// by a whole step.
pub(super) fn on_the_scale(masses: &[Mass], step: Mass) -> Vec<Mass> {
    if step <= Mass::default() {
        return masses.to_vec();
    }
    let exact: Vec<f64> = masses.iter().map(|mass| (*mass / step).value).collect();
    largest_remainder(&exact).into_iter().map(|steps| steps * step).collect()
}

/// Whole numbers near `exact` that add up to its rounded sum: all are rounded down, then
/// those with the largest remainders get one more (the earlier one of equals).
fn largest_remainder(exact: &[f64]) -> Vec<f64> {
    let total = exact.iter().sum::<f64>().round();
    let mut whole: Vec<f64> = exact.iter().map(|value| value.floor()).collect();
    let missing = (total - whole.iter().sum::<f64>()).max(0.0);
    let mut by_remainder: Vec<(usize, f64)> =
        exact.iter().map(|value| value - value.floor()).enumerate().collect();
    by_remainder.sort_by(|(_, one), (_, other)| other.total_cmp(one));
    let lucky = by_remainder
        .iter()
        .map(|(at, _)| *at)
        .zip(1..)
        .take_while(|(_, nth)| f64::from(*nth) <= missing);
    for (at, _) in lucky {
        if let Some(value) = whole.get_mut(at) {
            *value += 1.0;
        }
    }
    whole
}
