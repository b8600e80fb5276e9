//! What went wrong, and the exit code for it.

use crate::handout::TemplateFault;
use anstream::eprintln;
use std::io;
use std::path::Path;
use std::process::ExitCode;

/// The end of a run that did not succeed.
#[derive(Debug)]
pub(super) enum Failure {
    /// A lesson, data file or template is wrong; the text says how.
    Wrong(String),
    /// A file could not be read or written.
    Disk(String),
}

impl Failure {
    /// A file that could not be read.
    pub(super) fn read(path: &Path, error: io::Error) -> Self {
        Self::Disk(format!("could not read {}: {error}", path.display()))
    }

    /// A file that could not be written.
    pub(super) fn write(path: &Path, error: io::Error) -> Self {
        Self::Disk(format!("could not write {}: {error}", path.display()))
    }

    /// A file that is larger than any honest one.
    pub(super) fn too_large(path: &Path, limit: u64) -> Self {
        Self::Disk(format!("{} is larger than {} KiB", path.display(), limit / 1024))
    }

    pub(super) fn code(&self) -> ExitCode {
        match self {
            Self::Wrong(_) => ExitCode::from(1),
            Self::Disk(_) => ExitCode::from(3),
        }
    }

    pub(super) fn print(&self) {
        match self {
            Self::Wrong(text) => eprintln!("{}", text.trim_end()),
            Self::Disk(text) => eprintln!("error: {text}"),
        }
    }
}

impl From<TemplateFault> for Failure {
    fn from(fault: TemplateFault) -> Self {
        Self::Wrong(format!("error: {fault}"))
    }
}
