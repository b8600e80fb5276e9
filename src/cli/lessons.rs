//! Reading lessons for every command: all of them, with all their problems.

use super::failure::Failure;
use crate::lesson::{self, Lesson, Style, shown};
use crate::plan::{self, Plan};
use std::path::{Path, PathBuf};

/// Reads every lesson; the problems of all of them come together.
pub(super) fn read_all(paths: &[PathBuf]) -> Result<Vec<(&Path, Lesson)>, Failure> {
    let mut lessons = Vec::with_capacity(paths.len());
    let mut failed: Option<Failure> = None;
    for path in paths {
        match (read(path), failed.take()) {
            (Ok(lesson), before) => {
                lessons.push((path.as_path(), lesson));
                failed = before;
            }
            (Err(failure), None) => failed = Some(failure),
            (Err(failure), Some(before)) => failed = Some(before.and(failure)),
        }
    }
    failed.map_or(Ok(lessons), Err)
}

/// Reads one lesson.
pub(super) fn read(path: &Path) -> Result<Lesson, Failure> {
    lesson::read(path).map_err(|faults| {
        let said = faults.render(Style::Coloured);
        if faults.is_unread() { Failure::Disk(said) } else { Failure::Wrong(said) }
    })
}

/// Works every lesson out; what stands in the way of any of them comes together.
pub(super) fn work_out_all(lessons: Vec<(&Path, Lesson)>) -> Result<Vec<(&Path, Plan)>, Failure> {
    let mut plans = Vec::with_capacity(lessons.len());
    let mut failed: Option<Failure> = None;
    for (path, lesson) in lessons {
        match (work_out(path, lesson), failed.take()) {
            (Ok(plan), before) => {
                plans.push((path, plan));
                failed = before;
            }
            (Err(failure), None) => failed = Some(failure),
            (Err(failure), Some(before)) => failed = Some(before.and(failure)),
        }
    }
    failed.map_or(Ok(plans), Err)
}

/// Works a lesson out.
pub(super) fn work_out(path: &Path, lesson: Lesson) -> Result<Plan, Failure> {
    plan::plan(lesson)
        .map_err(|reason| Failure::Wrong(format!("error: {}: {reason}\n", shown(path))))
}
