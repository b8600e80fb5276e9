//! Weighings as they are written: which keys there are and in what form their values come.

use super::super::field::{At, Field, Items, Written};
use crate::quantity::{Date, Mass};
use serde::Deserialize;

/// The cups of one class.
#[derive(Debug, Deserialize)]
pub(super) struct Class {
    /// The lesson that was given, by its path from the folder of this file.
    pub(super) lesson: Field<Written<String>>,
    /// The day, when it is not the lesson's.
    pub(super) date: Field<Written<Date>>,
    /// What the scale shows in steps of.
    pub(super) scale: Field<Written<Mass>>,
    pub(super) cups: Field<At<Items<Cup>>>,
}

/// One cup.
#[derive(Debug, Deserialize)]
pub(super) struct Cup {
    /// A name of the class, a number, "demonstration" or "spare".
    pub(super) student: Field<Written<String>>,
    pub(super) canvas: Field<Written<String>>,
    /// Which of several alike canvases, from 1.
    pub(super) piece: Field<Written<u32>>,
    /// When it was poured otherwise than the lesson says.
    pub(super) technique: Field<Written<String>>,
    /// As `technique`; names a mix.
    pub(super) consistency: Field<Written<String>>,
    /// Of the technique; the only one when not said.
    pub(super) layer: Field<Written<String>>,
    pub(super) colour: Field<Written<String>>,
    pub(super) before: Field<Written<Mass>>,
    pub(super) after: Field<Written<Mass>>,
    /// What ran off in this layer.
    pub(super) tray: Field<Written<Mass>>,
    /// Of another scale than that of the class.
    pub(super) scale: Field<Written<Mass>>,
    /// A strange weight was looked at and is right.
    pub(super) checked: Field<Checked>,
    pub(super) note: Field<Written<String>>,
}

/// Whether somebody looked.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Checked {
    Yes,
    No,
}
