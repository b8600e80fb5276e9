//! The only place that touches the disk, besides the reading of lessons.

use super::failure::Failure;
use super::kept::{self, Kept};
use super::say::eprintln;
use crate::lesson::shown;
use crate::unfinished;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Largest template that is read, in bytes.
const MAX_TEMPLATE_BYTES: u64 = 1 << 20;

/// Most templates in one folder.
const MAX_TEMPLATES: usize = 200;

/// Writes the outputs of a command. What somebody changed in those of an earlier run is kept
/// beside them, and said.
pub(super) fn write_outputs(files: &[(PathBuf, Vec<u8>)]) -> Result<(), Failure> {
    let around = kept::around(files);
    write_all(&around.before)?;
    for Kept { changed, copy } in &around.kept {
        eprintln!(
            "note: {} was changed since it was made; kept as {}",
            shown(changed),
            shown(copy)
        );
    }
    write_all(files)?;
    write_all(&around.after)
}

/// Writes all files, each under a hidden name beside its place first, so that no
/// reader ever sees half of one.
pub(super) fn write_all(files: &[(PathBuf, Vec<u8>)]) -> Result<(), Failure> {
    let mut ready = Vec::with_capacity(files.len());
    let mut cleared: Option<&Path> = None;
    for (path, bytes) in files {
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
        let folder = folder.unwrap_or(Path::new("."));
        // Nobody knows the hidden list by its name.
        let named = if kept::is_list(path) { folder } else { path };
        let failed = |error| Failure::write(named, error);
        fs::create_dir_all(folder).map_err(|error| match file_above(folder) {
            Some(file) => Failure::no_folder(file, "--out"),
            None => failed(error),
        })?;
        if path.is_dir() {
            return Err(Failure::no_file(path));
        }
        if cleared != Some(folder) {
            unfinished::clear(folder);
            cleared = Some(folder);
        }
        ready.push((path, named, unfinished::written(folder, bytes).map_err(failed)?));
    }
    for (path, named, file) in ready {
        file.persist(path).map_err(|error| Failure::write(named, error.error))?;
    }
    Ok(())
}

/// What happens to a file that is there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Existing {
    /// It stays, and nothing is written.
    Stays,
    /// It is replaced as a whole.
    Replaced,
}

/// Writes one file by way of a temporary one beside its place. A file that must stay is found
/// by the writing itself, also where it appeared only now.
///
/// # Errors
/// What the system says; [`std::io::ErrorKind::AlreadyExists`] for a file that stays.
pub(super) fn write_one(path: &Path, bytes: &[u8], existing: Existing) -> std::io::Result<()> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new("."));
    fs::create_dir_all(folder).map_err(|error| match file_above(folder) {
        Some(file) => {
            let why = format!("{} is a file, not a folder", shown(file));
            std::io::Error::new(std::io::ErrorKind::NotADirectory, why)
        }
        None => error,
    })?;
    if path.is_dir() {
        return Err(std::io::Error::new(std::io::ErrorKind::IsADirectory, "it is a folder"));
    }
    let file = unfinished::written(folder, bytes)?;
    let written = match existing {
        Existing::Stays => file.persist_noclobber(path),
        Existing::Replaced => file.persist(path),
    };
    written.map(|_| ()).map_err(|error| error.error)
}

/// The file on the way to a folder that cannot be made because of it.
fn file_above(folder: &Path) -> Option<&Path> {
    folder.ancestors().find(|above| fs::metadata(above).is_ok_and(|about| !about.is_dir()))
}

/// The templates in a folder, by file name; subfolders stay closed.
pub(super) fn read_templates(folder: &Path) -> Result<BTreeMap<String, String>, Failure> {
    let failed = |error| Failure::read(folder, error);
    if folder.is_file() {
        return Err(Failure::no_folder(folder, "--templates"));
    }
    let home = fs::canonicalize(folder).map_err(failed)?;
    let mut templates = BTreeMap::new();
    for entry in fs::read_dir(folder).map_err(failed)? {
        let path = entry.map_err(failed)?.path();
        let known = path.extension().is_some_and(|end| end == "md" || end == "yaml");
        let Some(name) = path.file_name().and_then(|name| name.to_str()).filter(|_| known) else {
            continue;
        };
        let failed = |error| Failure::read(&path, error);
        let about = fs::metadata(&path).map_err(failed)?;
        if about.is_dir() {
            continue;
        }
        // A link could show whoever prints it any file of this computer.
        if !fs::canonicalize(&path).map_err(failed)?.starts_with(&home) {
            let path = shown(&path);
            return Err(Failure::disk(format!("{path} is a link that leads out of its folder")));
        }
        if !about.is_file() {
            return Err(Failure::disk(format!("{} is no file", shown(&path))));
        }
        if about.len() > MAX_TEMPLATE_BYTES {
            return Err(Failure::too_large(&path, MAX_TEMPLATE_BYTES));
        }
        if templates.len() >= MAX_TEMPLATES {
            let folder = shown(folder);
            let what = format!("{folder} has more than {MAX_TEMPLATES} templates");
            return Err(Failure::disk(what));
        }
        let text = fs::read_to_string(&path).map_err(failed)?;
        let text = text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text);
        templates.insert(name.to_string(), text);
    }
    Ok(templates)
}
