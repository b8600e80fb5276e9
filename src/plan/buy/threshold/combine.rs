//! One choice an item, and fillings, such that the sums are met at least cost.
//!
//! Items are taken one after the other; a *label* is a choice for each so far. Labels that
//! cannot be part of an answer are dropped:
//!
//! - *by bound*: what is paid, plus the least reduced cost of every item to come, plus what
//!   the goods that are still to be counted are worth, is a lower bound of the whole (see
//!   `weigh`); above the limit nothing that follows is of interest;
//! - *by dominance*: a label that counts as many goods towards every sum and costs no more
//!   (or as much, leaving no more over) makes every continuation of the other no better.
//!
//! Goods beyond what can still be missing count for nothing, so they are cut there, which
//! makes more labels alike.

use super::fill::Filling;
use super::weigh::{PARTS, Weights};
use crate::plan::buy::coinage::Coins;
use crate::plan::buy::cover::{Choice, Goods, Target};
use crate::plan::buy::work::{BINDING, Work};

/// What is to be put together.
pub(super) struct Programme<'a> {
    /// The choices of each item.
    pub lists: &'a [Vec<Choice>],
    pub targets: &'a [Target],
    pub weights: &'a Weights,
    /// For each target.
    pub fillings: &'a [Filling],
}

/// A way to meet the sums.
#[derive(Debug)]
pub(super) struct Mix {
    /// The place of the choice in each list.
    pub picks: Vec<usize>,
    /// What is to be filled, for each target.
    pub missing: Goods,
    /// Of all goods.
    pub cost: Coins,
}

/// An item with more than one choice, and what is known of the items after it.
struct Stage<'a> {
    list: usize,
    choices: Vec<(usize, &'a Choice)>,
    rest: Rest,
}

/// Bounds on what the items to come add.
#[derive(Debug, Clone, Copy, Default)]
struct Rest {
    /// The sum of their least reduced costs, in parts.
    reduced: Coins,
    least_goods: Goods,
    most_goods: Goods,
}

#[derive(Debug, Clone, Copy)]
struct Label {
    goods: Goods,
    cost: Coins,
    left: f64,
    /// The label it continues and the choice by which it does.
    after: u32,
    choice: u32,
}

impl Programme<'_> {
    /// The best mix that costs no more than the limit; and whether the limit of work may
    /// have hidden a better one.
    pub(super) fn within(&self, limit: Coins, work: &mut Work) -> (Option<Mix>, bool) {
        let (start, mut picks, stages) = self.stages(limit);
        let mut is_cut = false;
        let mut labels = vec![start];
        let mut trail: Vec<Vec<(u32, u32)>> = Vec::with_capacity(stages.len());
        for stage in &stages {
            labels = self.extend(&labels, stage, limit);
            self.drop_dominated(&mut labels);
            if labels.len() > work.basket_labels() {
                is_cut = true;
                labels.sort_by_key(|label| self.floor(label, &stage.rest));
                labels.truncate(work.basket_labels());
            }
            work.labels(labels.len());
            trail.push(labels.iter().map(|label| (label.after, label.choice)).collect());
        }
        let mut best: Option<(Coins, f64, usize)> = None;
        for (at, label) in labels.iter().enumerate() {
            let missing = self.missing(label);
            is_cut |= self.fillings.iter().zip(missing).any(|(it, missing)| !it.knows(missing));
            let Some((cost, left)) = self.filled(label, missing) else { continue };
            if cost <= limit && best.is_none_or(|(least, less, _)| (cost, left) < (least, less)) {
                best = Some((cost, left, at));
            }
        }
        let mix = best.and_then(|(cost, _, at)| {
            let missing = self.missing(labels.get(at)?);
            trace(&trail, &stages, at, &mut picks);
            Some(Mix { picks, missing, cost })
        });
        (mix, is_cut)
    }

    /// Choices that can be within the limit. Items with only one are bought at once; the
    /// others come in the order of how much goods they can move.
    fn stages(&self, limit: Coins) -> (Label, Vec<usize>, Vec<Stage<'_>>) {
        let mut start = Label { goods: [0; BINDING], cost: 0, left: 0.0, after: 0, choice: 0 };
        let allowance = PARTS.saturating_mul(limit).saturating_sub(self.weights.bound);
        let mut picks = vec![0; self.lists.len()];
        let mut stages: Vec<Stage<'_>> = Vec::new();
        for (at, list) in self.lists.iter().enumerate() {
            let Some(least) = list.iter().map(|choice| self.weights.reduced(choice)).min() else {
                continue;
            };
            let near = |choice: &Choice| self.weights.reduced(choice) - least <= allowance;
            let choices: Vec<_> =
                list.iter().enumerate().filter(|(_, choice)| near(choice)).collect();
            if let [(only, choice)] = choices[..] {
                start = start.with(choice, 0, 0);
                if let Some(pick) = picks.get_mut(at) {
                    *pick = only;
                }
            } else {
                stages.push(Stage { list: at, choices, rest: Rest::default() });
            }
        }
        stages.sort_by_key(|stage| std::cmp::Reverse(stage.spread()));
        let mut rest = Rest::default();
        for stage in stages.iter_mut().rev() {
            stage.rest = rest;
            rest = rest.before(stage, self.weights);
        }
        (start, picks, stages)
    }

    fn extend(&self, labels: &[Label], stage: &Stage<'_>, limit: Coins) -> Vec<Label> {
        let most = PARTS.saturating_mul(limit);
        let mut next = Vec::with_capacity(labels.len() * 2);
        for (after, label) in labels.iter().enumerate() {
            for (choice, (_, bought)) in stage.choices.iter().enumerate() {
                let mut new = label.with(bought, after as u32, choice as u32);
                if self.floor(&new, &stage.rest) <= most {
                    let caps = self.targets.iter().zip(stage.rest.least_goods);
                    for (goods, (target, least)) in new.goods.iter_mut().zip(caps) {
                        *goods = (*goods).min((target.goods - least).max(0));
                    }
                    next.push(new);
                }
            }
        }
        next
    }

    /// A lower bound, in parts, of what any continuation costs.
    fn floor(&self, label: &Label, rest: &Rest) -> Coins {
        let mut floor = PARTS * label.cost + rest.reduced;
        for (at, ((target, filling), goods)) in
            self.targets.iter().zip(self.fillings).zip(label.goods).enumerate()
        {
            let of = |goods: &Goods| goods.get(at).copied().unwrap_or(0);
            let (missing, weight) = (target.goods - goods, of(&self.weights.each));
            floor += weight * missing.max(of(&rest.least_goods));
            // What no choice can reach is filled, at the full price.
            let filled = (missing - of(&rest.most_goods)).max(0);
            floor = floor.saturating_add((PARTS - weight) * filled);
            if filled > 0 && !filling.is_possible() {
                return Coins::MAX;
            }
        }
        floor
    }

    fn drop_dominated(&self, labels: &mut Vec<Label>) {
        labels.sort_by(|one, other| other.goods.cmp(&one.goods).then(one.by_cost(other)));
        labels.dedup_by_key(|label| label.goods);
        labels.sort_by(|one, other| one.by_cost(other).then(other.goods.cmp(&one.goods)));
        // One sum needs no more than a look at the last that was kept.
        let window = if self.targets.len() == 1 { 1 } else { WINDOW };
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

    fn missing(&self, label: &Label) -> Goods {
        let mut missing = [0; BINDING];
        for ((missing, target), goods) in missing.iter_mut().zip(self.targets).zip(label.goods) {
            *missing = (target.goods - goods).max(0);
        }
        missing
    }

    /// Cost and left-over with the fillings; `None` when a sum cannot be filled.
    fn filled(&self, label: &Label, missing: Goods) -> Option<(Coins, f64)> {
        self.fillings.iter().zip(missing).try_fold(
            (label.cost, label.left),
            |(cost, left), (filling, missing)| {
                let (more, waste) = filling.best(missing)?;
                Some((cost + more, left + waste))
            },
        )
    }
}

/// Labels that each is compared with at most; one more kept is no harm.
const WINDOW: usize = 60;

/// Writes the choices that led to a label.
fn trace(trail: &[Vec<(u32, u32)>], stages: &[Stage<'_>], last: usize, picks: &mut [usize]) {
    let mut at = last;
    for (stage, steps) in stages.iter().zip(trail).rev() {
        let Some((after, choice)) = steps.get(at) else { return };
        if let Some((place, _)) = stage.choices.get(*choice as usize)
            && let Some(pick) = picks.get_mut(stage.list)
        {
            *pick = *place;
        }
        at = *after as usize;
    }
}

impl Label {
    fn with(&self, choice: &Choice, after: u32, place: u32) -> Self {
        let mut goods = self.goods;
        goods.iter_mut().zip(choice.goods).for_each(|(sum, more)| *sum += more);
        Self {
            goods,
            cost: self.cost + choice.cost,
            left: self.left + choice.left,
            after,
            choice: place,
        }
    }

    fn by_cost(&self, other: &Self) -> std::cmp::Ordering {
        self.cost.cmp(&other.cost).then(self.left.total_cmp(&other.left))
    }
}

impl Stage<'_> {
    /// By how many coins the choices differ in what they count.
    fn spread(&self) -> Coins {
        (0..BINDING)
            .map(|at| {
                let goods = |choice: &Choice| choice.goods.get(at).copied().unwrap_or(0);
                let all = self.choices.iter().map(|(_, choice)| goods(choice));
                all.clone().max().unwrap_or(0) - all.min().unwrap_or(0)
            })
            .sum()
    }
}

impl Rest {
    /// With one more item to come.
    fn before(mut self, stage: &Stage<'_>, weights: &Weights) -> Self {
        let choices = || stage.choices.iter().map(|(_, choice)| *choice);
        self.reduced += choices().map(|choice| weights.reduced(choice)).min().unwrap_or(0);
        for at in 0..BINDING {
            let goods = || choices().filter_map(|choice| choice.goods.get(at).copied());
            if let (Some(least), Some(most), Some(low), Some(high)) = (
                self.least_goods.get_mut(at),
                self.most_goods.get_mut(at),
                goods().min(),
                goods().max(),
            ) {
                *least += low;
                *most += high;
            }
        }
        self
    }
}
