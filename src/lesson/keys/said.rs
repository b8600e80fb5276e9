//! Whether a path of keys is what somebody said.

use super::atlas::Step;

/// How what was said fits a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Fit {
    /// It names the path from the top of the file.
    pub(super) from_top: bool,
    /// How many of its words are names of one's own, as in `canvases > square > width`.
    pub(super) names: usize,
}

/// Most words of a name of one's own.
const LONGEST_NAME: usize = 8;
/// Most words that is longer than any path.
const LONGEST: usize = 40;

/// The parts of what was said: `class.students` has two.
pub(super) fn parts(said: &str) -> Vec<String> {
    let parts = said.split(['.', '>', ':', ',', '/']).map(|part| words(part).join(" "));
    parts.filter(|part| !part.is_empty()).collect()
}

fn words(text: &str) -> Vec<String> {
    let apart = |c: char| c.is_whitespace() || ".>:,/-_\"'“”[]{}".contains(c);
    text.split(apart).filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

/// How a path fits from one of its keys to its end; the best way where there are several.
pub(super) fn fits(said: &str, path: &[Step]) -> Option<Fit> {
    let words = words(said);
    if words.is_empty() || words.len() > LONGEST {
        return None;
    }
    let starts = path.iter().enumerate().filter(|(_, step)| matches!(step, Step::Key(_)));
    let fits = starts.filter_map(|(at, _)| {
        let names = names_in(&words, path.get(at..)?)?;
        Some(Fit { from_top: at == 0, names })
    });
    fits.min_by_key(|fit| (fit.names, !fit.from_top))
}

/// How many words are names when the words are these steps; `None` when they are not.
fn names_in(words: &[String], steps: &[Step]) -> Option<usize> {
    let Some((step, rest)) = steps.split_first() else { return words.is_empty().then_some(0) };
    match step {
        Step::Key(key) => {
            let key: Vec<&str> = key.split(' ').collect();
            let (said, more) = words.split_at_checked(key.len())?;
            if said == key { names_in(more, rest) } else { None }
        }
        Step::Name | Step::Item => (0..=words.len().min(LONGEST_NAME))
            .filter_map(|taken| names_in(words.get(taken..)?, rest).map(|names| names + taken))
            .min(),
    }
}
