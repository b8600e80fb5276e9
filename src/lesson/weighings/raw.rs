//! Weighings as they are written: which keys there are and in what form their values come.

use super::super::field::{At, Field, Items, Written};
use super::super::limits;
use super::super::schema::within;
use crate::quantity::{Date, Mass};
use schemars::JsonSchema;
use serde::Deserialize;

/// The cups of one class, weighed before and after pouring.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Class {
    /// The lesson that was given, by its path from the folder of this file.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) lesson: Field<Written<String>>,
    /// The day of the class, as year-month-day, when it is not the day of the lesson.
    pub(in crate::lesson) date: Field<Written<Date>>,
    /// What the scale shows in steps of. Say it here, or for each cup.
    #[schemars(transform = within(limits::SCALE_STEP))]
    pub(in crate::lesson) scale: Field<Written<Mass>>,
    /// A line for each cup.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) cups: Field<At<Items<Cup>>>,
}

/// One cup. A line without any weight is a cup that nobody weighed.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Cup {
    /// Who poured it: a name of the class, a number, "demonstration" or "spare".
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) student: Field<Written<String>>,
    /// On which canvas, by its name in the lesson.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) canvas: Field<Written<String>>,
    /// On which of several alike canvases, counted from 1.
    #[schemars(transform = within(limits::PIECE))]
    pub(in crate::lesson) piece: Field<Written<u32>>,
    /// The technique, only where it was poured otherwise than the lesson says.
    pub(in crate::lesson) technique: Field<Written<String>>,
    /// The mix, only where it was poured otherwise than the lesson says.
    pub(in crate::lesson) consistency: Field<Written<String>>,
    /// The layer of the technique, where it has several.
    pub(in crate::lesson) layer: Field<Written<String>>,
    /// Which colour was in it.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) colour: Field<Written<String>>,
    /// The cup with its stick and its paint, before pouring.
    #[schemars(extend("needed" = "once"), transform = within(limits::FULL_CUP))]
    pub(in crate::lesson) before: Field<Written<Mass>>,
    /// The cup with its stick, after pouring.
    #[schemars(extend("needed" = "once"), transform = within(limits::EMPTIED))]
    pub(in crate::lesson) after: Field<Written<Mass>>,
    /// What ran off in this layer, if it was caught in a tray.
    #[schemars(transform = within(limits::EMPTIED))]
    pub(in crate::lesson) tray: Field<Written<Mass>>,
    /// Of another scale than the rest of the class: what it shows in steps of.
    #[schemars(transform = within(limits::SCALE_STEP))]
    pub(in crate::lesson) scale: Field<Written<Mass>>,
    /// Whether a strange weight was looked at and is right.
    #[schemars(extend("default" = "no"))]
    pub(in crate::lesson) checked: Field<Checked>,
    /// A note to yourself.
    pub(in crate::lesson) note: Field<Written<String>>,
}

/// Whether somebody looked.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(in crate::lesson) enum Checked {
    /// It was looked at and is right.
    Yes,
    /// Nobody looked.
    No,
}
