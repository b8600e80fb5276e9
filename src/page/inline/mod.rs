//! Inline matter becomes lines.
//!
//! Stages: `collect` (inlines to pieces: shaped words, spaces, objects), `points`
//! (where a line may end), `fit` (which of them do: total fit over the paragraph),
//! `line` (glyphs in their places). In: inlines and a measure. Out: lines whose
//! marks start at x 0 on a baseline at y 0. Must not know: pages, blocks.

mod collect;
mod dictionary;
mod fit;
mod line;
mod object;
mod piece;
mod points;

pub(super) use collect::{Collector, Findings, Given, words};
pub(super) use dictionary::Dictionary;
pub(super) use line::Line;
pub(super) use piece::{LinkTo, Look, Paragraph};

use fit::Fitting;
use piece::Piece;
use points::Breaks;

/// How lines stand in their measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Alignment {
    /// Both edges even, last line apart.
    Justified,
    Left,
    Centre,
    Right,
}

/// Whether words may be divided.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Division {
    /// Only a word that does not fit a line by itself, and anywhere.
    Never,
    /// Only such a word, by the patterns of its language where they help.
    Sparing,
    /// By the patterns of its language.
    Freely,
}

/// Breaks a paragraph into lines of at most `measure` points.
pub(super) fn set<'a>(
    paragraph: &Paragraph<'a>,
    measure: f32,
    alignment: Alignment,
    division: Division,
    dictionary: &Dictionary,
) -> Vec<Line<'a>> {
    if paragraph.pieces.is_empty() {
        return Vec::new();
    }
    let fitting = Fitting::new(measure, alignment, paragraph.size);
    // Most paragraphs break well without dividing a word; the patterns are asked
    // only for those that do not, and emergency breaks for what is left.
    let attempts: &[Breaks] = match division {
        Division::Never => &[Breaks::Whole, Breaks::Torn],
        Division::Sparing => &[Breaks::Whole, Breaks::Sparing],
        Division::Freely => &[Breaks::Whole, Breaks::Divided, Breaks::Anywhere],
    };
    for &breaks in attempts {
        let points = points::find(paragraph, breaks, measure, fitting.elastic(), dictionary);
        if let Some(lines) = fitting.solve(&points, breaks) {
            return line::finish(paragraph, &points, &lines, measure, alignment);
        }
    }
    Vec::new()
}

/// Width of the longest word, and of everything on one line, in points.
pub(super) fn extent(paragraph: &Paragraph<'_>) -> (f32, f32) {
    let none = Dictionary::of("");
    let points = points::find(paragraph, Breaks::Whole, f32::INFINITY, false, &none);
    let (mut least, mut most, mut line_start) = (0.0_f32, 0.0_f32, 0.0_f32);
    for pair in points.windows(2) {
        let [from, to] = pair else { continue };
        least = least.max(to.end.width - from.start.width);
        most = most.max(to.end.width - line_start);
        if to.is_forced() {
            line_start = to.start.width;
        }
    }
    (least, most)
}

/// The text of a paragraph: words and spaces.
pub(super) fn text_of(paragraph: &Paragraph<'_>) -> String {
    paragraph.pieces.iter().map(text_of_piece).collect()
}

fn text_of_piece<'p>(piece: &'p Piece<'_>) -> &'p str {
    match piece {
        Piece::Word { text, .. } => text,
        Piece::Space { .. } => " ",
        Piece::Tie { text, .. } => text,
        Piece::Hinge { .. }
        | Piece::Seam { .. }
        | Piece::Object { .. }
        | Piece::Anchor(_)
        | Piece::Break => "",
    }
}

/// Width in points of what stands before a byte of the paragraph's text, on one line.
pub(super) fn width_until(paragraph: &Paragraph<'_>, byte: usize) -> f32 {
    let (mut at, mut width) = (0, 0.0);
    for piece in &paragraph.pieces {
        let length = text_of_piece(piece).len();
        match piece {
            Piece::Word { shaped, look, .. } => {
                let before = shaped.glyphs.iter().filter(|glyph| glyph.start() + at < byte);
                width += before.map(|g| g.advance).sum::<f32>() * paragraph.look(*look).size;
            }
            Piece::Space { width: w, .. }
            | Piece::Tie { width: w, .. }
            | Piece::Object { width: w, .. } => width += w,
            Piece::Hinge { .. } | Piece::Seam { .. } | Piece::Anchor(_) | Piece::Break => {}
        }
        at += length;
        if at >= byte {
            break;
        }
    }
    width
}
