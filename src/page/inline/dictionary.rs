use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use crate::ink::leaves_no_mark;

/// Words shorter than this many letters are not divided.
const SHORTEST_DIVIDED: usize = 6;

/// Longer ones, in bytes, the patterns do not take; no word of English or Spanish is.
const LONGEST_DIVIDED: usize = 45;

/// Where words of a language may be divided; each word of a document is asked of the patterns
/// once.
#[derive(Debug)]
pub(in crate::page) struct Dictionary {
    /// None where no patterns of the language are known.
    patterns: Option<hypher::Lang>,
    known: RefCell<HashMap<Box<str>, Rc<[usize]>>>,
}

impl Dictionary {
    /// The dictionary of a language by its tag (BCP 47), such as "en" or "es-MX".
    pub(in crate::page) fn of(language: &str) -> Self {
        let primary = language.split('-').next().unwrap_or_default();
        let code: Option<[u8; 2]> = primary.as_bytes().try_into().ok();
        Self { patterns: code.and_then(hypher::Lang::from_iso), known: RefCell::default() }
    }

    /// Whether it has patterns to divide words by.
    pub(in crate::page) fn divides(&self) -> bool {
        self.patterns.is_some()
    }

    /// Byte offsets in a word at which the patterns allow a hyphen.
    pub(super) fn divisions(&self, word: &str) -> Rc<[usize]> {
        if let Some(known) = self.known.borrow().get(word) {
            return Rc::clone(known);
        }
        let divided = self.patterns.map(|patterns| divide(word, patterns));
        let found: Rc<[usize]> = divided.unwrap_or_default().into();
        self.known.borrow_mut().insert(word.into(), Rc::clone(&found));
        found
    }
}

/// Byte offsets in a word at which the patterns allow a hyphen.
fn divide(word: &str, patterns: hypher::Lang) -> Vec<usize> {
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
    for syllable in hypher::hyphenate(core, patterns) {
        if at > start {
            offsets.push(at);
        }
        at += syllable.len();
    }
    offsets
}

#[cfg(test)]
mod tests {
    use super::Dictionary;

    fn divided(language: &str, word: &str) -> String {
        let mut divided = word.to_owned();
        for at in Dictionary::of(language).divisions(word).iter().rev() {
            divided.insert(*at, '-');
        }
        divided
    }

    /// Syllables as in the dictionary of the Spanish Academy; a single letter never stands alone.
    #[test]
    fn every_language_divides_its_own_words() {
        assert_eq!(divided("es", "superficie"), "su-per-fi-cie");
        assert_eq!(divided("es-MX", "(acrílico)"), "(acrí-li-co)");
        assert_eq!(divided("es", "consistencia"), "con-sis-ten-cia");
        assert_eq!(divided("en", "consistency"), "con-sis-tency");
        assert_eq!(divided("xx", "superficie"), "superficie", "no patterns");
        assert!(!Dictionary::of("").divides());
    }
}
