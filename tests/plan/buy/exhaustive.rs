//! Against trying everything, on small markets.

use super::*;
use std::collections::HashMap;

/// Prices of at least this keep the number of ways to reach a sum small.
const LEAST_PRICE: i64 = 3;

fn some_terms() -> impl Strategy<Value = Terms> {
    (0_i64..14, prop::option::of(1_i64..50), prop::option::weighted(0.4, 1_i64..35))
        .prop_map(|(delivery, free_from, minimum)| terms(delivery, free_from, minimum))
}

fn some_offer(shops: usize) -> impl Strategy<Value = Offer> {
    let price = prop_oneof![1 => Just(0), 12 => LEAST_PRICE..16];
    let multiples = prop_oneof![3 => Just(1_u32), 1 => 2_u32..4];
    let from = prop_oneof![3 => 0_u32..2, 1 => 2_u32..6];
    (0..shops, 1_u32..8, price, multiples, from).prop_map(|(shop, size, price, multiples, from)| {
        let in_multiples_of = NonZeroU32::new(multiples).unwrap();
        Offer { in_multiples_of, from, ..pack(shop, f64::from(size), price) }
    })
}

fn some_market() -> impl Strategy<Value = Market> {
    (1_usize..4).prop_flat_map(|shops| {
        let offers = prop::collection::vec(some_offer(shops), 1..4);
        let item = (1_u32..13, offers).prop_map(|(amount, offers)| need(amount.into(), offers));
        (prop::collection::vec(some_terms(), shops), prop::collection::vec(item, 1..4))
            .prop_map(|(shops, items)| Market { shops, items })
    })
}

/// Goods of every shop in cents, or nothing bought there.
type Goods = Vec<Option<i64>>;

/// All goods that counts of some items make, with the least that any of them leaves over;
/// goods of more than `most` are left out.
fn all_goods(market: &Market, most: i64) -> HashMap<Goods, f64> {
    let mut ways = HashMap::from([(vec![None; market.shops.len()], 0.0)]);
    for item in &market.items {
        let mut choices: HashMap<Goods, f64> = HashMap::new();
        let nothing = vec![0; item.offers.len()];
        every_count(market, item, nothing, 0, &mut |counts| {
            let bought: f64 =
                item.offers.iter().zip(counts).map(|(offer, n)| offer.size * f64::from(*n)).sum();
            if bought < item.amount {
                return;
            }
            let mut goods = vec![None; market.shops.len()];
            for (offer, n) in item.offers.iter().zip(counts).filter(|(_, n)| **n > 0) {
                *goods[offer.shop.0].get_or_insert(0) += in_cents(offer.price) * i64::from(*n);
            }
            let left = (bought - item.amount) / item.amount;
            keep_least(&mut choices, goods, left);
        });
        let mut next = HashMap::new();
        for (so_far, left) in &ways {
            for (goods, more) in &choices {
                let sum: Goods = so_far
                    .iter()
                    .zip(goods)
                    .map(|(one, other)| {
                        one.is_some().then(|| one.unwrap() + other.unwrap_or(0)).or(*other)
                    })
                    .collect();
                if sum.iter().flatten().sum::<i64>() <= most {
                    keep_least(&mut next, sum, left + more);
                }
            }
        }
        ways = next;
    }
    ways
}

fn keep_least(ways: &mut HashMap<Goods, f64>, goods: Goods, left: f64) {
    let known = ways.entry(goods).or_insert(left);
    *known = known.min(left);
}

/// Every count of every offer up to where one more step could be put back whatever else
/// is bought: that alone covers the need and alone reaches every sum of its shop.
fn every_count(
    market: &Market,
    item: &Need,
    mut counts: Vec<u32>,
    at: usize,
    look: &mut impl FnMut(&[u32]),
) {
    let Some(offer) = item.offers.get(at) else { return look(&counts) };
    let (step, price) = (offer.in_multiples_of.get(), in_cents(offer.price));
    let shop = &market.shops[offer.shop.0];
    let sum = [shop.free_from, shop.minimum].into_iter().flatten().map(in_cents).max().unwrap_or(0);
    let covers = (item.amount / offer.size).ceil() as u32;
    let reaches =
        if price > 0 { sum.unsigned_abs().div_ceil(price.unsigned_abs()) as u32 } else { 0 };
    let most = covers.max(reaches).max(offer.from).next_multiple_of(step);
    for count in (0..=most).step_by(step as usize) {
        if count == 0 || count >= offer.from {
            counts[at] = count;
            every_count(market, item, counts.clone(), at + 1, look);
        }
    }
}

/// What the shops charge for goods; nothing when one of them refuses.
fn total(market: &Market, goods: &Goods) -> Option<i64> {
    let mut total = 0;
    for (terms, goods) in market.shops.iter().zip(goods) {
        let Some(goods) = goods else { continue };
        if terms.minimum.is_some_and(|minimum| *goods < in_cents(minimum)) {
            return None;
        }
        let is_free = terms.free_from.is_some_and(|sum| *goods >= in_cents(sum));
        total += goods + if is_free { 0 } else { in_cents(terms.delivery) };
    }
    Some(total)
}

/// The least total, the fewest shops for it, the least left over with these.
fn by_trying_all(market: &Market, most: i64) -> Option<(i64, usize, f64)> {
    all_goods(market, most)
        .into_iter()
        .filter_map(|(goods, left)| {
            Some((total(market, &goods)?, goods.iter().flatten().count(), left))
        })
        .min_by(|one, other| one.partial_cmp(other).unwrap())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    #[test]
    fn nothing_is_cheaper_or_from_fewer_shops_or_leaves_less(market in some_market()) {
        if market.least_cost().is_err() {
            prop_assert_eq!(by_trying_all(&market, i64::MAX), None);
            return Ok(());
        }
        let basket = checked(&market);
        prop_assert_eq!(basket.proof, Proof::LeastCost);
        let (cost, shops, left) = by_trying_all(&market, in_cents(basket.total)).unwrap();
        prop_assert_eq!(in_cents(basket.total), cost);
        let hurried = checked_with(&market, one_of(u32::MAX));
        prop_assert!(floor(&hurried) <= cost && cost <= in_cents(hurried.total));
        prop_assert_eq!(basket.bills.iter().flatten().count(), shops);
        let per_need: f64 =
            basket.left_over.iter().zip(&market.items).map(|(left, item)| left / item.amount).sum();
        prop_assert!((per_need - left).abs() < 1e-6, "{} or {}", per_need, left);
    }
}
