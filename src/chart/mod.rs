//! Charts and drawings.
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
}
