//! Which packs to buy where: the numeric core, by itself.

mod exhaustive;
mod recorded;

use proptest::prelude::*;
use puddlebook::plan::buy::{Basket, Market, Need, Offer, Proof, ShopAt, Terms};
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

/// A recorded offer: shop, size, price, multiple, from.
pub fn offer_of([shop, size, price, multiple, from]: [i64; 5]) -> Offer {
    let count = |value: i64| u32::try_from(value).unwrap();
    Offer {
        in_multiples_of: NonZeroU32::new(count(multiple)).unwrap(),
        from: count(from),
        ..pack(usize::try_from(shop).unwrap(), size as f64, price)
    }
}

/// The basket, after checking everything that can be checked without another solver:
/// counts are allowed, needs are met, sums are right, terms are kept.
#[track_caller]
pub fn checked(market: &Market) -> Basket {
    let basket = market.least_cost().unwrap();
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
