//! What a class costs, where it goes, and what a student would have to pay.
//!
//! In: an order and what it is for. Out: a [`Cost`] with its [`Split`] and [`Balance`], and on
//! request [`Fees`]. There are two sums, and both are right: what is paid at the till, for whole
//! packs (`balance`, `fees`), and what is used up out of packs and stock (`used`, `split`).
//!
//! Money is decimal throughout and shared out in whole coins; binary numbers measure paint, and
//! so say in which proportion.

mod balance;
mod fees;
mod split;
mod used;

pub use balance::{Balance, Takings};
pub use fees::{ClassFee, Fees, fees};
pub use split::{CanvasCost, ColourCost, LayerCost, Split};

use super::{Batch, CanvasPlan, Cost, Heads, Impossible, Order};
use crate::lesson::Lesson;
use crate::quantity::Money;

/// Sums up the order and what it is used for.
pub(super) fn cost(
    lesson: &Lesson,
    heads: Heads,
    (canvases, mixing): (&[CanvasPlan], &[Batch]),
    order: &Order,
) -> Result<Cost, Impossible> {
    let used: Vec<Option<Money>> =
        order.lines.iter().map(|line| used::used_up(lesson, line)).collect();
    let lines = order.lines.iter().zip(&used);
    let unpriced = lines.clone().filter(|(_, used)| used.is_none());
    let unpriced = unpriced.map(|(line, _)| line.item.clone()).collect();
    let priced = lines.filter_map(|(line, used)| Some((line, (*used)?)));
    Ok(Cost {
        order: order.total,
        per_student: order.total.per_head(heads.students).unwrap_or(order.total),
        used: used.iter().copied().flatten().sum(),
        split: split::split(lesson, heads, (canvases, mixing), priced)?,
        balance: balance::balance(lesson, heads, order.total),
        unpriced,
    })
}
