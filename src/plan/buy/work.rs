//! How much work is done at most, in one place. No limit is in seconds, so that an answer
//! depends on the market alone.

use std::num::NonZeroU32;

/// Of one offer; what needs more is refused. It keeps counts within 32 bits, and is a
/// thousand times what a class could carry.
pub(super) const PACKS: u32 = 1_000_000;

/// A shortage of this part of a need is none.
pub(super) const SHORT_OF: f64 = 1e-6;

/// Left-over shares nearer than this are equal: it is the noise of adding up.
pub(super) const NOISE: f64 = 1e-9;

/// Ways to buy part of an item that are kept at a time.
pub(super) const ITEM_LABELS: usize = 20_000;

/// Ways to buy part of the items that are kept at a time.
const BASKET_LABELS: usize = 50_000;

/// Shops whose sums are put together exactly at a time.
pub(super) const BINDING: usize = 4;

/// Coins times packs of a table of fillings.
pub(super) const FILLING: usize = 20_000_000;

/// Parts of the decisions about shops that are looked at.
pub(super) const NODES: usize = 20_000;

/// Labels made in all.
const LABELS: u64 = 40_000_000;

/// What is left to be done.
#[derive(Debug)]
pub(super) struct Work {
    labels: u64,
    nodes: usize,
    basket: usize,
}

/// How much of the most work may be done.
#[derive(Debug, Clone, Copy)]
pub enum Effort {
    /// All of it.
    Whole,
    /// So many markets share it, and are to be quick together: a tenth of it is enough where a
    /// market is not hard.
    OneOf(NonZeroU32),
}

/// Ways to buy part of the items of a market that shares the work are this many at least.
const FEW_LABELS: usize = 500;

impl Work {
    pub(super) fn new(effort: Effort) -> Self {
        match effort {
            Effort::Whole => Self { labels: LABELS, nodes: NODES, basket: BASKET_LABELS },
            Effort::OneOf(markets) => Self {
                labels: LABELS / 10 / u64::from(markets.get()),
                nodes: NODES / 10 / markets.get() as usize,
                basket: (BASKET_LABELS / markets.get() as usize).max(FEW_LABELS),
            },
        }
    }

    /// Ways to buy part of the items that are kept at a time.
    pub(super) fn basket_labels(&self) -> usize {
        self.basket
    }

    pub(super) fn labels(&mut self, made: usize) {
        self.labels = self.labels.saturating_sub(made as u64);
    }

    pub(super) fn node(&mut self) {
        self.nodes = self.nodes.saturating_sub(1);
    }

    pub(super) fn is_done(&self) -> bool {
        self.labels == 0 || self.nodes == 0
    }
}
