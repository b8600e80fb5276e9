//! What two readings of a scale say, and how surely.
//!
//! A scale that shows steps of d reads anything within half a step as the same figure, so the
//! truth lies anywhere in that stretch alike: a rectangular distribution of half width d / 2
//! and standard uncertainty d / (2 sqrt 3) = 0.29 d (JCGM 100:2008, 4.3.7 and F.2.2.1). Tare
//! and cup stand in both readings and cancel; what is left is random and independent from
//! reading to reading. That the scale is otherwise right is taken for granted.

use crate::quantity::{Mass, Spread};

/// What was taken out of a cup between two readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Difference {
    /// Before less after, and as little and as much as the readings allow.
    pub limits: Spread<Mass>,
    /// Standard uncertainty.
    pub uncertainty: Mass,
}

/// Standard uncertainty of one reading in steps of `step`.
pub fn reading_uncertainty(step: Mass) -> Mass {
    step / (2.0 * 3.0_f64.sqrt())
}

/// What two readings in steps of `step` say about their difference: each is off by half a
/// step at most, so the difference by one. Never less than nothing: paint does not flow back.
pub fn difference(before: Mass, after: Mass, step: Mass) -> Difference {
    let nothing = Mass::default();
    let shown = (before - after).max(nothing);
    let low = (shown - step).max(nothing);
    let limits = Spread::new(low, shown, shown + step).unwrap_or(Spread::exactly(shown));
    let one = reading_uncertainty(step);
    Difference { limits, uncertainty: one.hypot(one) }
}

/// Standard uncertainty of a quantity that depends on independent others: the root of the sum
/// of (c u)^2 over (sensitivity c, standard uncertainty u) of each (JCGM 100:2008, 5.1.2 and
/// 5.1.3, equations 10 and 11a). Exact where the dependence is linear, as it is from the
/// masses of cups to a film.
pub fn combined(parts: impl IntoIterator<Item = (f64, f64)>) -> f64 {
    parts.into_iter().fold(0.0, |sum, (sensitivity, u)| (sensitivity * u).hypot(sum))
}
