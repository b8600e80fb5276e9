//! When there is no basket, and what is to blame.

use super::*;
use puddlebook::plan::buy::Refusal;

fn refused(shops: Vec<Terms>, items: Vec<Need>) -> Refusal {
    Market { shops, items }.least_cost().unwrap_err()
}

fn open() -> Vec<Terms> {
    vec![terms(0, None, None)]
}

#[test]
fn an_item_sold_nowhere_is_named() {
    let items = vec![need(1.0, vec![pack(0, 1.0, 100)]), need(2.0, vec![])];
    assert_eq!(refused(open(), items), Refusal::SoldNowhere { item: 1 });
}

#[test]
fn a_minimum_out_of_reach_names_item_and_shop() {
    // The one shop gives away for nothing, so nothing adds up to its minimum.
    let shops = vec![terms(0, None, None), terms(0, None, Some(500))];
    let items = vec![need(1.0, vec![pack(0, 1.0, 100)]), need(1.0, vec![pack(1, 1.0, 0)])];
    assert_eq!(refused(shops, items), Refusal::MinimumOutOfReach { item: 1, shop: ShopAt(1) });
    // A million packs of a cent are 10 000.00.
    let shops = vec![terms(0, None, Some(1_000_001))];
    let items = vec![need(1.0, vec![pack(0, 1.0, 1)])];
    assert_eq!(refused(shops, items), Refusal::MinimumOutOfReach { item: 0, shop: ShopAt(0) });
}

#[test]
fn a_shop_out_of_reach_is_left_out_when_another_sells_the_item() {
    let market = Market {
        shops: vec![terms(0, None, Some(1_000_000_000)), terms(250, None, None)],
        items: vec![need(1.0, vec![pack(0, 1.0, 1), pack(1, 1.0, 900)])],
    };
    assert_eq!(bills(&checked(&market)), [None, Some((900, 250))]);
}

#[test]
fn more_than_a_million_packs_are_refused() {
    let just = vec![need(999_999.0, vec![pack(0, 1.0, 1)])];
    assert_eq!(least(&Market { shops: open(), items: just }), 999_999);
    let items = vec![need(1_000_002.0, vec![pack(0, 1.0, 1)])];
    assert_eq!(refused(open(), items), Refusal::TooManyPacks { item: 0 });
    // Another size may do.
    let sizes = vec![pack(0, 1.0, 1), pack(0, 1000.0, 2000)];
    let items = vec![need(1_000_002.0, sizes)];
    assert!(Market { shops: open(), items }.least_cost().is_ok());
}

#[test]
fn numbers_without_sense_are_refused() {
    let item = |amount, size, price| need(amount, vec![pack(0, 1.0, 1), pack(0, size, price)]);
    for (size, price) in [(0.0, 1), (-1.0, 1), (f64::NAN, 1), (f64::INFINITY, 1), (1.0, -1)] {
        let refusal = refused(open(), vec![item(1.0, size, price)]);
        assert_eq!(refusal, Refusal::NoOffer { item: 0, offer: 1 });
    }
    for amount in [f64::NAN, f64::INFINITY] {
        let refusal = refused(open(), vec![item(amount, 1.0, 1)]);
        assert_eq!(refusal, Refusal::NoAmount { item: 0 });
    }
    let elsewhere = vec![need(1.0, vec![pack(1, 1.0, 1)])];
    assert_eq!(refused(open(), elsewhere), Refusal::NoOffer { item: 0, offer: 0 });
    for terms in [terms(-1, None, None), terms(0, Some(-1), None), terms(0, None, Some(-1))] {
        assert_eq!(refused(vec![terms], vec![]), Refusal::NoTerms { shop: ShopAt(0) });
    }
    assert_eq!(refused(vec![terms(0, None, None); 65], vec![]), Refusal::TooManyShops);
}

#[test]
fn sums_beyond_counting_are_refused() {
    let mut dear = pack(0, 1.0, 1);
    dear.price = Money::new(Decimal::MAX);
    let items = vec![need(1.0, vec![dear, pack(0, 1.0, 1)])];
    assert_eq!(refused(open(), items), Refusal::TooDear);
    let items = vec![need(1000.0, vec![pack(0, 1.0, 99_999_999_999), pack(0, 1000.0, 1)])];
    assert_eq!(refused(open(), items), Refusal::TooDear);
}
