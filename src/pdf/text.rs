//! Runs of glyphs become text operations.

use std::collections::BTreeMap;

use printpdf::{Codepoint, DictItem, Op, PdfFontHandle, Point, TextItem};

use super::font::FontGlyph;
use super::pen::{Hundredths, Pen, hundredths, points};
use super::usage::visible;
use crate::ink::{Colour, Face, Glyph, TextRun};

/// Glyphs on one baseline that one operator shows.
pub(super) struct Line {
    face: Face,
    size: Hundredths,
    colour: Colour,
    start: Hundredths,
    baseline: Hundredths,
    /// Where the next glyph would stand, in thousandths of an em from the start.
    pen: f32,
    items: Vec<TextItem>,
    /// Whether something of it is written.
    begun: bool,
}

/// How far to the right a run may start of where the last one ended and still be
/// part of the same operator, in thousandths of an em.
const REACH: f32 = 1500.0;

/// A smaller correction is not written, in thousandths of an em: a fiftieth of a
/// millimetre at 11 pt, a dot of a good printer. What is left out does not add up.
const TOLERANCE: f32 = 5.0;

impl Pen<'_> {
    /// Shows a run, continuing the line where it can.
    pub fn run(&mut self, run: &TextRun) {
        if run.glyphs.is_empty() {
            return;
        }
        let baseline = self.height_of(run.origin.y);
        let size = hundredths(run.size);
        let mut line = match self.line.take() {
            Some(line) if line.continues(run, size, baseline) => line,
            other => {
                self.line = other;
                self.flush_line();
                Line {
                    face: run.face,
                    size,
                    colour: run.colour,
                    start: hundredths(run.origin.x),
                    baseline,
                    pen: 0.0,
                    items: Vec::new(),
                    begun: false,
                }
            }
        };
        let mut x = line.offset_of(run.origin.x);
        let mut rest = run.glyphs.as_slice();
        while let Some(length) = cluster(rest) {
            let (glyphs, after) = rest.split_at(length);
            self.cluster(&mut line, &mut x, run, glyphs);
            rest = after;
        }
        self.line = Some(line);
    }

    /// Adds the glyphs that together stand for one text.
    fn cluster(&mut self, line: &mut Line, x: &mut f32, run: &TextRun, glyphs: &[Glyph]) {
        let fonts = self.fonts;
        let Some(font) = fonts.get(run.face) else { return };
        let text = glyphs.first().and_then(|glyph| run.text.get(glyph.text.clone()));
        let text = visible(text.unwrap_or_default());
        let known = match glyphs {
            [glyph] => font.glyph(glyph.id).is_some_and(|g| says(g, &text)),
            _ => false,
        };
        if !known {
            self.show(line);
            self.begin(line);
            self.ops.push(Op::BeginMarkedContentWithProperties {
                tag: "Span".to_owned(),
                properties: actual_text(&text),
            });
        }
        for glyph in glyphs {
            if let Some(set) = font.glyph(glyph.id) {
                self.raise(line, glyph.y_offset);
                line.add(set, *x + glyph.x_offset * 1000.0);
            }
            *x += glyph.advance * 1000.0;
        }
        if !known {
            self.raise(line, 0.0);
            self.show(line);
            self.ops.push(Op::EndMarkedContentWithProperties);
        }
    }

    fn raise(&mut self, line: &mut Line, y_offset: f32) {
        let rise = hundredths(y_offset * line.size as f32 / 100.0);
        if rise != self.rise {
            self.show(line);
            self.rise = rise;
            self.ops.push(Op::SetLineOffset { multiplier: points(rise).0 });
        }
    }

    /// Opens a text section, if none is open, and takes face, colour and place.
    fn begin(&mut self, line: &mut Line) {
        if std::mem::replace(&mut line.begun, true) {
            return;
        }
        let old = self.section.unwrap_or_else(|| {
            self.ops.push(Op::StartTextSection);
            (0, 0)
        });
        self.section = Some((line.start, line.baseline));
        if self.font != Some((line.face, line.size))
            && let Some(font) = self.fonts.get(line.face)
        {
            self.font = Some((line.face, line.size));
            self.ops.push(Op::SetFont {
                font: PdfFontHandle::External(font.id.clone()),
                size: points(line.size),
            });
        }
        self.set_fill(line.colour);
        let (x, y) = (points(line.start - old.0), points(line.baseline - old.1));
        self.ops.push(Op::SetTextCursor { pos: Point { x, y } });
    }

    /// Writes what the line holds so far.
    fn show(&mut self, line: &mut Line) {
        if !line.items.is_empty() {
            self.begin(line);
            self.ops.push(Op::ShowText { items: std::mem::take(&mut line.items) });
        }
    }

    /// Writes the line and forgets it.
    pub(super) fn flush_line(&mut self) {
        if let Some(mut line) = self.line.take() {
            self.show(&mut line);
        }
    }
}

impl Line {
    /// Whether a run stands on this line, near enough to where it ended.
    fn continues(&self, run: &TextRun, size: Hundredths, baseline: Hundredths) -> bool {
        let gap = self.offset_of(run.origin.x) - self.pen;
        self.face == run.face
            && self.size == size
            && self.colour == run.colour
            && self.baseline == baseline
            && (-REACH..REACH).contains(&gap)
    }

    /// A place in points as thousandths of an em from the start.
    fn offset_of(&self, x: f32) -> f32 {
        (x - self.start as f32 / 100.0) / (self.size.max(1) as f32 / 100.0) * 1000.0
    }

    /// Adds a glyph at `x`, in thousandths of an em from the start.
    fn add(&mut self, glyph: &FontGlyph, x: f32) {
        let offset = self.pen - x;
        if offset.abs() > TOLERANCE {
            let offset = offset.round();
            self.items.push(TextItem::Offset(offset));
            self.pen -= offset;
        }
        match (glyph.plain, self.items.last_mut()) {
            (Some(c), Some(TextItem::Text(text))) => text.push(c),
            (Some(c), _) => self.items.push(TextItem::Text(c.into())),
            (None, Some(TextItem::GlyphIds(glyphs))) => glyphs.push(by_number(glyph)),
            (None, _) => self.items.push(TextItem::GlyphIds(vec![by_number(glyph)])),
        }
        self.pen += glyph.width;
    }
}

/// A glyph that is not the usual one of a single character, such as a ligature.
fn by_number(glyph: &FontGlyph) -> Codepoint {
    Codepoint::with_cid(glyph.id, 0.0, glyph.text.as_ref().into())
}

/// Whether a glyph by itself says a text; all spaces are alike to a reader.
fn says(glyph: &FontGlyph, text: &str) -> bool {
    let blank = |text: &str| !text.is_empty() && text.chars().all(char::is_whitespace);
    *glyph.text == *text || (blank(&glyph.text) && blank(text))
}

/// How many glyphs, from the first, stand for one text.
fn cluster(glyphs: &[Glyph]) -> Option<usize> {
    let rest = glyphs.get(1..)?;
    Some(1 + rest.iter().take_while(|glyph| glyph.text.is_empty()).count())
}

/// The text that the content up to the end of the marked sequence stands for
/// (ISO 32000-1, 14.9.4).
fn actual_text(text: &str) -> DictItem {
    let data = super::meta::text_string(text);
    let map =
        BTreeMap::from([("ActualText".to_owned(), DictItem::String { data, literal: false })]);
    DictItem::Dict { map }
}
