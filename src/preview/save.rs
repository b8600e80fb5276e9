//! The lesson file is replaced as a whole or not at all.

use crate::lesson::from_disk;
use crate::unfinished;
use std::fmt;
use std::fs;
use std::io;
use std::path::Path;

/// Why a change was not written.
#[derive(Debug)]
pub(super) enum Unsaved {
    /// The file is not what the page shows.
    Changed,
    /// It may only be read.
    ReadOnly,
    /// What the system said.
    Disk(io::Error),
}

/// Puts `after` in the place of `before`, with the rights that the file has. A link stays a link.
pub(super) fn replace(path: &Path, before: &[u8], after: &[u8]) -> Result<(), Unsaved> {
    let path = fs::canonicalize(path)?;
    let rights = fs::metadata(&path)?.permissions();
    if rights.readonly() {
        return Err(Unsaved::ReadOnly);
    }
    let folder = path.parent().unwrap_or(Path::new("."));
    unfinished::clear(folder);
    let file = unfinished::written(folder, after)?;
    file.as_file().set_permissions(rights)?;
    // As late as can be: somebody may be saving in an editor.
    if from_disk(&path).ok().as_deref() != Some(before) {
        return Err(Unsaved::Changed);
    }
    file.persist(&path).map_err(|error| error.error)?;
    Ok(())
}

impl From<io::Error> for Unsaved {
    fn from(error: io::Error) -> Self {
        Self::Disk(error)
    }
}

impl fmt::Display for Unsaved {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Changed => formatter.write_str(
                "The file was changed since this page was drawn, so nothing was written. Look at \
                 the pages as they are now, then try again.",
            ),
            Self::ReadOnly => {
                formatter.write_str("The file may only be read, so nothing was written.")
            }
            Self::Disk(error) => write!(formatter, "The file could not be written: {error}."),
        }
    }
}
