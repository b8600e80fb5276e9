//! What is drawn on tools to print and use with a ruler, a canvas or a cup: data, not shapes.
//! Those that say so are drawn at true size, whatever the size of the print.

use super::document::Weight;

/// Two bars of known length, to measure whether a page was printed at its size. True size.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckLength {
    pub bars: Vec<CheckBar>,
}

/// One bar.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckBar {
    /// Millimetres.
    pub length: f64,
    /// Of one length, by turns black and white.
    pub parts: u32,
    pub label: String,
}

/// Painted area and wet film to the volume of paint, by a straight line across three upright
/// scales, each divided in two units.
#[derive(Debug, Clone, PartialEq)]
pub struct Nomogram {
    pub area: Scale,
    pub volume: Scale,
    pub film: Scale,
    /// Lower and upper end, in cm².
    pub area_ends: (f64, f64),
    /// Lower and upper end, in mm.
    pub film_ends: (f64, f64),
    /// Over the marks.
    pub marks_title: String,
    pub marks: Vec<FilmMark>,
    /// A reading to show how it is done: area in cm² and film in mm.
    pub example: Option<(f64, f64)>,
}

/// A scale with its divisions left and right of its line.
#[derive(Debug, Clone, PartialEq)]
pub struct Scale {
    pub title: String,
    pub left: Division,
    /// None where something else stands there.
    pub right: Option<Division>,
}

/// A unit by which a scale is divided.
#[derive(Debug, Clone, PartialEq)]
pub struct Division {
    pub unit: String,
    /// In cm² for an area, mm for a film, cm² × mm for a volume.
    pub size: f64,
}

/// What takes a film.
#[derive(Debug, Clone, PartialEq)]
pub struct FilmMark {
    pub label: String,
    /// Millimetres.
    pub film: f64,
    /// Strong marks are named first where there is no room for all.
    pub weight: Weight,
}

/// A scale that begins at a fold, to measure how deep a canvas is, and a ruler. True size.
#[derive(Debug, Clone, PartialEq)]
pub struct EdgeGauge {
    /// Along the fold.
    pub fold_label: String,
    pub ruler_label: String,
    /// Names of the units below the scale.
    pub mm_label: String,
    pub inch_label: String,
    /// How far the scale and the ruler reach, in millimetres; inches reach as far as sixteenths
    /// go in.
    pub depth: u32,
    pub ruler: u32,
    pub marks: Vec<DepthMark>,
}

/// How deep a canvas of the lesson is.
#[derive(Debug, Clone, PartialEq)]
pub struct DepthMark {
    pub label: String,
    /// Millimetres.
    pub depth: f64,
}

/// Rings around a spot, for a blob that spreads. True size.
#[derive(Debug, Clone, PartialEq)]
pub struct SpreadRings {
    /// On the spot.
    pub centre_label: String,
    /// From the smallest.
    pub rings: Vec<SpreadRing>,
    /// From the outermost; at most three are named.
    pub bands: Vec<SpreadBand>,
}

/// One ring.
#[derive(Debug, Clone, PartialEq)]
pub struct SpreadRing {
    /// Millimetres.
    pub radius: f64,
    /// Written on it above the spot, and below.
    pub label: String,
    pub radius_label: String,
}

/// Between two radii in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub struct SpreadBand {
    pub name: String,
    pub inner: f64,
    pub outer: f64,
}
