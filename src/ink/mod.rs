//! Marks on paper: points, colours, vector shapes, the faces and shaped words.
//!
//! The shared vocabulary of charts, pages and the PDF writer, as `quantity` is of
//! lesson and plan. In: text and geometry. Out: shapes with exact extents. This
//! room knows nothing of paragraphs, pages or what a mark means.

mod colour;
mod face;
mod faces;
mod invisible;
mod palette;
mod shape;
mod shaped;
mod shaper;

pub use colour::Colour;
pub use face::{Face, Figures, Metrics};
pub use faces::Faces;
pub(crate) use invisible::leaves_no_mark;
pub use palette::{Palette, Surface};
pub use shape::{Dash, PathSegment, Point, Rect, Shape, Stroke, TextRun};
pub use shaped::{Glyph, Shaped};
