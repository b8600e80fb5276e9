//! What went wrong, and the exit code for it.

use super::say::eprintln;
use crate::handout::TemplateFault;
use crate::lesson::shown;
use std::fmt::Display;
use std::io;
use std::path::Path;
use std::process::ExitCode;

/// The end of a run that did not succeed.
#[derive(Debug)]
pub(super) enum Failure {
    /// A lesson, data file or template is wrong; the text says how.
    Wrong(String),
    /// A file could not be read or written, whatever else is wrong.
    Disk(String),
    /// The command was called wrongly in a way that its arguments alone do not show.
    Use(String),
}

impl Failure {
    /// A file that could not be read.
    pub(super) fn read(path: &Path, error: io::Error) -> Self {
        Self::disk(format!("could not read {}: {}", shown(path), why(&error)))
    }

    /// A file that could not be written.
    pub(super) fn write(path: &Path, error: io::Error) -> Self {
        Self::disk(format!("could not write {}: {}", shown(path), why(&error)))
    }

    /// A file where there should be a folder that an option names.
    pub(super) fn no_folder(file: &Path, option: &str) -> Self {
        let file = shown(file);
        Self::disk(format!("{file} is a file, not a folder; name another folder with {option}"))
    }

    /// A folder where a file should go.
    pub(super) fn no_file(folder: &Path) -> Self {
        let folder = shown(folder);
        Self::disk(format!("could not write {folder}: it is a folder; give it another name"))
    }

    /// A file that is larger than any honest one.
    pub(super) fn too_large(path: &Path, limit: u64) -> Self {
        Self::disk(format!("{} is larger than {} KiB", shown(path), limit / 1024))
    }

    /// A sentence about the disk.
    pub(super) fn disk(what: impl Display) -> Self {
        Self::Disk(format!("error: {what}\n\n"))
    }

    /// Both of them.
    pub(super) fn and(self, other: Self) -> Self {
        match (self, other) {
            (Self::Wrong(one), Self::Wrong(other)) => Self::Wrong(one + &other),
            (Self::Use(one), Self::Use(other)) => Self::Use(one + &other),
            (one, other) => Self::Disk(one.into_text() + &other.into_text()),
        }
    }

    pub(super) fn code(&self) -> ExitCode {
        match self {
            Self::Wrong(_) => ExitCode::from(1),
            Self::Use(_) => ExitCode::from(2),
            Self::Disk(_) => ExitCode::from(3),
        }
    }

    /// What is told, without the line ends behind it.
    pub(super) fn text(&self) -> &str {
        let (Self::Wrong(text) | Self::Disk(text) | Self::Use(text)) = self;
        text.trim_end()
    }

    pub(super) fn print(&self) {
        eprintln!("{}", self.text());
    }

    fn into_text(self) -> String {
        let (Self::Wrong(text) | Self::Disk(text) | Self::Use(text)) = self;
        text
    }
}

/// What the system said, in the words of people where there are some.
pub(super) fn why(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::PermissionDenied => {
            "you may not do that there; name another folder, or ask who owns this one".to_owned()
        }
        io::ErrorKind::ReadOnlyFilesystem => {
            "nothing can be written there; name another folder".to_owned()
        }
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
            "the disk is full; what was there before is as it was".to_owned()
        }
        io::ErrorKind::FileTooLarge => {
            "files may not get so large there; what was there before is as it was".to_owned()
        }
        io::ErrorKind::InvalidFilename => "this name is too long for the disk".to_owned(),
        _ => error.to_string(),
    }
}

impl From<TemplateFault> for Failure {
    fn from(fault: TemplateFault) -> Self {
        Self::Wrong(fault.render())
    }
}
