use crate::lesson::{Faults, Lesson, Unread, from_disk, read_with};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Everything that a version is made of, as it was read. Where nothing of it changed, neither
/// did the handouts.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Inputs {
    /// The lesson first, then the data files that it names.
    files: Vec<(PathBuf, Result<Vec<u8>, Unread>)>,
    /// By file name, or what is wrong with them.
    pub(super) templates: Result<BTreeMap<String, String>, String>,
}

impl Inputs {
    /// Reads a lesson from the disk, keeping the files that it takes.
    pub(super) fn read(
        lesson: &Path,
        templates: Result<BTreeMap<String, String>, String>,
    ) -> (Self, Result<Lesson, Faults>) {
        let files = RefCell::new(Vec::new());
        let read = read_with(lesson, &|path| {
            let bytes = from_disk(path);
            files.borrow_mut().push((path.to_owned(), bytes.clone()));
            bytes
        });
        (Self { files: files.into_inner(), templates }, read)
    }

    /// Reads the lesson again from what is kept, with another text in its place. A file that is
    /// not among them counts as missing.
    pub(super) fn read_with(&self, text: &str) -> Result<Lesson, Faults> {
        let lesson = self.files.first().map_or(Path::new(""), |(path, _)| path);
        read_with(lesson, &|path| {
            if path == lesson {
                return Ok(text.as_bytes().to_vec());
            }
            let kept = self.files.iter().find(|(kept, _)| kept == path);
            kept.map_or(Err(Unread::NotFound), |(_, bytes)| bytes.clone())
        })
    }

    /// The bytes of the lesson file, if it could be read.
    pub(super) fn lesson(&self) -> Option<&[u8]> {
        let (_, bytes) = self.files.first()?;
        bytes.as_deref().ok()
    }

    /// The text of the lesson file, with its byte-order mark; empty when it has none.
    pub(super) fn text(&self) -> &str {
        self.lesson().and_then(|bytes| std::str::from_utf8(bytes).ok()).unwrap_or_default()
    }

    /// The paths of the files.
    pub(super) fn paths(&self) -> impl Iterator<Item = &Path> {
        self.files.iter().map(|(path, _)| path.as_path())
    }
}
