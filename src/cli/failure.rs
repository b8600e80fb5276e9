//! What went wrong, and the exit code for it.

use crate::handout::TemplateFault;
use anstream::eprintln;
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
        Self::disk(format!("could not read {}: {error}", path.display()))
    }

    /// A file that could not be written.
    pub(super) fn write(path: &Path, error: io::Error) -> Self {
        Self::disk(format!("could not write {}: {error}", path.display()))
    }

    /// A file where there should be a folder that an option names.
    pub(super) fn no_folder(file: &Path, option: &str) -> Self {
        let file = file.display();
        Self::disk(format!("{file} is a file, not a folder; name another folder with {option}"))
    }

    /// A folder where a file should go.
    pub(super) fn no_file(folder: &Path) -> Self {
        let folder = folder.display();
        Self::disk(format!("could not write {folder}: it is a folder; give it another name"))
    }

    /// A file that is larger than any honest one.
    pub(super) fn too_large(path: &Path, limit: u64) -> Self {
        Self::disk(format!("{} is larger than {} KiB", path.display(), limit / 1024))
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

impl From<TemplateFault> for Failure {
    fn from(fault: TemplateFault) -> Self {
        Self::Wrong(format!("error: {fault}"))
    }
}
