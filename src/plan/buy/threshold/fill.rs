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
struct Entry {
    cost: Coins,
    left: f64,
    filler: usize,
}

/// The cheapest ways for every number of coins up to what is of use, by the recurrence
/// `best(d) = least over the fillers of price + best(d - price)`, in whole coins.
#[derive(Debug)]
pub(super) struct Filling {
    fillers: Vec<Filler>,
    /// For 0 coins, 1 coin, and so on; empty when there is nothing to fill with.
    table: Vec<Entry>,
    /// The filler that leaves least over for its price.
    chunk: Option<Filler>,
}

/// A way to fill.
#[derive(Debug, Clone, Copy)]
pub(super) struct Filled {
    pub cost: Coins,
    pub left: f64,
    /// Whether there is no better way.
    pub is_best: bool,
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
        let reach = usize::try_from(most).unwrap_or(usize::MAX).min(room);
        let table = tabulate(&fillers, reach);
        let left_over = |filler: &Filler| filler.size / filler.price as f64;
        let least = |one: &&Filler, other: &&Filler| left_over(one).total_cmp(&left_over(other));
        let chunk = fillers.iter().min_by(least).copied();
        Self { fillers, table, chunk }
    }

    /// `None` when nothing can fill.
    pub(super) fn best(&self, missing: Coins) -> Option<Filled> {
        if missing <= 0 {
            return Some(Filled { cost: 0, left: 0.0, is_best: true });
        }
        let (chunk, count) = self.chunks(missing)?;
        let entry = self.entry(missing - chunk.price * count)?;
        let cost = entry.cost + chunk.price * count;
        let left = entry.left + chunk.size * count as f64;
        Some(Filled { cost, left, is_best: count == 0 || cost == missing })
    }

    /// Whether it can fill at all.
    pub(super) fn is_possible(&self) -> bool {
        !self.fillers.is_empty()
    }

    /// The steps of the way that [`Filling::best`] knows.
    pub(super) fn packs(&self, missing: Coins) -> Vec<(Filler, Coins)> {
        let Some((chunk, count)) = self.chunks(missing) else { return Vec::new() };
        let mut packs = vec![(chunk, count)];
        let mut missing = missing - chunk.price * count;
        while missing > 0 {
            let filler = self.entry(missing).and_then(|entry| self.fillers.get(entry.filler));
            let Some(filler) = filler else { break };
            packs.push((*filler, 1));
            missing -= filler.price;
        }
        packs
    }

    /// Where the table ends, as many of one filler as it takes to get there.
    fn chunks(&self, missing: Coins) -> Option<(Filler, Coins)> {
        let chunk = self.chunk?;
        let beyond = missing - (self.table.len() as Coins - 1);
        let count = if beyond > 0 { (beyond - 1) / chunk.price + 1 } else { 0 };
        Some((chunk, count))
    }

    fn entry(&self, missing: Coins) -> Option<&Entry> {
        self.table.get(usize::try_from(missing.max(0)).ok()?)
    }
}

fn tabulate(fillers: &[Filler], reach: usize) -> Vec<Entry> {
    let nothing = Entry { cost: 0, left: 0.0, filler: 0 };
    let unknown = Entry { cost: Coins::MAX, ..nothing };
    let mut table = vec![unknown; reach + 1];
    if let Some(first) = table.first_mut() {
        *first = nothing;
    }
    for (at, filler) in fillers.iter().enumerate() {
        let price = usize::try_from(filler.price).unwrap_or(usize::MAX);
        for missing in 1..=reach {
            let Some(before) = table.get(missing.saturating_sub(price)).copied() else { break };
            let new = Entry {
                cost: before.cost.saturating_add(filler.price),
                left: before.left + filler.size,
                filler: at,
            };
            if let Some(known) = table.get_mut(missing)
                && (new.cost, new.left) < (known.cost, known.left)
            {
                *known = new;
            }
        }
    }
    table
}
