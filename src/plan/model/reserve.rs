//! What is kept on top, and what will be left.

use super::Plan;
use crate::lesson::{Colour, Mix, ReserveRule};
use crate::quantity::{Date, Mass, Money, Share, Volume};
use std::sync::Arc;

/// Why so much is kept in reserve.
///
/// Each colour is to be enough by itself, so each has its own reserve, and together they are
/// more than the reserve that one paint for all would take.
#[derive(Debug, Clone)]
pub struct Reserve {
    pub rule: ReserveRule,
    /// So many standard deviations are kept: the normal quantile of the level.
    pub deviations: f64,
    /// All mixed paint, cup loss included.
    pub expected: Volume,
    /// The reserves of all colours and mixes together: what is mixed on top.
    pub by_colour: Volume,
    /// What would do if all colours were one paint; at most `by_colour`.
    pub as_one: Volume,
    pub habit: Habit,
}

/// What the same class would mix and buy if so much were added for each student and nothing
/// else argued. For comparison only.
#[derive(Debug, Clone)]
pub struct Habit {
    /// Added to what is expected.
    pub extra: Share,
    /// What each batch of `Plan::mixing` would be, in its order, rounded up to its step.
    pub mixing: Vec<Volume>,
    /// What each line of `Plan::finishing` would be, in its order.
    pub finishing: Vec<Volume>,
    /// What would be paid for packs.
    pub total: Money,
}

impl Habit {
    /// What would be mixed for the class: all batches.
    pub fn to_mix(&self) -> Volume {
        self.mixing.iter().copied().sum()
    }
}

/// Mixed paint that is left after a class.
#[derive(Debug, Clone)]
pub struct Leftover {
    pub colour: Arc<Colour>,
    pub mix: Arc<Mix>,
    pub volume: Volume,
    pub mass: Mass,
    /// When the oldest part of it was mixed; `None` when the lesson has no date.
    pub mixed: Option<Date>,
    /// The last day on which it can be used.
    pub last_day: Option<Date>,
}

impl Leftover {
    /// How many cups it would fill of each kind of canvas of a plan, kind by kind.
    pub fn covers(&self, plan: &Plan) -> Vec<Cover> {
        super::super::jars::covers(self, &plan.canvases)
    }
}

/// Cups of one kind of canvas that a leftover would fill.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cover {
    pub canvas: String,
    /// `None` for a canvas that has one layer.
    pub layer: Option<String>,
    pub cups: u32,
}
