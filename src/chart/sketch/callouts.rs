//! Words in a column beside a drawing, each with a line to the part that it is about.

use super::super::board::{Anchor, Board};
use super::super::labels::{Wish, spread};
use super::super::outline::ellipse;
use super::super::style::{INK, LEADING};
use super::{FINE, WORDS};
use crate::ink::Point;

/// Words and the place that they are about.
pub(super) struct Callout<'a> {
    pub words: &'a str,
    pub at: Point,
}

/// Between the words of two labels, and between a line and its words; in points.
const APART: f32 = 3.0;
const BESIDE: f32 = 2.5;
/// Radius of the end of a line.
const END: f32 = 0.9;

/// Writes the labels from `top` on in a column, in their order downwards, near to their places;
/// where they end.
pub(super) fn callouts(
    board: &mut Board<'_>,
    labels: &[Callout<'_>],
    left: f32,
    width: f32,
    (top, bottom): (f32, f32),
) -> f32 {
    let step = WORDS.size * LEADING;
    let lines: Vec<Vec<String>> =
        labels.iter().map(|label| board.wrap(WORDS, width, label.words)).collect();
    let wishes: Vec<Wish> = labels
        .iter()
        .zip(&lines)
        .map(|(label, lines)| Wish { centre: label.at.y, size: step * lines.len() as f32 })
        .collect();
    let room: f32 = wishes.iter().map(|wish| wish.size + APART).sum::<f32>() - APART;
    let bottom = bottom.max(top + room);
    let centres = spread(&wishes, APART, top, bottom).unwrap_or_default();
    let mut end = top;
    for (((label, lines), wish), centre) in labels.iter().zip(&lines).zip(&wishes).zip(centres) {
        let from = Point { x: left - BESIDE, y: centre };
        board.line(from, label.at, FINE);
        board.path(ellipse(label.at, END, END), Some(INK), None);
        let high = centre - wish.size / 2.0;
        end = end.max(high + board.lines(WORDS, left, high, Anchor::Start, lines));
    }
    end
}
