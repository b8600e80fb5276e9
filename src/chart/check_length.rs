//! Bars to measure whether a page was printed at its size.

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::style::{HAIRLINE, INK, LABEL, LEADING, MM};
use crate::handout::CheckLength;
use crate::ink::{Face, Faces, Point, Rect};

/// Height of a bar in points.
const BAR: f32 = 5.0;

/// From the end of a bar to its label.
const AIR: f32 = 6.0;

/// Half of the outline, so that it stays inside the drawing.
const RIM: f32 = 0.5;

pub(super) fn draw(data: &CheckLength, larger: f32, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let set = Type { face: Face::Bold, size: LABEL * larger, colour: INK };
    let row = set.size * LEADING;
    let mut width = 0.0_f32;
    for (index, bar) in data.bars.iter().enumerate() {
        let middle = row * (index as f32 + 0.5);
        let length = bar.length as f32 * MM;
        let whole = Rect { x: RIM, y: middle - BAR / 2.0, width: length, height: BAR };
        let part = length / bar.parts.max(1) as f32;
        for at in (0..bar.parts).step_by(2) {
            let x = RIM + part * at as f32;
            board.rectangle(Rect { x, width: part, ..whole }, Some(INK), None);
        }
        board.rectangle(whole, None, Some(HAIRLINE));
        let x = RIM + length + AIR;
        let at = Point { x, y: middle + board.capitals(set) / 2.0 };
        board.text(set, at, Anchor::Start, &bar.label);
        width = width.max(x + board.measure(set, &bar.label));
    }
    board.finish_at_true_size(width + RIM, row * data.bars.len() as f32)
}
