use crate::handout::{Inline, Row, RowKind};
use crate::page::strip::Joint;

/// Ending a page between two rows; a table stays whole if that costs little.
const BETWEEN_ROWS: f32 = 12.0;

/// A table of at most so many rows is kept on one page.
const SHORT: usize = 6;
const WITHIN_SHORT: f32 = 250.0;

/// Ending it soon after a table's head or shortly before its end costs more.
const EARLY: usize = 4;
const SOON: f32 = 40.0;

/// Leaving one row of a group alone on either page: only where it saves most of a page.
const ALONE: f32 = 420.0;

/// Parting a group that is filled in by hand costs as much: nobody turns the page to write.
const WRITTEN: f32 = 400.0;

/// How each row joins the one before it.
pub(super) fn joints(rows: &[Row]) -> Vec<Joint> {
    let count = rows.len();
    let within = if count <= SHORT { WITHIN_SHORT } else { BETWEEN_ROWS };
    let mut joints = Vec::with_capacity(count);
    let mut previous = None;
    // Rows of the group before this one, and after it.
    let mut before = 0;
    let grouped = rows.iter().any(|row| row.kind == RowKind::Group);
    for (index, row) in rows.iter().enumerate() {
        let after = rows.iter().skip(index + 1).take_while(|row| row.kind == RowKind::Body).count();
        joints.push(match (previous, row.kind) {
            // Two rows at least stand under a head, and on the last page; a group's
            // heading stays with its first row, the total with what it sums.
            (None | Some(RowKind::Group), _) | (_, RowKind::Total) => Joint::Glued,
            _ if index == 1 || index + 1 == count => Joint::Glued,
            (_, RowKind::Group) => Joint::Open(within * 0.3),
            (_, RowKind::Body) if before == 1 || after == 0 => Joint::Open(within.max(ALONE)),
            (_, RowKind::Body) if grouped && is_written(row) => Joint::Open(within.max(WRITTEN)),
            (_, RowKind::Body) if index < EARLY || index + EARLY > count => {
                Joint::Open(within + SOON)
            }
            (_, RowKind::Body) => Joint::Open(within),
        });
        before = if row.kind == RowKind::Body { before + 1 } else { 0 };
        previous = Some(row.kind);
    }
    joints
}

/// Whether something is written into a row by hand.
fn is_written(row: &Row) -> bool {
    row.cells.iter().flatten().any(|piece| matches!(piece, Inline::Blank { .. }))
}
