//! Counts of everything, and what the shops would say to them.

use super::coinage::Coins;
use super::cover::Choice;
use super::table::{Pack, Shops, Table};
use super::work::NOISE;
use std::cmp::Ordering;

/// How many of every pack, item by item, in the order of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Cart {
    pub counts: Vec<Vec<u32>>,
}

/// By what baskets are compared.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rank {
    pub total: Coins,
    pub shops: u32,
    /// The sum over the items of left over per need.
    pub left: f64,
}

impl Rank {
    pub(super) fn is_better_than(&self, other: &Self) -> bool {
        match (self.total, self.shops).cmp(&(other.total, other.shops)) {
            Ordering::Less => true,
            Ordering::Equal => self.left < other.left - NOISE,
            Ordering::Greater => false,
        }
    }

    /// For a queue; finer than [`Rank::is_better_than`] in what is left over.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        (self.total, self.shops)
            .cmp(&(other.total, other.shops))
            .then(self.left.total_cmp(&other.left))
    }
}

impl Cart {
    /// One choice an item.
    pub(super) fn of<'a>(table: &Table, choices: impl IntoIterator<Item = &'a Choice>) -> Self {
        let counts = table
            .items
            .iter()
            .zip(choices)
            .map(|(item, choice)| {
                let mut row = vec![0; item.packs.len()];
                for (place, count) in &choice.counts {
                    if let Some(cell) = row.get_mut(*place) {
                        *cell += count;
                    }
                }
                row
            })
            .collect();
        Self { counts }
    }

    /// More of a pack.
    pub(super) fn add(&mut self, item: usize, place: usize, count: u32) {
        if let Some(cell) = self.counts.get_mut(item).and_then(|row| row.get_mut(place)) {
            *cell = cell.saturating_add(count);
        }
    }

    /// The packs that are bought.
    fn bought<'a>(&'a self, table: &'a Table) -> impl Iterator<Item = (&'a Pack, u32)> {
        table
            .items
            .iter()
            .zip(&self.counts)
            .flat_map(|(item, row)| item.packs.iter().zip(row.iter().copied()))
            .filter(|(_, count)| *count > 0)
    }

    /// What is spent on goods, shop by shop.
    pub(super) fn goods(&self, table: &Table) -> Vec<Coins> {
        let mut goods = vec![0; table.shops.len()];
        for (pack, count) in self.bought(table) {
            if let Some(sum) = goods.get_mut(pack.shop) {
                *sum += pack.cost(count);
            }
        }
        goods
    }

    pub(super) fn used(&self, table: &Table) -> Shops {
        self.bought(table).fold(Shops::default(), |used, (pack, _)| used.with(pack.shop))
    }

    /// `None` when a shop would refuse the order.
    pub(super) fn rank(&self, table: &Table) -> Option<Rank> {
        let used = self.used(table);
        let goods = self.goods(table);
        let mut total: Coins = 0;
        for (at, (goods, shop)) in goods.iter().zip(&table.shops).enumerate() {
            if used.has(at) {
                if *goods < shop.minimum {
                    return None;
                }
                total = total.saturating_add(*goods).saturating_add(shop.charge(*goods));
            }
        }
        Some(Rank { total, shops: used.count(), left: self.left(table) })
    }

    fn left(&self, table: &Table) -> f64 {
        let amount = |(pack, count): (&Pack, &u32)| pack.size * f64::from(*count);
        table
            .items
            .iter()
            .zip(&self.counts)
            .map(|(item, row)| item.packs.iter().zip(row).map(amount).sum::<f64>())
            .map(|amount| (amount - 1.0).max(0.0))
            .sum()
    }

    /// Adds the one pack, as often as it takes, that brings the goods of a shop to a sum at
    /// least cost. Quick and not always best; nothing is added where no pack could.
    pub(super) fn pad(&mut self, table: &Table, shop: usize, missing: Coins) {
        let mut best: Option<(Coins, f64, (usize, usize, u32))> = None;
        for (at, item) in table.items.iter().enumerate() {
            let row = self.counts.get(at).into_iter().flatten();
            for (place, (pack, have)) in item.packs.iter().zip(row).enumerate() {
                if pack.shop != shop || pack.price == 0 {
                    continue;
                }
                let wanted = missing as f64 / pack.price as f64;
                let more = if *have > 0 {
                    Pack { first: pack.step, ..*pack }.at_least(wanted)
                } else {
                    pack.at_least(wanted)
                };
                let Some(more) = more else { continue };
                let (cost, left) = (pack.cost(more), pack.size * f64::from(more));
                if best.is_none_or(|(least, less, _)| (cost, left) < (least, less)) {
                    best = Some((cost, left, (at, place, more)));
                }
            }
        }
        if let Some((_, _, (at, place, more))) = best {
            self.add(at, place, more);
        }
    }
}
