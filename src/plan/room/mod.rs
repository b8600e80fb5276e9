//! The room: what stands on which table, where the canvases dry, and the washing-up.
//!
//! In: the lesson, its heads, supplies, batches and leftovers. Out: counts, areas, days and
//! volumes.

mod drying;
mod extent;
mod rows;
mod setting;
mod washing;

pub use drying::{DryingPlace, DryingPlan, FinishDay, Lying};
pub use extent::Extent;
pub use setting::{Setting, Stands, TableKind};
pub use washing::{Washed, WashingPlan};

use super::{Batch, Heads, Impossible, Leftover, SupplyNeed};
use crate::lesson::Lesson;

/// Tables, drying and washing-up of a class.
#[derive(Debug, Clone)]
pub struct RoomPlan {
    /// Tables to work at, the fuller ones first; at most two kinds, and one apart in students.
    pub tables: Vec<TableKind>,
    /// Canvases and supplies, and where they stand.
    pub setting: Vec<Setting>,
    pub drying: DryingPlan,
    pub washing: WashingPlan,
}

/// Works the room out.
pub(super) fn room(
    lesson: &Lesson,
    heads: Heads,
    supplies: &[SupplyNeed],
    mixing: &[Batch],
    leftovers: &[Leftover],
) -> Result<RoomPlan, Impossible> {
    let tables = setting::tables(heads);
    Ok(RoomPlan {
        setting: setting::setting(lesson, heads, &tables, supplies)?,
        tables,
        drying: drying::drying(lesson, heads)?,
        washing: washing::washing(lesson, supplies, mixing, leftovers),
    })
}
