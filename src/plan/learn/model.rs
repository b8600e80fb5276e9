use super::mean::Varies;
use crate::lesson::{Colour, Consistency, Place, Technique};
use crate::quantity::{Area, Date, Length, Mass, Spread, Volume};
use std::sync::Arc;

/// What weighed cups teach.
#[derive(Debug, Clone)]
pub struct Learned {
    pub classes: Vec<LearnedClass>,
    /// One for each technique, layer and consistency that was weighed, in the order in which
    /// they first appear.
    pub films: Vec<LearnedFilm>,
    pub spread: LearnedSpread,
    /// Layers of canvases that teach nothing, in the order of the weighings.
    pub left_out: Vec<LeftOut>,
}

/// A layer of one canvas of which not every colour was weighed. What the others took could only
/// be guessed from their shares, so it counts in no film; its cups still stand in their class.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOut {
    /// Place in `Learned::classes`.
    pub class: usize,
    pub student: String,
    pub canvas: String,
    pub piece: u32,
    pub layer: String,
    /// Never empty.
    pub missing: Vec<Arc<Colour>>,
}

/// One class that was weighed.
#[derive(Debug, Clone)]
pub struct LearnedClass {
    pub title: String,
    pub date: Option<Date>,
    pub canvases: u32,
    pub cups: Vec<CupUse>,
}

/// What was used of one cup.
#[derive(Debug, Clone)]
pub struct CupUse {
    pub student: String,
    pub canvas: String,
    pub piece: u32,
    pub layer: String,
    pub colour: Arc<Colour>,
    pub before: Mass,
    pub after: Mass,
    /// Before less after, and as little and as much as the two readings allow.
    pub used: Spread<Mass>,
}

/// The film of one technique, layer and consistency.
#[derive(Debug, Clone)]
pub struct LearnedFilm {
    pub technique: Arc<Technique>,
    pub layer: String,
    pub consistency: Consistency,
    pub cups: u32,
    pub classes: u32,
    /// One for each canvas that was weighed; never empty.
    pub canvases: Vec<CanvasUse>,
    /// Mean film of these canvases, with its interval.
    pub mean: Estimate<Length>,
    /// The part of its standard uncertainty that the scale alone brings.
    pub from_scale: Length,
    /// What ran off, as a share of what was used; of the canvases whose tray was weighed.
    pub run_off: Option<RunOff>,
    /// What was planned with before anything was weighed.
    pub before: Spread<Length>,
    /// How much of `film` is one's own mean, 0 to 1.
    pub own_weight: f64,
    /// What to plan with from now on.
    pub film: Spread<Length>,
}

/// One layer of one canvas.
#[derive(Debug, Clone)]
pub struct CanvasUse {
    /// Place in `Learned::classes`.
    pub class: usize,
    pub student: String,
    pub canvas: String,
    pub piece: u32,
    pub area: Area,
    /// Painted area times the film that was planned with before.
    pub planned: Volume,
    /// As little and as much as the readings allow, around what they show.
    pub used: Spread<Volume>,
}

/// What ran off into trays.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunOff {
    pub canvases: u32,
    /// Of all paint used on them, 0 to 1.
    pub share: f64,
}

/// A value with an interval that covers the truth in 19 of 20 cases.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate<T> {
    pub value: T,
    pub low: T,
    pub high: T,
}

/// How use varies, as standard deviations relative to the mean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LearnedSpread {
    pub canvases: u32,
    pub classes: u32,
    /// From one class to the next.
    pub class: SpreadPart,
    /// From canvas to canvas within a class.
    pub student: SpreadPart,
    pub method: Method,
    /// The variance from class to class as it came out of [`Method::Anova`], relative to the
    /// squared mean; negative where nothing was seen. The other method has no such figure.
    pub raw_class: Option<f64>,
    /// What to plan with from now on: what was seen and what was planned with before.
    pub from_now_on: Varies,
    /// What was planned with before anything was weighed.
    pub before: Varies,
}

impl SpreadPart {
    /// The standard deviation that was seen, relative to the mean, or planned with where none
    /// could be.
    pub fn value(self) -> f64 {
        match self {
            Self::Weighed(value) | Self::TooFew(value) => value,
            Self::NothingSeen => 0.0,
        }
    }
}

/// One of the two components.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SpreadPart {
    /// Found in the weighings.
    Weighed(f64),
    /// The estimate of the variance came out negative: nothing to be seen, taken as zero.
    NothingSeen,
    /// Too few classes or canvases: what was planned with stays.
    TooFew(f64),
}

/// How the two components were told apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Method {
    /// As many canvases in every class.
    Anova,
    /// Not as many in each: restricted maximum likelihood.
    Reml,
    /// One class, none with two canvases, or every class poured in another way: not at all.
    None,
}

/// A row that may hold ounces where grams were meant, or grams where ounces were.
#[derive(Debug, Clone, PartialEq)]
pub struct Doubt {
    pub place: Place,
    pub kind: DoubtKind,
}

/// How the full cup of the row differs from what its lesson fills it with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DoubtKind {
    /// About 28 times too light: ounces read as grams.
    TooLight { weighed: Mass, planned: Mass },
    /// About 28 times too heavy: grams read as ounces.
    TooHeavy { weighed: Mass, planned: Mass },
}
