//! "Did you mean": the known word that is nearest to the one that was written.

use strsim::damerau_levenshtein;

/// A word may be this many letters long to take part; longer ones are no slip of
/// the finger, and comparing costs the product of the lengths.
const LONGEST: usize = 60;

/// So many known words are compared; no list that people keep is longer, and a file of mistakes
/// beside a file of names would be compared for minutes.
pub const MOST_KNOWN: usize = 500;

/// The known word within a third of the letters of `written`, at least one and at
/// most three changes away; the first of equals. Upper and lower case count as one.
pub fn nearest<'a>(written: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let length = written.chars().count();
    if length > LONGEST {
        return None;
    }
    let allowed = (length / 3).clamp(1, 3);
    let written = written.to_lowercase();
    known
        .into_iter()
        .take(MOST_KNOWN)
        .filter(|word| {
            let letters = word.chars().count();
            letters <= LONGEST && letters.abs_diff(length) <= allowed
        })
        .map(|word| (damerau_levenshtein(&written, &word.to_lowercase()), word))
        .filter(|(distance, word)| *distance <= allowed && *distance < word.chars().count())
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, word)| word)
}
