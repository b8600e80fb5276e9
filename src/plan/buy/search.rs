//! Which shops to use, and how.

use super::cart::{Cart, Rank};
use super::coinage::Coins;
use super::cover::Target;
use super::node::Node;
use super::sets::{Sets, Total};
use super::table::{Shops, Table};
use super::threshold::{Leaf, settle};
use super::work::{Effort, Work};
use std::collections::BinaryHeap;

/// The best basket and what is known of better ones.
#[derive(Debug)]
pub(super) struct Found {
    pub cart: Cart,
    pub total: Coins,
    /// No basket costs less.
    pub floor: Coins,
}

/// Searches best first. The table's items all have packs, and every shop with packs can be
/// padded to its minimum, so there always is a basket.
pub(super) fn search(table: &Table, effort: Effort) -> Found {
    let mut search = Search {
        table,
        sets: Sets::new(table),
        work: Work::new(effort),
        queue: BinaryHeap::new(),
        best: None,
        unproven: Coins::MAX,
    };
    search.push(Node::root(table));
    search.run();
    // Without items there is nothing to search for.
    let nothing = || (Cart { counts: Vec::new() }, Rank { total: 0, shops: 0, left: 0.0 });
    let (cart, rank) = search.best.unwrap_or_else(nothing);
    Found { cart, total: rank.total, floor: rank.total.min(search.unproven) }
}

struct Search<'t> {
    table: &'t Table,
    sets: Sets<'t>,
    work: Work,
    queue: BinaryHeap<Node>,
    best: Option<(Cart, Rank)>,
    /// The least that a basket could cost which the limit of work left out.
    unproven: Coins,
}

impl Search<'_> {
    fn run(&mut self) {
        while let Some(node) = self.queue.pop() {
            if !self.may_improve(&node.promise) {
                return;
            }
            if self.best.is_some() && self.work.is_done() {
                // The most promising comes first, so no other promises less.
                self.leave_unproven(node.promise.total);
                return;
            }
            self.work.node();
            self.visit(&node);
        }
    }

    fn may_improve(&self, promise: &Rank) -> bool {
        self.best.as_ref().is_none_or(|(_, best)| promise.is_better_than(best))
    }

    fn leave_unproven(&mut self, floor: Coins) {
        self.unproven = self.unproven.min(floor);
    }

    /// Puts a node into the queue with its promise, unless it cannot improve on the best.
    fn push(&mut self, mut node: Node) {
        let Some(total) = self.sets.total(node.allowed(), &mut self.work) else { return };
        let floor = total.floor.max(self.sums_floor(&node, &total));
        node.promise = Rank {
            total: floor.saturating_add(node.charges()),
            shops: node.used.len() as u32,
            // At the floor of all items every item is at its own, with what that leaves.
            left: if floor == total.floor { total.left } else { 0.0 },
        };
        if self.may_improve(&node.promise) {
            self.queue.push(node);
        }
    }

    /// Another bound: the sums that fall short are reached, and what is not sold in those
    /// shops is paid beside them.
    fn sums_floor(&self, node: &Node, total: &Total) -> Coins {
        let short = node.short(&total.goods);
        let shops = short.iter().fold(Shops::default(), |shops, short| shops.with(short.shop));
        let beside = self.table.items.iter().zip(&total.picks);
        let beside = beside.filter(|(item, _)| item.sellers.and(shops).is_empty());
        let sums = short.iter().map(|short| short.goods).fold(0, Coins::saturating_add);
        beside.map(|(_, pick)| pick.floor).fold(sums, Coins::saturating_add)
    }

    fn visit(&mut self, node: &Node) {
        let Some(total) = self.sets.total(node.allowed(), &mut self.work) else { return };
        self.offer(Cart::of(self.table, total.picks.iter().map(|pick| &pick.choice)));
        let short = node.short(&total.goods);
        let undecided = total.uses.and(node.open);
        if undecided.is_empty() && short.is_empty() {
            // The promise is kept by these very picks, unless a pick may not be the best.
            if !total.is_proven() {
                self.leave_unproven(node.promise.total);
            }
            return;
        }
        match next_shop(node, &total) {
            Some(shop) => self.branch(node, shop),
            None => self.settle(node, &total, short),
        }
    }

    fn branch(&mut self, node: &Node, shop: usize) {
        let ways = self.table.shops.get(shop).map(|shop| shop.ways());
        for way in ways.into_iter().flatten() {
            self.push(node.enter(shop, way));
        }
        self.push(node.leave(shop));
    }

    /// All shops are decided, but some goods fall short of their sums.
    fn settle(&mut self, node: &Node, total: &Total, short: Vec<Target>) {
        let mut limit = Coins::MAX;
        if let Some((_, best)) = &self.best {
            let fewer = Coins::from(node.promise.shops > best.shops);
            limit = best.total.saturating_sub(node.charges()).saturating_sub(fewer);
        }
        let leaf = Leaf { table: self.table, node, total, short, limit };
        let settled = settle(leaf, &mut self.work);
        if let Some(floor) = settled.unproven {
            self.leave_unproven(node.promise.total.max(floor.saturating_add(node.charges())));
        }
        if let Some(cart) = settled.cart {
            self.offer(cart);
        }
    }

    /// Takes a cart if it is better than the best, padded where a shop would refuse it or
    /// where padding costs less than the delivery.
    fn offer(&mut self, mut cart: Cart) {
        let (used, goods) = (cart.used(self.table), cart.goods(self.table));
        for (at, (shop, goods)) in self.table.shops.iter().zip(goods).enumerate() {
            if used.has(at) && goods < shop.minimum {
                cart.pad(self.table, at, shop.minimum - goods);
            }
        }
        let mut padded = cart.clone();
        for (at, (shop, goods)) in self.table.shops.iter().zip(cart.goods(self.table)).enumerate() {
            let missing = shop.free_from.map_or(0, |sum| sum - goods);
            if used.has(at) && missing > 0 && missing < shop.delivery {
                padded.pad(self.table, at, missing);
            }
        }
        for cart in [cart, padded] {
            if let Some(rank) = cart.rank(self.table)
                && self.may_improve(&rank)
            {
                self.best = Some((cart, rank));
            }
        }
    }
}

/// The open shop with the most goods in the best picks; failing goods, any.
fn next_shop(node: &Node, total: &Total) -> Option<usize> {
    (0..total.goods.len())
        .filter(|shop| node.open.has(*shop))
        .max_by_key(|shop| (total.uses.has(*shop), total.goods.get(*shop), usize::MAX - *shop))
}
