//! Charts and drawings.
//!
//! In: a [`Picture`], data with every text ready, the room for it and the faces. Out:
//! shapes with their places. This room knows nothing of pages, of paint or of PDF.
//!
//! Coverage, bars, fees, weighings and films stand on plotters: its coordinates, mesh and series draw
//! through `backend`, which emits the same shapes as everything else. Titles and direct
//! labels are set here, where `labels` keeps them apart.

mod backend;
mod bars;
mod board;
mod caption;
mod check_length;
mod coverage;
mod dimension;
mod edge_gauge;
mod ending;
mod fees;
mod film_left;
mod grow;
mod hatch;
mod labels;
mod log_scale;
mod marker;
mod middle;
mod nomogram;
mod outline;
mod plot;
mod rings;
mod ruler;
mod shares;
mod sketch;
mod sketch_frame;
mod spread_rings;
mod style;
mod unfolded;
mod weighed;

use crate::handout::{DecimalMark, Picture, PictureKind};
use crate::ink::{Faces, Shape};

/// A picture as shapes, in points from its top left corner, y downwards.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    pub width: f32,
    pub height: f32,
    pub shapes: Vec<Shape>,
    /// Lines to write on, by their place among the shapes, with what belongs there.
    pub blanks: Vec<(usize, String)>,
    pub size: Sizing,
}

/// Whether a drawing may be made smaller.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sizing {
    ToRoom,
    /// It is measured with, or cut out: it keeps its size, also where it needs more room.
    True,
}

/// What a page gives a picture, in points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    pub width: f32,
    /// Type size of the page's small print: 8.5 where nothing is enlarged. The texts of
    /// a picture grow with it.
    pub small_print: f32,
    /// In the numbers on axes.
    pub decimal: DecimalMark,
}

/// Draws a picture across a room; 150 points of width at least in small print of 8.5
/// points, and more in larger, or there is no place for labels.
pub fn draw(picture: &Picture, room: Room, faces: &Faces) -> Drawing {
    let larger = room.small_print / style::SMALL_PRINT;
    let larger = if larger.is_finite() { larger.max(1.0) } else { 1.0 };
    let width = if room.width.is_finite() { room.width / larger } else { 0.0 };
    let width = width.max(150.0);
    let drawing = match &picture.kind {
        PictureKind::Coverage(data) => coverage::draw(data, width, room.decimal, faces),
        PictureKind::Bars(data) => bars::draw(data, width, room.decimal, faces),
        PictureKind::Fees(data) => fees::draw(data, width, room.decimal, faces),
        PictureKind::FilmLeft(data) => film_left::draw(data, width, room.decimal, faces),
        PictureKind::Weighed(data) => weighed::draw(data, width, room.decimal, faces),
        PictureKind::Shares(data) => shares::draw(data, width, faces),
        PictureKind::Unfolded(data) => unfolded::draw(data, width, larger, faces).lowered(),
        PictureKind::Sketch(data) => sketch::draw(data, width, faces),
        PictureKind::Rings { colours } => return rings::draw(colours, width * larger),
        // Only the texts of these grow.
        PictureKind::Nomogram(data) => {
            return nomogram::draw(data, width * larger, larger, room.decimal, faces);
        }
        PictureKind::EdgeGauge(data) => {
            return edge_gauge::draw(data, width * larger, larger, faces);
        }
        PictureKind::SpreadRings(data) => return spread_rings::draw(data, larger, faces),
        PictureKind::CheckLength(data) => return check_length::draw(data, larger, faces),
    };
    drawing.grown(larger)
}
