use super::{Matter, Warning, path};
use crate::lesson::{ReserveRule, ServiceLevel};
use crate::plan::Plan;
use crate::plan::demand;
use crate::plan::reserve::Margin;
use crate::quantity::Volume;

/// A reserve of less than this part of what is expected is as good as none (judgement).
const NEXT_TO_NOTHING: f64 = 0.01;
/// The level of the built-in rule.
const USUAL: (u32, u32) = (19, 20);

/// A reserve of as good as nothing.
pub(super) fn none(plan: &Plan) -> Option<Warning> {
    let reserve = &plan.reserve;
    if reserve.by_colour >= reserve.expected * NEXT_TO_NOTHING {
        return None;
    }
    let usual = usual(plan);
    let key = if usual.is_some() { "enough in" } else { "class varies by" };
    let (level, expected) = (reserve.rule.level, reserve.expected);
    let matter = Matter::NoReserve { level, expected, usual };
    Some(Warning { matter, path: path(["reserve", key]) })
}

/// What the usual level would keep of all colours; `None` when nothing varies.
fn usual(plan: &Plan) -> Option<(ServiceLevel, Volume)> {
    let level = ServiceLevel::new(USUAL.0, USUAL.1)?;
    let rule = ReserveRule { level, ..plan.reserve.rule };
    // What was planned can be counted.
    let demand = demand::of_class(&plan.lesson, &plan.canvases, plan.heads).ok()?;
    let kept: Volume = demand.pots.iter().map(|pot| Margin::argued(&rule).on(&pot.demand)).sum();
    (kept > Volume::default()).then_some((level, kept))
}
