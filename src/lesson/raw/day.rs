//! The day and the room: when, where, and with what besides paint.

use super::super::field::{At, Entries, Field, Written};
use super::super::legible::{Days, Minutes};
use super::super::limits;
use super::super::model::{Life, Per};
use super::super::schema::within;
use crate::quantity::{Area, Length, Time, Volume};
use schemars::JsonSchema;
use serde::Deserialize;

/// What happens when.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Timetable {
    /// When the class begins.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) start: Field<Written<Time>>,
    /// When the room must be left.
    #[serde(rename = "booked until")]
    pub(in crate::lesson) booked_until: Field<Written<Time>>,
    /// The steps in their order, under names of your own, each with how long it takes. The last
    /// one ends before midnight.
    #[schemars(extend(
        "needed" = "always",
        "minProperties" = 1,
        "maxProperties" = limits::TIMED_STEPS
    ))]
    pub(in crate::lesson) steps: Field<At<Entries<Written<Minutes>>>>,
}

/// Tables, and where canvases dry.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Room {
    /// The size of one table, to work at or to dry on.
    pub(in crate::lesson) table: Field<At<Table>>,
    /// All that is level and free for drying.
    #[serde(rename = "level surface")]
    #[schemars(transform = within(limits::LEVEL_SURFACE))]
    pub(in crate::lesson) level_surface: Field<Written<Area>>,
    /// Between two wet canvases: room for a hand that wipes drips.
    #[schemars(extend("needed" = "once"), transform = within(limits::DRYING_GAP))]
    pub(in crate::lesson) gap: Field<Written<Length>>,
    /// From pouring until a canvas is dry to the touch and can be moved.
    #[schemars(extend("needed" = "once"), transform = within(limits::DAYS))]
    pub(in crate::lesson) drying: Field<Written<Days>>,
}

/// The size of one table.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Table {
    /// The long side.
    #[schemars(extend("needed" = "once"), transform = within(limits::TABLE_SIZE))]
    pub(in crate::lesson) length: Field<Written<Length>>,
    /// The short side.
    #[schemars(extend("needed" = "once"), transform = within(limits::TABLE_SIZE))]
    pub(in crate::lesson) width: Field<Written<Length>>,
}

/// Water for washing up.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Washing {
    /// For the mixing jug, between two colours and at the end.
    #[serde(rename = "after each batch")]
    #[schemars(extend("needed" = "once"), transform = within(limits::WASH_WATER))]
    pub(in crate::lesson) after_each_batch: Field<Written<Volume>>,
    /// For one piece of each supply that comes back. 0 for what is wiped clean when dry.
    #[serde(rename = "each piece")]
    pub(in crate::lesson) each_piece: Field<Entries<Written<Volume>>>,
    /// What one bucket is filled with, so that it can be carried.
    #[schemars(extend("needed" = "once"), transform = within(limits::BUCKET))]
    pub(in crate::lesson) bucket: Field<Written<Volume>>,
}

/// A rule for something that is not paint.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Supply {
    /// How many of it; a half is one for two. 0 takes it off the list.
    #[schemars(extend("needed" = "once"), transform = within(limits::SUPPLY_COUNT))]
    pub(in crate::lesson) count: Field<Written<f64>>,
    /// For each of what.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) per: Field<Per>,
    /// What is left of it after the class.
    #[schemars(extend("default" = "used up"))]
    pub(in crate::lesson) life: Field<Life>,
}
