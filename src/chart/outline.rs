//! Round and many-sided outlines.

use std::f32::consts::PI;

use crate::ink::{PathSegment, Point};

/// An ellipse as four cubic curves; they stray from it by less than 0.03 % of its
/// radius (control points at 4/3 tan(π/8)).
pub(super) fn ellipse(centre: Point, rx: f32, ry: f32) -> Vec<PathSegment> {
    let k = 4.0 / 3.0 * (PI / 8.0).tan();
    let at = |x: f32, y: f32| Point { x: centre.x + x * rx, y: centre.y + y * ry };
    vec![
        PathSegment::Move(at(1.0, 0.0)),
        PathSegment::Cubic(at(1.0, k), at(k, 1.0), at(0.0, 1.0)),
        PathSegment::Cubic(at(-k, 1.0), at(-1.0, k), at(-1.0, 0.0)),
        PathSegment::Cubic(at(-1.0, -k), at(-k, -1.0), at(0.0, -1.0)),
        PathSegment::Cubic(at(k, -1.0), at(1.0, -k), at(1.0, 0.0)),
        PathSegment::Close,
    ]
}

/// Corners of a regular polygon that lies on a side, for a side of length 1, the
/// centre at the origin.
pub(super) fn regular(sides: u32) -> Vec<Point> {
    let sides = sides.clamp(3, 64);
    let step = 2.0 * PI / sides as f32;
    let radius = 0.5 / (step / 2.0).sin();
    (0..sides)
        .map(|corner| {
            let angle = PI / 2.0 - step / 2.0 + step * corner as f32;
            Point { x: radius * angle.cos(), y: radius * angle.sin() }
        })
        .collect()
}

/// How far from its upright axis a polygon of [`regular`] reaches at some height.
pub(super) fn half_width(corners: &[Point], y: f32) -> f32 {
    let pairs = corners.iter().zip(corners.iter().cycle().skip(1));
    let crossed = pairs.filter(|(a, b)| a.y != b.y && (a.y - y) * (b.y - y) <= 0.0);
    crossed.map(|(a, b)| (a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)).abs()).fold(0.0, f32::max)
}

/// Perimeter of an ellipse from its axes, Ramanujan's second approximation (1914):
/// π (a + b) (1 + 3h / (10 + √(4 − 3h))), h = ((a − b) / (a + b))². For a drawing only.
pub(super) fn perimeter(width: f32, height: f32) -> f32 {
    let (a, b) = (width / 2.0, height / 2.0);
    let h = ((a - b) / (a + b)).powi(2);
    PI * (a + b) * (1.0 + 3.0 * h / (10.0 + (4.0 - 3.0 * h).sqrt()))
}
