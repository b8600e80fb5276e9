use std::ops::RangeInclusive;

use super::Alignment;
use super::fit::Fitted;
use super::piece::Give;
use super::piece::{LinkTo, Look, Paragraph, Piece};
use super::points::{Place, Point, PointKind, given};
use crate::ink::{Glyph, Point as Spot, Shape, TextRun};
use crate::page::{Mark, Role, TagId};

/// What ends a line at the division of a word: a soft hyphen, so that a reader
/// who listens hears the word whole (ISO 32000-1, 14.8.2.2.3).
const SOFT_HYPHEN: &str = "\u{AD}";

/// A line; its marks start at x 0 and stand on a baseline at y 0.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::page) struct Line<'a> {
    pub marks: Vec<Mark>,
    pub links: Vec<LinkSpan<'a>>,
    /// Places that are named in it.
    pub anchors: Vec<&'a str>,
    /// From x 0 to the end of the last mark, in points.
    pub width: f32,
    /// Height that it needs beyond the leading of its text, or zero.
    pub height: f32,
    /// Largest type size in it.
    pub size: f32,
    /// Whether it ends within a word.
    pub divided: bool,
}

/// A part of a line that is a link.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::page) struct LinkSpan<'a> {
    pub x: f32,
    pub width: f32,
    pub size: f32,
    pub to: LinkTo<'a>,
    pub tag: TagId,
    pub description: String,
}

/// Sets the glyphs of fitted lines.
pub(super) fn finish<'a>(
    paragraph: &Paragraph<'a>,
    points: &[Point],
    lines: &[Fitted],
    measure: f32,
    alignment: Alignment,
) -> Vec<Line<'a>> {
    let mut set = Vec::with_capacity(lines.len());
    for line in lines {
        let (Some(from), Some(to)) = (points.get(line.from), points.get(line.to)) else { continue };
        let natural = to.end.width - from.start.width + to.hyphen;
        let (ratio, x) = match alignment {
            Alignment::Justified => (line.ratio, 0.0),
            Alignment::Left => (0.0, 0.0),
            Alignment::Centre => (0.0, ((measure - natural) / 2.0).max(0.0)),
            Alignment::Right => (0.0, (measure - natural).max(0.0)),
        };
        set.push(Builder::new(paragraph, measure, ratio, x).build(from, to));
    }
    set
}

struct Builder<'p, 'a> {
    paragraph: &'p Paragraph<'a>,
    measure: f32,
    ratio: f32,
    /// Where the next mark goes.
    x: f32,
    line: Line<'a>,
    /// Glyphs and bytes of text that may still come.
    room: (usize, usize),
    /// The run that grows, with the index of its look.
    run: Option<(usize, TextRun)>,
}

impl<'p, 'a> Builder<'p, 'a> {
    fn new(paragraph: &'p Paragraph<'a>, measure: f32, ratio: f32, x: f32) -> Self {
        let line = Line {
            marks: Vec::new(),
            links: Vec::new(),
            anchors: Vec::new(),
            width: 0.0,
            height: 0.0,
            size: 0.0,
            divided: false,
        };
        Self { paragraph, measure, ratio, x, line, room: (0, 0), run: None }
    }

    fn build(mut self, from: &Point, to: &Point) -> Line<'a> {
        let mut place = from.from;
        self.room = self.room_for(place.piece..=to.until.piece);
        while place.piece < to.until.piece {
            self.piece(place, None);
            place = Place { piece: place.piece + 1, glyph: 0 };
        }
        if to.until.glyph > place.glyph {
            self.piece(place, Some(to.until.glyph));
        }
        self.ending(to);
        self.flush();
        self.line.width = self.x;
        self.line
    }

    /// How many glyphs and bytes of text some pieces may need.
    fn room_for(&self, pieces: RangeInclusive<usize>) -> (usize, usize) {
        let pieces = self.paragraph.pieces.get(pieces).unwrap_or_default();
        pieces.iter().fold((2, 4), |(glyphs, bytes), piece| match piece {
            Piece::Word { text, shaped, .. } => (glyphs + shaped.glyphs.len(), bytes + text.len()),
            Piece::Space { .. } => (glyphs + 1, bytes + 1),
            Piece::Tie { text, .. } => (glyphs + 1, bytes + text.len()),
            Piece::Hinge { .. }
            | Piece::Seam { .. }
            | Piece::Object { .. }
            | Piece::Anchor(_)
            | Piece::Break => (glyphs, bytes),
        })
    }

    /// Adds a piece from a glyph on, up to another if any.
    fn piece(&mut self, place: Place, until: Option<usize>) {
        let Some(piece) = self.paragraph.pieces.get(place.piece) else { return };
        match piece {
            Piece::Word { text, shaped, look } => {
                let until = until.unwrap_or(shaped.glyphs.len());
                let glyphs = shaped.glyphs.get(place.glyph..until).unwrap_or_default();
                let start = match glyphs.first() {
                    Some(first) if place.glyph > 0 => first.start(),
                    _ => 0,
                };
                let end = match shaped.glyphs.get(until) {
                    Some(next) => next.start(),
                    None => text.len(),
                };
                self.add(*look, text.get(start..end).unwrap_or_default(), start, glyphs);
            }
            Piece::Space { look, width, glyph } => {
                self.gap(*look, *glyph, " ", *width + given(*width, self.ratio));
            }
            Piece::Tie { text, look, width, glyph, give } => {
                let extra = match give {
                    Give::Elastic => given(*width, self.ratio),
                    Give::Rigid => 0.0,
                };
                self.gap(*look, *glyph, text, *width + extra);
            }
            Piece::Object { object, look, width } => {
                self.flush();
                let look = self.paragraph.look(*look);
                let width = width.min(self.measure);
                let (shape, role) = object.draw(self.x, width, look.size, look.colour);
                self.line.marks.push(Mark { shape, role });
                self.line.height = self.line.height.max(object.line_height());
                self.line.size = self.line.size.max(look.size);
                self.x += width;
            }
            Piece::Anchor(name) => self.line.anchors.push(name),
            Piece::Hinge { .. } | Piece::Seam { .. } | Piece::Break => {}
        }
    }

    /// What stands at the line's end: a hyphen, or a space without room so that
    /// the words of two lines stay apart for a reader who listens.
    fn ending(&mut self, to: &Point) {
        let piece = self.paragraph.pieces.get(to.until.piece);
        if let PointKind::Divided(_) = to.kind {
            self.line.divided = true;
            let look = match (piece, self.paragraph.pieces.get(to.until.piece.wrapping_sub(1))) {
                (Some(Piece::Word { look, .. }), _) if to.until.glyph > 0 => *look,
                (_, Some(Piece::Hinge { look })) => *look,
                _ => return,
            };
            if let Some(hyphen) = self.paragraph.hyphens.get(look) {
                let glyphs: Vec<Glyph> = hyphen
                    .glyphs
                    .iter()
                    .map(|glyph| Glyph { text: 0..SOFT_HYPHEN.len() as u32, ..glyph.clone() })
                    .collect();
                self.add(look, SOFT_HYPHEN, 0, &glyphs);
            }
        } else if let Some(Piece::Space { look, glyph, .. }) = piece {
            self.gap(*look, *glyph, " ", 0.0);
        }
    }

    /// Adds a space `width` points wide.
    fn gap(&mut self, look: usize, id: u16, text: &str, width: f32) {
        let advance = width / self.paragraph.look(look).size;
        let glyph = Glyph { id, advance, x_offset: 0.0, y_offset: 0.0, text: 0..text.len() as u32 };
        self.add(look, text, 0, &[glyph]);
    }

    /// Adds glyphs that stand for a text; their ranges count from `start` bytes
    /// before it.
    fn add(&mut self, look: usize, text: &str, start: usize, glyphs: &[Glyph]) {
        if self.run.as_ref().is_none_or(|(current, _)| *current != look) {
            self.flush();
            let Look { face, size, colour, .. } = self.paragraph.look(look);
            let origin = Spot { x: self.x, y: 0.0 };
            let (glyphs, bytes) = self.room;
            let (glyphs, text) = (Vec::with_capacity(glyphs), String::with_capacity(bytes));
            self.run = Some((look, TextRun { face, size, colour, origin, glyphs, text }));
        }
        let Some((_, run)) = &mut self.run else { return };
        let (at, start) = (run.text.len() as u32, start as u32);
        run.text.push_str(text);
        for glyph in glyphs {
            let range = (glyph.text.start + at).saturating_sub(start)
                ..(glyph.text.end + at).saturating_sub(start);
            self.x += glyph.advance * run.size;
            run.glyphs.push(Glyph { text: range, ..glyph.clone() });
        }
        self.line.size = self.line.size.max(run.size);
    }

    fn flush(&mut self) {
        let Some((index, mut run)) = self.run.take() else { return };
        self.room.0 = self.room.0.saturating_sub(run.glyphs.len());
        self.room.1 = self.room.1.saturating_sub(run.text.len());
        if run.glyphs.capacity() > 2 * run.glyphs.len() {
            run.glyphs.shrink_to_fit();
            run.text.shrink_to_fit();
        }
        let look = self.paragraph.look(index);
        if let Some((to, tag, description)) =
            look.link.and_then(|link| self.paragraph.links.get(link))
        {
            let (x, width) = (run.origin.x, self.x - run.origin.x);
            let description = description.clone();
            let span = LinkSpan { x, width, size: run.size, to: *to, tag: *tag, description };
            self.line.links.push(span);
        }
        self.line.marks.push(Mark { shape: Shape::Text(run), role: Role::Content(look.tag) });
    }
}
