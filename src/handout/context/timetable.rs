//! What happens when.

use crate::handout::words::{DayWords, Words, fill};
use crate::plan::TimetablePlan;
use crate::quantity::show::Show;
use crate::quantity::{Time, UnitSystem};
use serde::Serialize;

/// The timetable by the clock.
#[derive(Debug, Clone, Serialize)]
pub struct TimetableText {
    pub steps: Vec<StepTimeText>,
    pub start: String,
    pub end: String,
    /// All steps together.
    pub length: String,
    /// Empty without a booking.
    pub booked_until: String,
    /// What is left of the booking; empty when nothing is.
    pub spare: String,
    /// What the steps take more than the booking; empty when they fit.
    pub over: String,
}

/// One step of it.
#[derive(Debug, Clone, Serialize)]
pub struct StepTimeText {
    pub name: String,
    pub start: String,
    pub end: String,
    pub length: String,
}

pub(super) fn timetable(plan: &TimetablePlan, words: &Words, show: &Show) -> TimetableText {
    let day = &words.day;
    let clock = |time| clock(time, day, show.units());
    let spare = plan.booking.map_or(0, |booking| booking.spare_minutes);
    let minutes = |minutes: i64| {
        if minutes > 0 { length(minutes.unsigned_abs(), day) } else { String::new() }
    };
    TimetableText {
        steps: plan
            .steps
            .iter()
            .map(|step| StepTimeText {
                name: step.name.clone(),
                start: clock(step.start),
                end: clock(step.end),
                length: length(u64::from(step.minutes), day),
            })
            .collect(),
        start: clock(plan.start),
        end: clock(plan.end),
        length: length(u64::from(plan.minutes), day),
        booked_until: plan.booking.map(|booking| clock(booking.until)).unwrap_or_default(),
        spare: minutes(spare),
        over: minutes(-spare),
    }
}

/// `18:30` where the lesson is metric, `6:30 pm` where it is in US units.
fn clock(time: Time, words: &DayWords, units: UnitSystem) -> String {
    let hour = time.hour();
    let minute = format!("{:02}", time.minute());
    match units {
        UnitSystem::Metric => {
            fill(&words.clock_metric, &[("hour", &hour.to_string()), ("minute", &minute)])
        }
        UnitSystem::Us => {
            let half = if hour < 12 { &words.morning } else { &words.afternoon };
            let hour = if hour % 12 == 0 { 12 } else { hour % 12 };
            fill(
                &words.clock_us,
                &[("hour", &hour.to_string()), ("minute", &minute), ("half", half)],
            )
        }
    }
}

fn length(minutes: u64, words: &DayWords) -> String {
    let pattern = match (minutes / 60, minutes % 60) {
        (0, _) => &words.minutes,
        (_, 0) => &words.hours,
        _ => &words.both,
    };
    let (hours, minutes) = (minutes / 60, minutes % 60);
    fill(pattern, &[("hours", &hours.to_string()), ("minutes", &minutes.to_string())])
}
