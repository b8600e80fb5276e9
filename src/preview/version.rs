use super::fields::Fields;
use super::inputs::Inputs;
use super::order::Order;
use super::remark::Remark;
use crate::handout::Sheet;
use crate::page::Page;
use std::fmt::{self, Write};
use std::sync::Arc;

/// All handouts of a lesson, as they were made at one time.
#[derive(Debug)]
pub(super) struct Version {
    pub(super) inputs: Arc<Inputs>,
    /// The title of the lesson.
    pub(super) title: String,
    /// BCP 47.
    pub(super) language: &'static str,
    pub(super) handouts: Vec<Handout>,
    pub(super) order: Order,
    pub(super) fields: Fields,
    pub(super) remarks: Vec<Remark>,
}

/// One handout.
#[derive(Debug)]
pub(super) struct Handout {
    pub(super) sheet: Sheet,
    /// What it is called, in the language of the lesson.
    pub(super) name: String,
    pub(super) pdf: Arc<Vec<u8>>,
    /// Width and height of every page in points.
    pub(super) size: (f32, f32),
    pub(super) looks: Vec<Look>,
}

/// What tells whether a page looks as it did: a number made of all its marks, and of nothing
/// that leaves no mark (tags, links).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) struct Look(u64);

impl Look {
    pub(super) fn of(page: &Page) -> Self {
        let mut digest = Digest(0xCBF2_9CE4_8422_2325);
        for mark in &page.marks {
            // Writing to a digest does not fail.
            let _ = write!(digest, "{:?}", mark.shape);
        }
        Self(digest.0)
    }

    /// As [`fmt::Display`] writes it.
    pub(super) fn read(text: &str) -> Option<Self> {
        let plain = text.len() == 16 && text.bytes().all(|byte| byte.is_ascii_hexdigit());
        plain.then(|| u64::from_str_radix(text, 16).ok().map(Self)).flatten()
    }
}

impl fmt::Display for Look {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{:016x}", self.0)
    }
}

/// FNV-1a: the lesson is its author's own, so there is no one to guard against.
struct Digest(u64);

impl Write for Digest {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for byte in text.bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01B3);
        }
        Ok(())
    }
}

impl Version {
    /// The handout of this word.
    pub(super) fn handout(&self, word: &str) -> Option<&Handout> {
        self.handouts.iter().find(|handout| handout.sheet.word() == word)
    }
}
