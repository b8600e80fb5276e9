//! The search for the least cost over several shops.
//!
//! `cargo bench --bench shopping` prints the times and what was proven.

use divan::{Bencher, black_box};
use puddlebook::plan::buy::{Market, Need, Offer, ShopAt, Terms};
use puddlebook::quantity::{Decimal, Money};
use std::num::NonZeroU32;

fn main() {
    for (items, shops) in SIZES {
        let basket = market(items, shops).least_cost();
        let said = basket.map_or_else(
            |refusal| format!("{refusal:?}"),
            |basket| format!("{}, {:?}", basket.total.amount(), basket.proof),
        );
        println!("{items} items in {shops} shops: {said}");
    }
    divan::main();
}

const SIZES: [(usize, usize); 4] = [(20, 2), (50, 3), (100, 5), (200, 5)];

#[divan::bench(args = SIZES, sample_count = 20)]
fn least_cost(bencher: Bencher, (items, shops): (usize, usize)) {
    let market = market(items, shops);
    bencher.bench_local(|| black_box(&market).least_cost());
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
