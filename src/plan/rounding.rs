//! The only places where the engine rounds physical amounts.

use crate::quantity::{Mass, Volume, whole_parts};

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
    whole_parts(&exact).into_iter().map(|steps| steps * step).collect()
}
