//! Packs bought beyond the need, to bring the goods of a shop to a sum.

use crate::plan::buy::coinage::Coins;
use crate::plan::buy::table::Table;
use crate::plan::buy::work::FILLING;
use std::collections::BTreeMap;

/// A step of a pack that may be bought at any time.
#[derive(Debug, Clone, Copy)]
pub(super) struct Filler {
    pub item: usize,
    pub place: usize,
    /// Packs.
    pub step: u32,
    price: Coins,
    /// In parts of the item's need.
    size: f64,
}

/// The cheapest way to buy for at least so many coins.
#[derive(Debug, Clone, Copy)]
pub(super) struct Entry {
    pub cost: Coins,
    pub left: f64,
    filler: usize,
}

/// The cheapest ways for every number of coins up to what is of use, by the recurrence
/// `best(d) = least over the fillers of price + best(d - price)`, in whole coins.
#[derive(Debug)]
pub(super) struct Filling {
    fillers: Vec<Filler>,
    /// For 0 coins, 1 coin, and so on; empty when there is nothing to fill with.
    table: Vec<Entry>,
    reach: Coins,
}

impl Filling {
    /// For at most `most` coins in a shop. Of fillers at one price, only that which leaves
    /// least over is of use.
    pub(super) fn new(table: &Table, shop: usize, most: Coins) -> Self {
        let mut by_price: BTreeMap<Coins, Filler> = BTreeMap::new();
        for (item, packs) in table.items.iter().map(|item| &item.packs).enumerate() {
            for (place, pack) in packs.iter().enumerate() {
                if pack.shop != shop || !pack.is_free_to_add() || pack.price == 0 {
                    continue;
                }
                let (price, size) = (pack.cost(pack.step), pack.size * f64::from(pack.step));
                let filler = Filler { item, place, step: pack.step, price, size };
                let known = by_price.entry(price).or_insert(filler);
                if size < known.size {
                    *known = filler;
                }
            }
        }
        let fillers: Vec<Filler> = by_price.into_values().collect();
        let room = FILLING / fillers.len().max(1);
        let reach = most.min(room as Coins);
        let table = if fillers.is_empty() { Vec::new() } else { tabulate(&fillers, reach) };
        Self { fillers, table, reach }
    }

    /// Whether [`Filling::best`] knows about so many coins.
    pub(super) fn knows(&self, missing: Coins) -> bool {
        missing <= self.reach || self.fillers.is_empty()
    }

    /// `None` when nothing can fill, or the table does not reach so far.
    pub(super) fn best(&self, missing: Coins) -> Option<(Coins, f64)> {
        if missing <= 0 {
            return Some((0, 0.0));
        }
        let entry = self.table.get(usize::try_from(missing).ok()?)?;
        Some((entry.cost, entry.left))
    }

    /// Whether it can fill at all.
    pub(super) fn is_possible(&self) -> bool {
        !self.fillers.is_empty()
    }

    /// The steps of the best way.
    pub(super) fn packs(&self, missing: Coins) -> Vec<Filler> {
        let mut packs = Vec::new();
        let mut missing = missing;
        while missing > 0 {
            let entry = usize::try_from(missing).ok().and_then(|at| self.table.get(at));
            let Some(filler) = entry.and_then(|entry| self.fillers.get(entry.filler)) else {
                break;
            };
            packs.push(*filler);
            missing -= filler.price;
        }
        packs
    }
}

fn tabulate(fillers: &[Filler], reach: Coins) -> Vec<Entry> {
    let mut table = vec![Entry { cost: 0, left: 0.0, filler: 0 }];
    for missing in 1..=reach {
        let ways = fillers.iter().enumerate().filter_map(|(at, filler)| {
            let before = usize::try_from((missing - filler.price).max(0)).ok()?;
            let before: &Entry = table.get(before)?;
            let cost = before.cost + filler.price;
            Some(Entry { cost, left: before.left + filler.size, filler: at })
        });
        let best = ways
            .min_by(|one, other| one.cost.cmp(&other.cost).then(one.left.total_cmp(&other.left)));
        table.extend(best);
    }
    table
}
