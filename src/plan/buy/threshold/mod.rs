//! The least cost where the goods of some shops have to reach a sum.
//!
//! The shops are decided; without the sums every item would be bought at its own least
//! cost. Only sums that this misses are asked for, and, when meeting them takes goods away
//! from another shop, the sum of that one too: leaving sums out can only make the answer
//! cheaper, so the first answer that meets them all is the best.
//!
//! A basket within the limit pays for each item at most its own least cost plus the slack,
//! which is what the limit leaves above the sum of all least costs. So the choices listed up
//! to that are all there are, besides [`fill`]: packs bought beyond the need. `weigh` finds
//! what it is worth to count a coin towards each sum, and with it a bound; `combine` puts
//! one choice an item and the fillings together, all within a limit. The limit starts at
//! the bound and is raised until something is found: then nothing cheaper exists.

mod combine;
mod fill;
mod weigh;

use super::cart::Cart;
use super::coinage::Coins;
use super::cover::{Ask, Choice, Target, cover};
use super::node::Node;
use super::sets::Total;
use super::table::{Shops, Table};
use super::work::{BINDING, Work};
use combine::{Mix, Programme};
use fill::Filling;

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
    let slack = leaf.limit.saturating_sub(leaf.total.floor);
    if slack < 0 {
        return Met { found: None, unproven: None };
    }
    let (lists, unlisted) = list(leaf, targets, slack, work);
    let weights = weigh::weigh(&lists, targets);
    let fillings: Vec<Filling> =
        targets.iter().map(|target| Filling::new(leaf.table, target.shop, slack)).collect();
    let programme = Programme { lists: &lists, targets, weights: &weights, fillings: &fillings };
    let (mix, cut) = deepen(&programme, leaf.limit, work);
    Met {
        found: mix.map(|mix| (cart(leaf.table, &lists, &fillings, &mix), mix.cost)),
        unproven: [unlisted, cut].into_iter().flatten().min(),
    }
}

/// The choices of each item, and what a basket with a choice that is not listed costs at
/// least.
fn list(
    leaf: &Leaf<'_>,
    targets: &[Target],
    slack: Coins,
    work: &mut Work,
) -> (Vec<Vec<Choice>>, Option<Coins>) {
    let allowed = leaf.node.allowed();
    let counted = targets.iter().fold(Shops::default(), |shops, target| shops.with(target.shop));
    let counted = counted.and(allowed);
    let mut unlisted: Option<Coins> = None;
    let mut lists = Vec::with_capacity(leaf.table.items.len());
    for (item, pick) in leaf.table.items.iter().zip(&leaf.total.picks) {
        let mut missed = (pick.floor < pick.choice.cost).then_some(pick.floor);
        let mut choices = Vec::new();
        if !item.sellers.and(counted).is_empty() {
            let limit = Some(pick.floor.saturating_add(slack));
            if let Some(listing) = cover(item, Ask { allowed, targets, limit }, work) {
                choices = listing.choices;
                missed = listing.unlisted;
            }
        }
        if choices.is_empty() {
            choices.push(pick.choice.clone());
        }
        let floor = missed.map(|missed| leaf.total.floor - pick.floor + missed);
        unlisted = [unlisted, floor].into_iter().flatten().min();
        lists.push(choices);
    }
    (lists, unlisted)
}

/// Raises the limit from the bound on until there is an answer; with what an answer costs
/// at least that the limit of work left out.
fn deepen(programme: &Programme<'_>, most: Coins, work: &mut Work) -> (Option<Mix>, Option<Coins>) {
    let bound = programme.weights.bound_in_coins();
    let mut clear = bound;
    let mut more: Coins = 0;
    while clear <= most {
        let limit = bound.saturating_add(more).min(most);
        let (mix, is_cut) = programme.within(limit, work);
        if mix.is_some() || is_cut {
            return (mix, is_cut.then_some(clear));
        }
        clear = limit.saturating_add(1);
        more = more.saturating_mul(3).saturating_add(1);
    }
    (None, None)
}

fn cart(table: &Table, lists: &[Vec<Choice>], fillings: &[Filling], mix: &Mix) -> Cart {
    let choices = lists.iter().zip(&mix.picks).filter_map(|(list, at)| list.get(*at));
    let mut cart = Cart::of(table, choices);
    for (filling, missing) in fillings.iter().zip(mix.missing) {
        for pack in filling.packs(missing) {
            cart.add(pack.item, pack.place, pack.step);
        }
    }
    cart
}
