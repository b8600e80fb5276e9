//! Which packs to buy where: the numeric core, by itself.

mod exhaustive;
mod invented;
mod limits;
mod reference;
mod refusals;
mod terms;

use proptest::prelude::*;
use puddlebook::plan::buy::{Basket, Bill, Effort, Market, Need, Offer, Proof, ShopAt, Terms};
use puddlebook::quantity::{Decimal, Money};
use std::num::NonZeroU32;

pub fn cents(cents: i64) -> Money {
    Money::new(Decimal::new(cents, 2))
}

pub fn in_cents(money: Money) -> i64 {
    let cents = money.amount() * Decimal::ONE_HUNDRED;
    assert_eq!(cents.fract(), Decimal::ZERO);
    i64::try_from(cents).unwrap()
}

/// One pack at a time, as many as one likes.
pub fn pack(shop: usize, size: f64, price: i64) -> Offer {
    let in_multiples_of = NonZeroU32::MIN;
    Offer { shop: ShopAt(shop), size, price: cents(price), in_multiples_of, from: 1 }
}

pub fn need(amount: f64, offers: Vec<Offer>) -> Need {
    Need { amount, offers }
}

/// Delivery, free from, minimum.
pub fn terms(delivery: i64, free_from: Option<i64>, minimum: Option<i64>) -> Terms {
    Terms {
        delivery: cents(delivery),
        free_from: free_from.map(cents),
        minimum: minimum.map(cents),
    }
}

/// Goods and delivery of the shops that are used.
pub fn bills(basket: &Basket) -> Vec<Option<(i64, i64)>> {
    let bill = |bill: &Bill| (in_cents(bill.goods), in_cents(bill.delivery));
    basket.bills.iter().map(|it| it.as_ref().map(bill)).collect()
}

/// The basket, after checking everything that can be checked without another solver:
/// counts are allowed, needs are met, sums are right, terms are kept.
#[track_caller]
pub fn checked(market: &Market) -> Basket {
    checked_with(market, Effort::Whole)
}

/// As [`checked`], of a search that shares its limit of work with so many others.
#[track_caller]
pub fn checked_with(market: &Market, effort: Effort) -> Basket {
    let basket = market.least_cost_with(effort).unwrap();
    let mut goods = vec![None; market.shops.len()];
    for ((item, counts), left) in market.items.iter().zip(&basket.counts).zip(&basket.left_over) {
        let mut bought = 0.0;
        for (offer, count) in item.offers.iter().zip(counts) {
            assert_eq!(*count % offer.in_multiples_of, 0);
            assert!(*count == 0 || *count >= offer.from);
            bought += offer.size * f64::from(*count);
            if *count > 0 {
                *goods[offer.shop.0].get_or_insert(Money::ZERO) += offer.price * *count;
            }
        }
        assert!(bought >= item.amount * (1.0 - 1.000_001e-6), "{bought} of {}", item.amount);
        assert!((left - (bought - item.amount.max(0.0)).max(0.0)).abs() <= 1e-9 * bought);
    }
    let mut total = Money::ZERO;
    for ((terms, goods), bill) in market.shops.iter().zip(goods).zip(&basket.bills) {
        assert_eq!(goods, bill.map(|bill| bill.goods));
        let Some(goods) = goods else { continue };
        assert!(terms.minimum.is_none_or(|minimum| goods >= minimum));
        let is_free = terms.free_from.is_some_and(|sum| goods >= sum);
        let delivery = if is_free { Money::ZERO } else { terms.delivery };
        assert_eq!(bill.map(|bill| bill.delivery), Some(delivery));
        total += goods + delivery;
    }
    assert_eq!(basket.total, total);
    basket
}

/// So many searches together.
pub fn one_of(searches: u32) -> Effort {
    Effort::OneOf(NonZeroU32::new(searches).unwrap())
}

/// The least that a basket can cost by what is said of its proof, in cents.
pub fn floor(basket: &Basket) -> i64 {
    match basket.proof {
        Proof::LeastCost => in_cents(basket.total),
        Proof::Within(gap) => in_cents(basket.total - gap),
    }
}

/// The total in cents of a basket that is proven.
#[track_caller]
pub fn least(market: &Market) -> i64 {
    let basket = checked(market);
    assert_eq!(basket.proof, Proof::LeastCost);
    in_cents(basket.total)
}
