//! One-way random effects: how much of the variation is the class, how much the canvas.
//!
//! In: values with their class and their cell (a cell is a way of pouring that has a mean of
//! its own). The model is
//!
//! ```text
//! value = mean of its cell + effect of its class + rest
//! ```
//!
//! with independent normal effects (variance `class`) and rests (variance `error`), as in
//! Searle, Casella and McCulloch, Variance Components (1992), chapters 3 and 6 (from memory).
//! Out: [`OneWay`]. As many values in every class and one cell: the closed form of [`anova`];
//! else [`reml`]. Nothing here knows of paint.

mod anova;
mod cholesky;
mod design;
mod minimum;
mod reml;

pub use anova::{Anova, anova};
pub use reml::{Reml, reml};

use super::Method;
use design::Design;

/// One value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observation {
    /// Any number that is the same for all values of a class.
    pub class: usize,
    /// Any number that is the same for all values of a cell.
    pub cell: usize,
    pub value: f64,
}

/// The two variances.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneWay {
    /// From class to class; zero where the estimate is negative.
    pub class: f64,
    /// Within a class.
    pub error: f64,
    /// The variance from class to class before negative was taken as zero; only
    /// [`Method::Anova`] has one.
    pub raw_class: Option<f64>,
    /// Never [`Method::None`].
    pub method: Method,
}

/// Tells the two variances apart; `None` where the values cannot: one class, no class with two
/// values of a cell to compare, every class in cells of its own, or no scatter at all within
/// classes.
pub fn one_way(values: &[Observation]) -> Option<OneWay> {
    if let Some(groups) = Design::new(values).balanced(values) {
        let Anova { raw_class, ms_within, ss_within, .. } = anova(&groups)?;
        if ss_within <= rounding(values) {
            return None;
        }
        return Some(OneWay {
            class: raw_class.max(0.0),
            error: ms_within,
            raw_class: Some(raw_class),
            method: Method::Anova,
        });
    }
    let Reml { class, error, .. } = reml(values)?;
    Some(OneWay { class, error, raw_class: None, method: Method::Reml })
}

/// Squares that come from rounding alone: values that scatter less tell nothing of their scatter.
fn rounding(values: &[Observation]) -> f64 {
    let size: f64 = values.iter().map(|value| value.value.powi(2)).sum();
    size * (8.0 * f64::EPSILON).powi(2)
}
