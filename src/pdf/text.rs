//! Runs of glyphs become text operators.

use super::font::FontGlyph;
use super::operators::{self, Hundredths, hundredths};
use super::pen::Pen;
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
    /// Operand of the operator that shows glyphs: strings of codes, and corrections.
    shown: Vec<u8>,
    /// Whether the last string of it is open.
    open: bool,
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
        let x = self.left + run.origin.x;
        let mut line = match self.line.take() {
            Some(line) if line.continues(run, size, (x, baseline)) => line,
            other => {
                self.line = other;
                self.flush_line();
                Line {
                    face: run.face,
                    size,
                    colour: run.colour,
                    start: hundredths(x),
                    baseline,
                    pen: 0.0,
                    shown: Vec::with_capacity(3 * run.glyphs.len()),
                    open: false,
                    begun: false,
                }
            }
        };
        let mut x = line.offset_of(x);
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
        let text = glyphs.first().and_then(|glyph| glyph.slice(&run.text));
        let text = visible(text.unwrap_or_default());
        let known = match glyphs {
            [glyph] => font.glyph(glyph.id).is_some_and(|g| says(g, &text)),
            _ => false,
        };
        if !known {
            self.show(line);
            self.begin(line);
            self.actual_text(&text);
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
            self.out.operator("EMC");
        }
    }

    fn raise(&mut self, line: &mut Line, y_offset: f32) {
        let rise = hundredths(y_offset * line.size as f32 / 100.0);
        if rise != self.rise {
            self.show(line);
            self.rise = rise;
            self.out.length(rise);
            self.out.operator("Ts");
        }
    }

    /// Opens a text section, if none is open, and takes face, colour and place.
    fn begin(&mut self, line: &mut Line) {
        if std::mem::replace(&mut line.begun, true) {
            return;
        }
        let old = self.section.unwrap_or_else(|| {
            self.out.operator("BT");
            (0, 0)
        });
        self.section = Some((line.start, line.baseline));
        if self.font != Some((line.face, line.size))
            && let Some(font) = self.fonts.get(line.face)
        {
            self.font = Some((line.face, line.size));
            self.out.name(&font.id.0);
            self.out.length(line.size);
            self.out.operator("Tf");
        }
        self.set_fill(line.colour);
        self.out.place((line.start - old.0, line.baseline - old.1));
        self.out.operator("Td");
    }

    /// Writes what the line holds so far.
    fn show(&mut self, line: &mut Line) {
        if line.shown.is_empty() {
            return;
        }
        self.begin(line);
        line.close();
        self.out.raw(b"[");
        self.out.raw(&line.shown);
        self.out.operator("]TJ");
        line.shown.clear();
    }

    /// Says which text the content up to the end of the marked sequence stands for
    /// (ISO 32000-1, 14.9.4).
    fn actual_text(&mut self, text: &str) {
        self.out.name("Span");
        self.out.raw(b"<</ActualText");
        self.out.string(&super::meta::text_string(text));
        self.out.raw(b">> ");
        self.out.operator("BDC");
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
    fn continues(&self, run: &TextRun, size: Hundredths, (x, y): (f32, Hundredths)) -> bool {
        let gap = self.offset_of(x) - self.pen;
        self.face == run.face
            && self.size == size
            && self.colour == run.colour
            && self.baseline == y
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
            self.close();
            operators::decimal(&mut self.shown, offset as i32, 0);
            self.pen -= offset;
        }
        if !std::mem::replace(&mut self.open, true) {
            self.shown.push(b'(');
        }
        operators::code(&mut self.shown, glyph.id);
        self.pen += glyph.width;
    }

    /// Ends the string that is open, if any.
    fn close(&mut self) {
        if std::mem::take(&mut self.open) {
            self.shown.push(b')');
        }
    }
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
