//! Marks on paper: points, colours, vector shapes, the faces and shaped words.
//!
//! The shared vocabulary of charts, pages and the PDF writer, as `quantity` is of
//! lesson and plan. In: text and geometry. Out: shapes with exact extents. This
//! room knows nothing of paragraphs, pages or what a mark means.

mod colour;
mod face;
mod shape;

pub use colour::Colour;
pub use face::{Face, Faces, Figures, Glyph, Metrics, Shaped};
pub use shape::{Dash, PathSegment, Point, Rect, Shape, Stroke, TextRun};
