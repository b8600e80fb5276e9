//! Dimension lines as a carpenter draws them: arrows between witness lines.

use super::board::{Anchor, Board, Type};
use super::style::{HAIRLINE, INK, WHITE};
use crate::ink::{Point, Rect};

/// Length of an arrow and half its width.
const ARROW: (f32, f32) = (5.0, 1.6);

/// What a dimension needs beside its text to hold it: two arrows and a little line.
pub(super) const WITHIN: f32 = 18.0;

/// Which way a dimension runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Run {
    Across,
    Down,
}

/// What is measured, and where the line of the dimension lies.
#[derive(Debug, Clone, Copy)]
pub(super) struct Dimension {
    pub run: Run,
    /// From and to along the run.
    pub from: f32,
    pub to: f32,
    /// Where the dimension line lies, across the run.
    pub at: f32,
    /// Where the witness lines begin: the edge of the thing measured.
    pub edge: f32,
}

impl Dimension {
    fn place(&self, along: f32, across: f32) -> Point {
        match self.run {
            Run::Across => Point { x: along, y: across },
            Run::Down => Point { x: across, y: along },
        }
    }

    /// Draws the lines with the text in a gap of the dimension line; a dimension too
    /// short for that has its arrows outside and its text after them.
    pub fn draw(&self, board: &mut Board<'_>, set: Type, text: &str) {
        let over = 2.5 * (self.at - self.edge).signum();
        for along in [self.from, self.to] {
            let from = self.place(along, self.edge + over);
            let to = self.place(along, self.at + over);
            board.line(from, to, HAIRLINE);
        }
        let length = self.to - self.from;
        let (width, capitals) = (board.measure(set, text), board.capitals(set));
        let along_text = match self.run {
            Run::Across => width,
            Run::Down => capitals,
        };
        if length >= along_text + WITHIN {
            board.line(self.place(self.from, self.at), self.place(self.to, self.at), HAIRLINE);
            self.arrow(board, self.from, 1.0);
            self.arrow(board, self.to, -1.0);
            if !text.is_empty() {
                let middle = self.place((self.from + self.to) / 2.0, self.at);
                let gap = Rect {
                    x: middle.x - width / 2.0 - 3.0,
                    y: middle.y - capitals / 2.0 - 3.0,
                    width: width + 6.0,
                    height: capitals + 6.0,
                };
                board.rectangle(gap, Some(WHITE), None);
                let at = Point { y: middle.y + capitals / 2.0, ..middle };
                board.text(set, at, Anchor::Middle, text);
            }
        } else {
            let tail = 2.0 * ARROW.0;
            self.arrow(board, self.from, -1.0);
            self.arrow(board, self.to, 1.0);
            let before = self.place(self.from - tail, self.at);
            board.line(before, self.place(self.from, self.at), HAIRLINE);
            let after = self.place(self.to + tail, self.at);
            board.line(self.place(self.to, self.at), after, HAIRLINE);
            let at = match self.run {
                Run::Across => Point { x: after.x + 3.0, y: after.y + capitals / 2.0 },
                Run::Down => {
                    Point { x: after.x + 4.0, y: (before.y + after.y) / 2.0 + capitals / 2.0 }
                }
            };
            board.text(set, at, Anchor::Start, text);
        }
    }

    /// An arrow whose tip is at `tip` and whose shaft lies in a direction from there.
    fn arrow(&self, board: &mut Board<'_>, tip: f32, direction: f32) {
        let back = tip + direction * ARROW.0;
        let corners = [
            self.place(tip, self.at),
            self.place(back, self.at - ARROW.1),
            self.place(back, self.at + ARROW.1),
        ];
        board.polygon(&corners, Some(INK), None);
    }
}
