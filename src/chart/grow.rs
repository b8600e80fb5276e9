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
}

fn stretch(segment: &mut PathSegment, by: f32) {
    match segment {
        PathSegment::Move(p) | PathSegment::Line(p) => grow(p, by),
        PathSegment::Cubic(a, b, c) => [a, b, c].into_iter().for_each(|p| grow(p, by)),
        PathSegment::Close => {}
    }
}

fn grow(point: &mut Point, by: f32) {
    point.x *= by;
    point.y *= by;
}
