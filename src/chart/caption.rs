//! Texts of dimensions, with a line to write on where the reader measures.

use super::board::{Anchor, Board, Type};
use super::style::{INK, MM};
use crate::ink::{Dash, Point, Stroke};

/// Room for handwriting over a line in millimetres, as on the pages.
const WRITING: f32 = 8.0;

/// From a text to its line.
const SPACE: f32 = 4.0;

/// From the baseline of the text down to the line.
const DROP: f32 = 2.0;

/// What a hand needs, in points of a drawing before it grows with the print: hands do not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hand {
    /// Length of the line to write on; 0 for none.
    line: f32,
    /// Room over it.
    over: f32,
}

impl Hand {
    /// A line of some length in a drawing that will grow by a factor.
    pub fn new(line_mm: f32, grown: f32) -> Self {
        let points = |mm: f32| if mm.is_finite() { mm.max(0.0) * MM / grown } else { 0.0 };
        let line = points(line_mm);
        Self { line, over: if line > 0.0 { points(WRITING) } else { 0.0 } }
    }
}

/// What stands at a dimension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Caption<'a> {
    pub set: Type,
    pub text: &'a str,
    pub hand: Hand,
}

impl Caption<'_> {
    /// Length of the line to write on, in points.
    pub fn line(&self) -> f32 {
        self.hand.line
    }

    /// Room over the line for a hand, in points.
    pub fn over(&self) -> f32 {
        self.hand.over
    }

    /// Text and line beside each other, in points.
    pub fn width(&self, board: &Board<'_>) -> f32 {
        let line = if self.line() > 0.0 { SPACE + self.line() } else { 0.0 };
        board.measure(self.set, self.text) + line
    }

    /// Height of those over the baseline.
    pub fn tall(&self, board: &Board<'_>) -> f32 {
        board.capitals(self.set).max(self.over() - DROP)
    }

    /// Draws the text and its line beside it, from a start on the baseline.
    pub fn draw(&self, board: &mut Board<'_>, at: Point) {
        board.text(self.set, at, Anchor::Start, self.text);
        let x = at.x + board.measure(self.set, self.text) + SPACE;
        self.draw_line(board, Point { x, y: at.y + DROP });
    }

    /// The text over its line: how wide and how high that is.
    pub fn stacked(&self, board: &Board<'_>) -> (f32, f32) {
        let width = board.measure(self.set, self.text).max(self.line());
        (width, board.capitals(self.set) + self.over())
    }

    /// Draws the text over its line around a middle.
    pub fn draw_stacked(&self, board: &mut Board<'_>, middle: Point) {
        let (_, tall) = self.stacked(board);
        let y = middle.y - tall / 2.0 + board.capitals(self.set);
        board.text(self.set, Point { y, ..middle }, Anchor::Middle, self.text);
        let from = Point { x: middle.x - self.line() / 2.0, y: y + self.over() };
        self.draw_line(board, from);
    }

    /// Draws the line by itself.
    pub fn draw_line(&self, board: &mut Board<'_>, from: Point) {
        if self.line() > 0.0 {
            let to = Point { x: from.x + self.line(), ..from };
            let stroke = Stroke { colour: INK, width: 0.6, dash: Dash::Solid };
            board.blank(from, to, stroke, self.text);
        }
    }
}
