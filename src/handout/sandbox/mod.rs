//! What templates may do: the part of the template language that fills in words, and no more.
//!
//! In: the texts of templates. Out: the same texts with a counter in every loop, or what one of
//! them must not do, with its place. `tags` finds the tags, `tokens` their words, `rules` holds
//! them against what is allowed, `nest` sees that each loop ends, `includes` that no file stands
//! in itself; while a template is filled in, `meter` counts its rounds and `filters` what they
//! are given, and both stop it.
//!
//! The limits count work and never time, so a template that is stopped is stopped everywhere.

mod explain;
mod filters;
mod includes;
mod meter;
mod nest;
mod rules;
mod tags;
mod tokens;

use super::template_fault::{Excerpt, TemplateFault};
use nest::Nest;
use std::collections::BTreeMap;
use std::ops::Range;
use tags::{Piece, PieceKind};
use tera::Tera;

pub(super) use explain::{chain, unfilled, unreadable};
pub(super) use meter::{Allowance, Halt, metered, size};

/// The names that templates of the program and of a user may include.
type Texts<'a> = BTreeMap<&'a str, &'a str>;

/// What a template must not do.
struct Refused {
    /// The bytes of the template that say so.
    span: Range<usize>,
    message: String,
    help: String,
}

impl Refused {
    fn new(span: Range<usize>, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self { span, message: message.into(), help: help.into() }
    }

    fn of(self, template: &str, text: &str) -> TemplateFault {
        let excerpt = Excerpt::new(text, self.span).with_help(self.help);
        TemplateFault::at(template, self.message, excerpt)
    }
}

/// Makes the engine ready: filters that are counted, and no way to the machine.
pub(super) fn furnish(tera: &mut Tera) {
    filters::furnish(tera);
    meter::furnish(tera);
}

/// The texts with counters, by name.
///
/// # Errors
/// The first thing that a template must not do.
pub(super) fn guarded(texts: &Texts<'_>) -> Result<BTreeMap<String, String>, TemplateFault> {
    let mut guarded = BTreeMap::new();
    let mut named = Vec::new();
    for (at, (name, text)) in texts.iter().enumerate() {
        let (counted, includes) =
            guard(at, text, texts).map_err(|refused| refused.of(name, text))?;
        guarded.insert((*name).to_owned(), counted);
        named.push((*name, includes));
    }
    includes::check(&named, texts)?;
    Ok(guarded)
}

/// A name that a template includes, and where.
type Include = (String, Range<usize>);

/// A loop that has not ended: the tag that begins it, and the expressions of one round.
struct OpenLoop {
    tag: Piece,
    expressions: usize,
}

/// One text with counters, and what it includes.
fn guard(at: usize, text: &str, known: &Texts<'_>) -> Result<(String, Vec<Include>), Refused> {
    let mut includes = Vec::new();
    let mut counters: Vec<(usize, String)> = Vec::new();
    let mut loops: Vec<OpenLoop> = Vec::new();
    let mut nest = Nest::default();
    let mut outside = 1;
    for piece in tags::pieces(text)? {
        let tag = rules::check(text, &piece, known)?;
        nest.heed(&tag, &piece)?;
        match loops.last_mut() {
            Some(open) => open.expressions += 1,
            None => outside += 1,
        }
        match tag {
            rules::Tag::For => loops.push(OpenLoop { tag: piece, expressions: 1 }),
            rules::Tag::EndFor => {
                if let Some(open) = loops.pop() {
                    let counter = meter::counter(at, text, &open.tag, open.expressions, None);
                    counters.push((open.tag.outer.end, counter));
                }
            }
            rules::Tag::Set(name) => {
                let counter = meter::counter(at, text, &piece, 1, Some(&name));
                counters.push((piece.outer.end, counter));
            }
            rules::Tag::Include(names) => includes.extend(names),
            rules::Tag::If | rules::Tag::EndIf | rules::Tag::Plain => {}
        }
    }
    nest.end()?;
    let start = Piece { kind: PieceKind::Variable, outer: 0..0, inner: 0..0, trims: false };
    counters.push((0, meter::counter(at, text, &start, outside, None)));
    counters.sort_by_key(|(at, _)| *at);
    let mut counted = String::with_capacity(text.len() + counters.len() * 40);
    let mut from = 0;
    for (at, counter) in &counters {
        counted.push_str(text.get(from..*at).unwrap_or_default());
        counted.push_str(counter);
        from = *at;
    }
    counted.push_str(text.get(from..).unwrap_or_default());
    Ok((counted, includes))
}
