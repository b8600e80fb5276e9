use crate::quantity::{Mass, Money, Volume};
use serde::Deserialize;

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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Per {
    Student,
    /// Each canvas painted, demonstrations and spares included.
    Canvas,
    /// Each cup of mixed colour that stands on a table.
    #[serde(rename = "colour cup")]
    ColourCup,
    Table,
    Class,
}

/// What is left of a supply after the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Life {
    #[serde(rename = "used up")]
    UsedUp,
    Washable,
}

/// A price list.
#[derive(Debug, Clone)]
pub struct Shop {
    pub name: String,
    /// Sizes are positive, prices not negative.
    pub packs: Vec<Pack>,
}

/// One thing that a shop sells.
#[derive(Debug, Clone)]
pub struct Pack {
    /// The name of a material or supply.
    pub item: String,
    pub size: Amount,
    pub price: Money,
}

/// How much of an item.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    Volume(Volume),
    Mass(Mass),
    Pieces(u32),
}

/// One line of the cupboard.
#[derive(Debug, Clone)]
pub struct Stocked {
    pub item: String,
    pub amount: Amount,
}
