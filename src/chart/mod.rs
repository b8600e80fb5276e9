//! Charts and drawings.

use crate::handout::Picture;
use crate::ink::{Colour, Dash, Faces, PathSegment, Point, Shape, Stroke};

/// A drawing from (0, 0), in points.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    pub size: (f32, f32),
    pub shapes: Vec<Shape>,
}

/// Draws a picture across a width in points.
pub fn draw(_picture: &Picture, width: f32, _faces: &Faces) -> Drawing {
    let height = width * 0.5;
    let at = |x, y| Point { x, y };
    let segments = vec![
        PathSegment::Move(at(0.0, 0.0)),
        PathSegment::Line(at(width, 0.0)),
        PathSegment::Line(at(width, height)),
        PathSegment::Line(at(0.0, height)),
        PathSegment::Close,
    ];
    let stroke = Some(Stroke { colour: Colour::new(90, 90, 90), width: 1.0, dash: Dash::Solid });
    Drawing { size: (width, height), shapes: vec![Shape::Path { segments, fill: None, stroke }] }
}
