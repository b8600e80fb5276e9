//! Beyond the limit of work: an answer, and how far from the best it can be.

use super::invented::{Recipe, market};
use super::reference::recorded;
use super::*;

/// More shops than can be decided one by one. The gap is proven, so what the tests can think
/// of is not cheaper by more: the same shops less one.
#[test]
fn many_shops_get_an_answer_with_a_gap() {
    let mut market = market(Recipe { seed: 3, items: 25, shops: 24, sums: 100 });
    for (at, shop) in market.shops.iter_mut().enumerate() {
        *shop = terms(400 + at as i64 * 7, None, None);
    }
    let basket = checked(&market);
    let Proof::Within(gap) = basket.proof else { panic!("proven: {basket:?}") };
    assert!(gap > Money::ZERO && gap < basket.total);
    let used = |shop: usize| basket.bills[shop].is_some();
    let mut compared = 0;
    for left_out in (0..market.shops.len()).filter(|shop| used(*shop)) {
        let mut fewer = market.clone();
        for item in &mut fewer.items {
            item.offers.retain(|offer| offer.shop.0 != left_out && used(offer.shop.0));
        }
        if let Ok(other) = fewer.least_cost() {
            assert!(other.total + gap >= basket.total);
            compared += 1;
        }
    }
    assert!(compared > 0);
}

/// With next to no work allowed, what HiGHS found is still where the gap says it is.
#[test]
fn a_gap_holds_the_least_cost() {
    let mut gaps = 0;
    for (market, least) in recorded() {
        for searches in [100, 10_000, 1_000_000_000] {
            let basket = checked_with(&market, one_of(searches));
            assert!(floor(&basket) <= least && least <= in_cents(basket.total), "{basket:?}");
            gaps += usize::from(basket.proof != Proof::LeastCost);
        }
    }
    assert!(gaps >= 30, "{gaps} with a gap");
}
