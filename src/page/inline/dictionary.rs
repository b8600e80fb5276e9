use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use crate::ink::leaves_no_mark;

/// Words shorter than this many letters are not divided.
const SHORTEST_DIVIDED: usize = 6;

/// Longer ones, in bytes, the patterns do not take; no word of English is.
const LONGEST_DIVIDED: usize = 45;

/// Where words may be divided; each word of a document is asked of the patterns once.
#[derive(Debug, Default)]
pub(in crate::page) struct Dictionary {
    known: RefCell<HashMap<Box<str>, Rc<[usize]>>>,
}

impl Dictionary {
    /// Byte offsets in a word at which the patterns allow a hyphen.
    pub(super) fn divisions(&self, word: &str) -> Rc<[usize]> {
        if let Some(known) = self.known.borrow().get(word) {
            return Rc::clone(known);
        }
        let found: Rc<[usize]> = divide(word).into();
        self.known.borrow_mut().insert(word.into(), Rc::clone(&found));
        found
    }
}

/// Byte offsets in a word at which the patterns allow a hyphen.
fn divide(word: &str) -> Vec<usize> {
    let is_inner = |c: char| c.is_alphabetic() || c == '\u{2019}';
    let start = word.find(char::is_alphabetic).unwrap_or(word.len());
    let core = word.get(start..).unwrap_or_default().trim_end_matches(|c: char| !c.is_alphabetic());
    let letters = core.chars().count();
    if letters < SHORTEST_DIVIDED
        || core.len() > LONGEST_DIVIDED
        || !core.chars().all(is_inner)
        || core.chars().any(leaves_no_mark)
    {
        return Vec::new();
    }
    let mut at = start;
    let mut offsets = Vec::new();
    for syllable in hypher::hyphenate(core, hypher::Lang::English) {
        if at > start {
            offsets.push(at);
        }
        at += syllable.len();
    }
    offsets
}
