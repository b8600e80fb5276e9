//! Face and perimeter, by the formula of each shape.

use super::draft::{Draft, FigureId};
use super::units::Units;
use super::{Formula, number};
use crate::lesson::Shape;
use crate::plan::StepKind;
use crate::plan::area::{distance_to_side, oval_factor};
use std::f64::consts::PI;

/// Digits of pi and of the factor of an oval, as a pocket calculator user writes them.
const NUMBER_DECIMALS: u8 = 4;

/// Rectangle: width x height. Round: pi x half x half. Oval: pi x half width x half
/// height. Polygon: sides x side x distance from the centre to a side / 2.
pub(super) fn face(draft: &mut Draft, units: Units, shape: Shape, gives: FigureId) {
    let (formula, from) = match shape {
        Shape::Rectangle { width, height } => (
            Formula::Product,
            vec![units.given_length(draft, width), units.given_length(draft, height)],
        ),
        Shape::Round { diameter } => {
            let half = units.given_length(draft, diameter / 2.0);
            (Formula::Product, vec![number(draft, PI, NUMBER_DECIMALS), half, half])
        }
        Shape::Oval { width, height } => (
            Formula::Product,
            vec![
                number(draft, PI, NUMBER_DECIMALS),
                units.given_length(draft, width / 2.0),
                units.given_length(draft, height / 2.0),
            ],
        ),
        Shape::Polygon { sides, side, .. } => (
            Formula::HalfProduct,
            vec![
                number(draft, f64::from(sides), 0),
                units.given_length(draft, side),
                units.computed_length(draft, distance_to_side(sides, side)),
            ],
        ),
    };
    draft.step(StepKind::Face, formula, from, gives);
}

/// Rectangle: 2 x (width + height). Round: pi x diameter. Oval: pi x (half width + half
/// height) x factor, the factor from the proportions of the oval. Polygon: sides x side.
pub(super) fn perimeter(draft: &mut Draft, units: Units, shape: Shape, gives: FigureId) {
    let (formula, from) = match shape {
        Shape::Rectangle { width, height } => (
            Formula::TwiceSum,
            vec![units.given_length(draft, width), units.given_length(draft, height)],
        ),
        Shape::Round { diameter } => (
            Formula::Product,
            vec![number(draft, PI, NUMBER_DECIMALS), units.given_length(draft, diameter)],
        ),
        Shape::Oval { width, height } => {
            let (half_width, half_height) = (width / 2.0, height / 2.0);
            let from = vec![
                number(draft, PI, NUMBER_DECIMALS),
                units.given_length(draft, half_width),
                units.given_length(draft, half_height),
                number(draft, oval_factor(half_width, half_height), NUMBER_DECIMALS),
            ];
            (Formula::ProductAroundSum, from)
        }
        Shape::Polygon { sides, side, .. } => (
            Formula::Product,
            vec![number(draft, f64::from(sides), 0), units.given_length(draft, side)],
        ),
    };
    draft.step(StepKind::Perimeter, formula, from, gives);
}
