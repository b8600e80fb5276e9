//! Beyond the limit of work: an answer, and how far from the best it can be.

use super::invented::{Recipe, market};
use super::*;

/// More shops than can be decided one by one. The gap is proven, so no cheaper basket
/// that the tests can think of is outside it: buying everything in the shops of the answer
/// less one, say.
#[test]
fn many_shops_get_an_answer_with_a_gap() {
    let mut market = market(Recipe { seed: 3, items: 25, shops: 24, sums: 100 });
    for (at, shop) in market.shops.iter_mut().enumerate() {
        *shop = terms(400 + at as i64 * 7, None, None);
    }
    let basket = checked(&market);
    let Proof::Within(gap) = basket.proof else { panic!("proven: {basket:?}") };
    assert!(gap > Money::ZERO && gap < basket.total);
    for (left_out, _) in basket.bills.iter().enumerate().filter(|(_, bill)| bill.is_some()) {
        let mut without = market.clone();
        for item in &mut without.items {
            item.offers.retain(|offer| offer.shop.0 != left_out);
        }
        if let Ok(other) = without.least_cost() {
            assert!(other.total + gap >= basket.total);
        }
    }
}
