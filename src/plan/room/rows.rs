//! Canvases in rows on tables of one size, as people lay them: rows run along the table, a row
//! holds one kind of canvas, all of them turned the same way, and a gap lies between any two.
//!
//! Rows are laid next to each other, the deepest first, and a new table is begun when the next
//! row does not fit any more. That is never fewer tables than are needed and not always the
//! fewest possible; and it never takes fewer tables for more canvases, which cleverer ways to
//! fill tables do not promise.

use super::Extent;
use crate::lesson::TableSize;
use crate::quantity::Length;

/// A hair that sizes in one unit may miss in another.
const HAIR: f64 = 1e-9;

/// How many tables hold so many canvases of each kind; `None` when one kind is larger than
/// the table.
pub(super) fn tables(kinds: &[(Extent, u32)], table: TableSize, gap: Length) -> Option<u32> {
    let mut rows = kinds
        .iter()
        .map(|(extent, pieces)| Rows::of(*extent, *pieces, table, gap))
        .collect::<Option<Vec<_>>>()?;
    rows.sort_by(|one, other| other.depth.value.total_cmp(&one.depth.value));
    let across = table.width + gap;
    let mut begun = 0_u32;
    let mut free = Length::default();
    for Rows { depth, mut rows } in rows {
        // What the table that is begun still takes, then whole tables.
        let here = times(free, depth).min(rows);
        free -= depth * f64::from(here);
        rows -= here;
        let a_table = times(across, depth).max(1);
        if rows > 0 {
            begun = begun.saturating_add(rows.div_ceil(a_table));
            let on_the_last = (rows - 1) % a_table + 1;
            free = across - depth * f64::from(on_the_last);
        }
    }
    Some(begun)
}

/// The rows of one kind.
struct Rows {
    /// Of one row, with the gap behind it.
    depth: Length,
    rows: u32,
}

impl Rows {
    /// Turned the way that takes less of the table's width for each canvas.
    fn of(extent: Extent, pieces: u32, table: TableSize, gap: Length) -> Option<Self> {
        let turned = |along: Length, across: Length| {
            let depth = across + gap;
            let in_a_row = times(table.length + gap, along + gap);
            let fits = in_a_row > 0 && times(table.width + gap, depth) > 0;
            fits.then_some((in_a_row, depth))
        };
        let (width, height) = (extent.width, extent.height);
        let share = |(in_a_row, depth): &(u32, Length)| depth.value / f64::from(*in_a_row);
        let ways = [turned(width, height), turned(height, width)];
        let best = ways.into_iter().flatten().min_by(|a, b| share(a).total_cmp(&share(b)));
        best.map(|(in_a_row, depth)| Self { depth, rows: pieces.div_ceil(in_a_row) })
    }
}

/// How often one length goes into another.
fn times(whole: Length, part: Length) -> u32 {
    // A cast of floats stops at the ends of the range.
    if part.value > 0.0 { (whole.value / part.value + HAIR).floor().max(0.0) as u32 } else { 0 }
}
