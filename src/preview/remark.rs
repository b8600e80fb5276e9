use crate::lesson::{Place, Sources};
use serde::Serialize;

/// Something that whoever prints the handouts should know first.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Remark {
    /// What is the matter.
    pub matter: String,
    /// Its figures.
    pub figures: String,
    /// What would help, one sentence each.
    pub help: Vec<String>,
    /// The value that it is about; `None` when nobody wrote it.
    pub spot: Option<Spot>,
}

/// A value in a file, in the middle of the line that it begins in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Spot {
    /// As people know it.
    pub file: String,
    /// From 1.
    pub line: usize,
    /// The line up to the value, without what it is indented by.
    pub before: String,
    pub value: String,
    pub after: String,
}

impl Remark {
    /// A remark about no value of a file.
    pub fn new(matter: String, figures: String) -> Self {
        Self { matter, figures, help: Vec::new(), spot: None }
    }
}

impl Spot {
    /// The spot of a place; `None` for a place that is in none of these files.
    pub fn of(place: &Place, sources: &Sources) -> Option<Self> {
        let source = sources.get(place.file)?;
        let (line, column) = sources.line_and_column(place);
        let text = source.text.lines().nth(line - 1)?;
        let at = text.char_indices().nth(column - 1).map_or(text.len(), |(at, _)| at);
        let (before, rest) = text.split_at(at);
        // A value of many lines is shown by its first.
        let (value, after) = rest.split_at_checked(place.span.len()).unwrap_or((rest, ""));
        Some(Self {
            file: source.name.clone(),
            line,
            before: before.trim_start().to_owned(),
            value: value.to_owned(),
            after: after.trim_end().to_owned(),
        })
    }
}
