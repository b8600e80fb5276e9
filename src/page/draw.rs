//! Simple shapes that blocks share.

use crate::ink::{Colour, Dash, PathSegment, Point, Shape, Stroke};

/// An upright rectangle.
pub(super) fn rectangle(
    x: f32,
    y: f32,
    width: f32,
    height: f32,
    fill: Option<Colour>,
    stroke: Option<Stroke>,
) -> Shape {
    let corner = |dx: f32, dy: f32| Point { x: x + dx, y: y + dy };
    let segments = vec![
        PathSegment::Move(corner(0.0, 0.0)),
        PathSegment::Line(corner(width, 0.0)),
        PathSegment::Line(corner(width, height)),
        PathSegment::Line(corner(0.0, height)),
        PathSegment::Close,
    ];
    Shape::Path { segments, fill, stroke }
}

/// A straight solid line from one point to another.
pub(super) fn line(from: (f32, f32), to: (f32, f32), colour: Colour, width: f32) -> Shape {
    dashed(from, to, Stroke { colour, width, dash: Dash::Solid })
}

/// A straight line with any stroke.
pub(super) fn dashed(from: (f32, f32), to: (f32, f32), stroke: Stroke) -> Shape {
    let at = |(x, y)| Point { x, y };
    let segments = vec![PathSegment::Move(at(from)), PathSegment::Line(at(to))];
    Shape::Path { segments, fill: None, stroke: Some(stroke) }
}

/// Moves a shape in place.
pub(super) fn shift(shape: &mut Shape, dx: f32, dy: f32) {
    each_point(shape, |p| {
        p.x += dx;
        p.y += dy;
    });
}

/// Scales a shape from (0, 0), its strokes and lettering with it.
pub(super) fn scale(shape: &mut Shape, factor: f32) {
    each_point(shape, |p| {
        p.x *= factor;
        p.y *= factor;
    });
    match shape {
        Shape::Text(run) => run.size *= factor,
        Shape::Path { stroke: Some(stroke), .. } => stroke.width *= factor,
        Shape::Path { stroke: None, .. } => {}
    }
}

/// How far to the right a shape reaches.
pub(super) fn right(shape: &Shape) -> f32 {
    let of = |segment: &PathSegment| match *segment {
        PathSegment::Move(p) | PathSegment::Line(p) => p.x,
        PathSegment::Cubic(a, b, c) => a.x.max(b.x).max(c.x),
        PathSegment::Close => 0.0,
    };
    match shape {
        Shape::Text(run) => run.origin.x + run.width(),
        Shape::Path { segments, .. } => segments.iter().map(of).fold(0.0, f32::max),
    }
}

fn each_point(shape: &mut Shape, change: impl Fn(&mut Point)) {
    match shape {
        Shape::Text(run) => change(&mut run.origin),
        Shape::Path { segments, .. } => {
            for segment in segments {
                match segment {
                    PathSegment::Move(p) | PathSegment::Line(p) => change(p),
                    PathSegment::Cubic(a, b, c) => {
                        change(a);
                        change(b);
                        change(c);
                    }
                    PathSegment::Close => {}
                }
            }
        }
    }
}

/// A full circle.
pub(super) fn disc(
    (x, y): (f32, f32),
    radius: f32,
    fill: Option<Colour>,
    stroke: Option<Stroke>,
) -> Shape {
    // Four cubic arcs: the handles that come nearest to a circle.
    let handle = radius * 0.552_284_8;
    let at = |dx: f32, dy: f32| Point { x: x + dx, y: y + dy };
    let segments = vec![
        PathSegment::Move(at(radius, 0.0)),
        PathSegment::Cubic(at(radius, handle), at(handle, radius), at(0.0, radius)),
        PathSegment::Cubic(at(-handle, radius), at(-radius, handle), at(-radius, 0.0)),
        PathSegment::Cubic(at(-radius, -handle), at(-handle, -radius), at(0.0, -radius)),
        PathSegment::Cubic(at(handle, -radius), at(radius, -handle), at(radius, 0.0)),
        PathSegment::Close,
    ];
    Shape::Path { segments, fill, stroke }
}
