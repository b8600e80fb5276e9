//! The least cost where the goods of some shops have to reach a sum.
//!
//! The shops are decided; without the sums every item would be bought at its own least
//! cost. Only sums that this misses are asked for, and, when meeting them takes goods away
//! from another shop, the sum of that one too: leaving sums out can only make the answer
//! cheaper, so the first answer that meets them all is the best.
//!
//! 1. `weigh` finds what it is worth to count a coin towards each sum, and with it a lower
//!    bound of every basket that meets the sums.
//! 2. With a limit on the cost of the basket, `cover` lists the choices of each item that
//!    raise the bound by no more than the limit leaves. No basket within the limit has any
//!    other choice, besides packs bought beyond the need, for which `fill` is there.
//! 3. `combine` puts one choice an item and fillings together, all that are within the limit.
//!
//! The limit starts at the bound and is raised until something is found: then nothing
//! cheaper exists.

mod combine;
mod fill;
mod half;
mod lists;
mod weigh;

use super::cart::Cart;
use super::coinage::Coins;
use super::cover::{Aim, Ask, Goods, Target, in_coins};
use super::node::Node;
use super::sets::{Pick, Total};
use super::table::{Item, Table};
use super::work::{BINDING, RETRIES, Work};
use combine::Programme;
use lists::Lists;
use std::rc::Rc;

/// Decided shops whose goods fall short.
#[derive(Debug, Clone)]
pub(super) struct Leaf<'a> {
    pub table: &'a Table,
    pub node: &'a Node,
    pub total: &'a Total,
    /// The sums that the best picks miss.
    pub short: Vec<Target>,
    /// Goods may cost no more than this.
    pub limit: Coins,
}

/// What came of it.
#[derive(Debug, Default)]
pub(super) struct Settled {
    /// The best basket within the limit. Where the limit of work was reached, perhaps not
    /// the best, and perhaps short of a sum.
    pub cart: Option<Cart>,
    /// The least that the goods of a basket could cost which the limit of work left out.
    pub unproven: Option<Coins>,
}

pub(super) fn settle(leaf: Leaf<'_>, work: &mut Work) -> Settled {
    let mut targets: Vec<Target> = leaf.short.iter().copied().take(BINDING).collect();
    loop {
        let mut met = meet(&leaf, &targets, work);
        let Some((cart, cost)) = met.found else {
            return Settled { cart: None, unproven: met.unproven };
        };
        met.unproven = met.unproven.filter(|floor| *floor < cost);
        let more = leaf.node.short(&cart.goods(leaf.table));
        if more.is_empty() || met.unproven.is_some() {
            return Settled { cart: Some(cart), unproven: met.unproven };
        }
        targets.extend(more);
        if targets.len() > BINDING {
            return Settled { cart: Some(cart), unproven: Some(cost) };
        }
    }
}

struct Met {
    /// A cart and the cost of its goods.
    found: Option<(Cart, Coins)>,
    unproven: Option<Coins>,
}

/// Meets these sums, whatever the others.
fn meet(leaf: &Leaf<'_>, targets: &[Target], work: &mut Work) -> Met {
    let weights = weigh::weigh(leaf, targets, work);
    let bound = in_coins(weights.bound);
    let mut met = Met { found: None, unproven: None };
    // Below `clear` there is nothing; nothing dearer than `most` is of interest.
    let (mut clear, mut most) = (bound, leaf.limit);
    let mut more: Coins = 0;
    let mut lists: Option<Lists> = None;
    let mut retries = RETRIES;
    while clear <= most {
        let limit = clear.saturating_add(more).min(most);
        let lists = match &mut lists {
            Some(lists) if lists.limit >= limit => lists,
            stale => {
                let ahead = limit.saturating_add(more).saturating_add(AHEAD).min(most);
                stale.insert(Lists::new(leaf, targets, &weights, ahead, work))
            }
        };
        let programme = Programme { lists, targets, weights: &weights };
        let (mix, is_cut) = programme.within(limit, work);
        let is_found = mix.is_some();
        if let Some(mix) = mix
            && mix.cost <= most
        {
            met.found = Some((lists.cart(leaf.table, &mix), mix.cost));
            most = mix.cost.saturating_sub(1);
        }
        if is_cut {
            // Too much at once: half the step may do.
            more = (limit - clear) / 2;
            retries = match retries.checked_sub(1) {
                Some(left) if limit > clear && !work.is_done() => left,
                _ => break,
            };
        } else if is_found {
            return met;
        } else {
            clear = limit.saturating_add(1);
            more = (limit - bound) / 3;
        }
    }
    met.unproven = (clear <= most).then_some(clear);
    met
}

/// Coins by which lists run ahead of the limit, so as not to be made again at once.
const AHEAD: Coins = 10;

impl Leaf<'_> {
    fn items(&self) -> impl Iterator<Item = (&Item, &Pick)> {
        self.table.items.iter().zip(self.total.picks.iter().map(Rc::as_ref))
    }

    /// Whether goods of an item may count towards a target.
    fn counts(&self, item: &Item, targets: &[Target]) -> bool {
        targets.iter().any(|target| item.sellers.has(target.shop))
    }

    fn ask<'t>(&self, targets: &'t [Target], worth: Goods, aim: Aim) -> Ask<'t> {
        Ask { allowed: self.node.allowed(), targets, worth, aim }
    }
}
