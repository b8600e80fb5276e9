//! Loops and conditions: each ends, in the order in which they began, and not too many stand in
//! each other.

use super::Refused;
use super::rules::Tag;
use super::tags::Piece;
use std::ops::Range;

/// Deepest loops and conditions in each other; ours need seven.
const DEPTH: usize = 16;

/// Those that have not ended: the word of each and its tag.
#[derive(Default)]
pub(super) struct Nest(Vec<(&'static str, Range<usize>)>);

impl Nest {
    /// Takes note of a tag.
    pub(super) fn heed(&mut self, tag: &Tag, piece: &Piece) -> Result<(), Refused> {
        match tag {
            Tag::For => self.open("for", piece),
            Tag::If => self.open("if", piece),
            Tag::EndFor => self.close("for", piece),
            Tag::EndIf => self.close("if", piece),
            Tag::Set(_) | Tag::Include(_) | Tag::Plain => Ok(()),
        }
    }

    fn open(&mut self, word: &'static str, piece: &Piece) -> Result<(), Refused> {
        if self.0.len() >= DEPTH {
            return Err(Refused::new(
                piece.outer.clone(),
                format!("more than {DEPTH} loops and conditions stand in each other here"),
                "put the inner part into a file of its own and include it",
            ));
        }
        self.0.push((word, piece.outer.clone()));
        Ok(())
    }

    fn close(&mut self, word: &'static str, piece: &Piece) -> Result<(), Refused> {
        match self.0.pop() {
            Some((open, _)) if open == word => Ok(()),
            Some((open, _)) => Err(Refused::new(
                piece.outer.clone(),
                format!("this ends \"{word}\", but the last to begin was \"{open}\""),
                format!("end that first, with {{% end{open} %}}"),
            )),
            None => Err(Refused::new(
                piece.outer.clone(),
                format!("this ends \"{word}\", and none is open here"),
                "leave it out, or begin one above",
            )),
        }
    }

    /// Sees that all have ended.
    pub(super) fn end(mut self) -> Result<(), Refused> {
        match self.0.pop() {
            None => Ok(()),
            Some((open, span)) => Err(Refused::new(
                span,
                format!("this \"{open}\" has no end"),
                format!("end it with {{% end{open} %}}"),
            )),
        }
    }
}
