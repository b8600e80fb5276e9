//! Hatching: parallel slanted lines cut off at a rectangle.

use crate::ink::{PathSegment, Point, Rect};

/// Which way the lines rise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Slant {
    Rising,
    Falling,
}

/// Lines at 45 degrees, `step` points apart along the horizontal.
pub(super) fn hatch(area: Rect, slant: Slant, step: f32) -> Vec<PathSegment> {
    let mut segments = Vec::new();
    let (right, bottom) = (area.x + area.width, area.y + area.height);
    let mut foot = area.x - area.height + step / 2.0;
    while foot < right {
        // From the foot on the lower edge up to the right, then cut at both sides.
        let from = foot.max(area.x);
        let to = (foot + area.height).min(right);
        let y = |x: f32| match slant {
            Slant::Rising => bottom - (x - foot),
            Slant::Falling => area.y + (x - foot),
        };
        segments.push(PathSegment::Move(Point { x: from, y: y(from) }));
        segments.push(PathSegment::Line(Point { x: to, y: y(to) }));
        foot += step;
    }
    segments
}
