//! Reading lessons for every command: all of them, with all their problems.

use super::failure::Failure;
use crate::lesson::{self, Lesson, Style};
use crate::plan::{self, Plan};
use std::path::{Path, PathBuf};

/// Reads every lesson; the problems of all of them come together.
pub(super) fn read_all(paths: &[PathBuf]) -> Result<Vec<(&Path, Lesson)>, Failure> {
    let mut lessons = Vec::with_capacity(paths.len());
    let mut wrong = String::new();
    for path in paths {
        match read(path) {
            Ok(lesson) => lessons.push((path.as_path(), lesson)),
            Err(Failure::Wrong(text)) => wrong.push_str(&text),
            Err(failure) => return Err(failure),
        }
    }
    if wrong.is_empty() { Ok(lessons) } else { Err(Failure::Wrong(wrong)) }
}

/// Reads one lesson.
pub(super) fn read(path: &Path) -> Result<Lesson, Failure> {
    lesson::read(path).map_err(|faults| {
        if faults.is_unread() {
            let text = faults.render(Style::Plain);
            let first = text.lines().next().unwrap_or_default();
            return Failure::Disk(first.trim_start_matches("error: ").to_string());
        }
        Failure::Wrong(faults.render(Style::Coloured))
    })
}

/// Works a lesson out.
pub(super) fn work_out(path: &Path, lesson: Lesson) -> Result<Plan, Failure> {
    plan::plan(lesson)
        .map_err(|reason| Failure::Wrong(format!("error: {}: {reason}\n", path.display())))
}
