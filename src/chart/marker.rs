//! Markers that are told apart by their shape alone.

use super::board::{Board, closed};
use super::outline::ellipse;
use super::style::{INK, WHITE};
use crate::ink::{Dash, PathSegment, Point, Stroke};

/// From its middle to its side, in points.
pub(super) const MARKER: f32 = 2.7;

/// So many differ; then they come again.
pub(super) const SHAPES: usize = 8;

/// Draws the marker of a group: four shapes, filled first and then open.
pub(super) fn draw(board: &mut Board<'_>, group: usize, at: Point) {
    let group = group % SHAPES;
    let fill = if group < SHAPES / 2 { INK } else { WHITE };
    let edge = Stroke { colour: INK, width: 0.8, dash: Dash::Solid };
    board.path(outline(group, at), Some(fill), Some(edge));
}

/// All of about the same area.
fn outline(group: usize, at: Point) -> Vec<PathSegment> {
    let corners = |places: &[(f32, f32)]| {
        let place = |(x, y): &(f32, f32)| Point { x: at.x + x * MARKER, y: at.y + y * MARKER };
        closed(&places.iter().map(place).collect::<Vec<_>>())
    };
    match group % (SHAPES / 2) {
        0 => ellipse(at, MARKER, MARKER),
        1 => corners(&[(-0.9, -0.9), (0.9, -0.9), (0.9, 0.9), (-0.9, 0.9)]),
        2 => corners(&[(0.0, -1.25), (1.2, 0.85), (-1.2, 0.85)]),
        _ => corners(&[(0.0, -1.3), (1.1, 0.0), (0.0, 1.3), (-1.1, 0.0)]),
    }
}
