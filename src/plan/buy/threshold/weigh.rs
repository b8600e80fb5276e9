//! What it is worth to count a coin towards each sum.
//!
//! With a weight `w` of 0 to 1 on the coins that count towards a sum T, a basket that reaches
//! the sum costs at least
//!
//! ```text
//! L(w) = sum over the items of the least (cost - w goods)  +  w T
//! ```
//!
//! (Lagrangean relaxation; Fisher, Management Science 27, 1 (1981), from memory.) Packs
//! beyond the need have cost = goods, so they never lower this while no weight exceeds 1. `L`
//! is concave; its top is found by cutting planes, a linear programme of as many variables as
//! sums (Kelley, J. SIAM 8, 703 (1960), from memory). That only chooses the weights: they are
//! rounded, and the bound is computed from them in whole numbers.

use super::Leaf;
use crate::plan::buy::coinage::Coins;
use crate::plan::buy::cover::{Aim, Choice, Goods, PARTS, Target, cover, in_coins};
use crate::plan::buy::table::Item;
use crate::plan::buy::work::{BINDING, Work};
use microlp::{ComparisonOp, OptimizationDirection, Problem};

/// Cutting planes at most, for each sum.
const CUTS: usize = 12;

/// Weights with the bound that they prove.
#[derive(Debug, Clone)]
pub(super) struct Weights {
    /// In parts, for each sum.
    pub each: Goods,
    /// In parts of coins.
    pub bound: Coins,
    /// The least reduced cost of every item, in parts.
    pub least: Vec<Coins>,
}

impl Weights {
    /// By how much, in parts, the choices of a basket within a limit can be above the least.
    pub(super) fn allowance(&self, limit: Coins) -> Coins {
        PARTS.saturating_mul(limit).saturating_sub(self.bound)
    }
}

/// The best weights that were found, and their bound. The search ends as soon as the bound
/// rules the leaf out.
pub(super) fn weigh(leaf: &Leaf<'_>, targets: &[Target], work: &mut Work) -> Weights {
    let mut search = Search::new(leaf, targets);
    let mut all = [0; BINDING];
    all.iter_mut().take(targets.len()).for_each(|weight| *weight = PARTS);
    let mut best = search.evaluate([0; BINDING], work);
    let mut next = Some(all);
    for _ in 0..=CUTS * targets.len() {
        let Some(each) = next else { break };
        let weights = search.evaluate(each, work);
        if weights.bound > best.bound {
            best = weights;
        }
        if in_coins(best.bound) > leaf.limit {
            break;
        }
        // What half a coin could improve is not worth the next cut.
        next = highest(&search.cuts, targets.len())
            .filter(|(top, _)| top * PARTS as f64 > (best.bound + PARTS / 2) as f64)
            .map(|(_, each)| each);
    }
    best
}

struct Search<'a> {
    leaf: &'a Leaf<'a>,
    targets: &'a [Target],
    cuts: Vec<Cut>,
    /// For every item, cost and goods of the choices met so far: the best of them bounds
    /// the search for a better one.
    known: Vec<Vec<(Coins, Goods)>>,
}

/// The line that bounds `L` from above at some weights: what the best choices there cost
/// and by how much they miss the sums.
struct Cut {
    cost: f64,
    missing: [f64; BINDING],
}

impl<'a> Search<'a> {
    fn new(leaf: &'a Leaf<'a>, targets: &'a [Target]) -> Self {
        let known = leaf
            .items()
            .map(|(item, pick)| vec![(pick.choice.cost, goods(item, &pick.choice, targets))]);
        Self { leaf, targets, cuts: Vec::new(), known: known.collect() }
    }

    fn evaluate(&mut self, each: Goods, work: &mut Work) -> Weights {
        let mut weights = Weights { each, bound: 0, least: Vec::new() };
        let (mut total, mut sums) = (0, [0; BINDING]);
        for ((item, pick), known) in self.leaf.items().zip(&mut self.known) {
            let reduced = |(cost, goods): &(Coins, Goods)| {
                let worth: Coins = goods.iter().zip(each).map(|(goods, worth)| goods * worth).sum();
                PARTS * cost - worth
            };
            let Some((least, mut best)) =
                known.iter().map(|known| (reduced(known), *known)).min_by_key(|(least, _)| *least)
            else {
                continue;
            };
            let mut least = least.min(PARTS * pick.floor);
            if self.leaf.counts(item, self.targets) {
                let aim = Aim::Least { known: reduced(&best) };
                if let Some(listing) = cover(item, self.leaf.ask(self.targets, each, aim), work) {
                    if let Some(choice) = listing.choices.first() {
                        best = (choice.cost, choice.goods);
                        known.push(best);
                    }
                    least = reduced(&best).min(listing.unlisted.unwrap_or(Coins::MAX));
                }
            }
            weights.bound += least;
            weights.least.push(least);
            total += best.0;
            sums.iter_mut().zip(best.1).for_each(|(sum, more)| *sum += more);
        }
        let mut missing = [0.0; BINDING];
        for (((missing, target), sum), worth) in
            missing.iter_mut().zip(self.targets).zip(sums).zip(each)
        {
            *missing = (target.goods - sum) as f64;
            weights.bound += worth * target.goods;
        }
        self.cuts.push(Cut { cost: total as f64, missing });
        weights
    }
}

/// What a choice counts towards the targets.
fn goods(item: &Item, choice: &Choice, targets: &[Target]) -> Goods {
    let mut goods = [0; BINDING];
    for (pack, count) in choice.packs(item) {
        for (sum, target) in goods.iter_mut().zip(targets) {
            if target.shop == pack.shop {
                *sum += pack.cost(count);
            }
        }
    }
    goods
}

/// The top of the cuts, and where it is.
fn highest(cuts: &[Cut], sums: usize) -> Option<(f64, Goods)> {
    let base = cuts.first()?.cost;
    let mut programme = Problem::new(OptimizationDirection::Maximize);
    let top = programme.add_var(1.0, (0.0, f64::INFINITY));
    let weights: Vec<_> = (0..sums).map(|_| programme.add_var(0.0, (0.0, 1.0))).collect();
    for cut in cuts {
        let mut row = vec![(top, 1.0)];
        row.extend(weights.iter().zip(cut.missing).map(|(weight, missing)| (*weight, -missing)));
        programme.add_constraint(&row, ComparisonOp::Le, cut.cost - base);
    }
    let solution = programme.solve().ok()?.into_solution().ok()?;
    let mut each = [0; BINDING];
    for (part, weight) in each.iter_mut().zip(weights) {
        // Casts of floats saturate.
        *part = ((solution.var_value(weight) * PARTS as f64).round() as Coins).clamp(0, PARTS);
    }
    Some((base + solution.objective(), each))
}
