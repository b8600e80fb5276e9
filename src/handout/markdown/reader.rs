//! Walks the Markdown events and builds blocks.

use super::{MarkdownFault, Pictures, directive, inline, places, table};
use crate::handout::document::{Block, HeadingLevel, Inline};
use pulldown_cmark::{CodeBlockKind, Event, OffsetIter, Options, Parser, Tag, TagEnd};
use std::collections::BTreeSet;
use std::ops::Range;
use std::rc::Rc;

/// How deep directives may stand in each other.
const MAX_NESTING: usize = 8;

/// How deep lists, emphases and links may stand in each other.
const MAX_OPEN: usize = 8;

/// One piece of Markdown on its way to blocks.
pub(super) struct Reader<'a> {
    source: &'a str,
    events: OffsetIter<'a>,
    pictures: &'a Pictures,
    /// Places that the whole piece names.
    places: Rc<BTreeSet<String>>,
    depth: usize,
    /// Lists, emphases and links that have not ended.
    open: usize,
}

impl<'a> Reader<'a> {
    pub(super) fn new(source: &'a str, pictures: &'a Pictures) -> Self {
        Self::nested(source, pictures, Rc::new(places::named(source)), 0)
    }

    fn nested(
        source: &'a str,
        pictures: &'a Pictures,
        places: Rc<BTreeSet<String>>,
        depth: usize,
    ) -> Self {
        let options = Options::ENABLE_TABLES
            | Options::ENABLE_HEADING_ATTRIBUTES
            | Options::ENABLE_SMART_PUNCTUATION;
        let events = Parser::new_ext(source, options).into_offset_iter();
        Self { source, events, pictures, places, depth, open: 0 }
    }

    /// The blocks of a piece inside this one.
    pub(super) fn inner(&self, source: &str) -> Result<Vec<Block>, MarkdownFault> {
        if self.depth >= MAX_NESTING {
            return Err(fault("too many directives inside each other", source));
        }
        Reader::nested(source, self.pictures, Rc::clone(&self.places), self.depth + 1).blocks()
    }

    /// The words of a single line inside this one.
    pub(super) fn line(&self, source: &str) -> Result<Vec<Inline>, MarkdownFault> {
        match self.inner(source.trim())?.into_iter().next() {
            None => Ok(Vec::new()),
            Some(Block::Paragraph(words)) => Ok(words),
            Some(_) => Err(fault("one line of words was expected here", source)),
        }
    }

    pub(super) fn pictures(&self) -> &Pictures {
        self.pictures
    }

    /// Places that are named anywhere in the handout.
    pub(super) fn places(&self) -> &BTreeSet<String> {
        &self.places
    }

    pub(super) fn blocks(mut self) -> Result<Vec<Block>, MarkdownFault> {
        let mut blocks = Vec::new();
        while let Some((event, range)) = self.events.next() {
            self.block(event, range, &mut blocks)?;
        }
        Ok(blocks)
    }

    fn block(
        &mut self,
        event: Event<'a>,
        range: Range<usize>,
        blocks: &mut Vec<Block>,
    ) -> Result<(), MarkdownFault> {
        match event {
            Event::Start(Tag::Paragraph) => {
                blocks.push(Block::Paragraph(self.words(TagEnd::Paragraph)?));
            }
            Event::Start(Tag::Heading { level, id, .. }) => {
                let text = self.words(TagEnd::Heading(level))?;
                let anchor = id.map_or_else(|| slug(&inline::plain(&text)), |id| id.to_string());
                blocks.push(Block::Heading { level: rank(level), text, anchor });
            }
            Event::Start(Tag::List(start)) => {
                let items = self.items()?;
                blocks
                    .push(Block::List { start: start.and_then(|n| u32::try_from(n).ok()), items });
            }
            Event::Start(Tag::CodeBlock(kind)) => {
                let body = self.raw()?;
                let info = match kind {
                    CodeBlockKind::Fenced(info) => info.to_string(),
                    CodeBlockKind::Indented => String::new(),
                };
                directive::read(self, &info, &body, blocks)?;
            }
            Event::Start(Tag::Table(aligns)) => {
                blocks.push(Block::Table(table::read(self, &aligns)?));
            }
            Event::Rule | Event::End(_) => {}
            // Words that stand in a list item without a paragraph of their own.
            Event::Text(_)
            | Event::Code(_)
            | Event::Start(_)
            | Event::SoftBreak
            | Event::HardBreak => {
                let words = inline::start(self, event)?;
                match blocks.last_mut() {
                    Some(Block::Paragraph(open)) => open.extend(words),
                    _ => blocks.push(Block::Paragraph(words)),
                }
            }
            Event::Html(_) | Event::InlineHtml(_) => {
                return Err(fault(
                    "HTML is not understood; write Markdown, or put a backslash before the \"<\"",
                    &self.source[range],
                ));
            }
            _ => return Err(fault("this kind of Markdown is not understood", &self.source[range])),
        }
        Ok(())
    }

    /// The inline pieces up to the end of `tag`.
    pub(super) fn words(&mut self, tag: TagEnd) -> Result<Vec<Inline>, MarkdownFault> {
        let mut words = Vec::new();
        self.open()?;
        while let Some((event, _)) = self.events.next() {
            if event == Event::End(tag) {
                break;
            }
            words.extend(inline::start(self, event)?);
        }
        self.open -= 1;
        Ok(inline::joined(words))
    }

    fn items(&mut self) -> Result<Vec<Vec<Block>>, MarkdownFault> {
        let mut items = Vec::new();
        self.open()?;
        while let Some((event, _)) = self.events.next() {
            match event {
                Event::Start(Tag::Item) => items.push(self.item()?),
                Event::End(TagEnd::List(_)) => break,
                _ => {}
            }
        }
        self.open -= 1;
        Ok(items)
    }

    fn item(&mut self) -> Result<Vec<Block>, MarkdownFault> {
        let mut blocks = Vec::new();
        while let Some((event, range)) = self.events.next() {
            if event == Event::End(TagEnd::Item) {
                break;
            }
            self.block(event, range, &mut blocks)?;
        }
        for block in &mut blocks {
            if let Block::Paragraph(words) = block {
                *words = inline::joined(std::mem::take(words));
            }
        }
        Ok(blocks)
    }

    /// One more list, emphasis or link begins.
    fn open(&mut self) -> Result<(), MarkdownFault> {
        self.open += 1;
        if self.open > MAX_OPEN {
            let rest = self.events.next().and_then(|(_, range)| self.source.get(range));
            let message = "too many lists or emphases stand inside each other";
            return Err(fault(message, rest.unwrap_or_default()));
        }
        Ok(())
    }

    fn raw(&mut self) -> Result<String, MarkdownFault> {
        let mut body = String::new();
        for (event, _) in self.events.by_ref() {
            match event {
                Event::Text(text) => body.push_str(&text),
                Event::End(TagEnd::CodeBlock) => break,
                _ => {}
            }
        }
        Ok(body)
    }

    /// The next event with the text it came from.
    pub(super) fn next_with_source(&mut self) -> Option<(Event<'a>, &'a str)> {
        let (event, range) = self.events.next()?;
        Some((event, self.source.get(range).unwrap_or_default()))
    }
}

/// A fault with a short excerpt.
pub(super) fn fault(message: &str, excerpt: &str) -> MarkdownFault {
    const LONGEST: usize = 120;
    let line = excerpt.trim().lines().next().unwrap_or_default();
    MarkdownFault { message: message.to_string(), excerpt: line.chars().take(LONGEST).collect() }
}

fn rank(level: pulldown_cmark::HeadingLevel) -> HeadingLevel {
    match level {
        pulldown_cmark::HeadingLevel::H1 => HeadingLevel::One,
        pulldown_cmark::HeadingLevel::H2 => HeadingLevel::Two,
        _ => HeadingLevel::Three,
    }
}

/// An anchor made of the words of a heading.
fn slug(text: &str) -> String {
    let mut slug = String::new();
    for word in text.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()) {
        if !slug.is_empty() {
            slug.push('-');
        }
        slug.extend(word.chars().flat_map(char::to_lowercase));
    }
    slug
}
