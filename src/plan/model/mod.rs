//! The plan: every number of a class as a plain value. No text for people.

mod batch;
mod canvas;
mod order;
mod reserve;
mod worked;

pub use batch::*;
pub use canvas::*;
pub use order::*;
pub use reserve::*;
pub use worked::*;

use super::exercise::Exercises;
use super::{RoomPlan, TimetablePlan};
use crate::lesson::{Caution, Lesson};
use crate::quantity::{Spread, Volume};

/// A lesson worked out.
#[derive(Debug, Clone)]
pub struct Plan {
    pub lesson: Lesson,
    pub heads: Heads,
    /// One for each canvas of the lesson, in its order.
    pub canvases: Vec<CanvasPlan>,
    /// Mixed paint of one student, all canvases (typical film, cup loss included).
    pub student_paint: Spread<Volume>,
    /// Mixed paint of the whole class, demonstrations and spares included.
    pub class_paint: Spread<Volume>,
    /// What the teacher mixes for the whole class: one batch a colour and mix.
    pub mixing: Vec<Batch>,
    /// What the finishes take, one line a material.
    pub finishing: Vec<MaterialNeed>,
    /// What batches and finishes take together, one line a material, by kind.
    pub materials: Vec<MaterialNeed>,
    pub supplies: Vec<SupplyNeed>,
    /// What a class that uses what is expected leaves mixed, in the order of `mixing`.
    pub leftovers: Vec<Leftover>,
    /// How the reserve in `mixing` and `finishing` is argued, and what a habit would do instead.
    pub reserve: Reserve,
    pub order: Order,
    pub cost: Cost,
    /// One for each canvas of the lesson, in its order.
    pub worked: Vec<WorkedExample>,
    /// Sums for each student, if the lesson wants them.
    pub exercises: Option<Exercises>,
    /// The safety notes of this lesson, worst first.
    pub cautions: Vec<Caution>,
    /// By the clock, if the lesson says what happens when.
    pub timetable: Option<TimetablePlan>,
    /// Tables, drying and washing-up.
    pub room: RoomPlan,
}

impl Plan {
    /// What is mixed for the class: all batches, each rounded up to its step.
    pub fn to_mix(&self) -> Volume {
        self.mixing.iter().map(|batch| batch.volume).fold(Volume::default(), |sum, v| sum + v)
    }
}

/// How many sets are painted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Heads {
    pub students: u32,
    pub demonstrations: u32,
    pub spares: u32,
    pub tables: u32,
}

impl Heads {
    /// Sets of canvases to mix for.
    pub fn sets(&self) -> u32 {
        self.students.saturating_add(self.demonstrations).saturating_add(self.spares)
    }
}
