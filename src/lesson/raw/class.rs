//! Who comes, and the sums that they are given.

use super::super::field::{At, Field, Items, Written};
use super::super::limits;
use super::super::model::ExerciseLevel;
use super::super::schema::within;
use schemars::JsonSchema;
use serde::Deserialize;

/// Who comes.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Class {
    /// How many students come, or their first names in brackets: [Ana, Bo, Cem].
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) students: Field<At<Students>>,
    /// Sets that you pour in front of the class.
    #[schemars(extend("default" = 0), transform = within(limits::EXTRA_SETS))]
    pub(in crate::lesson) demonstrations: Field<Written<u32>>,
    /// Sets kept ready for mishaps.
    #[schemars(extend("default" = 0), transform = within(limits::EXTRA_SETS))]
    pub(in crate::lesson) spares: Field<Written<u32>>,
    /// Age of the youngest student; it selects the safety notes. Without it all are adults.
    #[serde(rename = "youngest age")]
    #[schemars(transform = within(limits::AGE))]
    pub(in crate::lesson) youngest_age: Field<Written<u32>>,
    /// How many students share a table.
    #[serde(rename = "per table")]
    #[schemars(extend("default" = 4), transform = within(limits::PER_TABLE))]
    pub(in crate::lesson) per_table: Field<Written<u32>>,
}

/// A number or a list of names.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename = "puddlebook: by form")]
#[schemars(rename = "Students", untagged)]
pub(in crate::lesson) enum Students {
    #[serde(rename = "text")]
    Count(#[schemars(transform = within(limits::STUDENTS))] Written<u32>),
    #[serde(rename = "list")]
    Named(
        #[schemars(extend("minItems" = 1, "maxItems" = limits::STUDENTS.high() as u64))]
        Items<Written<String>>,
    ),
}

/// How many sums each student gets, or that and more.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename = "puddlebook: by form")]
#[schemars(rename = "Exercises", untagged)]
pub(in crate::lesson) enum Exercises {
    #[serde(rename = "text")]
    Count(#[schemars(transform = within(limits::EXERCISES))] Written<u32>),
    #[serde(rename = "mapping")]
    Chosen(ExerciseChoice),
}

/// Sums for each student.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct ExerciseChoice {
    /// How many sums each student gets.
    #[schemars(extend("needed" = "always"), transform = within(limits::EXERCISES))]
    pub(in crate::lesson) count: Field<Written<u32>>,
    /// How far all of the sums go. Without it they begin with areas and go on through all
    /// levels.
    pub(in crate::lesson) level: Field<ExerciseLevel>,
    /// Any text that the numbers are made from: the same text gives the same sums again. Without
    /// it the title and the date of the lesson are taken.
    pub(in crate::lesson) seed: Field<Written<String>>,
}
