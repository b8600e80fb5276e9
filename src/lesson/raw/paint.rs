//! Paints, what is mixed into them, and how.

use super::super::field::{At, Entries, Field, Items, Written};
use super::super::legible::{Days, DropRate, Swatch};
use super::super::limits;
use super::super::model::{Amount, Consistency, MaterialKind, PartsBy};
use super::super::schema::within;
use crate::quantity::{Date, Mass, MassDensity, Volume};
use schemars::JsonSchema;
use serde::Deserialize;

/// A paint.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Colour {
    /// What stands on the bottle and on price lists. Without it: the name of the colour with
    /// "acrylic" after it.
    pub(in crate::lesson) paint: Field<Written<String>>,
    /// What the paint weighs for its volume. Weigh 100 mL and divide by 100.
    #[schemars(extend("default" = "1.2 g/mL"), transform = within(limits::DENSITY))]
    pub(in crate::lesson) density: Field<Written<MassDensity>>,
    /// How the colour looks on the handouts: # and six digits, in quotes.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) swatch: Field<Written<Swatch>>,
    /// Pigments on the label that call for care; they bring the safety note they need.
    pub(in crate::lesson) pigments: Field<Items<Written<String>>>,
    /// What its label or safety data sheet warns of, in a sentence.
    pub(in crate::lesson) caution: Field<Written<String>>,
}

/// What goes into a cup besides paint, or over a canvas.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Material {
    /// What sort of material it is. Varnish goes over a canvas, the others into a cup, and a
    /// medium may do both.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) kind: Field<At<MaterialKind>>,
    /// What it weighs for its volume. Weigh 100 mL and divide by 100.
    #[schemars(extend("needed" = "once"), transform = within(limits::DENSITY))]
    pub(in crate::lesson) density: Field<Written<MassDensity>>,
    /// The volume of one drop, for what is added by drops.
    #[schemars(transform = within(limits::DROP))]
    pub(in crate::lesson) drop: Field<Written<Volume>>,
    /// What its label or safety data sheet warns of, in a sentence.
    pub(in crate::lesson) caution: Field<Written<String>>,
}

/// A recipe.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Mix {
    /// How it runs off the stick; says which film of a technique is taken.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) consistency: Field<Consistency>,
    /// How the parts are measured.
    #[schemars(extend("default" = "volume"))]
    pub(in crate::lesson) by: Field<PartsBy>,
    /// So many parts of each: "paint", which stands for the colour that is being mixed, and
    /// materials by their names.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) parts: Field<At<Entries<Written<f64>>>>,
    /// Drops into the finished mix, for materials that have the size of a drop.
    pub(in crate::lesson) drops: Field<Entries<Written<DropRate>>>,
}

/// How cups are filled and amounts rounded.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Mixing {
    /// What stays in one cup and on its stick after pouring.
    #[serde(rename = "cup loss")]
    #[schemars(extend("needed" = "once"), transform = within(limits::CUP_LOSS))]
    pub(in crate::lesson) cup_loss: Field<Written<Volume>>,
    /// Amounts to mix are rounded up to this in lessons with US units.
    #[serde(rename = "step us")]
    #[schemars(extend("needed" = "once"), transform = within(limits::MEASURE_STEP))]
    pub(in crate::lesson) step_us: Field<Written<Volume>>,
    /// Amounts to mix are rounded up to this in metric lessons.
    #[serde(rename = "step metric")]
    #[schemars(extend("needed" = "once"), transform = within(limits::MEASURE_STEP))]
    pub(in crate::lesson) step_metric: Field<Written<Volume>>,
    /// The smallest step of your kitchen scale.
    #[serde(rename = "scale step")]
    #[schemars(extend("needed" = "once"), transform = within(limits::SCALE_STEP))]
    pub(in crate::lesson) scale_step: Field<Written<Mass>>,
    /// How long mixed paint in a closed jar can be used.
    #[schemars(extend("needed" = "once"), transform = within(limits::DAYS))]
    pub(in crate::lesson) keeps: Field<Written<Days>>,
}

/// Mixed paint that is left from before.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Jar {
    /// The name of its colour.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) colour: Field<Written<String>>,
    /// The name of the mix that it was mixed to.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) mix: Field<Written<String>>,
    /// How much is left, by volume or by weight.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) amount: Field<Written<Amount>>,
    /// The day it was mixed, as year-month-day.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) mixed: Field<Written<Date>>,
    /// How long it can be used, if not as long as "keeps" under "mixing" says.
    #[schemars(transform = within(limits::DAYS))]
    pub(in crate::lesson) keeps: Field<Written<Days>>,
}
