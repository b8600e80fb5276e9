//! Safety notes.

use crate::lesson::Caution;
use serde::Serialize;

/// A safety note as text.
#[derive(Debug, Clone, Serialize)]
pub struct CautionText {
    /// Its key in the data file.
    pub name: String,
    /// Word of the drawn sign.
    pub sign: &'static str,
    pub heading: String,
    pub reason: String,
    pub source: String,
}

pub(super) fn caution(caution: &Caution) -> CautionText {
    CautionText {
        name: caution.name.clone(),
        sign: caution.sign.word(),
        heading: caution.heading.clone(),
        reason: caution.reason.clone(),
        source: caution.source.clone(),
    }
}
