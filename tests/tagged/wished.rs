//! What a handout is to say, piece by piece, from its document.

use std::collections::HashMap;

use puddlebook::handout::{
    Block, Card, Document, Fact, HeadingLevel, Inline, Picture, PictureKind, Table,
};

use super::handouts::Handout;
use super::said::{Kind, Piece, field, plain};
use crate::pdf_file::ReadFile;
use crate::pdf_tree::Element;

/// The pieces that a document asks for, those without words left out.
pub fn wished(handout: &Handout) -> Vec<Piece> {
    let mut scribe = Scribe::new(handout);
    scribe.blocks(&handout.document.blocks);
    scribe.add(Kind::Paragraph, &handout.document.footer);
    scribe.pieces
}

/// Blocks within a block, in order.
fn within(block: &Block) -> Vec<&Block> {
    match block {
        Block::Step { body, .. }
        | Block::Notice { body, .. }
        | Block::Aside(body)
        | Block::Columns { body, .. } => body.iter().collect(),
        Block::List { items, .. } => items.iter().flatten().collect(),
        _ => Vec::new(),
    }
}

/// All blocks, outer ones first.
fn every(blocks: &[Block]) -> Vec<&Block> {
    let mut all = Vec::new();
    let mut waiting: Vec<&Block> = blocks.iter().rev().collect();
    while let Some(block) = waiting.pop() {
        all.push(block);
        waiting.extend(within(block).into_iter().rev());
    }
    all
}

/// All tables, in order.
pub fn tables(blocks: &[Block]) -> Vec<&Table> {
    let tables = every(blocks).into_iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    tables.collect()
}

/// All pictures, in order.
pub fn pictures(blocks: &[Block]) -> Vec<&Picture> {
    let pictures = every(blocks).into_iter().filter_map(|block| match block {
        Block::Figure { picture, .. } => Some(picture),
        Block::TitlePage { picture, .. } => picture.as_ref(),
        _ => None,
    });
    pictures.collect()
}

/// The anchor of a block that is a heading; empty where nothing leads to it.
fn anchor(block: &Block) -> Option<&str> {
    match block {
        Block::Heading { anchor, .. } => Some(anchor),
        Block::Masthead { .. } | Block::Contents { .. } | Block::Step { .. } => Some(""),
        _ => None,
    }
}

/// Pages of the places that are named within a text: where the words behind them stand.
fn places<'d>(document: &'d Document, file: &ReadFile) -> Vec<(&'d str, usize)> {
    let plain = |text: &str| text.chars().filter(|c| c.is_alphanumeric()).collect::<String>();
    let printed: Vec<String> = file
        .pages
        .iter()
        .map(|page| plain(&page.sequences.iter().map(|s| s.text.as_str()).collect::<String>()))
        .collect();
    let mut places = Vec::new();
    for block in every(&document.blocks) {
        let Block::Paragraph(inlines) = block else { continue };
        for (at, inline) in inlines.iter().enumerate() {
            let Inline::Anchor(name) = inline else { continue };
            let behind: String = inlines[at + 1..].iter().map(flat).collect();
            let behind: String = plain(&behind).chars().take(24).collect();
            let page = printed.iter().position(|page| page.contains(&behind));
            places.extend(page.map(|page| (name.as_str(), page + 1)));
        }
    }
    places
}

/// The words of an inline without any that depend on pages.
fn flat(inline: &Inline) -> String {
    match inline {
        Inline::Text(text) => text.clone(),
        Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
            inner.iter().map(flat).collect()
        }
        _ => String::new(),
    }
}

/// The size to which pieces are cut: its words are those of the document, its numbers those of
/// the page (see `tools::cutting`).
fn cut(document: &Document, file: &ReadFile) -> String {
    let [before, between, after] =
        document.cut_to.split(['{', '}']).step_by(2).collect::<Vec<_>>()[..]
    else {
        return String::new();
    };
    let texts = file.pages.iter().flat_map(|page| &page.sequences).map(|part| plain(&part.text));
    let sizes = texts.filter_map(|text| {
        let (width, height) =
            text.strip_prefix(before)?.strip_suffix(after)?.split_once(between)?;
        let size: [u32; 2] = [width.parse().ok()?, height.parse().ok()?];
        Some(format!("{before}{}{between}{}{after}", size[0], size[1]))
    });
    sizes.take(1).collect()
}

/// Writes down what is to be said.
pub struct Scribe<'d> {
    document: &'d Document,
    /// Numbers of pages by anchor, from where the headings stand in the file.
    pages: HashMap<&'d str, usize>,
    /// How many entries the contents have: of chapters alone, or of sections too.
    entries: usize,
    /// To which size pieces are cut, as it stands in the file.
    cut: String,
    pieces: Vec<Piece>,
}

impl<'d> Scribe<'d> {
    pub fn new(Handout { document, file, .. }: &'d Handout) -> Self {
        let anchors = every(&document.blocks).into_iter().filter_map(anchor);
        let headings = file.tree.all().into_iter().filter(|element| element.kind.starts_with('H'));
        let page = |element: &Element| element.sequences().next().and_then(|(page, _)| page);
        let pages = anchors.zip(headings.map(page));
        let mut pages: Vec<_> =
            pages.filter_map(|(anchor, page)| Some((anchor, page? + 1))).collect();
        pages.extend(places(document, file));
        // Where two share a name, the first counts.
        pages.reverse();
        let pages = pages.into_iter().collect();
        let entries = file.tree.of_kind("TOCI").len();
        let cut = cut(document, file);
        Self { document, pages, entries, cut, pieces: Vec::new() }
    }

    fn add(&mut self, kind: Kind, words: &str) {
        let piece = Piece::new(kind, words);
        if !piece.words.is_empty() {
            self.pieces.push(piece);
        }
    }

    fn blocks(&mut self, blocks: &[Block]) {
        blocks.iter().for_each(|block| self.block(block));
    }

    fn block(&mut self, block: &Block) {
        match block {
            Block::Masthead { kind, title, facts } => {
                self.add(Kind::Paragraph, kind);
                self.add(Kind::Heading, title);
                self.facts(facts);
            }
            Block::TitlePage { title, subtitle, lines, picture } => {
                if let Some(picture) = picture {
                    self.add(Kind::Figure, &picture.alt);
                }
                let lines = [title, subtitle].into_iter().chain(lines);
                lines.for_each(|line| self.add(Kind::Paragraph, line));
            }
            Block::Contents { title } => self.contents(title),
            Block::Heading { text, .. } => self.add(Kind::Heading, &self.words(text)),
            Block::Paragraph(text) | Block::SmallPrint(text) => {
                self.add(Kind::Paragraph, &self.words(text));
            }
            Block::List { start, items } => {
                for (number, item) in items.iter().enumerate() {
                    self.item(start.map(|start| start as usize + number), item);
                }
            }
            Block::Table(table) => self.table(table),
            Block::Figure { picture, caption } => {
                self.add(Kind::Figure, &picture.alt);
                self.add(Kind::Fields, &blanks(&picture.kind));
                self.add(Kind::Caption, &self.words(caption));
            }
            Block::Notice { heading, body, .. } => {
                self.add(Kind::Paragraph, &self.words(heading));
                self.blocks(body);
            }
            Block::KeyFigures(facts) => self.facts(facts),
            Block::Step { number, heading, body } => {
                let heading = format!("{number} {}", self.words(heading));
                self.add(Kind::Heading, &heading);
                self.blocks(body);
            }
            Block::Aside(body) | Block::Columns { body, .. } => self.blocks(body),
            Block::Cards(cards) => {
                self.add(Kind::Paragraph, &self.cut.clone());
                cards.iter().for_each(|card| self.card(card));
            }
            Block::CupLabels(labels) => {
                self.add(Kind::Paragraph, &self.cut.clone());
                for label in labels {
                    self.add(Kind::Paragraph, &label.title);
                    self.blocks(&label.body);
                }
            }
            Block::Ruled { lines } => {
                let name = &self.document.ruled_line;
                let name = name.replace("{lines}", &lines.to_string());
                let names = (1..=*lines).map(|it| field(&name.replace("{line}", &it.to_string())));
                self.add(Kind::Fields, &names.collect::<String>());
            }
            Block::PageBreak | Block::Section { .. } => {}
        }
    }

    fn contents(&mut self, title: &str) {
        self.add(Kind::Heading, title);
        let headings: Vec<_> = self.document.blocks.iter().filter_map(heading).collect();
        let is_chapter = |level: HeadingLevel| level == HeadingLevel::One;
        let chapters = headings.iter().filter(|(level, ..)| is_chapter(*level)).count();
        let all = self.entries > chapters;
        for (level, text, anchor) in headings {
            if is_chapter(level) || (all && level == HeadingLevel::Two) {
                let entry = format!("{} {}", self.words(text), self.page(anchor));
                self.add(Kind::Entry, &entry);
            }
        }
    }

    fn item(&mut self, number: Option<usize>, item: &[Block]) {
        let (label, item) = match (item, number) {
            ([Block::Paragraph(text), rest @ ..], _) if text.first() == Some(&Inline::Tick) => {
                let first = Block::Paragraph(text[1..].to_vec());
                (field(&self.document.tick_box), [&[first], rest].concat())
            }
            (item, Some(number)) => (format!("{number}."), item.to_vec()),
            (item, None) => ("•".to_owned(), item.to_vec()),
        };
        self.add(Kind::Label, &label);
        self.blocks(&item);
    }

    fn table(&mut self, table: &Table) {
        self.add(Kind::Caption, &self.words(&table.caption));
        for row in self.rows(table) {
            row.iter().for_each(|cell| self.add(Kind::Cell, cell));
        }
    }

    fn facts(&mut self, facts: &[Fact]) {
        for Fact { label, value, note } in facts {
            self.add(Kind::Paragraph, &format!("{label} {value} {note}"));
        }
    }

    fn card(&mut self, card: &Card) {
        self.add(Kind::Paragraph, &card.title);
        self.add(Kind::Paragraph, &card.subtitle);
        for Fact { label, value, note } in &card.lines {
            let tick = field(&self.document.tick_box);
            self.add(Kind::Paragraph, &format!("{tick} {label} {value} {note}"));
        }
        self.add(Kind::Paragraph, &card.foot);
    }

    /// The cells of a table, those of its head first.
    pub fn rows(&self, table: &Table) -> Vec<Vec<String>> {
        let head = table.columns.iter().map(|column| self.words(&column.heading)).collect();
        let cells = table.rows.iter().map(|row| &row.cells);
        let body = cells.map(|cells| cells.iter().map(|cell| self.words(cell)).collect());
        std::iter::once(head).chain(body).collect()
    }

    fn page(&self, anchor: &str) -> String {
        self.pages.get(anchor).map(usize::to_string).unwrap_or_default()
    }

    pub fn words(&self, inlines: &[Inline]) -> String {
        let mut said = String::new();
        let mut rest = inlines;
        while let Some((first, mut after)) = rest.split_first() {
            said += &self.word(first);
            // A number is not said twice in a row.
            while let (
                [Inline::Text(comma), Inline::PageOf(again), later @ ..],
                Inline::PageOf(page),
            ) = (after, first)
                && comma == ", "
                && self.page(again) == self.page(page)
            {
                after = later;
            }
            rest = after;
        }
        said
    }

    fn word(&self, inline: &Inline) -> String {
        match inline {
            Inline::Text(text) => text.clone(),
            Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
                self.words(inner)
            }
            Inline::PageOf(anchor) => self.page(anchor),
            Inline::Blank { label, .. } => field(label),
            Inline::Tick => field(&self.document.tick_box),
            Inline::Swatch(_) | Inline::Anchor(_) => String::new(),
            Inline::Break => " ".to_owned(),
        }
    }
}

/// The fields of a drawing.
fn blanks(kind: &PictureKind) -> String {
    let PictureKind::Unfolded(data) = kind else { return String::new() };
    let labels = [&data.width_label, &data.height_label, &data.middle_label];
    let depth = (data.depth > 0.0).then_some(&data.depth_label);
    let labels = labels.into_iter().chain(depth).filter(|label| !label.is_empty());
    if data.blank_mm > 0.0 { labels.map(|label| field(label)).collect() } else { String::new() }
}

fn heading(block: &Block) -> Option<(HeadingLevel, &[Inline], &str)> {
    match block {
        Block::Heading { level, text, anchor } => Some((*level, text, anchor)),
        _ => None,
    }
}
