//! The search for the least cost over several shops.
//!
//! `cargo bench --bench shopping` prints the times and what was proven.

use divan::{Bencher, black_box};
use puddlebook::plan::buy::{Effort, Market, Need, Offer, ShopAt, Terms};
use puddlebook::quantity::{Decimal, Money};
use std::num::NonZeroU32;

fn main() {
    for (items, shops) in SIZES {
        println!("{items} items in {shops} shops: {}", found(&market(items, shops)));
    }
    for seed in HOSTILE {
        println!("hostile {seed}: {}", found(&hostile(seed)));
    }
    divan::main();
}

fn found(market: &Market) -> String {
    market.least_cost().map_or_else(
        |refusal| format!("{refusal:?}"),
        |basket| format!("{}, {:?}", basket.total.amount(), basket.proof),
    )
}

const SIZES: [(usize, usize); 4] = [(20, 2), (50, 3), (100, 5), (200, 5)];

#[divan::bench(args = SIZES, sample_count = 20)]
fn least_cost(bencher: Bencher, (items, shops): (usize, usize)) {
    let market = market(items, shops);
    bencher.bench_local(|| black_box(&market).least_cost());
}

/// Seeds of lists, of which each is a market of its own.
const HOSTILE: [u64; 10] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

#[divan::bench(args = HOSTILE, sample_count = 3)]
fn least_cost_of_hostile_lists(bencher: Bencher, seed: u64) {
    let market = hostile(seed);
    bencher.bench_local(|| black_box(&market).least_cost());
}

/// The same search where 60 share the work, as the fees for other classes do.
#[divan::bench(args = HOSTILE, sample_count = 3)]
fn a_sixtieth_of_the_work(bencher: Bencher, seed: u64) {
    let market = hostile(seed);
    let effort = Effort::OneOf(NonZeroU32::MIN.saturating_add(59));
    bencher.bench_local(|| black_box(&market).least_cost_with(effort));
}

/// 180 supplies in five shops: every shop has the same three sizes at much the same rate, so
/// goods can be moved about in any number of ways to reach a sum, and most sums can bind.
fn hostile(seed: u64) -> Market {
    let mut dice = Dice(seed);
    let terms = (0..5).map(|_| Terms {
        delivery: cents(550 + 100 * dice.below(8)),
        free_from: Some(cents(10_000 + 100 * dice.below(301))),
        minimum: Some(cents(2_000 + 100 * dice.below(41))),
    });
    let shops: Vec<Terms> = terms.collect();
    let items = (0..180).map(|_| supply(&mut dice, shops.len())).collect();
    Market { shops, items }
}

/// One to four for each of 30 students, of 60 canvases or of 4 tables.
fn supply(dice: &mut Dice, shops: usize) -> Need {
    let heads = [30, 60, 4][dice.below(3) as usize];
    let amount = ((1 + dice.below(4)) * heads) as f64;
    let mut offers = Vec::new();
    for shop in 0..shops {
        if shop > 0 && dice.below(10) < 3 {
            continue;
        }
        for size in [10, 37, 100] {
            let price = cents((100 + dice.below(101)) * size / 10);
            let shop = ShopAt(shop);
            let in_multiples_of = NonZeroU32::MIN;
            offers.push(Offer { shop, size: size as f64, price, in_multiples_of, from: 1 });
        }
    }
    Need { amount, offers }
}

/// An invented price list: every shop sells most items in two to four sizes, asks for a
/// delivery that is free from some sum, and takes no small orders.
fn market(items: usize, shops: usize) -> Market {
    let mut dice = Dice(20_261_125);
    let terms = (0..shops).map(|_| Terms {
        delivery: cents(400 + dice.below(900)),
        free_from: Some(cents(5_000 + 500 * dice.below(30))),
        minimum: Some(cents(1_000 + 100 * dice.below(20))),
    });
    let shops: Vec<Terms> = terms.collect();
    let items = (0..items).map(|_| need(&mut dice, shops.len())).collect();
    Market { shops, items }
}

fn need(dice: &mut Dice, shops: usize) -> Need {
    let amount = 50.0 + dice.below(1_500) as f64;
    let mut offers = Vec::new();
    for shop in 0..shops {
        if shop > 0 && dice.below(10) < 3 {
            continue;
        }
        for size in [59, 118, 237, 473, 946].into_iter().take(2 + dice.below(3) as usize) {
            let price = size * (90 - size / 30) / 40 + dice.below(size / 2);
            offers.push(Offer {
                shop: ShopAt(shop),
                size: size as f64,
                price: cents(price),
                in_multiples_of: NonZeroU32::MIN,
                from: 1,
            });
        }
    }
    Need { amount, offers }
}

fn cents(cents: i64) -> Money {
    Money::new(Decimal::new(cents, 2))
}

/// The linear congruential generator of Knuth's MMIX, enough for prices.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: i64) -> i64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i64::try_from(self.0 >> 33).unwrap_or(0) % end.max(1)
    }
}
