//! A frame beside a canvas that is measured by hand, to sketch in.

use super::board::Board;
use super::style::QUIET_LINE;
use crate::handout::Unfolded;
use crate::ink::{Dash, Rect, Stroke};

/// What a rectangle with its strips takes of a width that it shares with a frame.
const CANVAS: f32 = 0.66;

/// Narrower than this, in points of print that is not enlarged, a canvas keeps all of it.
const CANVAS_NARROWEST: f32 = 240.0;

/// Air before the frame, in points, and the least width that is worth one.
const APART: f32 = 16.0;
const NARROWEST: f32 = 70.0;

const LINE: Stroke = Stroke { colour: QUIET_LINE, width: 0.8, dash: Dash::Solid };

/// The width that is left for a canvas.
pub(super) fn room_beside(data: &Unfolded, width: f32) -> f32 {
    let shared = width * CANVAS;
    if is_measured_by_hand(data) && shared >= CANVAS_NARROWEST { shared } else { width }
}

/// Draws the frame from where the canvas ends to the end of a width, and tells how far the
/// drawing reaches then. No frame where there is no room.
pub(super) fn frame(
    board: &mut Board<'_>,
    data: &Unfolded,
    (reach, width): (f32, f32),
    height: f32,
) -> f32 {
    let x = reach + APART;
    if !is_measured_by_hand(data) || width - x < NARROWEST {
        return reach;
    }
    let place = Rect { x, y: 1.0, width: width - x - 1.0, height: height - 2.0 };
    board.rectangle(place, None, Some(LINE));
    width
}

fn is_measured_by_hand(data: &Unfolded) -> bool {
    data.blank_mm > 0.0
}
