//! Clock times of the steps of a lesson, and whether they fit the booking.

use super::Impossible;
use crate::lesson::Timetable;
use crate::quantity::Time;
use jiff::SignedDuration;

/// What happens when, by the clock.
#[derive(Debug, Clone, PartialEq)]
pub struct TimetablePlan {
    /// In their order; each starts when the one before it ends. Never empty.
    pub steps: Vec<StepTime>,
    pub start: Time,
    pub end: Time,
    /// All steps together.
    pub minutes: u32,
    pub booking: Option<Booking>,
}

/// One step by the clock.
#[derive(Debug, Clone, PartialEq)]
pub struct StepTime {
    pub name: String,
    pub start: Time,
    pub end: Time,
    pub minutes: u32,
}

/// How long the room may be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Booking {
    pub until: Time,
    /// Minutes between the end of the last step and the end of the booking; below zero when
    /// the steps take longer.
    pub spare_minutes: i64,
}

impl Booking {
    /// Whether all steps end in time.
    pub fn holds(&self) -> bool {
        self.spare_minutes >= 0
    }
}

/// Puts the steps one after the other. A lesson that reaches midnight is refused: times of
/// the day would no longer say which day.
pub(super) fn timetable(timetable: &Timetable) -> Result<TimetablePlan, Impossible> {
    let mut now = timetable.start;
    let mut minutes = 0_u32;
    let mut steps = Vec::with_capacity(timetable.steps.len());
    for step in &timetable.steps {
        let past_midnight = || Impossible::PastMidnight { step: step.name.clone() };
        let length = SignedDuration::from_mins(i64::from(step.minutes));
        let end = now.checked_add(length).map_err(|_| past_midnight())?;
        steps.push(StepTime { name: step.name.clone(), start: now, end, minutes: step.minutes });
        // The sum stays below a day.
        minutes += step.minutes;
        now = end;
    }
    let booking = timetable
        .booked_until
        .map(|until| Booking { until, spare_minutes: until.duration_since(now).as_mins() });
    Ok(TimetablePlan { steps, start: timetable.start, end: now, minutes, booking })
}
