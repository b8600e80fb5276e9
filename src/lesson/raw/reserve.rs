//! How much more than expected is mixed.

use super::super::field::{At, Field, Written};
use super::super::legible::Percentage;
use super::super::limits;
use super::super::model::ServiceLevel;
use super::super::schema::within;
use schemars::JsonSchema;
use serde::Deserialize;

/// How much more than expected is mixed.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Reserve {
    /// In how many classes each colour is to be enough: "19 classes out of 20" or "95 %". From
    /// 50 %, which is no reserve, to 99.9 %.
    #[serde(rename = "enough in")]
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) enough_in: Field<Written<ServiceLevel>>,
    /// How much use varies from one class to the next, all canvases of a class together
    /// (standard deviation).
    #[serde(rename = "class varies by")]
    #[schemars(extend("needed" = "once"), transform = within(limits::VARIATION))]
    pub(in crate::lesson) class_varies: Field<Written<Percentage>>,
    /// How much use varies from one canvas of a class to the next (standard deviation).
    #[serde(rename = "students vary by")]
    #[schemars(extend("needed" = "once"), transform = within(limits::VARIATION))]
    pub(in crate::lesson) students_vary: Field<Written<Percentage>>,
    /// What you usually add for each student. The order compares the reserve with it; it is never
    /// bought.
    #[schemars(extend("needed" = "once"), transform = within(limits::HABIT))]
    pub(in crate::lesson) habit: Field<Written<Percentage>>,
    /// What both spreads rest on when your own cups were weighed. "puddlebook learn" writes it.
    pub(in crate::lesson) weighed: Field<At<WeighedSpread>>,
}

/// What weighed spreads rest on.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct WeighedSpread {
    /// On how many canvases the weighed cups were poured.
    #[schemars(extend("needed" = "once"), transform = within(limits::WEIGHED))]
    pub(in crate::lesson) canvases: Field<Written<u32>>,
    /// In how many classes.
    #[schemars(extend("needed" = "once"), transform = within(limits::WEIGHED))]
    pub(in crate::lesson) classes: Field<Written<u32>>,
    /// The spreads before anything was weighed. Learning again starts from them.
    #[serde(rename = "instead of")]
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) instead_of: Field<At<Spreads>>,
}

/// From class to class, and from canvas to canvas.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Spreads {
    /// From one class to the next.
    #[serde(rename = "class varies by")]
    #[schemars(extend("needed" = "once"), transform = within(limits::VARIATION))]
    pub(in crate::lesson) class_varies: Field<Written<Percentage>>,
    /// From one canvas of a class to the next.
    #[serde(rename = "students vary by")]
    #[schemars(extend("needed" = "once"), transform = within(limits::VARIATION))]
    pub(in crate::lesson) students_vary: Field<Written<Percentage>>,
}
