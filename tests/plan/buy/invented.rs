//! Invented markets of any size, the same from a seed here and in
//! `tests/reference/least_cost_baskets.py`.

use puddlebook::plan::buy::{Market, Need, Offer, ShopAt, Terms};
use puddlebook::quantity::{Decimal, Money};
use std::num::NonZeroU32;

/// What a market is made from.
#[derive(Debug, Clone, Copy)]
pub struct Recipe {
    pub seed: u64,
    pub items: u64,
    pub shops: u64,
    /// How much the sums of the shops ask for, in per cent of what they may hope to sell.
    pub sums: u64,
}

/// Sizes of bottles in millilitres, and what a millilitre costs in them in per cent.
const BOTTLES: [(u64, u64); 5] = [(59, 150), (118, 125), (236, 108), (473, 93), (946, 82)];

/// Knuth's linear congruential generator for 64 bits (MMIX), its upper bits.
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % sides
    }

    fn between(&mut self, least: u64, most: u64) -> u64 {
        least + self.below(most - least + 1)
    }
}

pub fn market(recipe: Recipe) -> Market {
    let mut dice = Dice(recipe.seed);
    let fair_share = recipe.items * 15 * recipe.sums / recipe.shops;
    let shops = (0..recipe.shops).map(|_| terms(&mut dice, fair_share)).collect();
    let items = (0..recipe.items).map(|_| item(&mut dice, recipe.shops)).collect();
    Market { shops, items }
}

fn terms(dice: &mut Dice, fair_share: u64) -> Terms {
    let delivery = dice.between(40, 180) * 5;
    let free_from = fair_share * dice.between(40, 220) / 100;
    let has_free_from = dice.below(4) > 0;
    let minimum = fair_share * dice.between(20, 120) / 100;
    let has_minimum = dice.below(2) > 0;
    Terms {
        delivery: cents(delivery),
        free_from: has_free_from.then(|| cents(free_from)),
        minimum: has_minimum.then(|| cents(minimum)),
    }
}

/// Sold in most shops, in two to four sizes, some in trays, some cheaper by the dozen.
fn item(dice: &mut Dice, shops: u64) -> Need {
    let amount = dice.between(60, 2400);
    let rate = dice.between(80, 400);
    let surely = dice.below(shops);
    let mut offers = Vec::new();
    for shop in 0..shops {
        let level = dice.between(85, 120);
        if dice.below(4) == 0 && shop != surely {
            continue;
        }
        let sizes = dice.between(2, 4);
        let smallest = dice.below(5 - sizes + 1);
        for (size, dearness) in BOTTLES.iter().skip(smallest as usize).take(sizes as usize) {
            let price = rate * size * dearness * level / 1_000_000 / 10 * 10 + 9;
            let tray = if dice.below(8) == 0 { dice.between(2, 6) } else { 1 };
            offers.push(offer(shop, *size, price, tray, 1));
            if dice.below(5) == 0 {
                let from = dice.between(3, 12);
                offers.push(offer(shop, *size, price * 92 / 100, 1, from));
            }
        }
    }
    Need { amount: amount as f64, offers }
}

fn offer(shop: u64, size: u64, price: u64, tray: u64, from: u64) -> Offer {
    Offer {
        shop: ShopAt(shop as usize),
        size: size as f64,
        price: cents(price),
        in_multiples_of: NonZeroU32::new(tray as u32).unwrap_or(NonZeroU32::MIN),
        from: from as u32,
    }
}

fn cents(cents: u64) -> Money {
    Money::new(Decimal::new(cents as i64, 2))
}
