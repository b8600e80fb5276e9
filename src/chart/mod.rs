//! Charts and drawings.
<<<<<<< HEAD

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
=======
//!
//! In: a [`Picture`], data with every text ready, a width and the faces. Out: shapes
//! with their places. This room knows nothing of pages, of paint or of PDF.
//!
//! Coverage and bars stand on plotters: its coordinates, mesh and series draw through
//! [`backend`], which emits the same shapes as everything else. Titles and direct
//! labels are set here, where [`labels`] keeps them apart.

mod backend;
mod bars;
mod board;
mod coverage;
mod dimension;
mod hatch;
mod labels;
mod outline;
mod plot;
mod rings;
mod style;
mod unfolded;

use crate::handout::{Picture, PictureKind};
use crate::ink::{Faces, Shape};

/// A picture as shapes, in points from its top left corner, y downwards.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    pub width: f32,
    pub height: f32,
    pub shapes: Vec<Shape>,
}

/// Draws a picture `width` points wide; at least 150, or there is no room for labels.
pub fn draw(picture: &Picture, width: f32, faces: &Faces) -> Drawing {
    let width = if width.is_finite() { width.max(150.0) } else { 150.0 };
    match &picture.kind {
        PictureKind::Coverage(data) => coverage::draw(data, width, faces),
        PictureKind::Bars(data) => bars::draw(data, width, faces),
        PictureKind::Unfolded(data) => unfolded::draw(data, width, faces),
        PictureKind::Rings { colours } => rings::draw(colours, width),
    }
>>>>>>> pdf
}
