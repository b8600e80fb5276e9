use schemars::JsonSchema;
use serde::Deserialize;
use std::num::NonZeroU32;

/// Sums with other numbers for each student.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ExerciseRule {
    /// For each student, up to [`MOST_EXERCISES`].
    pub count: NonZeroU32,
    /// How far all of them go; `None` begins with areas and goes on through all levels.
    pub level: Option<ExerciseLevel>,
    /// What the numbers are made from: the same text gives the same sums again. Never empty.
    pub seed: String,
}

/// Most sums of one student.
pub const MOST_EXERCISES: u32 = 12;

/// How far a sum goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum ExerciseLevel {
    /// Face, edge and painted area of a canvas.
    Area,
    /// From there to the paint, by the rule of thumb or a technique.
    Paint,
    /// From there to one colour and its grams, or back from paint that is left to a panel.
    Colours,
}
