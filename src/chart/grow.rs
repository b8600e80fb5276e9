//! Drawings for larger print: everything grows alike, so that what keeps apart in
//! small keeps apart in large.

use super::Drawing;
use crate::ink::{PathSegment, Point, Shape};

impl Drawing {
    /// The drawing with places, texts and lines larger by a factor.
    pub(super) fn grown(mut self, by: f32) -> Self {
        self.width *= by;
        self.height *= by;
        for shape in &mut self.shapes {
            match shape {
                Shape::Text(run) => {
                    run.size *= by;
                    grow(&mut run.origin, by);
                }
                Shape::Path { segments, stroke, .. } => {
                    segments.iter_mut().for_each(|segment| stretch(segment, by));
                    if let Some(stroke) = stroke {
                        stroke.width *= by;
                    }
                }
            }
        }
        self
    }

    /// The drawing lower by what stands out at its top: a line over a very small figure
    /// may, when its label has more lines than the figure is high.
    pub(super) fn lowered(mut self) -> Self {
        let top = self.shapes.iter().map(top).fold(0.0, f32::min);
        if top < 0.0 {
            self.height -= top;
            for shape in &mut self.shapes {
                match shape {
                    Shape::Text(run) => run.origin.y -= top,
                    Shape::Path { segments, .. } => segments.iter_mut().for_each(|segment| {
                        for point in points(segment) {
                            point.y -= top;
                        }
                    }),
                }
            }
        }
        self
    }
}

/// Upper edge of a path with its stroke; texts are kept inside where they are set.
fn top(shape: &Shape) -> f32 {
    match shape {
        Shape::Text(_) => 0.0,
        Shape::Path { segments, stroke, .. } => {
            let rim = stroke.map_or(0.0, |stroke| stroke.width / 2.0);
            let highest = |mut segment: PathSegment| {
                points(&mut segment).into_iter().map(|p| p.y).fold(f32::INFINITY, f32::min)
            };
            segments.iter().copied().map(highest).fold(f32::INFINITY, f32::min) - rim
        }
    }
}

fn points(segment: &mut PathSegment) -> Vec<&mut Point> {
    match segment {
        PathSegment::Move(p) | PathSegment::Line(p) => vec![p],
        PathSegment::Cubic(a, b, c) => vec![a, b, c],
        PathSegment::Close => Vec::new(),
    }
}

fn stretch(segment: &mut PathSegment, by: f32) {
    points(segment).into_iter().for_each(|p| grow(p, by));
}

fn grow(point: &mut Point, by: f32) {
    point.x *= by;
    point.y *= by;
}
