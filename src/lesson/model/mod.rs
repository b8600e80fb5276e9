//! The checked lesson: after reading, an invalid value cannot exist here. Names
//! are resolved (a canvas holds its technique, not the name of one), every share
//! list adds up to the whole, every size is positive.

mod canvas;
mod caution;
mod colour;
mod concern;
mod exercises;
mod goods;
mod recipe;
mod reserve;
mod room;
mod sizes;
mod technique;
mod timetable;
mod weighing;

pub use canvas::*;
pub use caution::*;
pub use colour::*;
pub use concern::*;
pub use exercises::*;
pub use goods::*;
pub use recipe::*;
pub use reserve::*;
pub use room::*;
pub use sizes::*;
pub use technique::*;
pub use timetable::*;
pub use weighing::*;

use super::origins::Origins;
use crate::quantity::{Currency, Date, UnitSystem};
use schemars::JsonSchema;
use serde::Deserialize;
use std::num::NonZeroU32;
use std::sync::Arc;

/// Everything one lesson file (with the data files that it names) says.
#[derive(Debug, Clone)]
pub struct Lesson {
    /// What the class is called, who gives it, when and where.
    pub heading: Heading,
    /// How it is printed.
    pub print: Print,
    /// Who comes.
    pub class: Class,
    /// What is painted, in the order of the file; never empty, names are unique.
    pub canvases: Vec<Canvas>,
    /// What happens when, if the lesson says so.
    pub timetable: Option<Timetable>,
    /// Sums for each student, if the lesson wants them.
    pub exercises: Option<ExerciseRule>,
    /// Tables, and where canvases dry.
    pub room: Room,
    /// Water for washing up.
    pub washing: Washing,
    /// How cups are filled and amounts rounded.
    pub mixing: Mixing,
    /// How much more than expected is mixed.
    pub reserve: ReserveRule,
    /// What is needed besides paint.
    pub supplies: Vec<SupplyRule>,
    /// Where things are bought, all in one currency; without one the order has amounts and
    /// no packs.
    pub shops: Vec<Shop>,
    /// What it costs besides, and what is asked for it.
    pub charges: Charges,
    /// Items that are not bought in these shops.
    pub elsewhere: Vec<String>,
    /// What is in the cupboard.
    pub stock: Vec<Stocked>,
    /// Mixed paint that is left from before.
    pub jars: Vec<Jar>,
    /// What the class does that needs care, by the lesson's own word.
    pub practices: Vec<Practice>,
    /// All known safety notes, worst first; the plan selects from them.
    pub cautions: Vec<Caution>,
    /// All known techniques, for tables and charts that compare them.
    pub techniques: Vec<Arc<Technique>>,
    /// Canvas sizes of the shops, for tables.
    pub sizes: StockSizes,
    /// All known mixes, for tables.
    pub mixes: Vec<Arc<Mix>>,
    /// What is right all the same although a colleague would say something; no concern twice.
    pub accepted: Vec<Accepted>,
    /// What the lesson's own file names and nothing in it uses.
    pub unused: Vec<Unused>,
    /// Where all of this stands.
    pub origins: Origins,
}

/// Title block of a lesson.
#[derive(Debug, Clone, Default)]
pub struct Heading {
    /// Never empty.
    pub title: String,
    pub subtitle: Option<String>,
    pub teacher: Option<String>,
    pub place: Option<String>,
    pub date: Option<Date>,
    /// A line for every footer, such as "All names are invented."
    pub note: Option<String>,
}

/// Choices of the paper; the command line may override them.
#[derive(Debug, Clone, Copy)]
pub struct Print {
    pub language: Language,
    pub units: UnitSystem,
    pub paper: Paper,
    pub edition: Edition,
    pub currency: Currency,
}

/// Languages of the handouts, each with templates and names of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
pub enum Language {
    /// English.
    #[serde(rename = "en")]
    English,
    /// Spanish.
    #[serde(rename = "es")]
    Spanish,
}

impl Language {
    /// Every language there is, the one of a lesson that names none first.
    pub const ALL: [Self; 2] = [Self::English, Self::Spanish];

    /// Its tag (BCP 47), as lesson files write it.
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
        }
    }
}

/// Paper formats.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8.5 × 11 in.
    Letter,
}

/// Size of the print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Edition {
    /// Body text of 10.5 pt.
    Standard,
    /// Body text of 18 pt.
    #[serde(rename = "large print")]
    LargePrint,
}

/// The largest class that is planned.
pub const MOST_STUDENTS: u32 = 1_000;

/// The people of the class.
#[derive(Debug, Clone)]
pub struct Class {
    pub students: Students,
    /// Complete sets that the teacher pours in front of the class.
    pub demonstrations: u32,
    /// Complete sets kept ready for mishaps.
    pub spares: u32,
    /// Youngest age in the room; `None` means adults.
    pub youngest_age: Option<u8>,
    /// Students who share a table (default 4).
    pub per_table: NonZeroU32,
}

/// A number, or the first names; at least one.
#[derive(Debug, Clone)]
pub enum Students {
    Count(NonZeroU32),
    /// Never empty, no name twice.
    Named(Vec<String>),
}
