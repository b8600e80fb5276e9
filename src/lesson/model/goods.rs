use crate::quantity::{Date, Mass, Money, Volume};
use schemars::JsonSchema;
use serde::Deserialize;
use std::num::NonZeroU32;

/// What stays in the cup, and the steps that can be measured.
#[derive(Debug, Clone, Copy)]
pub struct Mixing {
    /// What stays in one cup and on its stick.
    pub cup_loss: Volume,
    /// Amounts to mix round up to this (US units first).
    pub step_us: Volume,
    /// Amounts to mix round up to this (metric units first).
    pub step_metric: Volume,
    /// Smallest step of the kitchen scale.
    pub scale_step: Mass,
    /// Days that mixed paint can be used.
    pub keeps: u32,
}

/// So many of an item for each of something.
#[derive(Debug, Clone)]
pub struct SupplyRule {
    pub item: String,
    /// Positive; a half means one for two.
    pub count: f64,
    pub per: Per,
    pub life: Life,
}

/// What a supply is counted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Per {
    /// Each student.
    Student,
    /// Each canvas painted, demonstrations and spares included.
    Canvas,
    /// Each cup of mixed colour that stands on a table.
    #[serde(rename = "colour cup")]
    ColourCup,
    /// Each table.
    Table,
    /// The class, whatever number comes.
    Class,
}

/// What is left of a supply after the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Life {
    /// Nothing that can be used again.
    #[serde(rename = "used up")]
    UsedUp,
    /// It comes back washed.
    Washable,
}

/// A price list and its terms.
#[derive(Debug, Clone)]
pub struct Shop {
    pub name: String,
    /// Charge for bringing an order.
    pub delivery: Money,
    /// Goods for so much are brought for nothing.
    pub free_from: Option<Money>,
    /// No order for less is taken.
    pub least_order: Option<Money>,
    /// Sizes are positive, prices not negative.
    pub packs: Vec<Pack>,
}

/// One thing that a shop sells.
#[derive(Debug, Clone)]
pub struct Pack {
    /// The name of a material or supply.
    pub item: String,
    pub size: Amount,
    /// Of one pack.
    pub price: Money,
    /// The price holds from so many packs on.
    pub from: NonZeroU32,
    /// It is sold by so many at a time.
    pub only_by: NonZeroU32,
}

/// How much of an item.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    Volume(Volume),
    Mass(Mass),
    Pieces(u32),
}

/// Mixed paint that is left from before.
#[derive(Debug, Clone)]
pub struct Jar {
    /// Name of a colour.
    pub colour: String,
    /// Name of a mix.
    pub mix: String,
    /// A volume or a mass.
    pub amount: Amount,
    /// The day it was mixed.
    pub mixed: Date,
    /// Days that it keeps from then on; as the lesson's mixes when not said.
    pub keeps: Option<u32>,
}

/// One line of the cupboard.
#[derive(Debug, Clone)]
pub struct Stocked {
    pub item: String,
    pub amount: Amount,
}

/// What a class costs besides what is bought, and what is asked for it.
#[derive(Debug, Clone, Default)]
pub struct Charges {
    /// For the class, whatever number comes.
    pub fixed: Vec<Charge>,
    /// For each student.
    pub each: Vec<Charge>,
    /// What each student pays.
    pub fee: Option<Money>,
    /// What the class may cost at most, all that is paid for it counted.
    pub budget: Option<Money>,
}

/// Something that costs so much.
#[derive(Debug, Clone, PartialEq)]
pub struct Charge {
    pub what: String,
    /// More than nothing.
    pub amount: Money,
}
