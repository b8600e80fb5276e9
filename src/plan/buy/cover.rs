//! The ways to cover one item that are worth a look.
//!
//! Offers are taken one after the other, those at the best rate last; a *label* is a number
//! of packs of each offer so far. Labels that cannot be part of an answer are dropped:
//!
//! - *by bound*: what is paid plus what the rest of the need costs at the best rate to come
//!   is a lower bound of the item's cost (packs cannot be had in part); above the limit no
//!   completion is of interest;
//! - *by dominance*: a label that holds as much, counts as many goods towards every sum that
//!   is asked for and costs less makes every completion of the other worse.
//!
//! Packs beyond the need are of use only where they count towards a sum. Packs that may be
//! added freely are left to [`super::threshold`] for that; here every count is listed in which
//! no free step is redundant, and of packs with a least number all that count.

use super::coinage::Coins;
use super::table::{Item, Pack, Shops};
use super::work::{BINDING, ITEM_LABELS, NOISE, SHORT_OF, Work};
use std::cmp::Ordering;

/// A sum that the goods of a shop are to reach.
#[derive(Debug, Clone, Copy)]
pub(super) struct Target {
    pub shop: usize,
    pub goods: Coins,
}

/// Goods that count towards each target, in the order of the targets.
pub(super) type Goods = [Coins; BINDING];

/// Counts of an item that cover it.
#[derive(Debug, Clone)]
pub(super) struct Choice {
    /// Positive counts, by the pack's place in the item.
    pub counts: Vec<(usize, u32)>,
    pub cost: Coins,
    pub goods: Goods,
    /// In parts of the need.
    pub left: f64,
}

/// The choices of an item.
#[derive(Debug)]
pub(super) struct Listing {
    /// None dominates another. The first costs least, and leaves least over for that.
    pub choices: Vec<Choice>,
    /// What anything not listed costs at least, where the limit of work cut the list short.
    pub unlisted: Option<Coins>,
}

/// What is to be listed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ask<'a> {
    /// Only packs of these shops.
    pub allowed: Shops,
    /// At most [`BINDING`].
    pub targets: &'a [Target],
    /// Only choices of this cost or less; without it, only the cheapest matters.
    pub limit: Option<Coins>,
}

/// `None` when no allowed shop sells the item.
pub(super) fn cover(item: &Item, ask: Ask<'_>, work: &mut Work) -> Option<Listing> {
    let packs = in_order(item, ask);
    let cheapest_alone = packs.iter().filter_map(|(_, pack)| alone(pack)).min()?;
    let limit = ask.limit.unwrap_or(cheapest_alone);
    let mut lister = Lister { ask, limit, trail: Trail::default(), done: vec![], unlisted: None };
    let mut open = vec![Label::NOTHING];
    for (at, (place, pack)) in packs.iter().enumerate() {
        let rest: f64 =
            packs.iter().skip(at + 1).map(|(_, pack)| pack.rate()).fold(f64::INFINITY, f64::min);
        open = lister.extend(open, *place, pack, rest);
        work.labels(open.len() + lister.done.len());
    }
    let mut choices: Vec<Choice> = lister.done.iter().map(|label| lister.choice(label)).collect();
    choices.sort_by(Choice::by_cost);
    Some(Listing { choices, unlisted: lister.unlisted })
}

impl Choice {
    /// Cheaper first, then less left over.
    pub(super) fn by_cost(&self, other: &Self) -> Ordering {
        self.cost.cmp(&other.cost).then(self.left.total_cmp(&other.left))
    }
}

/// Packs with a least number that count towards a target, then the rest, the best rate last.
fn in_order(item: &Item, ask: Ask<'_>) -> Vec<(usize, Pack)> {
    let mut packs: Vec<(usize, Pack)> = item
        .packs
        .iter()
        .copied()
        .enumerate()
        .filter(|(_, pack)| ask.allowed.has(pack.shop))
        .collect();
    packs.sort_by(|(_, one), (_, other)| {
        ask.pads(other).cmp(&ask.pads(one)).then(other.rate().total_cmp(&one.rate()))
    });
    packs
}

/// The cost of the need by this pack alone.
fn alone(pack: &Pack) -> Option<Coins> {
    pack.at_least((1.0 - SHORT_OF) / pack.size).map(|count| pack.cost(count))
}

impl Ask<'_> {
    fn target(&self, pack: &Pack) -> Option<(usize, Coins)> {
        let at = self.targets.iter().position(|target| target.shop == pack.shop)?;
        self.targets.get(at).map(|target| (at, target.goods))
    }

    /// Whether more of the pack than needed is for this list to find.
    fn pads(&self, pack: &Pack) -> bool {
        !pack.is_free_to_add() && self.target(pack).is_some()
    }
}

#[derive(Debug, Clone, Copy)]
struct Label {
    /// In parts of the need.
    amount: f64,
    cost: Coins,
    goods: Goods,
    last: Step,
}

impl Label {
    const NOTHING: Self =
        Self { amount: 0.0, cost: 0, goods: [0; BINDING], last: Step::Kept { at: 0 } };

    fn is_enough(&self) -> bool {
        self.amount >= 1.0 - SHORT_OF
    }

    fn counts_no_more_than(&self, other: &Self) -> bool {
        self.goods.iter().zip(other.goods).all(|(own, others)| *own <= others)
    }
}

/// How a label came about.
#[derive(Debug, Clone, Copy)]
enum Step {
    /// As written on the trail, counted from 1; 0 is nothing bought.
    Kept { at: usize },
    /// By so many of a pack, after what is on the trail.
    New { after: usize, place: usize, count: u32 },
}

/// The steps of the labels that were kept, so that those that were not leave no trace.
#[derive(Default)]
struct Trail(Vec<(usize, usize, u32)>);

impl Trail {
    fn keep(&mut self, labels: &mut [Label]) {
        for label in labels {
            if let Step::New { after, place, count } = label.last {
                self.0.push((after, place, count));
                label.last = Step::Kept { at: self.0.len() };
            }
        }
    }

    fn counts(&self, label: &Label) -> Vec<(usize, u32)> {
        let mut counts = Vec::new();
        let Step::Kept { mut at } = label.last else { return counts };
        while let Some((after, place, count)) = at.checked_sub(1).and_then(|at| self.0.get(at)) {
            counts.push((*place, *count));
            at = *after;
        }
        counts
    }
}

struct Lister<'a> {
    ask: Ask<'a>,
    limit: Coins,
    trail: Trail,
    done: Vec<Label>,
    unlisted: Option<Coins>,
}

impl Lister<'_> {
    /// The labels that still need more, with every count of one more pack; `rest` is the
    /// best rate of the packs after it.
    fn extend(&mut self, open: Vec<Label>, place: usize, pack: &Pack, rest: f64) -> Vec<Label> {
        let mut next = Vec::with_capacity(open.len());
        let pads = self.ask.pads(pack);
        let padded = if pads { self.done.clone() } else { Vec::new() };
        for label in open.iter().chain(&padded) {
            let Some(mut count) = self.first_count(label, pack, rest, pads) else { continue };
            while let Some(new) = self.with(label, place, pack, count) {
                if new.is_enough() {
                    self.done.push(new);
                } else if self.floor(&new, rest) <= self.limit {
                    next.push(new);
                } else if pack.rate() >= rest {
                    // A pack at no better rate than the rest only raises the bound.
                    break;
                }
                if new.is_enough() && !(pads && self.counts_for_more(&new, pack)) {
                    break;
                }
                count = count.saturating_add(pack.step);
                if next.len() > 2 * ITEM_LABELS {
                    self.trim(&mut next, rest);
                }
            }
        }
        if rest.is_finite() {
            next.extend(open);
        }
        self.trim(&mut next, rest);
        self.tidy();
        self.trail.keep(&mut next);
        self.trail.keep(&mut self.done);
        next
    }

    /// The least count worth trying: the last pack has to cover all that is missing.
    fn first_count(&self, label: &Label, pack: &Pack, rest: f64, pads: bool) -> Option<u32> {
        let must_cover = !rest.is_finite() && !pads;
        let missing = if must_cover { (1.0 - SHORT_OF - label.amount) / pack.size } else { 0.0 };
        pack.at_least(missing)
    }

    /// `None` beyond the limit.
    fn with(&mut self, label: &Label, place: usize, pack: &Pack, count: u32) -> Option<Label> {
        let cost = label.cost.saturating_add(pack.cost(count));
        if cost > self.limit || count > super::work::PACKS {
            return None;
        }
        let mut goods = label.goods;
        if let Some((at, _)) = self.ask.target(pack)
            && let Some(sum) = goods.get_mut(at)
        {
            *sum += pack.cost(count);
        }
        let Step::Kept { at: after } = label.last else { return None };
        let amount = label.amount + pack.size * f64::from(count);
        let new = Label { amount, cost, goods, last: Step::New { after, place, count } };
        if self.ask.limit.is_none() && new.is_enough() {
            self.limit = self.limit.min(cost);
        }
        Some(new)
    }

    /// More goods than a target asks for count for nothing.
    fn counts_for_more(&self, label: &Label, pack: &Pack) -> bool {
        self.ask.target(pack).is_some_and(|(at, goods)| {
            pack.price > 0 && label.goods.get(at).is_some_and(|sum| *sum < goods)
        })
    }

    /// What any completion of a label costs at least.
    fn floor(&self, label: &Label, rest: f64) -> Coins {
        if label.is_enough() {
            return label.cost;
        }
        // Nothing left to complete it with is dearer than any limit.
        let missing = (1.0 - SHORT_OF - label.amount) * rest * (1.0 - NOISE);
        // Casts of floats saturate.
        label.cost.saturating_add(missing.ceil() as Coins)
    }

    /// Drops what is dominated, and beyond the limit of work what promises least.
    fn trim(&mut self, labels: &mut Vec<Label>, rest: f64) {
        labels.retain(|label| self.floor(label, rest) <= self.limit);
        labels.sort_by(|one, other| {
            one.cost.cmp(&other.cost).then(other.amount.total_cmp(&one.amount))
        });
        keep_best(labels, |better, label| {
            better.amount >= label.amount
                && (better.cost < label.cost || better.amount == label.amount)
        });
        if labels.len() > ITEM_LABELS {
            labels.sort_by_key(|label| self.floor(label, rest));
            let dropped = labels.get(ITEM_LABELS).map(|label| self.floor(label, rest));
            self.unlisted = [self.unlisted, dropped].into_iter().flatten().min();
            labels.truncate(ITEM_LABELS);
        }
    }

    /// Drops covering labels that are dominated.
    fn tidy(&mut self) {
        self.done.sort_by(|one, other| {
            one.cost.cmp(&other.cost).then(one.amount.total_cmp(&other.amount))
        });
        keep_best(&mut self.done, |_, _| true);
        if self.done.len() > ITEM_LABELS {
            let dropped = self.done.get(ITEM_LABELS).map(|label| label.cost);
            self.unlisted = [self.unlisted, dropped].into_iter().flatten().min();
            self.done.truncate(ITEM_LABELS);
        }
    }

    fn choice(&self, label: &Label) -> Choice {
        let left = (label.amount - 1.0).max(0.0);
        let counts = self.trail.counts(label);
        Choice { counts, cost: label.cost, goods: label.goods, left }
    }
}

/// Labels that are compared at most with each new one; one more kept is no harm.
const WINDOW: usize = 200;

/// Keeps, of labels in order of cost, those that no earlier one beats: one that counts as
/// many goods and is `better`.
fn keep_best(labels: &mut Vec<Label>, better: impl Fn(&Label, &Label) -> bool) {
    let mut kept: Vec<Label> = Vec::with_capacity(labels.len());
    for label in labels.drain(..) {
        let beats = |other: &&Label| label.counts_no_more_than(other) && better(other, &label);
        if !kept.iter().rev().take(WINDOW).any(|other| beats(&other)) {
            kept.push(label);
        }
    }
    *labels = kept;
}
