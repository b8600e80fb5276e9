//! The line from the middle of a polygon to one of its sides, and the texts that share
//! the face with it.

use super::board::{Anchor, Board, Type};
use super::caption::Caption;
use super::labels::{Wish, spread};
use super::outline::{ellipse, half_width};
use super::style::{HAIRLINE, INK, LEADING};
use crate::ink::Point;

/// Air between a text and what is beside it.
const AIR: f32 = 4.0;
/// From the face to the texts beside it.
const ASIDE: f32 = 10.0;
/// Side of the mark of a right angle.
const SQUARE: f32 = 4.5;
/// Radius of the dot in the middle.
const DOT: f32 = 1.4;

/// A polygon that lies on a side, with its centre and the foot of the line from there.
pub(super) struct Middle<'a> {
    /// For a side of length 1, around the origin.
    pub corners: &'a [Point],
    /// Length of a side in points.
    pub side: f32,
    /// From the centre to a side, in points.
    pub down: f32,
}

/// A text of the face.
#[derive(Debug, Clone)]
struct Note<'c> {
    set: Type,
    lines: Vec<String>,
    /// Whose line to write on stands below them, if it has one.
    below: Option<Caption<'c>>,
    /// Centre of its lines, from the centre of the face.
    centre: Point,
}

impl Note<'_> {
    fn tall(&self) -> f32 {
        let below = self.below.map_or(0.0, |caption| caption.over());
        self.set.size * LEADING * self.lines.len() as f32 + below
    }

    fn wide(&self, board: &Board<'_>) -> f32 {
        let line = self.below.map_or(0.0, |caption| caption.line());
        board.widest(self.set, &self.lines).max(line)
    }

    /// Writes it with its top here.
    fn draw(&self, board: &mut Board<'_>, x: f32, top: f32, anchor: Anchor) {
        board.lines(self.set, x, top, anchor, &self.lines);
        let Some(below) = self.below else { return };
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - below.line() / 2.0,
            Anchor::End => x - below.line(),
        };
        below.draw_line(board, Point { x: left, y: top + self.tall() });
    }
}

/// Where the texts go: within the face, or beside it with a leader.
#[derive(Debug, Clone, Default)]
pub(super) struct Notes<'c> {
    within: Vec<Note<'c>>,
    beside: Vec<Note<'c>>,
}

impl Middle<'_> {
    /// Settles the texts: the name of the face above the centre, the measure right of
    /// the line; what the face has no room for stands beside it in lines of `aside`.
    pub fn settle<'c>(
        &self,
        board: &Board<'_>,
        (face_set, face): (Type, &'c str),
        measure: Caption<'c>,
        aside: f32,
    ) -> Notes<'c> {
        let mut notes = Notes::default();
        let aside = aside - ASIDE;
        if !face.is_empty() {
            let lines = board.wrap(face_set, 2.0 * self.half(-face_set.size) * 0.8, face);
            let centre = Point { x: 0.0, y: 0.0 };
            let mut note = Note { set: face_set, lines, below: None, centre };
            note.centre.y = -DOT - AIR - note.tall() / 2.0;
            let room = 2.0 * self.narrowest(&note);
            let fits = board.widest(face_set, &note.lines) + 2.0 * AIR <= room;
            if !fits {
                note.centre.y = -self.down / 2.0;
            }
            notes.add(note, fits, |note| board.wrap(note.set, aside, face));
        }
        let half = Point { x: 0.0, y: self.down / 2.0 };
        let lines = board.wrap(measure.set, self.half(half.y) - 2.0 * AIR, measure.text);
        let mut note = Note { set: measure.set, lines, below: Some(measure), centre: half };
        let wide = note.wide(board);
        let fits = wide + 2.0 * AIR <= self.narrowest(&note) && note.tall() <= self.down - AIR;
        if fits {
            note.centre.x = AIR + wide / 2.0;
        }
        notes.add(note, fits, |note| board.wrap(note.set, aside, measure.text));
        notes
    }

    /// Draws the line and the texts around a centre; texts beside the face keep above
    /// its lower side.
    pub fn draw(&self, board: &mut Board<'_>, centre: Point, notes: &Notes<'_>) {
        let foot = Point { y: centre.y + self.down, ..centre };
        board.line(centre, foot, HAIRLINE);
        board.path(ellipse(centre, DOT, DOT), Some(INK), None);
        let square = SQUARE.min(self.down / 4.0);
        let corner = Point { x: foot.x - square, y: foot.y - square };
        board.line(Point { y: foot.y, ..corner }, corner, HAIRLINE);
        board.line(corner, Point { x: foot.x, ..corner }, HAIRLINE);
        for note in &notes.within {
            let at = Point { x: centre.x + note.centre.x, y: centre.y + note.centre.y };
            note.draw(board, at.x, at.y - note.tall() / 2.0, Anchor::Middle);
        }
        let wishes: Vec<Wish> = notes
            .beside
            .iter()
            .map(|note| Wish { centre: centre.y + note.centre.y, size: note.tall() })
            .collect();
        let edge = centre.x + self.reach();
        let centres = spread(&wishes, AIR, 0.0, foot.y).unwrap_or_default();
        for (note, y) in notes.beside.iter().zip(centres) {
            let from = Point { x: centre.x, y: centre.y + note.centre.y };
            let bend = Point { x: edge + ASIDE / 3.0, y: from.y };
            board.line(from, bend, HAIRLINE);
            board.line(bend, Point { x: edge + ASIDE - 2.5, y }, HAIRLINE);
            let top = y - note.tall() / 2.0;
            note.draw(board, edge + ASIDE, top, Anchor::Start);
        }
    }

    /// How far the face reaches from its centre to the right.
    fn reach(&self) -> f32 {
        self.corners.iter().map(|corner| corner.x).fold(0.0, f32::max) * self.side
    }

    fn half(&self, y: f32) -> f32 {
        half_width(self.corners, y / self.side) * self.side
    }

    /// How far the face reaches to the right of its centre all along a note.
    fn narrowest(&self, note: &Note<'_>) -> f32 {
        let half = note.tall() / 2.0;
        self.half(note.centre.y - half).min(self.half(note.centre.y + half))
    }
}

impl<'c> Notes<'c> {
    fn add(&mut self, note: Note<'c>, fits: bool, wrap: impl FnOnce(&Note<'c>) -> Vec<String>) {
        if fits {
            self.within.push(note);
        } else {
            let lines = wrap(&note);
            self.beside.push(Note { lines, ..note });
        }
    }

    /// Height of the texts beside the face.
    pub fn tall(&self) -> f32 {
        let sum: f32 = self.beside.iter().map(|note| note.tall() + AIR).sum();
        (sum - AIR).max(0.0)
    }

    /// Width of the texts beside the face, with the air before them.
    pub fn wide(&self, board: &Board<'_>) -> f32 {
        let widths = self.beside.iter().map(|note| note.wide(board) + ASIDE);
        widths.fold(0.0, f32::max)
    }
}
