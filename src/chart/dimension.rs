//! Dimension lines as a carpenter draws them: arrows between witness lines.

use super::board::Board;
use super::caption::Caption;
use super::style::{HAIRLINE, INK, WHITE};
use crate::ink::{Point, Rect};

/// Length of an arrow and half its width.
pub(super) const ARROW: (f32, f32) = (5.0, 1.6);

/// What a dimension needs beside its text to hold it: two arrows and a little line.
pub(super) const WITHIN: f32 = 18.0;

/// How far witness lines start from the thing measured, and reach beyond the line of the
/// dimension.
const OVER: f32 = 2.5;

/// From the witness lines to a text beside them.
const AIR: f32 = 4.0;

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
    pub fn draw(&self, board: &mut Board<'_>, caption: &Caption<'_>) {
        let over = OVER * (self.at - self.edge).signum();
        for along in [self.from, self.to] {
            let from = self.place(along, self.edge + over);
            let to = self.place(along, self.at + over);
            board.line(from, to, HAIRLINE);
        }
        let length = self.to - self.from;
        // The line of the dimension passes the middle of the letters.
        let below = board.capitals(caption.set) / 2.0;
        let (width, tall) = match self.run {
            Run::Across => (caption.width(board), caption.tall(board)),
            Run::Down => caption.stacked(board),
        };
        let along = match self.run {
            Run::Across => width,
            Run::Down => tall,
        };
        if length >= along + WITHIN {
            board.line(self.place(self.from, self.at), self.place(self.to, self.at), HAIRLINE);
            self.arrow(board, self.from, 1.0);
            self.arrow(board, self.to, -1.0);
            if !caption.text.is_empty() {
                let middle = self.place((self.from + self.to) / 2.0, self.at);
                let top = match self.run {
                    Run::Across => middle.y + below - tall,
                    Run::Down => middle.y - tall / 2.0,
                };
                let gap = Rect {
                    x: middle.x - width / 2.0 - 3.0,
                    y: top - 3.0,
                    width: width + 6.0,
                    height: tall + 6.0,
                };
                board.rectangle(gap, Some(WHITE), None);
                match self.run {
                    Run::Across => {
                        let at = Point { x: middle.x - width / 2.0, y: middle.y + below };
                        caption.draw(board, at);
                    }
                    Run::Down => caption.draw_stacked(board, middle),
                }
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
                Run::Across => Point { x: after.x + 3.0, y: after.y + below },
                Run::Down => {
                    let y = (before.y + after.y) / 2.0 + below;
                    Point { x: after.x + over.max(0.0) + AIR, y }
                }
            };
            caption.draw(board, at);
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
