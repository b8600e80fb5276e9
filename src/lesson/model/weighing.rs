use super::Lesson;
use super::canvas::Canvas;
use super::colour::Colour;
use super::recipe::Mix;
use super::technique::Technique;
use crate::lesson::Place;
use crate::quantity::{Date, Length, Mass, Share, Spread};
use std::sync::Arc;

/// The cups of one class, weighed before and after.
#[derive(Debug, Clone)]
pub struct WeighedClass {
    /// The lesson that was given.
    pub lesson: Arc<Lesson>,
    /// The day of the class; of the lesson when the weighings name none.
    pub date: Option<Date>,
    /// In the order of the file; never empty.
    pub cups: Vec<WeighedCup>,
}

/// One cup of one colour for one layer of one canvas, with its stick, weighed twice.
#[derive(Debug, Clone)]
pub struct WeighedCup {
    /// Name or number of who poured, "demonstration" or "spare" among them.
    pub student: String,
    pub canvas: Arc<Canvas>,
    /// Which of several alike canvases of this student, from 1.
    pub piece: u32,
    /// How it was poured; what the lesson says unless the row says something else.
    pub technique: Arc<Technique>,
    /// Name of a layer of the technique.
    pub layer: String,
    pub mix: Arc<Mix>,
    pub colour: Arc<Colour>,
    pub before: Mass,
    /// Not more than before.
    pub after: Mass,
    /// What ran off the canvas in this layer, if the tray was weighed; it stands in one of the
    /// rows of a canvas.
    pub tray: Option<Mass>,
    /// What the scale shows in steps of; positive.
    pub step: Mass,
    pub trust: Trust,
    pub note: Option<String>,
    /// The row.
    pub place: Place,
}

/// Whether a weight that looks like ounces typed as grams is believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Trust {
    /// It is doubted.
    #[default]
    Plain,
    /// The row says that it was looked at and is right.
    Checked,
}

/// Where a film comes from that has been weighed.
#[derive(Debug, Clone, PartialEq)]
pub struct WeighedFilm {
    pub cups: u32,
    pub canvases: u32,
    pub classes: u32,
    /// Mean of these canvases.
    pub mean: Length,
    /// What was planned with before.
    pub instead_of: Spread<Length>,
    /// How much of the film is the mean of one's own canvases; the rest is what was
    /// planned with before.
    pub own_weight: Share,
}

/// Where the spreads of the reserve come from when they have been weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WeighedSpread {
    /// From class to class before anything was weighed.
    pub class_varied: Share,
    /// From canvas to canvas before anything was weighed.
    pub students_varied: Share,
    pub canvases: u32,
    pub classes: u32,
}
