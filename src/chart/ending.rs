//! Names at the ends of lines, right of the chart.

use super::board::{Anchor, Board, Type};
use super::labels::{Wish, spread};
use super::style::{HAIRLINE, LEADING, QUIET_LINE};
use crate::ink::{Point, Stroke};

/// From the end of a line to its name, in points.
pub(super) const AIR: f32 = 9.0;

/// A name by the end of a line.
pub(super) struct Ending {
    /// In lines, as many as its width needs.
    pub name: Vec<String>,
    pub set: Type,
    /// Where the line ends.
    pub at: Point,
}

impl Ending {
    fn tall(&self) -> f32 {
        self.set.size * LEADING * self.name.len() as f32
    }
}

/// Writes each name beside the end of its line, or as near as the others let it, with a leader
/// then; all between `low` and `high`. Nothing where there is no room for all.
pub(super) fn name(board: &mut Board<'_>, endings: &[Ending], (low, high): (f32, f32)) {
    let wish = |ending: &Ending| Wish { centre: ending.at.y, size: ending.tall() };
    let wishes: Vec<Wish> = endings.iter().map(wish).collect();
    let Some(centres) = spread(&wishes, 2.0, low, high) else { return };
    for (ending, centre) in endings.iter().zip(centres) {
        let Point { x, y } = ending.at;
        if (y - centre).abs() > 2.5 {
            let (from, to) = (Point { x: x + 1.5, y }, Point { x: x + 5.0, y: centre });
            board.line(from, to, Stroke { colour: QUIET_LINE, ..HAIRLINE });
        }
        let top = centre - ending.tall() / 2.0;
        board.lines(ending.set, x + AIR, top, Anchor::Start, &ending.name);
    }
}
