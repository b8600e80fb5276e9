//! Links and page numbers lead to places that are there.

use super::MarkdownFault;
use super::reader::fault;
use crate::handout::document::{Block, Inline, Target};
use crate::quantity::nearest::nearest;
use std::collections::BTreeSet;

/// Names that a text gives to places: behind headings, `{ #name }`, and within its lines,
/// `` `anchor name` ``.
pub(super) fn named(source: &str) -> BTreeSet<String> {
    let between = |open: &'static str, close: char| {
        source.split(open).skip(1).filter_map(move |rest| rest.split(close).next())
    };
    let names = between("{ #", '}').chain(between("`anchor ", '`'));
    names.map(|name| name.trim().to_owned()).collect()
}

/// Names of places, and what leads to places.
#[derive(Default)]
struct Places<'a> {
    known: BTreeSet<&'a str>,
    wanted: Vec<&'a str>,
}

/// Finds the first place that something leads to and that is nowhere.
pub(super) fn check(blocks: &[Block]) -> Result<(), MarkdownFault> {
    let mut places = Places::default();
    places.blocks(blocks);
    let Some(lost) = places.wanted.iter().find(|name| !places.known.contains(*name)) else {
        return Ok(());
    };
    let nearest = nearest(lost, places.known.iter().copied());
    let hint = nearest.map(|name| format!("; did you mean “{name}”?")).unwrap_or_default();
    Err(fault(&format!("no heading or anchor is called “{lost}”{hint}"), lost))
}

impl<'a> Places<'a> {
    fn blocks(&mut self, blocks: &'a [Block]) {
        for block in blocks {
            match block {
                Block::Heading { text, anchor, .. } => {
                    self.known.insert(anchor);
                    self.words(text);
                }
                Block::Paragraph(words) | Block::SmallPrint(words) => self.words(words),
                Block::List { items, .. } => items.iter().for_each(|item| self.blocks(item)),
                Block::Table(table) => {
                    let heads = table.columns.iter().map(|column| &column.heading);
                    let cells = table.rows.iter().flat_map(|row| &row.cells);
                    heads.chain(cells).for_each(|words| self.words(words));
                    self.words(&table.caption);
                }
                Block::Figure { caption, .. } => self.words(caption),
                Block::Notice { heading, body, .. } | Block::Step { heading, body, .. } => {
                    self.words(heading);
                    self.blocks(body);
                }
                Block::CupLabels(labels) => {
                    labels.iter().for_each(|label| self.blocks(&label.body));
                }
                Block::Aside(body) | Block::Columns { body, .. } => self.blocks(body),
                Block::Masthead { .. }
                | Block::TitlePage { .. }
                | Block::Contents { .. }
                | Block::KeyFigures(_)
                | Block::Ruled { .. }
                | Block::Cards(_)
                | Block::PageBreak
                | Block::Section { .. } => {}
            }
        }
    }

    fn words(&mut self, words: &'a [Inline]) {
        for word in words {
            match word {
                Inline::Emphasis(inner) | Inline::Strong(inner) => self.words(inner),
                Inline::Link { to, text } => {
                    if let Target::Anchor(name) = to {
                        self.wanted.push(name);
                    }
                    self.words(text);
                }
                Inline::PageOf(name) => self.wanted.push(name),
                Inline::Anchor(name) => {
                    self.known.insert(name);
                }
                Inline::Text(_)
                | Inline::Blank { .. }
                | Inline::Tick
                | Inline::Swatch(_)
                | Inline::Break => {}
            }
        }
    }
}
