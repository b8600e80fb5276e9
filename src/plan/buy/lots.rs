//! The offers of an item in the order in which [`super::cover`] takes them, each with the best
//! rates of those to come.

use super::coinage::Coins;
use super::cover::Ask;
use super::table::{Item, Pack};
use super::work::SHORT_OF;

/// An offer under the terms of an ask.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lot {
    /// The pack's place in the item.
    pub place: usize,
    pub pack: Pack,
    /// Parts for one coin.
    pub parts: Coins,
    pub pads: bool,
    /// The best of the offers after this one.
    pub rest: Rates,
}

/// What the whole need costs at a rate.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rates {
    pub cost: f64,
    pub reduced: f64,
}

impl Rates {
    /// Nothing can be bought.
    const NONE: Self = Self { cost: f64::INFINITY, reduced: f64::INFINITY };

    fn better(self, lot: &Lot) -> Self {
        let reduced = self.reduced.min(lot.rate());
        Self { cost: self.cost.min(lot.pack.rate()), reduced }
    }
}

impl Lot {
    /// Of the reduced price.
    pub(super) fn rate(&self) -> f64 {
        self.parts as f64 * self.pack.rate()
    }

    pub(super) fn is_last(&self) -> bool {
        self.rest.reduced.is_infinite()
    }

    /// The reduced cost of a part of the need by this pack alone.
    fn alone(&self, part: f64) -> Option<Coins> {
        let count = self.pack.at_least((part - SHORT_OF) / self.pack.size)?;
        Some(self.pack.cost(count).saturating_mul(self.parts))
    }

    /// As many as fit into the need, with what they cost and the part that is missing then.
    fn fitting(&self) -> Option<(Coins, f64)> {
        let count = self.pack.at_most(1.0 / self.pack.size)?;
        let missing = 1.0 - self.pack.size * f64::from(count);
        Some((self.pack.cost(count).saturating_mul(self.parts), missing))
    }
}

/// The least reduced cost with one offer, or with as many packs of one as fit and another
/// for the rest: seldom the best, but the nearer the limit the shorter the search. `None`
/// when nobody sells.
pub(super) fn quick(lots: &[Lot]) -> Option<Coins> {
    let alone = |part: f64| lots.iter().filter_map(move |lot| lot.alone(part)).min();
    let fitting = lots.iter().filter_map(Lot::fitting);
    let two = fitting.filter_map(|(cost, missing)| Some(cost.saturating_add(alone(missing)?)));
    alone(1.0).into_iter().chain(two).min()
}

/// Packs with a least number that count towards a target, then the rest, the best rate last.
pub(super) fn in_order(item: &Item, ask: Ask<'_>) -> Vec<Lot> {
    let mut lots: Vec<Lot> = item
        .packs
        .iter()
        .enumerate()
        .filter(|(_, pack)| ask.allowed.has(pack.shop))
        .map(|(place, pack)| Lot {
            place,
            pack: *pack,
            parts: ask.reduced(pack),
            pads: ask.pads(pack),
            rest: Rates::NONE,
        })
        .collect();
    lots.sort_by(|one, other| other.pads.cmp(&one.pads).then(other.rate().total_cmp(&one.rate())));
    let mut rest = Rates::NONE;
    for lot in lots.iter_mut().rev() {
        lot.rest = rest;
        rest = rest.better(lot);
    }
    lots
}
