//! One's own mean and the film that was planned with, put together.
//!
//! The rule is the conjugate normal one on the logarithm of the film: a normal prior and
//! normal data of known variance give a normal posterior whose mean weighs both by one over
//! their variance (any textbook on Bayesian statistics, such as Gelman and others, Bayesian
//! Data Analysis, 3rd ed. 2013, §2.5; from memory).
//!
//! * **Prior**: mean ln(typical); low to high is read as the range of 8 hands in 10, so it spans
//!   2 x 1.2816 standard deviations; never surer than [`LEAST_PRIOR`].
//! * **Data**: ln(mean) with the squared relative standard error of the mean. The two scatters
//!   that make it are themselves put together from the weighings and from what the lesson
//!   plans with, by degrees of freedom, where the planned ones count as [`PLANNED_DF`] (the
//!   scaled inverse chi-squared prior of a variance, same book, §2.6): two classes that agree
//!   by chance do not overrule everything else.

use super::mean::{Classes, Varies};
use crate::quantity::Spread;

/// Eight of ten values of a normal distribution lie within so many standard deviations of
/// its mean.
pub const EIGHT_IN_TEN: f64 = 1.281_551_565_544_6;

/// The built-in films are estimates: they are not surer than to a tenth. Judgement, no source.
pub const LEAST_PRIOR: f64 = 0.10;

/// What the lesson plans with counts like the scatter of five weighed classes, or of five
/// canvases. Judgement, no source.
pub const PLANNED_DF: f64 = 4.0;

/// A film put together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shrunk {
    /// How much of its logarithm is one's own mean, 0 to 1.
    pub own_weight: f64,
    pub typical: f64,
}

/// Standard deviation of the logarithm of the film that was planned with; positive.
pub fn prior_deviation(before: Spread<f64>) -> f64 {
    let deviation = (before.high() / before.low()).ln() / (2.0 * EIGHT_IN_TEN);
    if deviation.is_finite() { deviation.max(LEAST_PRIOR) } else { LEAST_PRIOR }
}

/// Squared relative standard error of the mean. `from_scale` is what the scale alone brings, in
/// the unit of the values; the mean is positive.
pub fn relative_variance(classes: &Classes, planned: Varies, from_scale: f64) -> f64 {
    let square = classes.mean().powi(2);
    let number = classes.size();
    let student = pooled(planned.student.powi(2), classes.within() / square, classes.within_df());
    let of_a_class = planned.class.powi(2) + student * classes.left_in_a_mean();
    let of_a_class = pooled(of_a_class, classes.between() / square, number - 1.0);
    (of_a_class / number).max(from_scale.powi(2) / square)
}

/// A planned variance and a sum of squares of so many degrees of freedom.
pub(super) fn pooled(planned: f64, squares: f64, df: f64) -> f64 {
    (PLANNED_DF * planned + squares) / (PLANNED_DF + df)
}

/// The film to plan with from `mean` and the film before; `None` where one of them is not
/// positive and has no logarithm.
pub fn shrink(before: Spread<f64>, mean: f64, relative_variance: f64) -> Option<Shrunk> {
    if before.typical() <= 0.0 || mean <= 0.0 {
        return None;
    }
    let prior = prior_deviation(before).powi(2);
    let own_weight = prior / (prior + relative_variance);
    let log = own_weight * mean.ln() + (1.0 - own_weight) * before.typical().ln();
    Some(Shrunk { own_weight, typical: log.exp() })
}
