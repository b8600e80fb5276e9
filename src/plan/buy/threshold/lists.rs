//! The choices that a basket within a limit can be made of.

use super::Leaf;
use super::combine::Mix;
use super::fill::Filling;
use super::weigh::Weights;
use crate::plan::buy::cart::Cart;
use crate::plan::buy::coinage::Coins;
use crate::plan::buy::cover::{Aim, Choice, PARTS, Target, cover};
use crate::plan::buy::table::Table;
use crate::plan::buy::work::Work;

/// What there is to put together.
#[derive(Debug)]
pub(super) struct Lists {
    /// Of each item.
    pub choices: Vec<Vec<Choice>>,
    /// For each target.
    pub fillings: Vec<Filling>,
    /// Baskets that cost no more are made of these.
    pub limit: Coins,
    /// A basket of anything that the limit of work left out costs at least this, in parts.
    pub missed: Option<Coins>,
}

impl Lists {
    pub(super) fn new(
        leaf: &Leaf<'_>,
        targets: &[Target],
        weights: &Weights,
        limit: Coins,
        work: &mut Work,
    ) -> Self {
        // What a basket within the limit can pay above the least cost of each item.
        let slack = limit.saturating_sub(leaf.total.floor);
        let allowance = weights.allowance(limit);
        let mut missed: Option<Coins> = None;
        let mut lists = Vec::with_capacity(leaf.table.items.len());
        for ((item, pick), least) in leaf.items().zip(&weights.least) {
            let mut unlisted = (pick.floor < pick.choice.cost).then_some(PARTS * pick.floor);
            let mut choices = Vec::new();
            if leaf.counts(item, targets) {
                let cost = pick.floor.saturating_add(slack);
                let aim = Aim::All { cost, reduced: least.saturating_add(allowance) };
                if let Some(listing) = cover(item, leaf.ask(targets, weights.each, aim), work) {
                    choices = listing.choices;
                    unlisted = listing.unlisted;
                }
            } else {
                choices.push(pick.choice.clone());
            }
            // Every other item costs its least.
            let floor = unlisted.map(|unlisted| weights.bound + (unlisted - least).max(0));
            missed = [missed, floor].into_iter().flatten().min();
            lists.push(choices);
        }
        let filling = |target: &Target| Filling::new(leaf.table, target.shop, slack);
        let fillings = targets.iter().map(filling).collect();
        Self { choices: lists, fillings, limit, missed }
    }

    /// A mix as counts.
    pub(super) fn cart(&self, table: &Table, mix: &Mix) -> Cart {
        let choices = self.choices.iter().zip(&mix.picks);
        let mut cart = Cart::of(table, choices.filter_map(|(list, at)| list.get(*at)));
        for (filling, missing) in self.fillings.iter().zip(mix.missing) {
            for (pack, times) in filling.packs(missing) {
                let count = u32::try_from(times).unwrap_or(u32::MAX).saturating_mul(pack.step);
                cart.add(pack.item, pack.place, count);
            }
        }
        cart
    }
}
