use crate::lesson::Shape;
use crate::quantity::Length;
use std::f64::consts::PI;

/// The smallest upright rectangle around a canvas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    pub width: Length,
    pub height: Length,
}

impl Extent {
    /// Around a shape; a polygon lies on one of its sides.
    ///
    /// With n sides of length s the middle is s / (2 tan(pi/n)) away from a side and
    /// R = s / (2 sin(pi/n)) from a corner. An even polygon is twice the former high; an odd
    /// one has a corner on top. The widest chord along the lying side is 2 R when a corner
    /// lies at half height (n = 2, 6, 10 ...), from side to side when n is a multiple of 4,
    /// and 2 R cos(pi/2n), the longest diagonal, when n is odd.
    pub fn of(shape: Shape) -> Self {
        match shape {
            Shape::Rectangle { width, height } | Shape::Oval { width, height } => {
                Self { width, height }
            }
            Shape::Round { diameter } => Self { width: diameter, height: diameter },
            Shape::Polygon { sides, side, .. } => {
                let angle = PI / f64::from(sides);
                let to_side = side / (2.0 * angle.tan());
                let to_corner = side / (2.0 * angle.sin());
                match sides % 4 {
                    0 => Self { width: 2.0 * to_side, height: 2.0 * to_side },
                    2 => Self { width: 2.0 * to_corner, height: 2.0 * to_side },
                    _ => Self {
                        width: 2.0 * to_corner * (angle / 2.0).cos(),
                        height: to_side + to_corner,
                    },
                }
            }
        }
    }
}
