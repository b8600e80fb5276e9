//! What a run could not look into: nothing is called unknown or missing that may well
//! stand there.

use super::raw;
use std::collections::BTreeSet;

/// What may say more than was read.
#[derive(Debug)]
pub(super) struct Unseen {
    pub(super) files: DataFiles,
    /// Names in sections that go by a name nobody knows.
    names: BTreeSet<String>,
}

/// Whether all data files could be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum DataFiles {
    Read,
    /// One at least is missing or cannot be read.
    Lost,
}

impl Unseen {
    pub(super) fn nothing() -> Self {
        Self { files: DataFiles::Read, names: BTreeSet::new() }
    }

    /// Keeps a name that stands in an unknown section.
    pub(super) fn add(&mut self, name: String) {
        self.names.insert(name);
    }

    /// Whether any entry of a section may stand there.
    pub(super) fn hides(&self, section: &str) -> bool {
        self.files == DataFiles::Lost && raw::DATA_KEYS.contains(&section)
    }

    /// Whether a part of this name may stand there.
    pub(super) fn holds(&self, name: &str) -> bool {
        self.names.contains(name)
    }
}
