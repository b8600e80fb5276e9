//! The ways to buy half of the items.
//!
//! Items are taken one after the other; a *label* is a choice for each so far. Labels that
//! cannot be part of an answer are dropped:
//!
//! - *by bound*: how much the choices are above the bound of `weigh`, and by how much the
//!   goods must overrun or fall short of a sum whatever the items that are not in this half
//!   count, adds up to more than is allowed;
//! - *by dominance*: a label that counts as many goods towards every sum and costs no more
//!   (or as much, leaving no more over) makes every completion of the other no better.
//!
//! Goods beyond what can still be missing count for nothing; they are cut off there, at
//! what they are worth, which makes more labels alike.

use super::combine::Programme;
use crate::plan::buy::coinage::Coins;
use crate::plan::buy::cover::{Choice, Goods, PARTS};
use crate::plan::buy::work::{BINDING, Work};
use std::cmp::Ordering;

/// A choice for each item so far.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Label {
    pub goods: Goods,
    pub cost: Coins,
    pub left: f64,
    /// By how much this is above the bound, in parts.
    pub above: Coins,
    /// The label it continues and the choice by which it does.
    after: u32,
    choice: u32,
}

impl Label {
    pub(super) fn with(mut self, choice: &Choice, above: Coins) -> Self {
        self.goods.iter_mut().zip(choice.goods).for_each(|(sum, more)| *sum += more);
        self.cost += choice.cost;
        self.left += choice.left;
        self.above += above;
        self
    }

    fn by_cost(&self, other: &Self) -> Ordering {
        self.cost.cmp(&other.cost).then(self.left.total_cmp(&other.left))
    }
}

/// An item with more than one choice, or none.
pub(super) struct Stage<'a> {
    /// The place of its list.
    list: usize,
    /// Its least reduced cost, in parts.
    least: Coins,
    choices: Vec<(usize, &'a Choice)>,
    pub bounds: Bounds,
}

impl<'a> Stage<'a> {
    pub(super) fn new(list: usize, least: Coins, choices: Vec<(usize, &'a Choice)>) -> Self {
        let mut bounds = Bounds::default();
        for at in 0..BINDING {
            let goods = choices.iter().filter_map(|(_, choice)| choice.goods.get(at).copied());
            if let Some(least) = bounds.least.get_mut(at) {
                *least = goods.clone().min().unwrap_or(0);
            }
            if let Some(most) = bounds.most.get_mut(at) {
                *most = goods.max().unwrap_or(0);
            }
        }
        Self { list, least, choices, bounds }
    }

    pub(super) fn choices(&self) -> usize {
        self.choices.len()
    }

    /// By how much the choice after the best is worse, in parts.
    pub(super) fn second_best(&self) -> Coins {
        let mut reduced: Vec<Coins> = self.choices.iter().map(|(_, it)| it.reduced).collect();
        reduced.sort_unstable();
        reduced.get(1).map_or(0, |second| second - self.least)
    }
}

/// What some items count towards the targets.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Bounds {
    least: Goods,
    most: Goods,
}

impl Bounds {
    /// Just that much.
    pub(super) fn of(label: &Label) -> Self {
        Self { least: label.goods, most: label.goods }
    }

    pub(super) fn with(mut self, more: &Self) -> Self {
        self.least.iter_mut().zip(more.least).for_each(|(sum, more)| *sum += more);
        self.most.iter_mut().zip(more.most).for_each(|(sum, more)| *sum += more);
        self
    }

    fn without(mut self, less: &Self) -> Self {
        self.least.iter_mut().zip(less.least).for_each(|(sum, less)| *sum -= less);
        self.most.iter_mut().zip(less.most).for_each(|(sum, less)| *sum -= less);
        self
    }
}

/// Some of the items.
pub(super) struct Half {
    pub labels: Vec<Label>,
    /// Whether the limit of work dropped a label.
    pub is_cut: bool,
    /// Labels that are kept.
    room: usize,
    /// What these items count.
    own: Bounds,
    trail: Vec<Steps>,
}

/// How the labels after one more item came about.
struct Steps {
    list: usize,
    /// The label before, and the place of the choice in the list.
    steps: Vec<(usize, usize)>,
}

impl Half {
    pub(super) fn new(start: Label, room: usize) -> Self {
        let own = Bounds::of(&start);
        Self { labels: vec![start], is_cut: false, room, own, trail: Vec::new() }
    }

    /// One more item, of `all` that there are.
    pub(super) fn extend(
        &mut self,
        programme: &Programme<'_>,
        stage: Stage<'_>,
        all: &Bounds,
        allowance: Coins,
        work: &mut Work,
    ) {
        self.own = self.own.with(&stage.bounds);
        let rest = all.without(&self.own);
        let mut next = Vec::with_capacity(self.labels.len() * 2);
        work.labels(self.labels.len() * stage.choices.len());
        for (choice, (_, bought)) in stage.choices.iter().enumerate() {
            for (after, label) in self.labels.iter().enumerate() {
                let mut new = label.with(bought, bought.reduced - stage.least);
                (new.after, new.choice) = (after as u32, choice as u32);
                if floor(programme, &new, &rest) <= allowance {
                    self.cap(programme, &mut new, &rest);
                    next.push(new);
                }
            }
            if next.len() > 4 * self.room {
                self.trim(programme, &mut next, &rest);
            }
        }
        self.trim(programme, &mut next, &rest);
        let place = |choice: u32| stage.choices.get(choice as usize).map_or(0, |(place, _)| *place);
        let step = |label: &Label| (label.after as usize, place(label.choice));
        self.trail.push(Steps { list: stage.list, steps: next.iter().map(step).collect() });
        self.labels = next;
    }

    /// The nearest to the bound first.
    pub(super) fn sort(&mut self) {
        let mut order: Vec<usize> = (0..self.labels.len()).collect();
        order.sort_by_key(|at| self.labels.get(*at).map(|label| label.above));
        self.labels = order.iter().filter_map(|at| self.labels.get(*at).copied()).collect();
        if let Some(last) = self.trail.last_mut() {
            last.steps = order.iter().filter_map(|at| last.steps.get(*at).copied()).collect();
        }
    }

    /// Writes the choices that led to a label.
    pub(super) fn trace(&self, label: usize, picks: &mut [usize]) {
        let mut at = label;
        for Steps { list, steps } in self.trail.iter().rev() {
            let Some((after, place)) = steps.get(at) else { return };
            if let Some(pick) = picks.get_mut(*list) {
                *pick = *place;
            }
            at = *after;
        }
    }

    /// Together with the least that the rest counts, more would overrun the sum; and both
    /// halves may be cut, so none is cut below its own least.
    fn cap(&self, programme: &Programme<'_>, label: &mut Label, rest: &Bounds) {
        let bounds = rest.least.iter().zip(self.own.least).zip(programme.weights.each);
        let targets = label.goods.iter_mut().zip(programme.targets).zip(bounds);
        for ((goods, target), ((rest, own), weight)) in targets {
            let cap = (target.goods - rest).max(own);
            label.above += weight * (*goods - cap).max(0);
            *goods = (*goods).min(cap);
        }
    }

    /// Drops what is dominated, and then what is too much.
    fn trim(&mut self, programme: &Programme<'_>, labels: &mut Vec<Label>, rest: &Bounds) {
        drop_dominated(labels, programme.targets.len());
        if labels.len() > self.room {
            self.is_cut = true;
            labels.sort_by_key(|label| floor(programme, label, rest));
            labels.truncate(self.room);
        }
    }
}

/// How much, in parts, any completion of a label is above the bound at least.
fn floor(programme: &Programme<'_>, label: &Label, rest: &Bounds) -> Coins {
    let mut floor = label.above;
    let targets = programme.targets.iter().zip(&programme.lists.fillings);
    let bounds = rest.least.iter().zip(rest.most).zip(programme.weights.each);
    for (((target, filling), goods), ((least, most), weight)) in
        targets.zip(label.goods).zip(bounds)
    {
        let missing = target.goods - goods;
        floor += weight * (least - missing).max(0);
        // What no choice can reach is filled, at the full price.
        let filled = (missing - most).max(0);
        if filled > 0 && !filling.is_possible() {
            return Coins::MAX;
        }
        floor = floor.saturating_add((PARTS - weight) * filled);
    }
    floor
}

/// Labels that each is compared with at most; one more kept is no harm.
const WINDOW: usize = 60;

fn drop_dominated(labels: &mut Vec<Label>, targets: usize) {
    labels.sort_by(|one, other| other.goods.cmp(&one.goods).then(one.by_cost(other)));
    labels.dedup_by_key(|label| label.goods);
    labels.sort_by(|one, other| one.by_cost(other).then(other.goods.cmp(&one.goods)));
    // One sum needs no more than a look at the last that was kept.
    let window = if targets == 1 { 1 } else { WINDOW };
    let mut kept: Vec<Label> = Vec::with_capacity(labels.len());
    for label in labels.drain(..) {
        let counts_as_many =
            |other: &Label| other.goods.iter().zip(label.goods).all(|(it, own)| *it >= own);
        if !kept.iter().rev().take(window).any(counts_as_many) {
            kept.push(label);
        }
    }
    *labels = kept;
}
