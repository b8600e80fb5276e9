//! Markdown to blocks.
//!
//! In: the Markdown that a template gave. Out: document blocks. Fenced blocks are
//! directives ([`directive`]), code spans are inline marks ([`inline`]); everything
//! else is CommonMark with tables and heading attributes; [`binding`] keeps numbers and
//! units together; [`places`] sees that links lead somewhere. This room knows nothing
//! of lessons: pictures are handed in by name.

mod binding;
mod directive;
mod inline;
mod places;
mod reader;
mod table;

use super::document::{Block, Picture};
use super::template_fault::TemplateFault;
use std::collections::BTreeMap;

/// The pictures that a template may name.
pub type Pictures = BTreeMap<String, Picture>;

/// What a template got wrong, in words for the person who wrote it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MarkdownFault {
    /// What is wrong and what would be right.
    pub message: String,
    /// The text in question.
    pub excerpt: String,
}

impl MarkdownFault {
    /// As the fault of the template that it stands in.
    pub(super) fn of(self, template: &str) -> TemplateFault {
        TemplateFault::new(template, format!("{}, at “{}”", self.message, self.excerpt))
    }
}

/// Reads the Markdown of a whole handout into blocks.
pub fn read(markdown: &str, pictures: &Pictures) -> Result<Vec<Block>, MarkdownFault> {
    let blocks = reader::Reader::new(markdown, pictures).blocks()?;
    places::check(&blocks)?;
    Ok(blocks)
}
