use std::fs;
use std::io::{self, Read};
use std::ops::Range;
use std::path::Path;

use super::limits;

/// Which of the files of a run; by default the first.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct FileId(usize);

/// A stretch of one file, in bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    pub file: FileId,
    pub span: Range<usize>,
}

/// A file that has been read.
#[derive(Debug, Clone)]
pub struct SourceFile {
    /// As people know it: the path they gave, or what is built in.
    pub name: String,
    /// Without byte-order mark.
    pub text: String,
}

/// The files of a run, in the order in which they were read: the lesson first.
#[derive(Debug, Clone, Default)]
pub struct Sources(Vec<SourceFile>);

impl Sources {
    /// Keeps a file.
    pub(super) fn add(&mut self, name: String, text: String) -> FileId {
        self.0.push(SourceFile { name, text });
        FileId(self.0.len() - 1)
    }

    /// The file of a place.
    pub fn get(&self, file: FileId) -> Option<&SourceFile> {
        self.0.get(file.0)
    }

    /// The text of a file, nothing for one that could not be read.
    pub(super) fn text(&self, file: FileId) -> &str {
        self.get(file).map_or("", |file| file.text.as_str())
    }

    /// Line and column, both from 1, the column in characters.
    pub fn line_and_column(&self, place: &Place) -> (usize, usize) {
        let before = self.text(place.file).get(..place.span.start).unwrap_or_default();
        let line_start = before.rfind('\n').map_or(0, |at| at + 1);
        let line = before.matches('\n').count() + 1;
        (line, before.get(line_start..).unwrap_or_default().chars().count() + 1)
    }
}

/// Why a file could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unread {
    NotFound,
    /// A folder, a device, a pipe.
    NotAFile,
    TooLarge,
    /// Not UTF-8, from this line (counted from 1) on.
    NotText {
        line: usize,
    },
    /// What the system said.
    Refused(String),
}

/// Reads a regular file of at most [`limits::FILE_BYTES`] from the disk.
pub fn from_disk(path: &Path) -> Result<Vec<u8>, Unread> {
    let about = fs::metadata(path).map_err(|error| refused(&error))?;
    if !about.is_file() {
        return Err(Unread::NotAFile);
    }
    if about.len() > limits::FILE_BYTES {
        return Err(Unread::TooLarge);
    }
    // A file that grows while it is read ends at the limit all the same.
    let mut bytes = Vec::new();
    let file = fs::File::open(path).map_err(|error| refused(&error))?;
    let read = file.take(limits::FILE_BYTES + 1).read_to_end(&mut bytes);
    read.map(|_| bytes).map_err(|error| refused(&error))
}

fn refused(error: &io::Error) -> Unread {
    match error.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => Unread::NotFound,
        _ => Unread::Refused(error.to_string()),
    }
}

/// Bytes to text, the byte-order mark taken off.
pub(super) fn to_text(bytes: Vec<u8>) -> Result<String, Unread> {
    if bytes.len() as u64 > limits::FILE_BYTES {
        return Err(Unread::TooLarge);
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let good = error.utf8_error().valid_up_to();
        let before = error.as_bytes().get(..good).unwrap_or_default();
        Unread::NotText { line: before.iter().filter(|byte| **byte == b'\n').count() + 1 }
    })?;
    Ok(match text.strip_prefix('\u{feff}') {
        Some(rest) => rest.to_owned(),
        None => text,
    })
}
