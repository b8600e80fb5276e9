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

use crate::plan::buy::coinage::Coins;
use crate::plan::buy::cover::{Choice, Goods, Target};
use crate::plan::buy::work::BINDING;
use microlp::{ComparisonOp, OptimizationDirection, Problem};

/// Parts of a coin in which weights are kept.
pub(super) const PARTS: Coins = 4096;

/// Cutting planes at most, by the number of sums.
const CUTS: [usize; BINDING + 1] = [0, 15, 30, 45, 60];

/// Weights with the bound that they prove.
#[derive(Debug, Clone, Copy)]
pub(super) struct Weights {
    /// In parts, for each sum.
    pub each: Goods,
    /// In parts of coins.
    pub bound: Coins,
}

impl Weights {
    /// Rounded up, since baskets cost whole coins.
    pub(super) fn bound_in_coins(&self) -> Coins {
        self.bound.div_euclid(PARTS) + Coins::from(self.bound.rem_euclid(PARTS) > 0)
    }

    /// What a choice costs less what its goods are worth, in parts.
    pub(super) fn reduced(&self, choice: &Choice) -> Coins {
        reduced(&self.each, choice)
    }
}

fn reduced(weights: &Goods, choice: &Choice) -> Coins {
    let worth: Coins = weights.iter().zip(choice.goods).map(|(weight, goods)| weight * goods).sum();
    PARTS * choice.cost - worth
}

/// The best weights that were found, and their bound.
pub(super) fn weigh(lists: &[Vec<Choice>], targets: &[Target]) -> Weights {
    let mut all = [0; BINDING];
    all.iter_mut().take(targets.len()).for_each(|weight| *weight = PARTS);
    let (mut best, nothing) = evaluate(lists, targets, [0; BINDING]);
    let (counted, everything) = evaluate(lists, targets, all);
    if counted.bound > best.bound {
        best = counted;
    }
    let mut cuts = vec![nothing, everything];
    for _ in 0..CUTS.get(targets.len()).copied().unwrap_or(0) {
        let Some((top, each)) = highest(&cuts, targets.len()) else { break };
        // What half a coin could improve is not worth the next cut.
        if top * PARTS as f64 <= (best.bound + PARTS / 2) as f64 {
            break;
        }
        let (weights, cut) = evaluate(lists, targets, each);
        if weights.bound > best.bound {
            best = weights;
        }
        cuts.push(cut);
    }
    best
}

/// The line that bounds `L` from above at some weights: what the best choices there cost
/// and by how much they miss the sums.
struct Cut {
    cost: f64,
    missing: [f64; BINDING],
}

fn evaluate(lists: &[Vec<Choice>], targets: &[Target], each: Goods) -> (Weights, Cut) {
    let (mut bound, mut cost, mut goods) = (0, 0, [0; BINDING]);
    for list in lists {
        let Some(best) = list.iter().min_by_key(|choice| reduced(&each, choice)) else { continue };
        bound += reduced(&each, best);
        cost += best.cost;
        goods.iter_mut().zip(best.goods).for_each(|(sum, more)| *sum += more);
    }
    let mut missing = [0.0; BINDING];
    for (((missing, target), goods), weight) in missing.iter_mut().zip(targets).zip(goods).zip(each)
    {
        *missing = (target.goods - goods) as f64;
        bound += weight * target.goods;
    }
    (Weights { each, bound }, Cut { cost: cost as f64, missing })
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
