//! Weighings: files of cups, right and wrong.

mod right;
mod wrong;

use crate::editing::complaints;
use puddlebook::lesson::{Faults, FileKind, Unread, Weighings, read_weighings_with};
use std::path::{Path, PathBuf};

/// A lesson with named students, canvases of one layer and of two, and one that each student
/// paints twice.
pub const LESSON: &str = include_str!("../wrong_weighings/lessons/small.yaml");

/// Reads weighings that are held in memory, beside the lesson `lessons/small.yaml`; only those
/// called `class…` are given to be read.
pub fn read_files(files: &[(&str, &[u8])]) -> Result<Weighings, Faults> {
    let given = files.iter().map(|(name, _)| PathBuf::from(name));
    let given: Vec<PathBuf> =
        given.filter(|name| name.to_string_lossy().contains("class")).collect();
    let load = |path: &Path| {
        if path == Path::new("lessons/small.yaml") {
            return Ok(LESSON.as_bytes().to_vec());
        }
        let found = files.iter().find(|(name, _)| Path::new(name) == path);
        found.map(|(_, bytes)| bytes.to_vec()).ok_or(Unread::NotFound)
    };
    let weighings = read_weighings_with(&given, &load);
    let texts = files.iter().filter(|(name, _)| name.contains("class") && name.ends_with(".yaml"));
    for (name, bytes) in texts.filter(|_| weighings.is_ok()) {
        let wrong = complaints(FileKind::Weighings, &String::from_utf8_lossy(bytes));
        assert_eq!(wrong.unwrap_or_default(), Vec::<String>::new(), "{name}");
    }
    weighings
}

/// Reads one text as a file of this name.
pub fn read_text(name: &str, text: &str) -> Result<Weighings, Faults> {
    read_files(&[(name, text.as_bytes())])
}
