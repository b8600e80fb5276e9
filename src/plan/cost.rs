//! What the class costs.

use super::order::{best_rate, reading};
use super::{Cost, Heads, Order, OrderItem, OrderLine, Purchase};
use crate::lesson::{Lesson, Life, MaterialKind};
use crate::quantity::{Currency, Decimal, Money};
use rust_decimal::RoundingStrategy;

/// Sums up the order. Amounts that are paid are exact; what is used up is a part of a
/// pack, rounded to the smallest coin once for each item.
pub(super) fn cost(lesson: &Lesson, order: &Order, heads: Heads) -> Cost {
    let mut used = Money::ZERO;
    let mut unpriced = Vec::new();
    for line in &order.lines {
        match used_up(lesson, line) {
            Some(money) => used += money,
            None => unpriced.push(line.item.clone()),
        }
    }
    Cost {
        order: order.total,
        per_student: order.total.per_head(heads.students).unwrap_or(order.total),
        used,
        unpriced,
    }
}

/// What is used up of an item: what was bought for it at the price paid, the rest (from
/// stock) at the best price of the list. `None` when there is no price.
fn used_up(lesson: &Lesson, line: &OrderLine) -> Option<Money> {
    let is_kept = matches!(line.what, OrderItem::Supply(Life::Washable));
    let priced = |part: f64| {
        let (price, size) = best_rate(&lesson.shops, line)?;
        Some(share_of(price, part / size, lesson.print.currency))
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
            let paid = share_of(
                *cost,
                bought / (bought + reading(line, *left_over)),
                lesson.print.currency,
            );
            let from_stock = reading(line, line.needed) - bought;
            paid + priced(from_stock)?
        }
    };
    Some(if is_kept { Money::ZERO } else { spent })
}

fn is_tap_water(line: &OrderLine) -> bool {
    matches!(&line.what, OrderItem::Material(material) if material.kind == MaterialKind::Water)
}

/// A part of an amount to the smallest coin of the currency, halves away from zero.
fn share_of(amount: Money, part: f64, currency: Currency) -> Money {
    let part = Decimal::from_f64_retain(part).unwrap_or_default();
    let exact = amount.amount().checked_mul(part).unwrap_or(amount.amount());
    let coins = currency.exponent().map_or(2, u32::from);
    Money::new(exact.round_dp_with_strategy(coins, RoundingStrategy::MidpointAwayFromZero))
}
