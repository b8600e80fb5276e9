use std::fmt;

use crate::ink::Face;
use crate::page::MOST_PAGES;

/// Why pages could not become a PDF. But for their number, each is a fault of the pages or of a
/// face, never of the lesson.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PdfError {
    /// A face could not be cut down to the glyphs in use.
    Subset { face: Face, reason: String },
    /// The cut-down face could not be read back.
    Unreadable { face: Face },
    /// More pages than [`crate::page::MOST_PAGES`].
    TooManyPages,
    /// Text slices its run outside the text or inside a character.
    TextRange { page: usize },
    /// A link or bookmark leads to a page that is not there.
    NoSuchPage { page: usize, pages: usize },
    /// Content or a link names a tag that is not there, or a tag comes before its parent.
    NoSuchTag { tag: usize, tags: usize },
    /// The PDF library refused an operation.
    Refused { page: usize, reason: String },
    /// An object is not of the kind that the PDF library promises.
    Structure(&'static str),
    /// Writing or compressing bytes failed.
    Bytes(String),
}

impl fmt::Display for PdfError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Subset { face, reason } => {
                write!(f, "the {face:?} face cannot be cut down to the glyphs in use: {reason}")
            }
            Self::Unreadable { face } => write!(f, "the cut-down {face:?} face cannot be read"),
            Self::TooManyPages => write!(
                f,
                "this handout would have more than {MOST_PAGES} pages; make it in parts, of \
                 fewer students or canvases"
            ),
            Self::TextRange { page } => {
                write!(f, "page {}: a glyph stands for bytes outside its text", page + 1)
            }
            Self::NoSuchPage { page, pages } => {
                write!(f, "something leads to page {} of {pages}", page + 1)
            }
            Self::NoSuchTag { tag, tags } => write!(f, "tag {tag} is not among the {tags} tags"),
            Self::Refused { page, reason } => write!(f, "page {}: {reason}", page + 1),
            Self::Structure(what) => write!(f, "the PDF under construction lacks {what}"),
            Self::Bytes(reason) => write!(f, "the PDF cannot be written: {reason}"),
        }
    }
}

impl std::error::Error for PdfError {}
