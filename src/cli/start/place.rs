//! Where the lesson file goes. A file that is there stays until somebody says otherwise.

use super::ask::{Ask, Choice, Complaint, Next, Question, Stop};
use crate::cli::disk::{Existing, write_one};
use crate::cli::failure::{Failure, why};
use crate::lesson::shown;
use std::ffi::OsString;
use std::io;
use std::path::{Path, PathBuf};

/// A place for the file, and what happens to another that is there.
#[derive(Debug, Clone)]
pub(super) struct Place {
    pub(super) path: PathBuf,
    pub(super) existing: Existing,
}

/// Asks where the file goes.
pub(super) fn asked(ask: &mut dyn Ask, offered: &str, existing: Existing) -> Result<Place, Stop> {
    let question = Question {
        option: "lesson",
        words: "Into which file shall it go?".to_owned(),
        help: "in this folder, or with the path to another".to_owned(),
        offered: offered.to_owned(),
        ..Question::default()
    };
    let path = ask.text(&question)?;
    let path = if path.trim().is_empty() { offered } else { path.trim() };
    free(ask, PathBuf::from(path), existing)
}

/// A place where nothing is lost: this one if it is free, else what is answered.
pub(super) fn free(ask: &mut dyn Ask, path: PathBuf, existing: Existing) -> Result<Place, Stop> {
    if path.is_dir() {
        let complaint = folder(&path);
        let place = Place { path, existing };
        return another(ask, &place, &complaint);
    }
    if existing == Existing::Replaced || path.symlink_metadata().is_err() {
        return Ok(Place { path, existing });
    }
    let other = unused(&path);
    let question = Question {
        option: "replace",
        words: format!("{} is there already. What now?", shown(&path)),
        help: "arrow keys, then Enter".to_owned(),
        ..Question::default()
    };
    let choice = |name: String| Choice { name, meaning: String::new() };
    let choices = [
        choice(format!("keep it, and write {}", shown(&other))),
        choice("replace it: what is in it is lost".to_owned()),
        choice("leave, and write nothing".to_owned()),
    ];
    match ask.choose(&question, &choices, 0)? {
        0 => Ok(Place { path: other, existing }),
        1 => Ok(Place { path, existing: Existing::Replaced }),
        _ => Err(Stop::Left),
    }
}

/// Another place, since this one would not do: the answers are not lost for it.
pub(super) fn another(
    ask: &mut dyn Ask,
    place: &Place,
    complaint: &Complaint,
) -> Result<Place, Stop> {
    let written = shown(&place.path);
    let question = Question { option: "lesson", ..Question::default() };
    match ask.wrong(&question, &written, complaint) {
        Next::AskAgain => {
            let name = unused(Path::new(place.path.file_name().unwrap_or_default()));
            asked(ask, &name.to_string_lossy(), Existing::Stays)
        }
        Next::GoOn => Err(Stop::Left),
    }
}

/// Writes the file.
pub(super) fn write(place: &Place, text: &str) -> Result<(), Complaint> {
    write_one(&place.path, text.as_bytes(), place.existing).map_err(|error| {
        let name = shown(&place.path);
        match error.kind() {
            io::ErrorKind::AlreadyExists => Complaint::new(
                format!("{name} is there already, and stays as it is"),
                "give another name",
            ),
            io::ErrorKind::IsADirectory => folder(&place.path),
            _ => Complaint::new(
                format!("could not write {name}: {}", why(&error)),
                "give another place",
            ),
        }
    })
}

/// Writes the file, or says which option would.
pub(super) fn write_or_fail(path: &Path, text: &str, existing: Existing) -> Result<(), Failure> {
    write_one(path, text.as_bytes(), existing).map_err(|error| match error.kind() {
        io::ErrorKind::AlreadyExists => in_the_way(path),
        io::ErrorKind::IsADirectory => Failure::no_file(path),
        _ => Failure::write(path, error),
    })
}

/// Why nothing can be written to a path, as far as that is known beforehand.
pub(super) fn refused(path: &Path, existing: Existing) -> Option<Failure> {
    if path.is_dir() {
        return Some(Failure::no_file(path));
    }
    let there = path.symlink_metadata().is_ok() && existing == Existing::Stays;
    there.then(|| in_the_way(path))
}

fn in_the_way(path: &Path) -> Failure {
    let path = shown(path);
    Failure::disk(format!(
        "{path} is there already, and stays as it is; give another name, or --replace to write over it"
    ))
}

fn folder(path: &Path) -> Complaint {
    Complaint::new(format!("{} is a folder", shown(path)), "give the name of a file")
}

/// The first of `name-2`, `name-3` … that is not there.
fn unused(path: &Path) -> PathBuf {
    let numbered = |nth: usize| {
        let mut name = OsString::from(path.file_stem().unwrap_or_default());
        name.push(format!("-{nth}"));
        if let Some(end) = path.extension() {
            name.push(".");
            name.push(end);
        }
        path.with_file_name(name)
    };
    let free = |path: &PathBuf| path.symlink_metadata().is_err();
    (2..10_000).map(numbered).find(free).unwrap_or_else(|| numbered(10_000))
}
