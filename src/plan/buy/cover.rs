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
use super::lots::{Lot, Rates, in_order, quick};
use super::table::{Item, Pack, Shops};
use super::work::{BINDING, ITEM_LABELS, LIST_LABELS, LISTED, NOISE, PACKS, SHORT_OF, Work};

/// A sum that the goods of a shop are to reach.
#[derive(Debug, Clone, Copy)]
pub(super) struct Target {
    pub shop: usize,
    pub goods: Coins,
}

/// A figure for each target, in their order: goods that count towards it, or what one coin
/// of them is worth in [`PARTS`].
pub(super) type Goods = [Coins; BINDING];

/// Parts of a coin in which worth is kept.
pub(super) const PARTS: Coins = 4096;

/// The least number of coins that is worth so many parts.
pub(super) fn in_coins(parts: Coins) -> Coins {
    parts.div_euclid(PARTS) + Coins::from(parts.rem_euclid(PARTS) > 0)
}

/// Counts of an item that cover it.
#[derive(Debug, Clone)]
pub(super) struct Choice {
    /// Positive counts, by the pack's place in the item.
    pub counts: Vec<(usize, u32)>,
    pub cost: Coins,
    pub goods: Goods,
    /// The cost less what the goods are worth, in parts.
    pub reduced: Coins,
    /// In parts of the need.
    pub left: f64,
}

impl Choice {
    /// The packs that are bought.
    pub(super) fn packs<'a>(&'a self, item: &'a Item) -> impl Iterator<Item = (&'a Pack, u32)> {
        self.counts.iter().filter_map(|(place, count)| Some((item.packs.get(*place)?, *count)))
    }
}

/// The choices of an item.
#[derive(Debug)]
pub(super) struct Listing {
    /// The first has the least reduced cost.
    pub choices: Vec<Choice>,
    /// The reduced cost of anything not listed is at least this, where the limit of work
    /// cut the list short.
    pub unlisted: Option<Coins>,
}

/// What is to be listed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ask<'a> {
    /// Only packs of these shops.
    pub allowed: Shops,
    /// At most [`BINDING`].
    pub targets: &'a [Target],
    /// What counts towards them is worth.
    pub worth: Goods,
    pub aim: Aim,
}

/// Which choices are of interest.
#[derive(Debug, Clone, Copy)]
pub(super) enum Aim {
    /// The one of least reduced cost that leaves least over.
    Best,
    /// Any of least reduced cost, where a choice of the known reduced cost exists.
    Least { known: Coins },
    /// All within these limits that are not dominated.
    All { cost: Coins, reduced: Coins },
}

impl Ask<'_> {
    /// The cheapest choice in some shops.
    pub(super) fn best(allowed: Shops) -> Self {
        Self { allowed, targets: &[], worth: [0; BINDING], aim: Aim::Best }
    }

    fn target(&self, pack: &Pack) -> Option<(usize, Coins)> {
        let at = self.targets.iter().position(|target| target.shop == pack.shop)?;
        self.targets.get(at).map(|target| (at, target.goods))
    }

    /// Whether more of the pack than needed is for this list to find.
    pub(super) fn pads(&self, pack: &Pack) -> bool {
        matches!(self.aim, Aim::All { .. }) && !pack.is_free_to_add() && self.target(pack).is_some()
    }

    /// Parts for one coin of goods in the pack's shop.
    pub(super) fn reduced(&self, pack: &Pack) -> Coins {
        let worth = self.target(pack).and_then(|(at, _)| self.worth.get(at));
        PARTS - worth.copied().unwrap_or(0)
    }
}

/// `None` when no allowed shop sells the item.
pub(super) fn cover(item: &Item, ask: Ask<'_>, work: &mut Work) -> Option<Listing> {
    let lots = in_order(item, ask);
    let (most_cost, most_reduced) = match ask.aim {
        Aim::Best => (Coins::MAX, quick(&lots)?),
        Aim::Least { known } => (Coins::MAX, known),
        Aim::All { cost, reduced } => (cost, reduced),
    };
    let mut lister = Lister {
        ask,
        most_cost,
        most_reduced,
        trail: Trail::default(),
        done: Vec::new(),
        unlisted: None,
        made: lots.len(),
    };
    let mut open = vec![Label::NOTHING];
    for lot in &lots {
        open = lister.extend(open, lot);
    }
    work.labels(lister.made);
    let mut choices: Vec<Choice> = lister.done.iter().map(|label| lister.choice(label)).collect();
    choices.sort_by(|one, other| {
        one.reduced.cmp(&other.reduced).then(one.left.total_cmp(&other.left))
    });
    Some(Listing { choices, unlisted: lister.unlisted })
}

#[derive(Debug, Clone, Copy)]
struct Label {
    /// In parts of the need.
    amount: f64,
    cost: Coins,
    reduced: Coins,
    goods: Goods,
    last: Step,
}

impl Label {
    const NOTHING: Self =
        Self { amount: 0.0, cost: 0, reduced: 0, goods: [0; BINDING], last: Step::Kept { at: 0 } };

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
    most_cost: Coins,
    most_reduced: Coins,
    trail: Trail,
    /// Labels that cover the need.
    done: Vec<Label>,
    unlisted: Option<Coins>,
    /// Labels so far.
    made: usize,
}

impl Lister<'_> {
    /// The labels that still need more, with every count of one more pack.
    fn extend(&mut self, open: Vec<Label>, lot: &Lot) -> Vec<Label> {
        let mut next = Vec::with_capacity(open.len());
        let padded = if lot.pads { self.done.clone() } else { Vec::new() };
        for label in open.iter().chain(&padded) {
            self.every_count(label, lot, &mut next);
        }
        if !lot.is_last() {
            next.extend(open);
        }
        self.trim(&mut next, lot);
        self.tidy();
        self.trail.keep(&mut next);
        self.trail.keep(&mut self.done);
        next
    }

    fn every_count(&mut self, label: &Label, lot: &Lot, next: &mut Vec<Label>) {
        // The last pack has to cover all that is missing.
        let must_cover = lot.is_last() && !lot.pads;
        let missing =
            if must_cover { (1.0 - SHORT_OF - label.amount) / lot.pack.size } else { 0.0 };
        let Some(mut count) = lot.pack.at_least(missing) else { return };
        while let Some(new) = self.with(label, lot, count) {
            if new.is_enough() {
                self.done.push(new);
                if !(lot.pads && self.counts_for_more(&new, &lot.pack)) {
                    return;
                }
            } else if self.is_within(&new, lot.rest) {
                next.push(new);
            } else if self.floor(&new, lot.rest) > self.most_reduced
                && lot.rate() >= lot.rest.reduced
            {
                // A pack at no better rate than the rest only raises the bound.
                return;
            }
            count = count.saturating_add(lot.pack.step);
            if next.len() > 2 * self.most_labels() {
                self.trim(next, lot);
            }
        }
    }

    /// `None` beyond the limits.
    fn with(&mut self, label: &Label, lot: &Lot, count: u32) -> Option<Label> {
        self.made += 1;
        let more = lot.pack.cost(count);
        let cost = label.cost.saturating_add(more);
        let reduced = label.reduced.saturating_add(more.saturating_mul(lot.parts));
        if cost > self.most_cost || reduced > self.most_reduced || count > PACKS {
            return None;
        }
        let mut goods = label.goods;
        if let Some((at, _)) = self.ask.target(&lot.pack)
            && let Some(sum) = goods.get_mut(at)
        {
            *sum += more;
        }
        let Step::Kept { at: after } = label.last else { return None };
        let amount = label.amount + lot.pack.size * f64::from(count);
        let last = Step::New { after, place: lot.place, count };
        let new = Label { amount, cost, reduced, goods, last };
        if !matches!(self.ask.aim, Aim::All { .. }) && new.is_enough() {
            self.most_reduced = self.most_reduced.min(reduced);
        }
        Some(new)
    }

    /// More goods than a target asks for count for nothing.
    fn counts_for_more(&self, label: &Label, pack: &Pack) -> bool {
        self.ask.target(pack).is_some_and(|(at, goods)| {
            pack.price > 0 && label.goods.get(at).is_some_and(|sum| *sum < goods)
        })
    }

    fn is_within(&self, label: &Label, rest: Rates) -> bool {
        self.floor(label, rest) <= self.most_reduced
            && at_least(label.cost, label, rest.cost) <= self.most_cost
    }

    /// The reduced cost of any completion of a label is at least this.
    fn floor(&self, label: &Label, rest: Rates) -> Coins {
        at_least(label.reduced, label, rest.reduced)
    }

    fn most_labels(&self) -> usize {
        match self.ask.aim {
            Aim::Best | Aim::Least { .. } => ITEM_LABELS,
            Aim::All { .. } => LIST_LABELS,
        }
    }

    /// Drops what is dominated, and beyond the limit of work what promises least.
    fn trim(&mut self, labels: &mut Vec<Label>, lot: &Lot) {
        labels.retain(|label| self.is_within(label, lot.rest));
        labels.sort_by(|one, other| {
            one.reduced.cmp(&other.reduced).then(other.amount.total_cmp(&one.amount))
        });
        match self.ask.aim {
            Aim::Best => keep_best(labels, |better, label| {
                better.amount >= label.amount
                    && (better.reduced < label.reduced || better.amount == label.amount)
            }),
            Aim::Least { .. } => keep_best(labels, |better, label| better.amount >= label.amount),
            Aim::All { .. } => keep_best(labels, |better, label| {
                better.amount >= label.amount
                    && label.counts_no_more_than(better)
                    && (better.cost < label.cost
                        || better.cost == label.cost && better.amount == label.amount)
            }),
        }
        let most = self.most_labels();
        if labels.len() > most {
            labels.sort_by_key(|label| self.floor(label, lot.rest));
            let dropped = labels.get(most).map(|label| self.floor(label, lot.rest));
            self.unlisted = [self.unlisted, dropped].into_iter().flatten().min();
            labels.truncate(most);
        }
    }

    /// Drops covering labels that are dominated.
    fn tidy(&mut self) {
        self.done.sort_by(|one, other| {
            let order = one.reduced.cmp(&other.reduced).then(one.cost.cmp(&other.cost));
            order.then(one.amount.total_cmp(&other.amount))
        });
        match self.ask.aim {
            Aim::Best | Aim::Least { .. } => self.done.truncate(1),
            Aim::All { .. } => keep_best(&mut self.done, |better, label| {
                label.counts_no_more_than(better)
                    && (better.cost < label.cost
                        || better.cost == label.cost && better.amount <= label.amount)
            }),
        }
        if self.done.len() > LISTED {
            let dropped = self.done.get(LISTED).map(|label| label.reduced);
            self.unlisted = [self.unlisted, dropped].into_iter().flatten().min();
            self.done.truncate(LISTED);
        }
    }

    fn choice(&self, label: &Label) -> Choice {
        Choice {
            counts: self.trail.counts(label),
            cost: label.cost,
            goods: label.goods,
            reduced: label.reduced,
            left: (label.amount - 1.0).max(0.0),
        }
    }
}

/// What has been paid, and what the rest of the need costs at a rate.
fn at_least(paid: Coins, label: &Label, rate: f64) -> Coins {
    if label.is_enough() {
        return paid;
    }
    let missing = (1.0 - SHORT_OF - label.amount) * rate * (1.0 - NOISE);
    // Casts of floats saturate: without a pack to come it is beyond any limit.
    paid.saturating_add(missing.ceil() as Coins)
}

/// Labels that are compared at most with each new one; one more kept is no harm.
const WINDOW: usize = 200;

/// Keeps, of labels in order, those to which no earlier one is `better`.
fn keep_best(labels: &mut Vec<Label>, better: impl Fn(&Label, &Label) -> bool) {
    let mut kept: Vec<Label> = Vec::with_capacity(labels.len());
    for label in labels.drain(..) {
        if !kept.iter().rev().take(WINDOW).any(|other| better(other, &label)) {
            kept.push(label);
        }
    }
    *labels = kept;
}
