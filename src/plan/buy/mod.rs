//! Which packs to buy from which of several shops at least total cost.
//!
//! In: a [`Market`], what is needed and on what terms it is sold, as bare numbers. Out: a
//! [`Basket`] with the proof of its cost, or a [`Refusal`] that names what is in the way.
//! This room must not know what an item is, how it is measured, or what a lesson is; and
//! it keeps no clock: the same market gets the same basket on any machine.
//!
//! The programme, with whole numbers n of packs:
//!
//! ```text
//! least   sum of price n  +  delivery of every shop that is used and stays below its free sum
//! so that sum of size n >= need              for every item
//!         goods of a shop >= its minimum     for every shop that is used
//!         n = 0 or n >= from, in multiples   for every offer
//! ```
//!
//! How it is solved, and why the answer is exact:
//!
//! 1. `search` decides shop by shop whether it is out, or in and in which way (paying for
//!    the delivery, or with goods enough to have it free). A part of the decisions is worth
//!    at least the least cost of the items in the shops that are not out, plus the charges
//!    agreed to; that bound never falls as more is decided, so the best-first search ends
//!    when no bound is below the best basket found.
//! 2. With the shops decided only their sums couple the items. `cover` finds every item's
//!    least cost by itself, over all counts of its offers that no other counts dominate; if
//!    these reach the sums, nothing can be better.
//! 3. Otherwise `threshold` lists each item's choices and puts them together, again by
//!    dominance, within a bound from linear programming.
//!
//! Costs are whole coins in `i64` throughout, so a proof rests on no tolerance. Floating
//! point measures amounts, and advises where a wrong answer could only cost time.
//!
//! General branch and bound on linear relaxations was tried first (microlp 0.7): one item
//! in five shops with price breaks took it 90 ms on average, one in fifteen had no proof
//! after 20 000 nodes, and whether prices can add up to just a minimum order is a question
//! that relaxations do not see. Dominance answers both in microseconds. The library
//! does here what it is best at: the linear programme that prices the sums of the shops.

mod basket;
mod cart;
mod coinage;
mod compile;
mod cover;
mod lots;
mod node;
mod search;
mod sets;
mod table;
mod threshold;
mod work;

pub use basket::{Basket, Bill, Proof, Refusal};
pub use work::Effort;

use crate::quantity::Money;
use std::num::NonZeroU32;

/// What is needed and who sells it.
#[derive(Debug, Clone, Default)]
pub struct Market {
    pub shops: Vec<Terms>,
    pub items: Vec<Need>,
}

/// The terms of a shop.
#[derive(Debug, Clone, Copy, Default)]
pub struct Terms {
    /// Charged once when anything is bought there, unless the goods reach `free_from`.
    pub delivery: Money,
    /// Goods of this much or more are delivered free.
    pub free_from: Option<Money>,
    /// The goods of an order are at least this much. It may be reached by buying more of
    /// the needed items than is needed, where that is the cheapest way.
    pub minimum: Option<Money>,
}

/// An item.
#[derive(Debug, Clone)]
pub struct Need {
    /// In a unit of the item's own; nothing is bought for a need of zero or less, not even
    /// to reach a sum.
    pub amount: f64,
    pub offers: Vec<Offer>,
}

/// A pack of an item in a shop at a price.
///
/// A price that falls with quantity is several offers of the one pack with different
/// `from`. The price is that of *all* packs bought under the offer (an all-units discount):
/// twelve at the price of "ten or more" cost twelve times that price. Offers know nothing of
/// each other; where more packs mean a lower price for each, an optimum never mixes the
/// steps of one pack.
#[derive(Debug, Clone, Copy)]
pub struct Offer {
    pub shop: ShopAt,
    /// Positive, in the unit of the need.
    pub size: f64,
    /// For one pack.
    pub price: Money,
    /// Packs come in sixes, say.
    pub in_multiples_of: NonZeroU32,
    /// The least number of packs at this price; 0 and 1 are alike.
    pub from: u32,
}

/// The place of a shop in [`Market::shops`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ShopAt(pub usize);

impl Market {
    /// The basket of least total cost; of equal costs the one from fewer shops, and then
    /// the one that leaves less over (the sum over the items of left over per need).
    ///
    /// A shortage of a millionth of a need is none: it is less than a drop in fifty litres,
    /// and no reason for one more bottle.
    ///
    /// # Errors
    ///
    /// [`Refusal`] when numbers make no sense or run over, or when no combination meets an
    /// item.
    pub fn least_cost(&self) -> Result<Basket, Refusal> {
        self.least_cost_with(Effort::Whole)
    }

    /// As [`Market::least_cost`], with a part of its limit of work.
    ///
    /// # Errors
    ///
    /// As there.
    pub fn least_cost_with(&self, effort: Effort) -> Result<Basket, Refusal> {
        let table = compile::compile(self)?;
        let found = search::search(&table, effort);
        Ok(basket::basket(self, &table, &found))
    }
}
