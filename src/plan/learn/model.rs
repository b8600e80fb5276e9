use crate::lesson::{Colour, Consistency, Technique};
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
    /// One class, or none with two canvases: not at all.
    None,
}
