//! What the engine says, in words for the person who wrote the template, and where.

use super::tags::pieces;
use crate::handout::template_fault::{Excerpt, TemplateFault};
use crate::quantity::nearest::nearest;
use std::error::Error;
use std::ops::Range;

/// Names and texts of all templates, as they were given.
type Texts<'a> = &'a [(String, String)];

/// The engine's error with all its causes.
pub(in crate::handout) fn chain(error: &dyn Error) -> String {
    let mut message = error.to_string();
    let mut cause = error.source();
    while let Some(inner) = cause {
        message.push_str(": ");
        message.push_str(&inner.to_string());
        cause = inner.source();
    }
    message
}

/// A template that the engine cannot read.
pub(in crate::handout) fn unreadable(error: &dyn Error, texts: Texts<'_>) -> TemplateFault {
    let said = chain(error);
    let place = between(&said, "--> ", "\n").and_then(|place| {
        let (line, _) = place.trim().split_once(':')?;
        line.parse().ok()
    });
    let name = between(&said, "Failed to parse '", "'");
    let found = name.and_then(|name| texts.iter().find(|(known, _)| known == name));
    let (Some(line), Some((name, text))) = (place, found) else {
        return TemplateFault::new("", said);
    };
    let wanted = said.rsplit("= expected").next().filter(|wanted| wanted.len() < said.len());
    let excerpt = match wanted {
        Some(wanted) => Excerpt::line(text, line).with_help(format!("expected was{wanted}")),
        None => Excerpt::line(text, line),
    };
    TemplateFault::at(name, "this line cannot be read as part of a template", excerpt)
}

/// A template that the engine could not fill in. The last counter that it came by names a file,
/// by its place in the order of names, and a line; the fault stands behind it.
pub(in crate::handout) fn unfilled(
    template: &str,
    error: &dyn Error,
    texts: Texts<'_>,
    counter: (usize, usize),
    context: &tera::Context,
) -> TemplateFault {
    let said = chain(error);
    if let (Some(value), Some(file)) = (between(&said, "Variable `", "`"), rendered(&said)) {
        let known = context.clone().into_json();
        let known = known.as_object().into_iter().flat_map(|known| known.keys());
        let first = value.split(['.', '[']).next().unwrap_or_default();
        let help = match nearest(first, known.map(String::as_str)).filter(|known| *known != first) {
            Some(nearest) => format!("did you mean \"{nearest}\"?"),
            None => "the names of values stand in templates/README.md".to_owned(),
        };
        let message = format!("there is no value \"{value}\" here");
        return located(file, texts, 1, value)
            .map(|excerpt| TemplateFault::at(file, message.clone(), excerpt.with_help(help)))
            .unwrap_or_else(|| TemplateFault::new(file, message));
    }
    let reason = said.rsplit(": ").next().unwrap_or_default().to_owned();
    let call = between(&said, "Function call '", "'").or(between(&said, "Filter call '", "'"));
    let file = texts.get(counter.0).map_or(template, |(name, _)| name.as_str());
    match call.and_then(|call| located(file, texts, counter.1, call)) {
        Some(excerpt) => TemplateFault::at(file, reason, excerpt),
        None => TemplateFault::new(template, said),
    }
}

/// The template that was filled in when the engine found something.
fn rendered(said: &str) -> Option<&str> {
    let at = said.rfind("while rendering '")?;
    between(said.get(at..)?, "while rendering '", "'")
}

/// The first tag from a line on that names something.
fn located(file: &str, texts: Texts<'_>, from: usize, name: &str) -> Option<Excerpt> {
    let (_, text) = texts.iter().find(|(known, _)| known == file)?;
    let skipped = text.split_inclusive('\n').take(from.saturating_sub(1)).map(str::len).sum();
    let pieces = pieces(text).ok()?;
    let mut names = pieces.iter().filter(|piece| piece.outer.start >= skipped);
    let span: Range<usize> = names.find_map(|piece| {
        let at = piece.inner.start + text.get(piece.inner.clone())?.find(name)?;
        Some(at..at + name.len())
    })?;
    Some(Excerpt::new(text, span))
}

fn between<'s>(text: &'s str, before: &str, after: &str) -> Option<&'s str> {
    let (_, rest) = text.split_once(before)?;
    rest.split_once(after).map(|(inner, _)| inner)
}
