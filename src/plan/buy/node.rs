//! A part of the decisions about shops.

use super::cart::Rank;
use super::coinage::Coins;
use super::cover::Target;
use super::table::{Shops, Table, Way};
use std::cmp::Ordering;

/// Some shops decided, the others open.
#[derive(Debug, Clone)]
pub(super) struct Node {
    /// No basket that follows these decisions ranks better.
    pub promise: Rank,
    /// Not decided.
    pub open: Shops,
    /// Used, each in a way.
    pub used: Vec<(usize, Way)>,
}

impl Node {
    pub(super) fn root(table: &Table) -> Self {
        let promise = Rank { total: 0, shops: 0, left: 0.0 };
        Self { promise, open: Shops::first(table.shops.len()), used: Vec::new() }
    }

    /// With a shop left out.
    pub(super) fn leave(&self, shop: usize) -> Self {
        Self { open: self.open.without(shop), ..self.clone() }
    }

    /// With a shop used.
    pub(super) fn enter(&self, shop: usize, way: Way) -> Self {
        let mut node = self.leave(shop);
        node.used.push((shop, way));
        node
    }

    /// Where packs may be bought.
    pub(super) fn allowed(&self) -> Shops {
        self.used.iter().fold(self.open, |shops, (shop, _)| shops.with(*shop))
    }

    pub(super) fn charges(&self) -> Coins {
        self.used.iter().map(|(_, way)| way.charge).fold(0, Coins::saturating_add)
    }

    /// Sums that given goods of the shops do not reach.
    pub(super) fn short(&self, goods: &[Coins]) -> Vec<Target> {
        let has = |shop: usize| goods.get(shop).copied().unwrap_or(0);
        self.used
            .iter()
            .filter(|(shop, way)| has(*shop) < way.goods)
            .map(|(shop, way)| Target { shop: *shop, goods: way.goods })
            .collect()
    }
}

/// The most promising is the greatest, as a heap wants it; of equals the one with most
/// decided.
impl Ord for Node {
    fn cmp(&self, other: &Self) -> Ordering {
        let open = self.open.count().cmp(&other.open.count());
        self.promise
            .order(&other.promise)
            .then(open)
            .then_with(|| self.open.cmp(&other.open))
            .then_with(|| self.allowed().cmp(&other.allowed()))
            .reverse()
    }
}

impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Node {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Node {}
