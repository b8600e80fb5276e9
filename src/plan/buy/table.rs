//! The market in coins, without what cannot be bought.

use super::coinage::{Coinage, Coins};

/// A set of shops.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Shops(u64);

impl Shops {
    pub(super) const MOST: usize = 64;

    /// The first shops.
    pub(super) fn first(count: usize) -> Self {
        (0..count.min(Self::MOST)).fold(Self::default(), Self::with)
    }

    pub(super) fn with(self, shop: usize) -> Self {
        Self(self.0 | 1 << shop)
    }

    pub(super) fn without(self, shop: usize) -> Self {
        Self(self.0 & !(1 << shop))
    }

    pub(super) fn and(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    pub(super) fn or(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    pub(super) fn has(self, shop: usize) -> bool {
        self.0 & (1 << shop) != 0
    }

    pub(super) fn within(self, other: Self) -> bool {
        self.and(other) == self
    }

    pub(super) fn is_empty(self) -> bool {
        self.0 == 0
    }

    pub(super) fn count(self) -> u32 {
        self.0.count_ones()
    }
}

#[derive(Debug)]
pub(super) struct Table {
    pub coinage: Coinage,
    /// All shops of the market.
    pub shops: Vec<Shop>,
    /// The items of which something is needed.
    pub items: Vec<Item>,
}

#[derive(Debug)]
pub(super) struct Shop {
    pub delivery: Coins,
    /// `None` when nothing makes delivery free, or no sum that can be counted.
    pub free_from: Option<Coins>,
    pub minimum: Coins,
}

/// A way of using a shop: what it charges, given goods of at least so much.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Way {
    pub charge: Coins,
    pub goods: Coins,
}

impl Shop {
    /// For the delivery of goods, if there are any.
    pub(super) fn charge(&self, goods: Coins) -> Coins {
        if self.free_from.is_some_and(|sum| goods >= sum) { 0 } else { self.delivery }
    }

    /// Every order at this shop is allowed by one of these, and the one that charges least
    /// charges what the shop would.
    pub(super) fn ways(&self) -> Vec<Way> {
        let paid = Way { charge: self.delivery, goods: self.minimum };
        match self.free_from {
            _ if self.delivery == 0 => vec![paid],
            None => vec![paid],
            Some(sum) if sum <= self.minimum => vec![Way { charge: 0, ..paid }],
            Some(sum) => vec![paid, Way { charge: 0, goods: sum }],
        }
    }
}

#[derive(Debug)]
pub(super) struct Item {
    /// Its place in the market.
    pub at: usize,
    /// What can be bought of it; never empty.
    pub packs: Vec<Pack>,
    pub sellers: Shops,
}

/// An offer of an item.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pack {
    /// Its place in the market's item.
    pub at: usize,
    pub shop: usize,
    /// In parts of the need.
    pub size: f64,
    pub price: Coins,
    /// Counts are zero, or multiples of this …
    pub step: u32,
    /// … from this on, itself a multiple.
    pub first: u32,
}

impl Pack {
    /// Whether any number of steps may be added, whatever else is bought.
    pub(super) fn is_free_to_add(&self) -> bool {
        self.first == self.step
    }

    /// Coins for the need, if it could be bought at this rate in part.
    pub(super) fn rate(&self) -> f64 {
        self.price as f64 / self.size
    }

    /// The cost of so many.
    pub(super) fn cost(&self, count: u32) -> Coins {
        self.price.saturating_mul(Coins::from(count))
    }

    /// The least count of at least `packs`, not counting zero; `None` when it runs over.
    pub(super) fn at_least(&self, packs: f64) -> Option<u32> {
        let packs = packs.ceil().max(f64::from(self.first));
        if packs > f64::from(super::work::PACKS) {
            return None;
        }
        // The bounds make the cast exact.
        (packs as u32).checked_next_multiple_of(self.step)
    }
}
