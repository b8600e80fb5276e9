//! Restricted maximum likelihood of the two variances.
//!
//! With ratio r = class / error, the covariance of all values is error x V, where each class
//! of n values is a block V = I + r J (J all ones), so that
//!
//! ```text
//! inverse of V = I - w J,  w = r / (1 + n r);     ln |V| = ln(1 + n r)
//! ```
//!
//! With X the indicators of the p cells, b the generalised least squares means and
//! Q = y' inv(V) y - b' X' inv(V) y, the error is Q / (N - p) for each r, and what is left to
//! minimise over r alone is
//!
//! ```text
//! -2 log L = (N - p) (1 + ln(2 pi Q / (N - p))) + ln |V| + ln |X' inv(V) X|
//! ```
//!
//! (Patterson and Thompson, Biometrika 58, 545, 1971; Harville, J. Amer. Statist. Assoc. 72,
//! 320, 1977; from memory). The search runs over the intraclass correlation r / (1 + r),
//! whose ends are 0 (no class effect) and 1.

use super::cholesky::Cholesky;
use super::design::Design;
use super::minimum::lowest;
use super::{Observation, rounding};
use std::f64::consts::TAU;

/// The largest intraclass correlation that is looked at; at 1 all values of a class are
/// alike, and nearer to it sums lose their digits.
const ALMOST_ALIKE: f64 = 1.0 - 1e-6;

/// From here on the likelihood has no highest point short of that end: which of the last
/// digits is lowest there would depend on the order of the sums.
const ALIKE: f64 = 1.0 - 1e-5;

/// Variances, means and how well they fit.
#[derive(Debug, Clone, PartialEq)]
pub struct Reml {
    /// From class to class, never negative.
    pub class: f64,
    /// Within a class.
    pub error: f64,
    /// The mean of each cell, in rising order of the cells' numbers.
    pub means: Vec<f64>,
    /// -2 log restricted likelihood.
    pub criterion: f64,
}

/// Fits the model to values of any balance; `None` where class and rest cannot be told apart
/// (see [`super::one_way`]) or where nothing scatters within classes, so that the likelihood
/// has no highest point.
pub fn reml(values: &[Observation]) -> Option<Reml> {
    let design = Design::new(values);
    if !design.tells_apart() {
        return None;
    }
    let profile = Profile::new(values, &design);
    if profile.squares <= rounding(values) {
        return None;
    }
    let criterion =
        |alike: f64| profile.at(ratio(alike)).map_or(f64::INFINITY, |fit| fit.criterion);
    let alike = lowest(criterion, 0.0, ALMOST_ALIKE);
    if alike >= ALIKE {
        return None;
    }
    let ratio = ratio(alike);
    let fit = profile.at(ratio)?;
    let means = fit.shifts.iter().zip(&profile.centres).map(|(shift, mean)| shift + mean);
    Some(Reml {
        class: ratio * fit.error,
        error: fit.error,
        means: means.collect(),
        criterion: fit.criterion,
    })
}

fn ratio(alike: f64) -> f64 {
    alike / (1.0 - alike)
}

/// What stays the same for every ratio. Values are taken from the mean of their cell, which
/// changes no variance and keeps digits.
struct Profile<'a> {
    design: &'a Design,
    /// Of each cell.
    centres: Vec<f64>,
    /// For each class and cell, sums of the centred values.
    sums: Vec<Vec<f64>>,
    /// Sum of their squares.
    squares: f64,
}

/// The best fit at one ratio.
struct Fit {
    error: f64,
    /// From the centre of each cell to its mean.
    shifts: Vec<f64>,
    criterion: f64,
}

impl<'a> Profile<'a> {
    fn new(values: &[Observation], design: &'a Design) -> Self {
        let columns = |rows: &[Vec<f64>]| {
            rows.iter().fold(Vec::new(), |sums: Vec<f64>, row| {
                let padded = sums.into_iter().chain(std::iter::repeat(0.0));
                row.iter().zip(padded).map(|(value, sum)| value + sum).collect()
            })
        };
        let totals: Vec<f64> = columns(&design.sums(values, |value| value.value));
        let counts: Vec<f64> = columns(design.counts());
        let centres: Vec<f64> =
            totals.iter().zip(&counts).map(|(total, count)| total / count).collect();
        let cells = design.cells();
        let centred: Vec<Observation> = values
            .iter()
            .map(|value| {
                let of_cell = cells.iter().zip(&centres).find(|(cell, _)| **cell == value.cell);
                let centre = of_cell.map_or(0.0, |(_, centre)| *centre);
                Observation { value: value.value - centre, ..*value }
            })
            .collect();
        Self {
            design,
            centres,
            sums: design.sums(&centred, |value| value.value),
            squares: centred.iter().map(|value| value.value.powi(2)).sum(),
        }
    }

    fn at(&self, ratio: f64) -> Option<Fit> {
        let cells = self.centres.len();
        let mut information = vec![vec![0.0; cells]; cells];
        let mut right = vec![0.0; cells];
        let mut quadratic = self.squares;
        let mut log_v = 0.0;
        for (counts, sums) in self.design.counts().iter().zip(&self.sums) {
            let (count, sum): (f64, f64) = (counts.iter().sum(), sums.iter().sum());
            let weight = ratio / (1.0 + count * ratio);
            log_v += (count * ratio).ln_1p();
            quadratic -= weight * sum * sum;
            let rows = information.iter_mut().zip(&mut right).zip(counts.iter().zip(sums));
            for (at, ((row, right), (its_count, its_sum))) in rows.enumerate() {
                *right += its_sum - weight * its_count * sum;
                for (value, other) in row.iter_mut().zip(counts) {
                    *value -= weight * its_count * other;
                }
                if let Some(diagonal) = row.get_mut(at) {
                    *diagonal += its_count;
                }
            }
        }
        let factor = Cholesky::of(&information)?;
        let shifts = factor.solve(&right);
        let explained: f64 = shifts.iter().zip(&right).map(|(shift, right)| shift * right).sum();
        let df = self.design.df();
        let error = (quadratic - explained) / df;
        let criterion = df * (1.0 + (TAU * error).ln()) + log_v + factor.log_determinant();
        (error > 0.0).then_some(Fit { error, shifts, criterion })
    }
}
