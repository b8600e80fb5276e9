//! What each handout says.

mod document;

pub use document::*;
