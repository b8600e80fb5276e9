use super::super::desk::Desk;
use super::super::field::{At, Field};
use super::super::limits;
use super::super::model::{ExerciseRule, Heading};
use super::super::raw;
use std::num::NonZeroU32;

/// Sums for each student: `Some(None)` when the lesson wants none. The seed is made from the
/// heading where it is not given; without one that can be read there is nothing to make it from.
pub(super) fn exercises(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    heading: Option<&Heading>,
) -> Option<Option<ExerciseRule>> {
    let At { node, value } = match &raw.exercises {
        Field::Absent => return Some(None),
        Field::Broken => return None,
        Field::Present(exercises) => exercises,
    };
    let (count, level, seed) = match value {
        raw::Exercises::Count(written) => {
            (desk.bounded(written, &limits::EXERCISES), Some(None), Some(None))
        }
        raw::Exercises::Chosen(raw) => {
            let level = match raw.level {
                Field::Absent => Some(None),
                Field::Broken => None,
                Field::Present(level) => Some(Some(level)),
            };
            let count = desk.need_bounded(*node, "count", &raw.count, &limits::EXERCISES);
            (count, level, desk.optional(&raw.seed))
        }
    };
    Some(Some(ExerciseRule {
        count: NonZeroU32::new(count?)?,
        level: level?,
        seed: match seed? {
            Some(seed) => seed,
            None => of_heading(heading?),
        },
    }))
}

/// Title and date, as a teacher may write them under `seed` to get the same sums later.
fn of_heading(heading: &Heading) -> String {
    match heading.date {
        Some(date) => format!("{}, {date}", heading.title),
        None => heading.title.clone(),
    }
}
