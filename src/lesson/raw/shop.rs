//! What things cost, and what is asked for the class.

use super::super::field::{At, Entries, Field, Items, Written};
use super::super::limits;
use super::super::model::Amount;
use super::super::schema::within;
use crate::quantity::{Currency, Money};
use schemars::JsonSchema;
use serde::Deserialize;

/// A price list and its terms.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Shop {
    /// The currency of all its prices, in three letters (ISO 4217). All shops of a lesson have
    /// the same.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) currency: Field<Written<Currency>>,
    /// What it charges for bringing an order.
    #[schemars(extend("default" = 0), transform = within(limits::PRICE))]
    pub(in crate::lesson) delivery: Field<Written<Money>>,
    /// Goods for so much are brought for nothing.
    #[serde(rename = "free from")]
    #[schemars(transform = within(limits::PRICE))]
    pub(in crate::lesson) free_from: Field<Written<Money>>,
    /// It takes no order for less.
    #[serde(rename = "least order")]
    #[schemars(transform = within(limits::PRICE))]
    pub(in crate::lesson) least_order: Field<Written<Money>>,
    /// What it sells: a line for each pack.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) packs: Field<At<Items<Pack>>>,
}

/// A line of a price list.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Pack {
    /// What is in the pack: the name of a paint, a material or a supply.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) item: Field<Written<String>>,
    /// How much is in one pack: paint and materials by volume or weight, supplies in pieces.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) size: Field<Written<Amount>>,
    /// What one pack costs, in the currency of the shop.
    #[schemars(extend("needed" = "always"), transform = within(limits::PRICE))]
    pub(in crate::lesson) price: Field<Written<Money>>,
    /// The price holds from so many packs on.
    #[schemars(extend("default" = 1), transform = within(limits::PACKS))]
    pub(in crate::lesson) from: Field<Written<u32>>,
    /// It is sold by so many packs at a time.
    #[serde(rename = "only by")]
    #[schemars(extend("default" = 1), transform = within(limits::PACKS))]
    pub(in crate::lesson) only_by: Field<Written<u32>>,
}

/// Costs that nobody buys in a shop, and what is asked.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Charges {
    /// What the class costs whatever number comes, under names of your own.
    pub(in crate::lesson) fixed: Field<Entries<Written<Money>>>,
    /// What each student costs besides, under names of your own.
    #[serde(rename = "for each student")]
    pub(in crate::lesson) each: Field<Entries<Written<Money>>>,
    /// What each student pays. The plan says whether the class pays for itself.
    #[schemars(transform = within(limits::PRICE))]
    pub(in crate::lesson) fee: Field<Written<Money>>,
    /// What the class may cost at most, all that is paid for it counted.
    #[schemars(transform = within(limits::PRICE))]
    pub(in crate::lesson) budget: Field<Written<Money>>,
}
