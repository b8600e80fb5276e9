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

/// Ways to buy part of an item that are kept at a time when the cheapest is sought …
pub(super) const ITEM_LABELS: usize = 20_000;

/// … and when all within a limit are.
pub(super) const LIST_LABELS: usize = 5_000;

/// Ways to buy an item that are listed.
pub(super) const LISTED: usize = 1_000;

/// Ways to buy part of the items that are kept at a time …
pub(super) const BASKET_LABELS: usize = 8_000;

/// … and that are made for one answer; with many choices fewer are kept.
pub(super) const BASKET_LABELS_MADE: usize = 3_000_000;

/// Limits that may be tried again for less, when they led to more labels than are kept.
pub(super) const RETRIES: u32 = 3;

/// Shops whose sums are put together exactly at a time.
pub(super) const BINDING: usize = 6;

/// Coins times packs of a table of fillings.
pub(super) const FILLING: usize = 4_000_000;

/// Parts of the decisions about shops that are looked at …
const NODES: usize = 6_000;

/// … which is this many at least for a market that shares the work with others.
const FEW_NODES: usize = 300;

/// Pairs of labels looked at in all; it is the cheapest step, and about a nanosecond.
const PAIRS: u64 = 700_000_000;

/// Pairs that could be looked at while a label is made, compared and sorted.
const PAIRS_A_LABEL: u64 = 60;

/// How much of the most work may be done.
#[derive(Debug, Clone, Copy)]
pub enum Effort {
    /// All of it.
    Whole,
    /// So many markets share it, so that hard ones together take a few times as long as one.
    OneOf(NonZeroU32),
}

/// What is left to be done.
#[derive(Debug)]
pub(super) struct Work {
    pairs: u64,
    nodes: usize,
}

impl Work {
    pub(super) fn new(effort: Effort) -> Self {
        match effort {
            Effort::Whole => Self { pairs: PAIRS, nodes: NODES },
            Effort::OneOf(markets) => Self {
                pairs: PAIRS / u64::from(markets.get()),
                nodes: (NODES / markets.get() as usize).max(FEW_NODES),
            },
        }
    }

    pub(super) fn labels(&mut self, made: usize) {
        self.pairs = self.pairs.saturating_sub(made as u64 * PAIRS_A_LABEL);
    }

    /// Labels that may still be made.
    pub(super) fn labels_left(&self) -> usize {
        usize::try_from(self.pairs / PAIRS_A_LABEL).unwrap_or(usize::MAX)
    }

    pub(super) fn pairs(&mut self, seen: usize) {
        self.pairs = self.pairs.saturating_sub(seen as u64);
    }

    pub(super) fn node(&mut self) {
        self.nodes = self.nodes.saturating_sub(1);
    }

    pub(super) fn is_done(&self) -> bool {
        self.pairs == 0 || self.nodes == 0
    }
}
