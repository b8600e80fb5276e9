//! The visual system, in this one place: sizes, grid, margins and spaces; the colours are
//! `ink::Palette`, which charts share.
//!
//! In: form, paper and edition of a document. Out: every length the blocks use,
//! in points. Must not know: any text, any block.

mod paper;
mod scale;

use paper::Leaf;
pub use paper::{Frame, SideColumn};
pub use scale::{Size, Type};

use crate::handout::Form;
use crate::handout::{Edition, Paper};
use crate::ink::Palette;

/// Points in a millimetre (ISO 32000-1: a unit is 1/72 in; 25.4 mm to the inch).
pub const MM: f32 = 72.0 / 25.4;

/// Room for handwriting: ruled lines, blanks and cells to fill are at least this
/// high (common practice for worksheets, no source).
pub const WRITING: f32 = 8.0 * MM;

/// Where the chapters of a book start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Chapters {
    OnNewPages,
    /// Below the end of the one before, where that leaves much of its page: pages hold
    /// half as many words in large print or in a booklet, and each chapter would leave one
    /// half empty.
    RunOn,
}

/// The edges of running text in a column that is not narrow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edges {
    /// Both even.
    Justified,
    /// The right one as it comes.
    Ragged,
}

/// How running text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Running {
    pub edges: Edges,
    /// Characters of a line at most, however wide the column.
    pub longest: f32,
}

/// Characters of a line that still read well: the upper end of 60 to 72.
const LONGEST: f32 = 72.0;

/// The style of one document.
#[derive(Debug, Clone, PartialEq)]
pub struct Style {
    pub form: Form,
    pub edition: Edition,
    pub frame: Frame,
    pub scale: Type,
    pub running: Running,
    pub chapters: Chapters,
    pub palette: Palette,
}

impl Style {
    /// The style for a form of document on a paper in an edition.
    pub fn new(form: Form, paper: Paper, edition: Edition) -> Self {
        Self::on(Leaf::Whole, form, paper, edition)
    }

    /// The style for pages that are half a sheet of a paper, for a booklet. Type keeps its
    /// size: the text column is as wide as that of a book, whose notes then stand in it.
    pub fn booklet(form: Form, paper: Paper, edition: Edition) -> Self {
        Self::on(Leaf::Half, form, paper, edition)
    }

    fn on(leaf: Leaf, form: Form, paper: Paper, edition: Edition) -> Self {
        let scale = Type::of(edition);
        let frame = Frame::of(leaf, form, paper, edition, &scale);
        let chapters = match (leaf, edition) {
            (Leaf::Whole, Edition::Standard) => Chapters::OnNewPages,
            (Leaf::Half, _) | (_, Edition::LargePrint) => Chapters::RunOn,
        };
        let edges = match form {
            Form::Book => Edges::Justified,
            Form::Sheet | Form::Cards => Edges::Ragged,
        };
        let running = Running { edges, longest: LONGEST };
        Self { form, edition, frame, scale, running, chapters, palette: Palette::STANDARD }
    }

    /// Half a line of body text: heights and gaps are multiples of it.
    pub fn grid(&self) -> f32 {
        self.scale.body.leading / 2.0
    }

    /// What the tops of text are moved down to a multiple of. In large print no note stands
    /// beside the text to be level with it, and a page has no half lines to lose.
    pub fn snap(&self) -> f32 {
        match self.edition {
            Edition::Standard => self.grid(),
            Edition::LargePrint => self.grid() / 4.0,
        }
    }
}
