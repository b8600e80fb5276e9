use std::borrow::Cow;
use std::sync::Arc;

use super::object::Object;
use crate::ink::{Colour, Face, Figures, Shaped};
use crate::page::TagId;

/// How a stretch of text looks, and what it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::page) struct Look {
    pub face: Face,
    /// Points.
    pub size: f32,
    pub colour: Colour,
    pub figures: Figures,
    pub tag: TagId,
    /// Index into [`Paragraph::links`].
    pub link: Option<usize>,
}

/// Where a link leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::page) enum LinkTo<'a> {
    Anchor(&'a str),
    Web(&'a str),
}

/// A piece of a paragraph; widths in points.
#[derive(Debug, Clone)]
pub(super) enum Piece<'a> {
    /// Letters that stay together unless divided.
    Word {
        text: Cow<'a, str>,
        shaped: Arc<Shaped>,
        look: usize,
    },
    /// A space at which a line may end.
    Space {
        look: usize,
        width: f32,
        glyph: u16,
    },
    /// A space at which it may not; one that is thin does not stretch.
    Tie {
        text: &'a str,
        look: usize,
        width: f32,
        glyph: u16,
        give: Give,
    },
    /// A place to divide a word with a hyphen, marked by the writer.
    Hinge {
        look: usize,
    },
    /// A place to end a line without a hyphen.
    Seam {
        cost: f32,
    },
    Object {
        object: Object,
        look: usize,
        width: f32,
    },
    /// A named place.
    Anchor(&'a str),
    /// The line ends here.
    Break,
}

/// Whether a space takes part in justification.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Give {
    Elastic,
    Rigid,
}

/// A paragraph, collected.
#[derive(Debug, Clone)]
pub(in crate::page) struct Paragraph<'a> {
    pub(super) pieces: Vec<Piece<'a>>,
    pub(super) looks: Vec<Look>,
    /// Target, tag and words of each link.
    pub(super) links: Vec<(LinkTo<'a>, TagId, String)>,
    /// Main type size in points.
    pub(super) size: f32,
    /// Hyphen of each look: its shape.
    pub(super) hyphens: Vec<Arc<Shaped>>,
}

impl Paragraph<'_> {
    pub(super) fn look(&self, index: usize) -> Look {
        // Indices are made beside the looks, so the first is never used for another.
        self.looks.get(index).or(self.looks.first()).copied().unwrap_or(Look {
            face: Face::Regular,
            size: self.size,
            colour: Colour::new(0, 0, 0),
            figures: Figures::Proportional,
            tag: TagId(0),
            link: None,
        })
    }

    /// Whether there is nothing to set.
    pub(in crate::page) fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// Whether there is a blank to write on in it.
    pub(in crate::page) fn has_blank(&self) -> bool {
        let blank =
            |piece: &Piece<'_>| matches!(piece, Piece::Object { object: Object::Blank { .. }, .. });
        self.pieces.iter().any(blank)
    }
}
