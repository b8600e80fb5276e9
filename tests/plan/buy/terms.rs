//! What a buyer would expect of the terms of shops.

use super::*;

fn market(shops: Vec<Terms>, items: Vec<Need>) -> Market {
    Market { shops, items }
}

#[test]
fn nothing_needed_costs_nothing() {
    let empty = market(vec![terms(500, None, Some(2000))], vec![]);
    assert_eq!(least(&empty), 0);
    let unneeded = market(
        vec![terms(500, None, Some(2000))],
        vec![need(0.0, vec![pack(0, 1.0, 100)]), need(-3.0, vec![])],
    );
    let basket = checked(&unneeded);
    assert_eq!(basket.counts, [vec![0], vec![]]);
    assert_eq!(basket.left_over, [0.0, 0.0]);
    assert_eq!(bills(&basket), [None]);
}

/// 9.00 and 5.00 delivery there, 10.00 and nothing here.
#[test]
fn a_delivery_can_cost_more_than_it_saves() {
    let shops = vec![terms(500, None, None), terms(0, None, None)];
    let offers = vec![pack(0, 1.0, 900), pack(1, 1.0, 1000)];
    let one = market(shops.clone(), vec![need(1.0, offers.clone())]);
    assert_eq!(bills(&checked(&one)), [None, Some((1000, 0))]);
    // Six of them save 6.00.
    let six = market(shops, vec![need(6.0, offers)]);
    assert_eq!(bills(&checked(&six)), [Some((5400, 500)), None]);
}

#[test]
fn delivery_is_free_from_its_sum_on() {
    let shop = |sum| vec![terms(300, Some(sum), None)];
    let items = || vec![need(2.0, vec![pack(0, 1.0, 1000)])];
    assert_eq!(bills(&checked(&market(shop(2000), items()))), [Some((2000, 0))]);
    assert_eq!(bills(&checked(&market(shop(2001), items()))), [Some((2000, 300))]);
}

/// 1.00 more than needed saves 3.00 of delivery.
#[test]
fn more_than_needed_is_bought_where_it_is_cheaper_than_the_delivery() {
    let tape = || need(1.0, vec![pack(0, 1.0, 100)]);
    let paint = || need(1.0, vec![pack(0, 1.0, 1900)]);
    let basket = checked(&market(vec![terms(300, Some(2100), None)], vec![paint(), tape()]));
    assert_eq!((basket.counts, in_cents(basket.total)), (vec![vec![1], vec![2]], 2100));
    // The same again, rather than five for as much.
    let brushes = need(1.0, vec![pack(0, 1.0, 100), pack(0, 5.0, 200)]);
    let basket = checked(&market(vec![terms(300, Some(2100), None)], vec![paint(), brushes]));
    assert_eq!((basket.counts, in_cents(basket.total)), (vec![vec![1], vec![2, 0]], 2100));
}

#[test]
fn a_minimum_order_is_reached_or_avoided() {
    let offers = vec![pack(0, 1.0, 400), pack(1, 1.0, 1100)];
    // Three for 12.00 where one would do, rather than one for 11.00.
    let dear = market(
        vec![terms(0, None, Some(1200)), terms(0, None, None)],
        vec![need(1.0, offers.clone())],
    );
    assert_eq!(bills(&checked(&dear)), [None, Some((1100, 0))]);
    let cheap =
        market(vec![terms(0, None, Some(1000)), terms(150, None, None)], vec![need(1.0, offers)]);
    assert_eq!(bills(&checked(&cheap)), [Some((1200, 0)), None]);
}

/// 0.07 with nothing left, rather than 0.08 for two of the larger.
#[test]
fn two_sizes_go_together() {
    let sizes = vec![pack(0, 1.0, 3), pack(0, 3.0, 4)];
    let basket = checked(&market(vec![terms(0, None, None)], vec![need(4.0, sizes)]));
    assert_eq!((basket.counts, basket.left_over), (vec![vec![1, 1]], vec![0.0]));
    assert_eq!(basket.proof, Proof::LeastCost);
}

#[test]
fn packs_come_in_their_multiples() {
    let six = Offer { in_multiples_of: NonZeroU32::new(6).unwrap(), ..pack(0, 1.0, 100) };
    let basket = checked(&market(vec![terms(0, None, None)], vec![need(7.0, vec![six])]));
    assert_eq!((basket.counts, basket.left_over), (vec![vec![12]], vec![5.0]));
}

/// Nine at 5.00 are 45.00; ten at 4.00 are 40.00, all ten of them at that price.
#[test]
fn a_lower_price_for_more_is_the_price_of_all() {
    let offers = vec![pack(0, 1.0, 500), Offer { from: 10, ..pack(0, 1.0, 400) }];
    let at = |amount| {
        checked(&market(vec![terms(0, None, None)], vec![need(amount, offers.clone())])).counts
    };
    assert_eq!(at(7.0), [[7, 0]]);
    assert_eq!(at(9.0), [[0, 10]]);
    assert_eq!(at(13.0), [[0, 13]]);
}

#[test]
fn the_least_number_is_rounded_up_to_the_multiple() {
    let four = NonZeroU32::new(4).unwrap();
    let offers = vec![Offer { in_multiples_of: four, from: 10, ..pack(0, 1.0, 100) }];
    let basket = checked(&market(vec![terms(0, None, None)], vec![need(3.0, offers)]));
    assert_eq!(basket.counts, [[12]]);
}

#[test]
fn fewer_shops_come_before_less_left_over() {
    let shops = vec![terms(0, None, None), terms(0, None, None)];
    // Exactly in two shops for 6.00, or with two left over in one.
    let exact = need(3.0, vec![pack(0, 2.0, 400), pack(1, 1.0, 200), pack(1, 5.0, 600)]);
    let basket = checked(&market(shops.clone(), vec![exact]));
    assert_eq!((basket.counts, basket.left_over), (vec![vec![0, 3, 0]], vec![0.0]));
    let tied = need(3.0, vec![pack(0, 2.0, 400), pack(1, 1.0, 200), pack(0, 5.0, 600)]);
    let no_more_ones = Need {
        offers: tied
            .offers
            .iter()
            .map(|offer| {
                let once = if offer.size == 1.0 { 3 } else { 1 };
                Offer { size: offer.size / f64::from(once), ..*offer }
            })
            .collect(),
        ..tied
    };
    assert_eq!(checked(&market(shops, vec![no_more_ones])).counts, [[0, 0, 1]]);
}

#[test]
fn two_items_share_a_delivery() {
    let shops = vec![terms(300, None, None), terms(300, None, None)];
    let items = vec![
        need(1.0, vec![pack(0, 1.0, 500), pack(1, 1.0, 600)]),
        need(1.0, vec![pack(0, 1.0, 800), pack(1, 1.0, 600)]),
    ];
    assert_eq!(bills(&checked(&market(shops, items))), [None, Some((1200, 300))]);
}

#[test]
fn a_shortage_of_a_millionth_is_none() {
    let shop = || vec![terms(0, None, None)];
    let just = market(shop(), vec![need(1_000.000_9, vec![pack(0, 500.0, 700)])]);
    assert_eq!(checked(&just).counts, [[2]]);
    let short = market(shop(), vec![need(1000.002, vec![pack(0, 500.0, 700)])]);
    assert_eq!(checked(&short).counts, [[3]]);
}

#[test]
fn large_and_fine_prices_are_exact() {
    let mut fine = pack(0, 1.0, 0);
    fine.price = Money::new(Decimal::new(10_005, 4));
    let basket = market(vec![terms(0, None, None)], vec![need(3.0, vec![fine])]).least_cost();
    assert_eq!(basket.unwrap().total, Money::new(Decimal::new(30_015, 4)));
    // 25 million, in a currency where small change is a thousand.
    let mut large = pack(0, 1.0, 0);
    large.price = Money::new(Decimal::new(12_500_000, 0));
    let basket = market(vec![terms(0, None, None)], vec![need(2.0, vec![large])]).least_cost();
    assert_eq!(basket.unwrap().total, Money::new(Decimal::new(25_000_000, 0)));
}

#[test]
fn the_same_market_gets_the_same_basket() {
    let recipe = super::invented::Recipe { seed: 7, items: 40, shops: 4, sums: 100 };
    let market = super::invented::market(recipe);
    assert_eq!(market.least_cost(), market.least_cost());
}
