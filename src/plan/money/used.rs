//! What is used up of each item, at what was paid for it.

use crate::lesson::{Lesson, Life, MaterialKind};
use crate::plan::order::{best_rate, reading};
use crate::plan::{OrderItem, OrderLine, Purchase};
use crate::quantity::{Coin, Decimal, Money};

/// What is used up of an item: what was bought for it at the price paid, the rest (from
/// stock) at the best price of the list. `None` when there is no price. Amounts that are paid
/// are exact; what is used up is a part of a pack, rounded to the smallest coin once.
pub(super) fn used_up(lesson: &Lesson, line: &OrderLine) -> Option<Money> {
    let coin = Coin::of(lesson.print.currency);
    let is_kept = matches!(line.what, OrderItem::Supply(Life::Washable));
    let priced = |part: f64| {
        let (price, size) = best_rate(&lesson.shops, line)?;
        Some(share_of(price, part / size, coin))
    };
    let spent = match &line.purchase {
        Purchase::NoPrice | Purchase::Elsewhere => return None,
        // What is in the cupboard and goes back there costs nothing.
        Purchase::Nothing if is_kept => Money::ZERO,
        Purchase::Nothing if is_tap_water(line) => {
            priced(reading(line, line.needed)).unwrap_or(Money::ZERO)
        }
        Purchase::Nothing => priced(reading(line, line.needed))?,
        Purchase::Packs { cost, left_over, .. } => {
            let bought = reading(line, line.to_buy);
            let paid = share_of(*cost, bought / (bought + reading(line, *left_over)), coin);
            let from_stock = reading(line, line.needed) - bought;
            paid + priced(from_stock)?
        }
    };
    Some(if is_kept { Money::ZERO } else { spent })
}

fn is_tap_water(line: &OrderLine) -> bool {
    matches!(&line.what, OrderItem::Material(material) if material.kind == MaterialKind::Water)
}

/// A part of an amount to the smallest coin, halves away from zero. The part is a quotient of
/// measured amounts; the money stays decimal.
fn share_of(amount: Money, part: f64, coin: Coin) -> Money {
    let part = Decimal::from_f64_retain(part).unwrap_or_default();
    let exact = amount.amount().checked_mul(part).unwrap_or(amount.amount());
    coin.nearest(Money::new(exact))
}
