use std::borrow::Cow;
use std::collections::HashMap;

use super::object::Object;
use super::piece::{Give, LinkTo, Look, Paragraph, Piece};
use crate::handout::{Inline, Target};
use crate::ink::{Colour, Face, Faces, Figures};
use crate::page::style::MM;
use crate::page::tree::Tree;
use crate::page::{Answer, Printing, TagId, TagKind};

/// A thin space between a number and its unit, in em (common practice: a sixth).
const THIN: f32 = 0.16;

/// Ending a line after a hyphen or dash that stands in the text.
const AFTER_HYPHEN: f32 = 40.0;

/// Ending a line after a stroke, as in an address.
const AFTER_STROKE: f32 = 60.0;

/// What was noticed while text was collected.
#[derive(Debug, Default)]
pub(in crate::page) struct Findings {
    /// Characters that no face has, in order of appearance, each once.
    pub missing: Vec<char>,
    /// How many page numbers stand in the text.
    pub page_numbers: usize,
    pub printing: Printing,
}

impl Findings {
    pub(in crate::page) fn miss(&mut self, chars: &[char]) {
        for &c in chars {
            if !self.missing.contains(&c) {
                self.missing.push(c);
            }
        }
    }
}

/// What is the same in all paragraphs of a document.
#[derive(Debug, Clone, Copy)]
pub(in crate::page) struct Given<'a> {
    pub link_colour: Colour,
    /// What a box to tick is called.
    pub tick_box: &'a str,
}

/// Turns inlines into the pieces of one paragraph.
pub(in crate::page) struct Collector<'a, 'd> {
    faces: &'d Faces,
    tree: &'d mut Tree,
    findings: &'d mut Findings,
    /// Page numbers of anchors, from 1, as far as they are known.
    numbers: &'d HashMap<&'a str, usize>,
    given: Given<'a>,
    paragraph: Paragraph<'a>,
}

impl<'a, 'd> Collector<'a, 'd> {
    pub(in crate::page) fn new(
        faces: &'d Faces,
        tree: &'d mut Tree,
        findings: &'d mut Findings,
        numbers: &'d HashMap<&'a str, usize>,
        given: Given<'a>,
    ) -> Self {
        let paragraph = Paragraph {
            pieces: Vec::new(),
            looks: Vec::new(),
            links: Vec::new(),
            size: 10.0,
            hyphens: Vec::new(),
        };
        Self { faces, tree, findings, numbers, given, paragraph }
    }

    /// Adds inlines in a look.
    pub(in crate::page) fn inlines(&mut self, inlines: &'a [Inline], look: Look) {
        let index = self.add_look(look);
        let mut rest = inlines;
        while let Some((first, mut after)) = rest.split_first() {
            self.inline(first, index, look);
            if let Inline::PageOf(anchor) = first {
                // The same number again says nothing.
                let number = self.numbers.get(anchor.as_str());
                while let [Inline::Text(comma), Inline::PageOf(again), later @ ..] = after
                    && comma == ", "
                    && number.is_some()
                    && self.numbers.get(again.as_str()) == number
                {
                    after = later;
                }
            }
            rest = after;
        }
    }

    /// Adds plain words in a look.
    pub(in crate::page) fn plain(&mut self, text: &'a str, look: Look) {
        let index = self.add_look(look);
        self.text(text, index, look);
    }

    /// Adds a label that is made here; it stays on one line and apart from what follows.
    pub(in crate::page) fn made(&mut self, text: String, look: Look) {
        let index = self.add_look(look);
        self.word(Cow::Owned(text), index, look);
        self.apart(look);
    }

    /// Ends what was added so far with a space without room: on paper it stands by itself, and
    /// a reader who listens hears it apart from what follows in the same element.
    pub(in crate::page) fn apart(&mut self, look: Look) {
        let index = match self.paragraph.looks.last() {
            Some(last) if *last == look => self.paragraph.looks.len() - 1,
            _ => self.add_look(look),
        };
        let (_, glyph) = self.blank_glyph(" ", look);
        let (width, give) = (0.0, Give::Rigid);
        self.paragraph.pieces.push(Piece::Tie { text: " ", look: index, width, glyph, give });
    }

    /// Adds a line's end; a reader who listens hears a space there.
    fn line_end(&mut self, look: Look) {
        if let Some(Piece::Space { .. }) = self.paragraph.pieces.last() {
            self.paragraph.pieces.pop();
        }
        self.apart(look);
        self.paragraph.pieces.push(Piece::Break);
    }

    pub(in crate::page) fn finish(mut self) -> Paragraph<'a> {
        while matches!(self.paragraph.pieces.last(), Some(Piece::Space { .. } | Piece::Break)) {
            self.paragraph.pieces.pop();
        }
        self.paragraph
    }

    fn add_look(&mut self, look: Look) -> usize {
        if self.paragraph.looks.is_empty() {
            self.paragraph.size = look.size;
        }
        self.paragraph.looks.push(look);
        self.paragraph.hyphens.push(self.faces.shape(look.face, look.figures, "-"));
        self.paragraph.looks.len() - 1
    }

    fn inline(&mut self, inline: &'a Inline, index: usize, look: Look) {
        match inline {
            Inline::Text(text) => self.text(text, index, look),
            Inline::Emphasis(inner) => {
                self.inlines(inner, Look { face: look.face.slanted(), ..look });
            }
            Inline::Strong(inner) => self.inlines(inner, Look { face: look.face.bold(), ..look }),
            Inline::Link { to, text } => {
                let to = match to {
                    Target::Anchor(name) => LinkTo::Anchor(name),
                    Target::Web(address) => LinkTo::Web(address),
                };
                let tag = self.tree.add(TagKind::Link, look.tag);
                self.paragraph.links.push((to, tag, words(text)));
                let link = Some(self.paragraph.links.len() - 1);
                self.inlines(text, Look { colour: self.given.link_colour, tag, link, ..look });
            }
            Inline::PageOf(anchor) => self.page_number(anchor, look),
            Inline::Anchor(name) => self.paragraph.pieces.push(Piece::Anchor(name)),
            Inline::Blank { width_mm, label } => {
                let tag = self.tree.field(Answer::Written, label, look.tag);
                self.object(Object::Blank { tag }, index, width_mm.max(5.0) * MM);
            }
            Inline::Tick => {
                let tag = self.tree.field(Answer::Ticked, self.given.tick_box, look.tag);
                self.object(Object::Tick { tag }, index, Object::tick_width(look.size));
            }
            Inline::Swatch(colour) => {
                self.object(Object::Swatch(*colour), index, look.size * 1.5);
            }
            Inline::Break => self.line_end(look),
        }
    }

    fn object(&mut self, object: Object, look: usize, width: f32) {
        self.paragraph.pieces.push(Piece::Object { object, look, width });
    }

    /// The number of the page on which an anchor stands, as a link to it.
    fn page_number(&mut self, anchor: &'a str, look: Look) {
        self.findings.page_numbers += 1;
        let number = match self.numbers.get(anchor) {
            Some(number) => number.to_string(),
            // Two figures are the likely width until the pages are known.
            None => "00".to_owned(),
        };
        let tag = self.tree.add(TagKind::Link, look.tag);
        self.paragraph.links.push((LinkTo::Anchor(anchor), tag, number.clone()));
        let link = Some(self.paragraph.links.len() - 1);
        let look = Look { tag, link, ..look };
        let index = self.add_look(look);
        self.word(Cow::Owned(number), index, look);
    }

    fn text(&mut self, text: &'a str, index: usize, look: Look) {
        let mut start = 0;
        for (at, c) in text.char_indices() {
            let next = at + c.len_utf8();
            let before = text.get(start..at).unwrap_or_default();
            match c {
                ' ' | '\n' | '\r' | '\t' => {
                    self.word(Cow::Borrowed(before), index, look);
                    self.space(index, look);
                }
                '\u{A0}' | '\u{2007}' | '\u{2009}' | '\u{202F}' => {
                    self.word(Cow::Borrowed(before), index, look);
                    self.tie(text.get(at..next).unwrap_or_default(), index, look);
                }
                '\u{AD}' => {
                    self.word(Cow::Borrowed(before), index, look);
                    self.paragraph.pieces.push(Piece::Hinge { look: index });
                }
                '\u{200B}' => {
                    self.word(Cow::Borrowed(before), index, look);
                    self.paragraph.pieces.push(Piece::Seam { cost: 0.0 });
                }
                '-' | '\u{2013}' | '\u{2014}' | '/' if seam(text, at, next) => {
                    let with = text.get(start..next).unwrap_or_default();
                    self.word(Cow::Borrowed(with), index, look);
                    let cost = if c == '/' { AFTER_STROKE } else { AFTER_HYPHEN };
                    self.paragraph.pieces.push(Piece::Seam { cost });
                }
                _ => continue,
            }
            start = next;
        }
        self.word(Cow::Borrowed(text.get(start..).unwrap_or_default()), index, look);
    }

    fn word(&mut self, text: Cow<'a, str>, look: usize, style: Look) {
        if text.is_empty() {
            return;
        }
        let shaped = self.faces.shape(style.face, style.figures, &text);
        self.findings.miss(&shaped.missing);
        self.paragraph.pieces.push(Piece::Word { text, shaped, look });
    }

    /// One space where the text has several; none at the start of a line.
    fn space(&mut self, look: usize, style: Look) {
        let last = self.paragraph.pieces.last();
        if !matches!(last, None | Some(Piece::Space { .. } | Piece::Break)) {
            let (width, glyph) = self.blank_glyph(" ", style);
            self.paragraph.pieces.push(Piece::Space { look, width: width * style.size, glyph });
        }
    }

    fn tie(&mut self, text: &'a str, look: usize, style: Look) {
        let (own, glyph) = self.blank_glyph(text, style);
        let (width, give, text) = match text {
            // It has the glyph of a space, and one glyph stands for one text.
            "\u{A0}" => (own, Give::Elastic, " "),
            "\u{2007}" => (own, Give::Rigid, text),
            _ => (THIN, Give::Rigid, text),
        };
        let width = width * style.size;
        self.paragraph.pieces.push(Piece::Tie { text, look, width, glyph, give });
    }

    /// Width in em and glyph of a space of some kind.
    fn blank_glyph(&self, text: &str, style: Look) -> (f32, u16) {
        let shaped = self.faces.shape(style.face, style.figures, text);
        (shaped.width, shaped.glyphs.first().map_or(0, |glyph| glyph.id))
    }
}

/// Whether a line may end after the dash or stroke at `at..next`: between letters
/// only, so that ranges of numbers and minus signs stay whole.
fn seam(text: &str, at: usize, next: usize) -> bool {
    let before = text.get(..at).and_then(|t| t.chars().next_back());
    let after = text.get(next..).and_then(|t| t.chars().next());
    before.is_some_and(char::is_alphabetic) && after.is_some_and(char::is_alphabetic)
}

/// The words of inlines, plain.
pub(in crate::page) fn words(inlines: &[Inline]) -> String {
    let mut text = String::new();
    for inline in inlines {
        match inline {
            Inline::Text(words) => text.push_str(words),
            Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
                text.push_str(&self::words(inner));
            }
            Inline::Break => text.push(' '),
            Inline::PageOf(_)
            | Inline::Anchor(_)
            | Inline::Blank { .. }
            | Inline::Tick
            | Inline::Swatch(_) => {}
        }
    }
    text
}

impl Look {
    /// Upright text of a size in a colour, in running text.
    pub(in crate::page) fn new(face: Face, size: f32, colour: Colour, tag: TagId) -> Self {
        Self { face, size, colour, figures: Figures::Proportional, tag, link: None }
    }
}
