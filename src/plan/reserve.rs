//! How much to keep on top of what is expected.
//!
//! The reserve of a colour is z x standard deviation of its use, where z is the quantile of
//! the standard normal distribution at the level that the teacher picks: a class that uses
//! expected + reserve or less has enough, and that share of all classes does. The part of the
//! students grows with the root of their number, the part of the class in proportion to it.

use super::demand::{ClassDemand, Demand};
use super::provision::Provision;
use super::{Habit, Reserve};
use crate::lesson::{ReserveRule, ServiceLevel};
use crate::quantity::{Money, Volume};
use statrs::distribution::{ContinuousCDF, Normal};

/// What is kept on top.
#[derive(Debug, Clone, Copy)]
pub(super) enum Margin<'a> {
    /// So many standard deviations of what the rule says varies.
    Deviations { count: f64, rule: &'a ReserveRule },
    /// This part of what is expected.
    Part(f64),
}

impl<'a> Margin<'a> {
    /// Argued from how much use varies.
    pub(super) fn argued(rule: &'a ReserveRule) -> Self {
        Self::Deviations { count: deviations(rule.level), rule }
    }

    /// What people usually add for each student, and so for all of them.
    pub(super) fn habit(rule: &ReserveRule) -> Self {
        Self::Part(rule.habit.as_f64())
    }

    /// On a demand; never less than nothing.
    pub(super) fn on(self, demand: &Demand) -> Volume {
        match self {
            Self::Deviations { count, rule } => demand.deviation(rule) * count,
            Self::Part(part) => demand.expected() * part,
        }
    }
}

/// The standard normal quantile of a level; a level is a half or more, so it is not negative.
fn deviations(level: ServiceLevel) -> f64 {
    Normal::standard().inverse_cdf(level.as_f64()).max(0.0)
}

/// The argument in figures: what is provided, beside what a habit would.
pub(super) fn reserve(
    rule: &ReserveRule,
    demand: &ClassDemand,
    provision: &Provision,
    (habit, paid): (&Provision, Money),
) -> Reserve {
    Reserve {
        rule: *rule,
        deviations: deviations(rule.level),
        expected: demand.paint.expected(),
        by_colour: provision.mixing.iter().map(|batch| batch.reserve).sum(),
        as_one: Margin::argued(rule).on(&demand.paint),
        habit: Habit {
            extra: rule.habit,
            mixing: habit.mixing.iter().map(|batch| batch.volume).collect(),
            finishing: habit.finishing.iter().map(|need| need.volume).collect(),
            total: paid,
        },
    }
}
