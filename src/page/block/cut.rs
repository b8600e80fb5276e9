//! What is cut out of a page: one size for all pieces, lines to cut along, and the size said.

use crate::ink::{Dash, Face, Stroke};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::inline::Look;
use crate::page::strip::Strip;
use crate::page::style::MM;
use crate::page::{Mark, Printing, Role, TagId, draw};

use super::{Joints, text_strips};

/// Between what is said of the size and the pieces.
pub(super) const BELOW: f32 = 4.0;

/// Width and height of a piece in points, whole millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Piece {
    pub width: f32,
    pub height: f32,
}

/// The length in whole millimetres that is not longer.
pub(super) fn down_to_mm(points: f32) -> f32 {
    (points / MM + 0.01).floor() * MM
}

/// The length in whole millimetres that is not shorter.
pub(super) fn up_to_mm(points: f32) -> f32 {
    (points / MM - 0.01).ceil() * MM
}

/// Dashed lines around a piece.
pub(super) fn lines(desk: &Desk<'_, '_>, x: f32, piece: Piece) -> Vec<Mark> {
    let stroke = Stroke { colour: desk.style.palette.quiet, width: 0.5, dash: Dash::Dashed };
    let (right, bottom) = (x + piece.width, piece.height);
    [
        ((x, 0.0), (right, 0.0)),
        ((x, bottom), (right, bottom)),
        ((x, 0.0), (x, bottom)),
        ((right, 0.0), (right, bottom)),
    ]
    .into_iter()
    .map(|(from, to)| Mark { shape: draw::dashed(from, to, stroke), role: Role::Artifact })
    .collect()
}

/// Says to which size all pieces are cut, in quiet small print before the first row, as the
/// content of a tag that was made before theirs.
pub(super) fn said<'a>(
    desk: &mut Desk<'a, '_>,
    piece: Piece,
    column: Column,
    tag: TagId,
) -> Vec<Strip<'a>> {
    desk.findings.printing = Printing::AtItsSize;
    let mm = |points: f32| format!("{:.0}", points / MM);
    let text = desk.cut_to.replace("{width}", &mm(piece.width));
    let text = text.replace("{height}", &mm(piece.height));
    let size = desk.style.scale.small;
    let look = Look::new(Face::Regular, size.size, desk.style.palette.quiet, tag);
    let line = desk.label(text, look, Setting::ragged(column.width));
    text_strips(line.into_iter().collect(), column.x, size, size.leading / 2.0, Joints::Whole)
}
