//! What is wrong with a template, and where.

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use std::error::Error;
use std::fmt;
use std::ops::Range;

/// Lines longer than this, in bytes, are not shown.
const LONGEST_LINE: usize = 2_000;

/// A template that cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TemplateFault {
    /// The file, such as `order.md`.
    pub template: String,
    /// What is wrong, in words for the person who wrote it.
    pub message: String,
    /// Where, when that is known.
    pub excerpt: Option<Box<Excerpt>>,
}

/// The line of a template that is to blame, and what would be right.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Excerpt {
    /// From 1.
    pub line: usize,
    /// From 1, in characters.
    pub column: usize,
    text: String,
    /// The bytes of the line that are to blame.
    span: Range<usize>,
    help: Option<String>,
}

impl Excerpt {
    /// The line of `text` in which the bytes of `span` begin.
    pub(super) fn new(text: &str, span: Range<usize>) -> Self {
        let before = text.get(..span.start).unwrap_or_default();
        let start = before.rfind('\n').map_or(0, |at| at + 1);
        let rest = text.get(start..).unwrap_or_default();
        let shown = rest.lines().next().unwrap_or_default();
        let from = span.start - start;
        Self {
            line: before.matches('\n').count() + 1,
            column: before.get(start..).unwrap_or_default().chars().count() + 1,
            span: from.min(shown.len())..(span.end - start).min(shown.len()).max(from),
            text: shown.to_owned(),
            help: None,
        }
    }

    /// A line, counted from 1.
    pub(super) fn line(text: &str, line: usize) -> Self {
        let before = text.split_inclusive('\n').take(line.saturating_sub(1));
        let start = before.map(str::len).sum::<usize>();
        let shown = text.get(start..).and_then(|rest| rest.lines().next()).unwrap_or_default();
        Self::new(text, start..start + shown.len())
    }

    pub(super) fn with_help(self, help: impl Into<String>) -> Self {
        Self { help: Some(help.into()), ..self }
    }
}

impl TemplateFault {
    /// A fault whose place nobody knows.
    pub(super) fn new(template: &str, message: impl Into<String>) -> Self {
        Self { template: template.to_owned(), message: message.into(), excerpt: None }
    }

    /// A fault with its place.
    pub(super) fn at(template: &str, message: impl Into<String>, excerpt: Excerpt) -> Self {
        Self { excerpt: Some(Box::new(excerpt)), ..Self::new(template, message) }
    }

    /// For people: the line, what is wrong with it and what would be right.
    pub fn render(&self) -> String {
        let Some(excerpt) = &self.excerpt else { return format!("error: {self}\n") };
        let group = Group::with_title(Level::ERROR.primary_title(self.message.as_str()));
        let shown = if excerpt.text.len() > LONGEST_LINE { "" } else { excerpt.text.as_str() };
        let span = if shown.is_empty() { 0..0 } else { excerpt.span.clone() };
        let snippet = Snippet::source(shown)
            .line_start(excerpt.line)
            .path(self.template.as_str())
            .annotation(AnnotationKind::Primary.span(span));
        let help = excerpt.help.iter().map(|help| Level::HELP.message(help.as_str()));
        Renderer::plain().render(&[group.element(snippet).elements(help)]) + "\n"
    }
}

impl fmt::Display for TemplateFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.template.as_str(), &self.excerpt) {
            ("", _) => write!(f, "templates: {}", self.message),
            (name, None) => write!(f, "template {name}: {}", self.message),
            (name, Some(at)) => write!(f, "template {name}, line {}: {}", at.line, self.message),
        }
    }
}

impl Error for TemplateFault {}
