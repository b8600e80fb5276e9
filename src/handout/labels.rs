use super::document::Block;
use crate::ink::Colour;

/// A small label to cut out and stick on a cup; all of a sheet are of one size.
#[derive(Debug, Clone, PartialEq)]
pub struct CupLabel {
    pub swatch: Option<Colour>,
    pub title: String,
    /// Paragraphs, in small type.
    pub body: Vec<Block>,
}
