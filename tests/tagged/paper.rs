//! The layout order: what is heard first stands first on paper, where one reads down each
//! column and from left to right on each line. Words that stand apart are apart.

use puddlebook::handout::Form;
use puddlebook::page::style::Style;

use super::handouts::Handout;
use super::said::{Kind, leaves, plain};
use super::{all_keep, ensure};
use crate::pdf_file::{ReadFile, Touched};
use crate::pdf_reader::ReadGlyph;
use crate::pdf_tree::{Element, Kid};

#[test]
fn what_is_heard_first_stands_first_on_paper() {
    all_keep(order);
}

#[test]
fn words_are_heard_apart_where_they_stand_apart() {
    all_keep(gaps);
}

/// From the baseline to the tops of capitals, in em.
const CAPITALS: f32 = 0.7;

/// A gap wider than this, in em, parts what stands on one line.
const APART: f32 = 1.0;

/// Text on one line, a field or a figure, in points from the bottom left of its page.
struct Ink {
    page: usize,
    /// Which element it belongs to.
    leaf: usize,
    left: f32,
    right: f32,
    bottom: f32,
    top: f32,
    text: String,
}

impl Ink {
    fn new(page: usize, (x, y): (f32, f32)) -> Self {
        Self { page, leaf: 0, left: x, right: x, bottom: y, top: y, text: String::new() }
    }

    fn of_field(Touched { page, area: [low, high], text, .. }: &Touched) -> Self {
        let mut ink = Self::new(*page, *low);
        ink.reach(*high);
        Self { text: text.clone(), ..ink }
    }

    fn reach(&mut self, (x, y): (f32, f32)) {
        (self.left, self.right) = (self.left.min(x), self.right.max(x));
        (self.bottom, self.top) = (self.bottom.min(y), self.top.max(y));
    }

    /// Whether one reads it before another: it stands over it, or left of it on a line.
    fn is_before(&self, other: &Self) -> bool {
        /// Points by which neighbours may reach into each other.
        const TOUCH: f32 = 0.5;
        let beside = self.left < other.right - TOUCH && other.left < self.right - TOUCH;
        let level = self.bottom < other.top - TOUCH && other.bottom < self.top - TOUCH;
        (beside && self.bottom > other.top - TOUCH) || (level && self.right < other.left + TOUCH)
    }
}

/// The side column of a book is read apart from the text. On the line of a card a note may stand
/// between the label and the reading, which is heard at once.
pub fn order(Handout { document, file, .. }: &Handout) -> Result<(), String> {
    let style = Style::new(document.form, document.paper, document.edition);
    let side = style.frame.side.map_or(f32::INFINITY, |side| side.left - 0.5);
    let leaves = leaves(&file.tree).into_iter().enumerate();
    let ink = leaves.flat_map(|(number, (kind, leaf))| {
        let ink = ink(file, kind, leaf).into_iter();
        ink.map(move |ink| Ink { leaf: number, ..ink })
    });
    let ink: Vec<Ink> = ink.collect();
    let a_line_of_a_card = |one: &Ink, other: &Ink| {
        document.form == Form::Cards && one.leaf == other.leaf && one.bottom == other.bottom
    };
    for page in ink.chunk_by(|one, next| one.page == next.page) {
        let (notes, text): (Vec<&Ink>, Vec<&Ink>) = page.iter().partition(|ink| ink.left >= side);
        for column in [text, notes] {
            for (at, later) in column.iter().enumerate() {
                let mut before = column[..at].iter();
                let wrong = before
                    .find(|earlier| later.is_before(earlier) && !a_line_of_a_card(later, earlier));
                let wrong = wrong.map(|earlier| &earlier.text);
                ensure(wrong.is_none(), || {
                    let Ink { page, text, .. } = later;
                    format!("{text:?} stands before {wrong:?} on page {page} and is heard later")
                })?;
            }
        }
    }
    Ok(())
}

/// The ink of an element that holds text, line by line, or of a figure, page by page.
fn ink(file: &ReadFile, kind: Kind, element: &Element) -> Vec<Ink> {
    let mut all: Vec<Ink> = Vec::new();
    for kid in &element.kids {
        let (page, mcid) = match kid {
            Kid::Element(inner) => {
                all.extend(ink(file, kind, inner));
                continue;
            }
            Kid::Annotation(Some(id)) if element.kind == "Form" => {
                all.extend(file.touched.get(id).map(Ink::of_field));
                continue;
            }
            Kid::Sequence(Some(page), mcid) => (*page, *mcid),
            Kid::Sequence(None, _) | Kid::Annotation(_) => continue,
        };
        let Some(sequence) = file.sequence(Some(page), mcid) else { continue };
        for glyph in &sequence.glyphs {
            let goes_on = all.last().is_some_and(|last| {
                let gap = (glyph.x - last.right) / glyph.size;
                let on_line = last.bottom == glyph.y && (-KERNED..APART).contains(&gap);
                last.page == page && (kind == Kind::Figure || on_line)
            });
            if !goes_on {
                all.push(Ink::new(page, (glyph.x, glyph.y)));
            }
            if let Some(line) = all.last_mut() {
                line.reach((glyph.x, glyph.y));
                line.reach((glyph.end, glyph.y + CAPITALS * glyph.size));
                line.text.push_str(&glyph.text);
            }
        }
        for &point in &sequence.points {
            match all.last_mut().filter(|last| last.page == page) {
                Some(figure) => figure.reach(point),
                None => all.push(Ink::new(page, point)),
            }
        }
    }
    all
}

/// A gap from this on, in em, parts words: thin spaces have twice as much.
const GAP: f32 = 0.08;

/// A glyph reaches into the one before it by no more than this, in em.
const KERNED: f32 = 0.3;

pub fn gaps(Handout { file, .. }: &Handout) -> Result<(), String> {
    for (kind, leaf) in leaves(&file.tree) {
        if kind != Kind::Figure {
            let mut reading = Reading::default();
            reading.element(file, leaf);
            let (seen, heard) = (plain(&reading.seen), plain(&reading.heard));
            ensure(seen == heard, || format!("{seen:?} is heard as {heard:?}"))?;
        }
    }
    Ok(())
}

/// The words of an element as they are seen, parted by gaps, and as they are heard, parted by
/// spaces.
#[derive(Default)]
struct Reading {
    seen: String,
    heard: String,
    /// Where the last glyph ended.
    end: Option<(f32, f32)>,
}

impl Reading {
    fn element(&mut self, file: &ReadFile, element: &Element) {
        for kid in &element.kids {
            match kid {
                Kid::Element(form) if form.kind == "Form" => {
                    self.seen.push(' ');
                    self.heard.push(' ');
                }
                Kid::Element(inner) => self.element(file, inner),
                Kid::Sequence(page, mcid) => {
                    let glyphs = file.sequence(*page, *mcid).into_iter().flat_map(|s| &s.glyphs);
                    glyphs.for_each(|glyph| self.glyph(glyph));
                }
                Kid::Annotation(_) => {}
            }
        }
    }

    fn glyph(&mut self, glyph: &ReadGlyph) {
        let blank = glyph.text.chars().all(char::is_whitespace) && !glyph.text.is_empty();
        if !blank {
            if let Some((x, y)) = self.end {
                // A word may be parted behind a dash or at a hyphen of the line's own.
                let dashed = self.heard.ends_with(['-', '\u{2013}', '\u{2014}', '/', '\u{AD}']);
                let gap = (glyph.x - x) / glyph.size;
                let parted = if y == glyph.y { !(-KERNED..GAP).contains(&gap) } else { !dashed };
                if parted {
                    self.seen.push(' ');
                }
            }
            self.seen.push_str(&glyph.text);
            self.end = Some((glyph.end, glyph.y));
        }
        self.heard.push_str(&glyph.text);
    }
}
