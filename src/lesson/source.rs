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
    /// UTF-16, as some editors call "Unicode".
    Utf16,
    /// A character 0, in this line (counted from 1): a file that was damaged, or no text.
    Nul {
        line: usize,
    },
    /// What the system said.
    Refused(String),
}

/// Most bytes of a file of this name: tables may be larger than lessons.
fn most_bytes(path: &Path) -> u64 {
    let is_table = path.extension().is_some_and(|end| end.eq_ignore_ascii_case("csv"));
    if is_table { limits::TABLE_BYTES } else { limits::FILE_BYTES }
}

/// Reads a regular file from the disk: a lesson of at most [`limits::FILE_BYTES`], or a table.
pub fn from_disk(path: &Path) -> Result<Vec<u8>, Unread> {
    let most = most_bytes(path);
    let about = fs::metadata(path).map_err(|error| refused(&error))?;
    if !about.is_file() {
        return Err(Unread::NotAFile);
    }
    if about.len() > most {
        return Err(Unread::TooLarge);
    }
    // A file that grows while it is read ends at the limit all the same.
    let mut bytes = Vec::new();
    let file = fs::File::open(path).map_err(|error| refused(&error))?;
    let read = file.take(most + 1).read_to_end(&mut bytes);
    read.map(|_| bytes).map_err(|error| refused(&error))
}

fn refused(error: &io::Error) -> Unread {
    match error.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => Unread::NotFound,
        _ => Unread::Refused(error.to_string()),
    }
}

/// Bytes to text, the byte-order mark taken off. A line end of old Macs, a carriage return
/// alone, becomes a line end of today; no byte moves.
pub(super) fn to_text(path: &Path, bytes: Vec<u8>) -> Result<String, Unread> {
    if bytes.len() as u64 > most_bytes(path) {
        return Err(Unread::TooLarge);
    }
    let line = |at: usize| {
        let before = bytes.get(..at).unwrap_or_default();
        before.iter().filter(|byte| **byte == b'\n').count() + 1
    };
    if is_utf16(&bytes) {
        return Err(Unread::Utf16);
    }
    if let Some(nul) = bytes.iter().position(|byte| *byte == 0) {
        return Err(Unread::Nul { line: line(nul) });
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let good = error.utf8_error().valid_up_to();
        let before = error.as_bytes().get(..good).unwrap_or_default();
        Unread::NotText { line: before.iter().filter(|byte| **byte == b'\n').count() + 1 }
    })?;
    Ok(today(text.strip_prefix('\u{feff}').unwrap_or(&text)))
}

/// Whether bytes begin as UTF-16 does: with its mark, or with every other byte 0.
fn is_utf16(bytes: &[u8]) -> bool {
    match bytes {
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => true,
        [a, b, c, d, ..] => matches!(
            [*a == 0, *b == 0, *c == 0, *d == 0],
            [true, false, true, false] | [false, true, false, true]
        ),
        _ => false,
    }
}

/// The text with every carriage return that stands alone as a line end of today.
fn today(text: &str) -> String {
    let mut letters = text.chars().peekable();
    let mut today = String::with_capacity(text.len());
    while let Some(letter) = letters.next() {
        let alone = letter == '\r' && letters.peek() != Some(&'\n');
        today.push(if alone { '\n' } else { letter });
    }
    today
}

/// The name of a file as people may see it: characters that steer a terminal or turn the
/// direction of writing stand as escapes.
pub(crate) fn shown(path: &Path) -> String {
    let mut shown = String::new();
    for letter in path.display().to_string().chars() {
        let steers = letter.is_control()
            || matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
        match steers {
            true => shown.extend(letter.escape_default()),
            false => shown.push(letter),
        }
    }
    shown
}
