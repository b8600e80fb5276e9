//! One choice an item, and fillings, such that the sums are met at least cost.
//!
//! The items are dealt to two halves; in each, [`super::half`] keeps the ways to buy its
//! items that can be part of an answer. Every way of the one is then tried with every way
//! of the other, nearest to the bound first.

use super::half::{Bounds, Half, Label, Stage};
use super::lists::Lists;
use super::weigh::Weights;
use crate::plan::buy::coinage::Coins;
use crate::plan::buy::cover::{Choice, Goods, PARTS, Target};
use crate::plan::buy::work::{BASKET_LABELS, BASKET_LABELS_MADE, BINDING, Work};
use std::cmp::Reverse;

/// Labels that are kept however many choices there are.
const LEAST_ROOM: usize = 50;

/// What is to be put together.
pub(super) struct Programme<'a> {
    pub lists: &'a Lists,
    pub targets: &'a [Target],
    pub weights: &'a Weights,
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

/// The best pair so far: cost and left-over with the fillings, and the two labels.
type Best = Option<(Coins, f64, [usize; 2])>;

impl Programme<'_> {
    /// The best mix that costs no more than the limit; and whether the limit of work may
    /// have hidden a better one.
    pub(super) fn within(&self, limit: Coins, work: &mut Work) -> (Option<Mix>, bool) {
        let missed = self.lists.missed.is_some_and(|it| it <= PARTS.saturating_mul(limit));
        let allowance = self.weights.allowance(limit);
        let (start, mut picks, stages) = self.stages(allowance);
        let all = stages.iter().fold(Bounds::of(&start), |all, stage| all.with(&stage.bounds));
        let choices = stages.iter().map(Stage::choices).sum::<usize>().max(1);
        let made = BASKET_LABELS_MADE.min(work.labels_left());
        let room = (made / choices).clamp(LEAST_ROOM, BASKET_LABELS);
        let mut halves = [Half::new(start, room), Half::new(Label::default(), room)];
        for stage in stages {
            let [one, other] = &mut halves;
            let half = if one.labels.len() <= other.labels.len() { one } else { other };
            half.extend(self, stage, &all, allowance, work);
        }
        let [one, mut other] = halves;
        other.sort();
        let (best, hides) = self.join(&one.labels, &other.labels, allowance, limit, work);
        let is_cut = missed || hides || one.is_cut || other.is_cut;
        let mix = best.and_then(|(cost, _, [at, with])| {
            let missing = self.missing(one.labels.get(at)?, other.labels.get(with)?);
            one.trace(at, &mut picks);
            other.trace(with, &mut picks);
            Some(Mix { picks, missing, cost })
        });
        (mix, is_cut)
    }

    /// Choices that can be within the limit. Items with only one are bought at once; the
    /// others come in the order of how much worse any but their best is, which leaves few
    /// labels for long.
    fn stages(&self, allowance: Coins) -> (Label, Vec<usize>, Vec<Stage<'_>>) {
        let mut start = Label::default();
        let mut picks = vec![0; self.lists.choices.len()];
        let mut stages: Vec<Stage<'_>> = Vec::new();
        let lists = self.lists.choices.iter().zip(&self.weights.least).enumerate();
        for (at, (list, least)) in lists {
            let near = |choice: &Choice| choice.reduced - least <= allowance;
            let choices: Vec<_> =
                list.iter().enumerate().filter(|(_, choice)| near(choice)).collect();
            if let [(only, choice)] = choices[..] {
                start = start.with(choice, choice.reduced - least);
                if let Some(pick) = picks.get_mut(at) {
                    *pick = only;
                }
            } else {
                stages.push(Stage::new(at, *least, choices));
            }
        }
        stages.sort_by_key(|stage| Reverse(stage.second_best()));
        (start, picks, stages)
    }

    /// The best pair, and whether the limit of work on fillings may hide a better one.
    fn join(
        &self,
        ones: &[Label],
        others: &[Label],
        allowance: Coins,
        limit: Coins,
        work: &mut Work,
    ) -> (Best, bool) {
        let mut best: Best = None;
        let mut hides = false;
        for (at, one) in ones.iter().enumerate() {
            let near = others.partition_point(|other| one.above + other.above <= allowance);
            work.pairs(near);
            for (with, other) in others.iter().take(near).enumerate() {
                let (cost, left) = (one.cost + other.cost, one.left + other.left);
                let missing = self.missing(one, other);
                // Filling costs what is missing or more.
                let least = cost + missing.iter().sum::<Coins>();
                let known = best.map_or((limit, f64::INFINITY), |(cost, left, _)| (cost, left));
                if (least, left) >= known {
                    continue;
                }
                let fillings = self.lists.fillings.iter().zip(missing);
                let filled = fillings.map(|(filling, missing)| filling.best(missing));
                let filled =
                    { filled }.try_fold((cost, left, true), |(cost, left, is_best), more| {
                        more.map(|it| (cost + it.cost, left + it.left, is_best && it.is_best))
                    });
                let Some((cost, left, is_best)) = filled else { continue };
                hides |= !is_best;
                if cost > limit {
                    continue;
                }
                if best.is_none_or(|(least, less, _)| (cost, left) < (least, less)) {
                    best = Some((cost, left, [at, with]));
                }
            }
        }
        (best, hides)
    }

    /// What two labels leave to be filled.
    fn missing(&self, one: &Label, other: &Label) -> Goods {
        let mut missing = [0; BINDING];
        let goods = one.goods.iter().zip(other.goods);
        for ((missing, target), (one, other)) in missing.iter_mut().zip(self.targets).zip(goods) {
            *missing = (target.goods - one - other).max(0);
        }
        missing
    }
}
