//! Which packs meet a need at least cost.

use crate::quantity::{Decimal, Money};
use good_lp::solvers::microlp::microlp;
use good_lp::{
    Expression, ProblemVariables, Solution, SolverModel, Variable, WithTimeLimit, constraint,
    solvers::SolutionStatus, variable,
};
use rust_decimal::prelude::ToPrimitive;

/// Seconds after which a search ends without its proof. The packs of one item are a
/// matter of milliseconds; this only guards against a freak of a price list.
const PATIENCE: f64 = 10.0;

/// The solver meets its rows within 1e-7; a shortage of a millionth of the need is less
/// than a drop in fifty litres, and no reason for one more bottle.
const SHORT_OF: f64 = 1e-6;

/// More packs of one size than this are refused; the solver counts in 32 bits.
const MOST_PACKS: f64 = 1e6;

/// A pack on offer.
#[derive(Debug, Clone, Copy)]
pub(super) struct Offer {
    /// Positive, in the unit of the need.
    pub size: f64,
    pub price: Money,
}

/// How many of each offer, in their order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Choice {
    pub counts: Vec<u32>,
    pub proof: Proof,
}

/// Whether a cheaper choice can be ruled out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Proof {
    LeastCost,
    /// The search was cut off: enough is bought, but perhaps not at least cost, and another
    /// run may get a little further.
    None,
}

/// The packs that meet `need` at least cost; of equal costs the one that leaves less
/// over. `None` without offers, or when a count would run over.
///
/// Two integer programmes with the same rows, n whole numbers:
/// least sum(price n) with sum(size n) >= need; then least sum(size n) with the cost kept.
pub(super) fn cheapest(need: f64, offers: &[Offer]) -> Option<Choice> {
    let none = Choice { counts: vec![0; offers.len()], proof: Proof::LeastCost };
    if need <= 0.0 {
        return Some(none);
    }
    let limits: Vec<f64> = offers.iter().map(|offer| (need / offer.size).ceil()).collect();
    if !limits.iter().all(|limit| *limit <= MOST_PACKS) {
        return None;
    }
    let programme = Programme { need, offers, limits: &limits, prices: &whole_prices(offers) };
    let one_size = programme.best_single_size()?;
    let (cheap, proof) = match programme.solve(Aim::LeastCost) {
        Some((counts, proof)) if programme.cost(&counts) <= programme.cost(&one_size) => {
            (counts, proof)
        }
        _ => (one_size, Proof::None),
    };
    if proof == Proof::None {
        return Some(Choice { counts: cheap, proof });
    }
    let cost = programme.cost(&cheap);
    let tight = programme.solve(Aim::LeastOver { cost }).map(|(counts, _)| counts);
    // The second search may only improve on the first; it is not trusted blindly.
    let better = tight.filter(|counts| {
        programme.cost(counts) <= cost && programme.amount(counts) <= programme.amount(&cheap)
    });
    Some(Choice { counts: better.unwrap_or(cheap), proof })
}

/// Prices in whole units of the smallest decimal that any of them uses.
fn whole_prices(offers: &[Offer]) -> Vec<f64> {
    let amount = |offer: &Offer| offer.price.amount().normalize();
    let decimals = offers.iter().map(|offer| amount(offer).scale()).max().unwrap_or(0);
    let unit = Decimal::new(1, decimals);
    let whole = |offer| amount(offer).checked_div(unit).and_then(|price| price.to_f64());
    offers.iter().map(|offer| whole(offer).unwrap_or(f64::MAX)).collect()
}

/// What a search is after.
#[derive(Debug, Clone, Copy)]
enum Aim {
    LeastCost,
    LeastOver { cost: f64 },
}

struct Programme<'a> {
    need: f64,
    offers: &'a [Offer],
    /// No offer is of use more often than this: one pack fewer would still do.
    limits: &'a [f64],
    prices: &'a [f64],
}

impl Programme<'_> {
    /// The optimum, or the best that was found in time; `None` when there is nothing that
    /// stands up.
    fn solve(&self, aim: Aim) -> Option<(Vec<u32>, Proof)> {
        let mut variables = ProblemVariables::new();
        let counts: Vec<Variable> = self
            .limits
            .iter()
            .zip(self.prices)
            .zip(self.offers)
            .map(|((limit, price), offer)| {
                let worth = if self.is_beaten(*price, offer.size) { 0.0 } else { *limit };
                variables.add(variable().integer().min(0.0).max(worth))
            })
            .collect();
        // Sizes in parts of the need keep the rows near one, where tolerances mean the same.
        let covered: Expression =
            counts.iter().zip(self.offers).map(|(n, offer)| *n * (offer.size / self.need)).sum();
        let cost: Expression = counts.iter().zip(self.prices).map(|(n, price)| *n * *price).sum();
        let goal = match aim {
            Aim::LeastCost => cost.clone(),
            Aim::LeastOver { .. } => covered.clone(),
        };
        let mut model = variables
            .minimise(goal)
            .using(microlp)
            .with_time_limit(PATIENCE)
            .with(constraint!(covered >= 1.0));
        if let Aim::LeastOver { cost: limit } = aim {
            // Costs are whole numbers, so half a unit separates them safely.
            model = model.with(constraint!(cost <= limit + 0.5));
        }
        let solution = model.solve().ok()?;
        let proof = match solution.status() {
            SolutionStatus::Optimal => Proof::LeastCost,
            _ => Proof::None,
        };
        let counts = counts
            .iter()
            .map(|n| super::count::whole(solution.value(*n).round()))
            .collect::<Option<Vec<u32>>>()?;
        self.is_enough(&counts).then_some((counts, proof))
    }

    /// A dearer pack that holds no more than another is never part of the optimum.
    fn is_beaten(&self, price: f64, size: f64) -> bool {
        self.prices
            .iter()
            .zip(self.offers)
            .any(|(other, offer)| *other < price && offer.size >= size)
    }

    fn is_enough(&self, counts: &[u32]) -> bool {
        self.amount(counts) >= self.need * (1.0 - SHORT_OF)
    }

    fn amount(&self, counts: &[u32]) -> f64 {
        counts.iter().zip(self.offers).map(|(n, offer)| f64::from(*n) * offer.size).sum()
    }

    fn cost(&self, counts: &[u32]) -> f64 {
        counts.iter().zip(self.prices).map(|(n, price)| f64::from(*n) * price).sum()
    }

    /// The cheapest way with packs of one size only: always enough, not always best.
    fn best_single_size(&self) -> Option<Vec<u32>> {
        let (best, _) = self
            .limits
            .iter()
            .zip(self.prices)
            .map(|(limit, price)| limit * price)
            .enumerate()
            .min_by(|(_, one), (_, other)| one.total_cmp(other))?;
        self.limits
            .iter()
            .enumerate()
            .map(|(at, limit)| super::count::whole(if at == best { *limit } else { 0.0 }))
            .collect()
    }
}
