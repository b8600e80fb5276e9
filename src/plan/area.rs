//! How much canvas there is to cover.

use super::Areas;
use crate::lesson::{Canvas, Edge, Shape};
use crate::quantity::{Area, Length};
use std::f64::consts::{PI, TAU};

/// Areas of one canvas: its face, and the strip round its edge when that is painted.
///
/// The strip is perimeter x depth. For a rectangle that is the four sides laid flat; no
/// corner is counted twice, because the strip is folded and never overlaps itself.
pub(super) fn areas(canvas: &Canvas) -> Areas {
    let face = face(canvas.shape);
    let perimeter = perimeter(canvas.shape);
    let edge = match canvas.edge {
        Edge::Painted => perimeter * canvas.depth,
        Edge::Bare => Area::default(),
    };
    Areas { face, perimeter, edge, painted: face + edge }
}

fn face(shape: Shape) -> Area {
    match shape {
        Shape::Rectangle { width, height } => width * height,
        Shape::Round { diameter } => PI / 4.0 * diameter * diameter,
        Shape::Oval { width, height } => PI / 4.0 * width * height,
        Shape::Polygon { sides, side, .. } => {
            f64::from(sides) * side * distance_to_side(sides, side) / 2.0
        }
    }
}

fn perimeter(shape: Shape) -> Length {
    match shape {
        Shape::Rectangle { width, height } => 2.0 * (width + height),
        Shape::Round { diameter } => PI * diameter,
        Shape::Oval { width, height } => {
            PI / 2.0 * (width + height) * oval_factor(width / 2.0, height / 2.0)
        }
        Shape::Polygon { sides, side, .. } => f64::from(sides) * side,
    }
}

/// From the centre of a regular polygon to the middle of a side: side / (2 tan(pi / sides)).
pub(super) fn distance_to_side(sides: u32, side: Length) -> Length {
    side / (2.0 * (PI / f64::from(sides)).tan())
}

/// How much longer the edge of an oval is than pi x (half width + half height): 1 for a
/// circle, 4/pi for a stick.
pub(super) fn oval_factor(half_width: Length, half_height: Length) -> f64 {
    let (long, short) = (half_width.max(half_height).value, half_width.min(half_height).value);
    if short > 0.0 { ellipse_perimeter(long, short) / (PI * (long + short)) } else { 4.0 / PI }
}

/// Perimeter of an ellipse with half axes `long >= short > 0`, in their unit:
/// 4 a E(e), the complete elliptic integral by the arithmetic-geometric mean
/// (Abramowitz and Stegun 1964, 17.6.1 to 17.6.4):
///
/// P = 2 pi (a0^2 - sum of 2^(n-1) c_n^2) / M(a0, b0), with c_0^2 = a0^2 - b0^2.
///
/// The mean converges quadratically; the loop ends when the two sequences meet, and
/// after `ENOUGH` rounds at the latest, which no pair of finite numbers needs.
fn ellipse_perimeter(long: f64, short: f64) -> f64 {
    const ENOUGH: u32 = 64;
    // Measured in half long axes, so that no square can overflow.
    let (mut a, mut b) = (1.0_f64, short / long);
    let mut weight = 0.5;
    let mut sum = weight * (1.0 - b * b);
    for _ in 0..ENOUGH {
        let c = (a - b) / 2.0;
        if c.abs() <= f64::EPSILON * a {
            break;
        }
        (a, b) = ((a + b) / 2.0, (a * b).sqrt());
        weight *= 2.0;
        sum += weight * c * c;
    }
    TAU * long * (1.0 - sum) / a
}
