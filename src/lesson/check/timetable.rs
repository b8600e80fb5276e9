use super::super::desk::Desk;
use super::super::field::{At, Entries, Field, Written};
use super::super::legible::Minutes;
use super::super::limits;
use super::super::model::{TimedStep, Timetable};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use crate::quantity::Time;

const MINUTES_IN_A_DAY: u32 = 24 * 60;

/// What happens when: `Some(None)` when the lesson does not say.
pub(super) fn timetable(desk: Desk<'_>, raw: &raw::Lesson) -> Option<Option<Timetable>> {
    let At { node, value: raw } = match &raw.timetable {
        Field::Absent => return Some(None),
        Field::Broken => return None,
        Field::Present(timetable) => timetable,
    };
    let start = desk.need(*node, "start", &raw.start).and_then(|written| {
        let start = desk.read(written)?;
        Some((written.node, start))
    });
    let booked_until = booked_until(desk, &raw.booked_until, start);
    let steps = desk.need(*node, "steps", &raw.steps);
    let steps = steps.and_then(|at| steps_of(desk, at, start.map(|(_, start)| start)));
    Some(Some(Timetable {
        start: start.map(|(_, start)| start)?,
        booked_until: booked_until?,
        steps: steps?,
    }))
}

/// When the room must be left, later than the start.
fn booked_until(
    desk: Desk<'_>,
    field: &Field<Written<Time>>,
    start: Option<(NodeId, Time)>,
) -> Option<Option<Time>> {
    let written = match field {
        Field::Absent => return Some(None),
        Field::Broken => return None,
        Field::Present(written) => written,
    };
    let until = desk.read(written)?;
    if let Some((node, start)) = start
        && until <= start
    {
        desk.fault_with(written.node, ProblemKind::BookedBeforeStart, node);
        return None;
    }
    Some(Some(until))
}

/// The steps, of which the last ends before midnight; only the first that does not is told.
fn steps_of(
    desk: Desk<'_>,
    at: &At<Entries<Written<Minutes>>>,
    start: Option<Time>,
) -> Option<Vec<TimedStep>> {
    let entries = &at.value.0;
    if entries.is_empty() || entries.len() > limits::TIMED_STEPS {
        let none = entries.is_empty();
        let kind = if none { ProblemKind::NoTimedSteps } else { ProblemKind::TooManyTimedSteps };
        desk.fault(at.node, kind);
        return None;
    }
    let mut now = start.map(minute_of_day);
    let steps: Vec<Option<TimedStep>> = entries
        .iter()
        .map(|entry| {
            let written = entry.value.as_ref()?;
            let Minutes(minutes) = desk.bounded(written, &limits::STEP_MINUTES)?;
            now = now.map(|now| now + minutes);
            if now.is_some_and(|now| now >= MINUTES_IN_A_DAY) {
                desk.fault(written.node, ProblemKind::PastMidnight);
                now = None;
                return None;
            }
            Some(TimedStep { name: entry.name.clone(), minutes })
        })
        .collect();
    steps.into_iter().collect()
}

fn minute_of_day(time: Time) -> u32 {
    u32::from(time.hour().unsigned_abs()) * 60 + u32::from(time.minute().unsigned_abs())
}
