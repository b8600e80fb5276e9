//! The mean of values from several classes, and an interval that covers the truth in 19 of 20
//! cases.
//!
//! * **Two classes or more**: the mean of the class means, with t of (classes - 1) degrees of
//!   freedom on the scatter of the class means. Their squared scatter over C (C - 1) is the
//!   variance of that mean without bias, however many values each class has; where they have
//!   as many, the interval is exact, and where not, it covers at least as often: t at this level
//!   is never too narrow for independent normal values of unlike variance (Ibragimov and
//!   Müller, J. Bus. Econ. Stat. 28, 453, 2010; from memory). It is never narrower than the
//!   scatter within classes alone would make it: class means that agree by chance prove little.
//! * **One class**: how far a class may be off cannot be seen, so that part is what the lesson
//!   plans with, with the normal quantile; the hands' part is the scatter of the values, with
//!   t; both half widths add up in quadrature. One value alone: both parts as planned. That is
//!   as right as what the lesson plans with.
//!
//! What the scale leaves open scatters from value to value and so is part of the scatter
//! already (JCGM 100:2008, 4.3.10: not counted twice); it sets a least width, which holds
//! where a coarse scale shows the same figure again and again.

use super::Estimate;
use statrs::distribution::{ContinuousCDF, Normal, StudentsT};

/// Half of what an interval may miss lies on each side.
const UPPER: f64 = 0.975;

/// From here on the true mean could be anything; an interval up to ten times the mean found
/// says as much.
const WIDEST: f64 = 0.9;

/// Relative standard deviations to plan with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Varies {
    /// From class to class.
    pub class: f64,
    /// From canvas to canvas within a class.
    pub student: f64,
}

/// Values by class; no class is empty.
#[derive(Debug, Clone, PartialEq)]
pub struct Classes(Vec<Vec<f64>>);

impl Classes {
    /// From pairs of class and value; `None` without any.
    pub fn new(values: impl IntoIterator<Item = (usize, f64)>) -> Option<Self> {
        let mut by_class: Vec<(usize, Vec<f64>)> = Vec::new();
        for (class, value) in values {
            match by_class.iter_mut().find(|(known, _)| *known == class) {
                Some((_, values)) => values.push(value),
                None => by_class.push((class, vec![value])),
            }
        }
        let classes: Vec<Vec<f64>> = by_class.into_iter().map(|(_, values)| values).collect();
        (!classes.is_empty()).then_some(Self(classes))
    }

    /// How many classes.
    pub fn number(&self) -> usize {
        self.0.len()
    }

    /// The same, to reckon with.
    pub(super) fn size(&self) -> f64 {
        self.0.len() as f64
    }

    fn values(&self) -> f64 {
        self.0.iter().map(Vec::len).sum::<usize>() as f64
    }

    /// Degrees of freedom within classes.
    pub(super) fn within_df(&self) -> f64 {
        self.values() - self.size()
    }

    /// Mean of the class means.
    pub fn mean(&self) -> f64 {
        self.means().sum::<f64>() / self.size()
    }

    fn means(&self) -> impl Iterator<Item = f64> {
        self.0.iter().map(|values| mean_of(values))
    }

    /// Squared deviations of the class means from their mean, added up.
    pub(super) fn between(&self) -> f64 {
        let mean = self.mean();
        self.means().map(|one| (one - mean).powi(2)).sum()
    }

    /// Squared deviations of the values from the mean of their class, added up.
    pub(super) fn within(&self) -> f64 {
        let of_class = |values: &Vec<f64>| {
            let mean = mean_of(values);
            values.iter().map(|value| (value - mean).powi(2)).sum::<f64>()
        };
        self.0.iter().map(of_class).sum()
    }

    /// The mean over classes of one over their number of values: what is left of the scatter
    /// within classes in a class mean.
    pub(super) fn left_in_a_mean(&self) -> f64 {
        self.0.iter().map(|values| 1.0 / values.len() as f64).sum::<f64>() / self.size()
    }

    /// The weight in the mean of a value of a class of so many.
    pub(super) fn weight(&self, values_in_class: usize) -> f64 {
        1.0 / (self.size() * values_in_class as f64)
    }

    /// Standard error of the mean if classes did not differ; `None` without two values in a class.
    fn error_within(&self) -> Option<f64> {
        let df = self.within_df();
        let variance = self.within() / df * self.left_in_a_mean() / self.size();
        (df > 0.0).then_some(variance.sqrt())
    }
}

fn mean_of(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// The mean with its interval. `from_scale` is the standard uncertainty of the mean that the
/// scale alone brings, in the unit of the values. The low end is never below zero.
pub fn estimate(classes: &Classes, planned: Varies, from_scale: f64) -> Estimate<f64> {
    let mean = classes.mean();
    let (low, high) = match classes.number() {
        1 => of_one_class(classes, planned),
        _ => (mean - half_width_between(classes), mean + half_width_between(classes)),
    };
    let least = normal() * from_scale;
    Estimate { value: mean, low: low.min(mean - least).max(0.0), high: high.max(mean + least) }
}

fn half_width_between(classes: &Classes) -> f64 {
    let number = classes.size();
    let error = (classes.between() / (number * (number - 1.0))).sqrt();
    (student_t(number - 1.0) * error).max(half_width_within(classes).unwrap_or_default())
}

/// What is planned varies in proportion to the true mean, not to the one that was found. So the
/// ends are the true means t from which the found mean m is just as far as it may be,
///
/// ```text
/// (m - t)^2 = (k t)^2 + h^2
/// ```
///
/// with k from the planned part and h the half width of the hands' part, as Fieller has it for
/// ratios (J. R. Stat. Soc. B 16, 175, 1954; from memory).
fn of_one_class(classes: &Classes, planned: Varies) -> (f64, f64) {
    let mean = classes.mean();
    let (varies, hands) = match half_width_within(classes) {
        Some(hands) => (planned.class, hands),
        None => (planned.class.hypot(planned.student), 0.0),
    };
    let part = (normal() * varies).min(WIDEST);
    let square = 1.0 - part * part;
    let root = ((part * mean).powi(2) + square * hands * hands).sqrt();
    ((mean - root) / square, (mean + root) / square)
}

fn half_width_within(classes: &Classes) -> Option<f64> {
    classes.error_within().map(|error| student_t(classes.within_df()) * error)
}

fn normal() -> f64 {
    Normal::standard().inverse_cdf(UPPER)
}

/// With whole degrees of freedom, one or more.
fn student_t(df: f64) -> f64 {
    StudentsT::new(0.0, 1.0, df).map_or(f64::INFINITY, |t| t.inverse_cdf(UPPER))
}
