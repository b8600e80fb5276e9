//! Small drawings side by side, each with its name and words below.

use super::super::Drawing;
use super::super::board::{Anchor, Board};
use super::pencil::Pencil;
use super::{NAME, OUTLINE, QUIET};
use crate::handout::Part;
use crate::ink::{Faces, Point};

/// What small drawings have in common.
pub(super) struct Row {
    /// Of each small sheet, in its own units; about a point each.
    pub size: (f32, f32),
    /// Side by side.
    pub most: usize,
    /// What has to fit into each besides its name and words, in points.
    pub least: f32,
}

/// Between neighbours, in points.
const GUTTER: f32 = 14.0;
/// Between rows.
const AIR: f32 = 9.0;
/// Between a drawing and its name.
const BELOW: f32 = 3.0;
/// A drawing narrower than this shows nothing.
const LEAST: f32 = 44.0;
/// Larger than its own units it looks coarse.
const LARGEST: f32 = 1.1;

/// Draws each part with a pencil on its own sheet.
pub(super) fn panels(
    parts: &[Part],
    row: &Row,
    width: f32,
    faces: &Faces,
    mut sketch: impl FnMut(&mut Pencil<'_, '_>, usize),
) -> Drawing {
    let mut board = Board::new(faces);
    let columns = columns(parts, row, width, &board);
    let cell = cell(columns, width);
    let rim = OUTLINE.width / 2.0;
    let scale = ((cell - 2.0 * rim) / row.size.0).min(LARGEST);
    let mut top = 0.0;
    for (number, parts) in parts.chunks(columns).enumerate() {
        if number > 0 {
            top += AIR;
        }
        let below = top + row.size.1 * scale + 2.0 * rim + BELOW;
        let mut foot = below;
        for (column, part) in parts.iter().enumerate() {
            let x = (cell + GUTTER) * column as f32;
            let origin = Point { x: x + rim, y: top + rim };
            sketch(&mut Pencil { board: &mut board, origin, scale }, number * columns + column);
            let mut end = below;
            for (set, text) in [(NAME, &part.name), (QUIET, &part.words)] {
                let lines = board.wrap(set, cell, text);
                end += board.lines(set, x, end, Anchor::Start, &lines);
            }
            foot = foot.max(end);
        }
        top = foot;
    }
    board.finish(width, top)
}

/// As many as fit, in even rows.
fn columns(parts: &[Part], row: &Row, width: f32, board: &Board<'_>) -> usize {
    let widest =
        |set, text: &str| text.split(' ').map(|word| board.measure(set, word)).fold(0.0, f32::max);
    let wanted = |part: &Part| widest(NAME, &part.name).max(widest(QUIET, &part.words));
    let least = parts.iter().map(wanted).fold((row.least + OUTLINE.width).max(LEAST), f32::max);
    let even = |columns: &usize| parts.len().is_multiple_of(*columns);
    let fit = |columns: &usize| cell(*columns, width) >= least;
    (1..=row.most).rev().filter(even).find(fit).unwrap_or(1)
}

fn cell(columns: usize, width: f32) -> f32 {
    (width + GUTTER) / columns as f32 - GUTTER
}
