//! A text as a table of weighings of a demo lesson, and as YAML of the same: it is read, and
//! learned from.
#![no_main]

use libfuzzer_sys::fuzz_target;
use puddlebook::lesson::{Style, Unread, read_weighings_with};
use puddlebook::plan::learn::learn;
use std::path::{Path, PathBuf};

use puddlebook_fuzz::SMALL;

fuzz_target!(|bytes: &[u8]| {
    // The first letter says which of both it is.
    let Some((kind, text)) = bytes.split_first() else { return };
    let name = if *kind == b'y' { "cups.yaml" } else { "cups.csv" };
    let load = |path: &Path| match path.to_str() {
        Some("cups.csv" | "cups.yaml") => Ok(text.to_vec()),
        Some("small.yaml") => Ok(SMALL.as_bytes().to_vec()),
        _ => Err(Unread::NotFound),
    };
    match read_weighings_with(&[PathBuf::from(name)], &load) {
        Ok(weighings) => {
            if let Err(doubts) = learn(&weighings.classes) {
                let _ = doubts.len();
            }
        }
        Err(faults) => assert!(!faults.render(Style::Coloured).is_empty()),
    }
});
