//! Lessons for tests: in memory, one small right one, and changes to it.

use crate::editing::complaints;
use puddlebook::lesson::{Faults, FileKind, Lesson, Unread, read_with};
use std::path::{Path, PathBuf};

/// A right lesson, as short as one can be.
pub const SMALL: &str = r##"title: A small class
class: {students: 2}
canvases:
  square:
    shape: rectangle
    width: 10 in
    height: 10 in
    depth: 1/2 in
    technique: straight pour
    consistency: medium
    palette: plain
palettes:
  plain:
    colour: {blue: 40 %, white: the rest}
colours:
  blue: {swatch: "#1F5A7A"}
  white: {swatch: "#F4F2EC"}
"##;

/// Reads files that are held in memory; the first is the lesson.
pub fn read_files(files: &[(&str, &[u8])]) -> Result<Lesson, Faults> {
    let load = |path: &Path| {
        let found = files.iter().find(|(name, _)| Path::new(name) == path);
        found.map(|(_, bytes)| bytes.to_vec()).ok_or(Unread::NotFound)
    };
    let lesson = read_with(Path::new(files[0].0), &load);
    if lesson.is_ok() {
        // What the program reads is right in an editor, too.
        for (at, (name, bytes)) in files.iter().enumerate() {
            let kind = if at == 0 { FileKind::Lesson } else { FileKind::Data };
            let wrong = complaints(kind, &String::from_utf8_lossy(bytes));
            assert_eq!(wrong.unwrap_or_default(), Vec::<String>::new(), "{name}");
        }
    }
    lesson
}

/// Reads one text.
pub fn read_text(text: &str) -> Result<Lesson, Faults> {
    read_files(&[("lesson.yaml", text.as_bytes())])
}

/// [`SMALL`] with one piece of text changed.
pub fn small_with(old: &str, new: &str) -> Result<Lesson, Faults> {
    assert!(SMALL.contains(old), "nothing to change");
    read_text(&SMALL.replacen(old, new, 1))
}

/// A path from the root of the project.
pub fn in_project(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// The files of a folder with this ending, in the order of their names.
pub fn files_in(folder: &str, ending: &str) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(in_project(folder)).unwrap();
    let mut files: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|found| found == ending));
    files.sort();
    files
}
