use super::faults::Style;
use super::render;
use super::source::{Place, Sources};

/// Something to say of a value of a lesson that is right as far as the file goes.
#[derive(Debug, Clone, PartialEq)]
pub struct Notice {
    pub weight: Weight,
    /// What it is called in lesson files.
    pub name: String,
    /// The heading: what is the matter.
    pub matter: String,
    /// Beside the caret, in a few words.
    pub mark: String,
    /// `None` for a lesson that was not read from a file.
    pub place: Option<Place>,
    /// Keys from the top of the file down.
    pub path: Vec<String>,
    /// What would help, one sentence a line.
    pub help: Vec<String>,
}

/// How much a notice weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// Somebody should look at it before the class.
    Warning,
    /// The file says something that is not so.
    Note,
}

/// For people: each notice with its line, and what would help.
pub fn render_notices(notices: &[Notice], sources: &Sources, style: Style) -> String {
    render::render_notices(notices, sources, style)
}
