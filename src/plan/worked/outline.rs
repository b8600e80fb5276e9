//! Face and perimeter, by the formula of each shape.

use super::draft::{Draft, FigureId};
use super::units::Units;
use super::{Formula, number};
use crate::lesson::{PolygonSize, Shape};
use crate::plan::StepKind;
use crate::plan::area::{distance_to_side, oval_factor};
use crate::quantity::Length;
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
        Shape::Polygon { sides, side, given } => {
            let middle = distance_to_side(sides, side);
            let middle = match given {
                PolygonSize::AcrossFlats => units.given_length(draft, middle),
                PolygonSize::Side | PolygonSize::AcrossCorners => {
                    units.computed_length(draft, middle)
                }
            };
            let side = length_of_side(draft, units, side, given);
            (Formula::HalfProduct, vec![number(draft, f64::from(sides), 0), side, middle])
        }
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
        Shape::Polygon { sides, side, given } => {
            let side = length_of_side(draft, units, side, given);
            (Formula::Product, vec![number(draft, f64::from(sides), 0), side])
        }
    };
    draft.step(StepKind::Perimeter, formula, from, gives);
}

/// The side of a polygon: measured, or worked out from what was.
fn length_of_side(draft: &mut Draft, units: Units, side: Length, given: PolygonSize) -> FigureId {
    match given {
        PolygonSize::Side => units.given_length(draft, side),
        PolygonSize::AcrossFlats | PolygonSize::AcrossCorners => units.computed_length(draft, side),
    }
}
