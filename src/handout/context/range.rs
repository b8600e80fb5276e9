//! Ranges in which an answer is plausible, for those who work it out.

use crate::plan::{CanvasPlan, plausible};
use crate::quantity::Mass;
use crate::quantity::show::{Show, with_unit};
use crate::quantity::units::{gram, in_gram};
use serde::Serialize;

/// From the one to the other; empty where there is nothing to expect.
#[derive(Debug, Clone, Default, Serialize)]
pub struct RangeText {
    /// A number alone.
    pub low: String,
    /// With its unit.
    pub high: String,
}

/// Ranges in grams begin and end at multiples of this, as a scale is read at a glance.
const GRAMS: f64 = 5.0;

impl RangeText {
    /// Round figures around an answer.
    pub(super) fn around(answer: f64, unit: &str, show: &Show) -> Self {
        plausible(answer).map(|ends| Self::of(ends, unit, show)).unwrap_or_default()
    }

    fn of((low, high): (f64, f64), unit: &str, show: &Show) -> Self {
        // Round figures have two digits; a thousandth is the finest that paint is counted in.
        Self { low: show.trimmed(low, 3), high: with_unit(&show.trimmed(high, 3), unit) }
    }
}

pub(super) fn painted_range(canvas: &CanvasPlan, show: &Show) -> RangeText {
    RangeText::around(show.area_number(canvas.areas.painted), show.area_unit(), show)
}

/// What all cups of a canvas lose, from a careful to a generous hand.
pub(super) fn used_range(canvas: &CanvasPlan, show: &Show) -> RangeText {
    let density = canvas.paint_mass() / canvas.paint.typical();
    let grams = |mass: Mass| in_gram(mass) / GRAMS;
    let low = grams(canvas.paint.low() * density).floor() * GRAMS;
    let high = grams(canvas.paint.high() * density).ceil() * GRAMS;
    RangeText { low: show.trimmed(low, 0), high: show.mass(gram(high)) }
}
