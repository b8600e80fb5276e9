use super::super::desk::{Bounds, Desk};
use super::super::field::{At, Field, Written};
use super::super::legible::Percentage;
use super::super::limits;
use super::super::model::ReserveRule;
use super::super::raw;
use super::super::tree::NodeId;
use crate::quantity::{Decimal, Share};

/// How much more than expected is mixed.
pub(super) fn reserve(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<ReserveRule> {
    let At { node, value: raw } = desk.need(root, "reserve", &raw.reserve)?;
    let part = |key, field: &Field<Written<Percentage>>, bounds: &Bounds| {
        part(desk, *node, (key, field), bounds)
    };
    let level = desk.need(*node, "enough in", &raw.enough_in);
    let level = level.and_then(|written| desk.read(written));
    let class_varies = part("class varies by", &raw.class_varies, &limits::VARIATION);
    let students_vary = part("students vary by", &raw.students_vary, &limits::VARIATION);
    let weighed = super::weighed::spread(desk, *node, &raw.weighed);
    let habit = part("habit", &raw.habit, &limits::HABIT);
    Some(ReserveRule {
        level: level?,
        class_varies: class_varies?,
        students_vary: students_vary?,
        habit: habit?,
        weighed: weighed?,
    })
}

/// A part of the whole, inside the bounds.
pub(super) fn part(
    desk: Desk<'_>,
    parent: NodeId,
    (key, field): (&'static str, &Field<Written<Percentage>>),
    bounds: &Bounds,
) -> Option<Share> {
    let Percentage(percent) = desk.need_bounded(parent, key, field, bounds)?;
    // The bounds let a hair over the whole pass.
    Share::new(percent.checked_div(Decimal::ONE_HUNDRED)?.min(Decimal::ONE))
}
