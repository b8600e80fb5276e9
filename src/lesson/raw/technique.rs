//! How paint is poured, and how much of it stays.

use super::super::field::{At, Entries, Field, Items, Written};
use super::super::legible::Days;
use super::super::limits;
use super::super::model::Practice;
use super::super::schema::within;
use crate::quantity::{Length, Share};
use schemars::JsonSchema;
use serde::Deserialize;

/// A way of pouring.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Technique {
    /// One sentence on how it is done; stands in the guide.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) summary: Field<Written<String>>,
    /// What is done in it that needs care; brings safety notes.
    pub(in crate::lesson) practices: Field<Items<Practice>>,
    /// Its layers in the order of the work, each under the name that palettes call it by.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) layers: Field<At<Entries<Layer>>>,
}

/// How much mixed paint one layer takes, as the thickness of its wet film: paint over painted
/// area, with what runs off.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Layer {
    /// The wet film of a thin mix.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) thin: Field<At<LayerFilm>>,
    /// The wet film of a medium mix.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) medium: Field<At<LayerFilm>>,
    /// The wet film of a thick mix.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) thick: Field<At<LayerFilm>>,
    /// Where the figures come from; stands beside them in the guide.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) basis: Field<Written<String>>,
}

/// The film of a layer in one consistency.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct LayerFilm {
    /// What a careful hand pours.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) low: Field<Written<Length>>,
    /// What is planned with.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) typical: Field<Written<Length>>,
    /// What a generous hand pours.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) high: Field<Written<Length>>,
    /// What the film rests on when your own cups were weighed. "puddlebook learn" writes it;
    /// weigh more cups and learn again instead of changing it.
    pub(in crate::lesson) weighed: Field<At<WeighedFilm>>,
}

/// What a weighed film rests on.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct WeighedFilm {
    /// How many cups were weighed.
    #[schemars(extend("needed" = "once"), transform = within(limits::WEIGHED))]
    pub(in crate::lesson) cups: Field<Written<u32>>,
    /// On how many canvases they were poured.
    #[schemars(extend("needed" = "once"), transform = within(limits::WEIGHED))]
    pub(in crate::lesson) canvases: Field<Written<u32>>,
    /// In how many classes.
    #[schemars(extend("needed" = "once"), transform = within(limits::WEIGHED))]
    pub(in crate::lesson) classes: Field<Written<u32>>,
    /// The mean film of these canvases.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) mean: Field<Written<Length>>,
    /// How much of the film that is planned with is that mean; what was planned before has the
    /// rest.
    #[serde(rename = "own weight")]
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) own_weight: Field<Written<Share>>,
    /// The film before anything was weighed. Learning again starts from it.
    #[serde(rename = "instead of")]
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) instead_of: Field<At<Film>>,
}

/// A wet film in three values.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Film {
    /// What a careful hand takes.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) low: Field<Written<Length>>,
    /// What is planned with.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) typical: Field<Written<Length>>,
    /// What a generous hand takes.
    #[schemars(extend("needed" = "once"), transform = within(limits::FILM))]
    pub(in crate::lesson) high: Field<Written<Length>>,
}

/// What goes over a dry canvas.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Finish {
    /// The name of a varnish or a medium.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) material: Field<Written<String>>,
    /// The wet film of one coat.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) film: Field<At<Film>>,
    /// How many coats it takes.
    #[schemars(extend("default" = 1), transform = within(limits::COATS))]
    pub(in crate::lesson) coats: Field<Written<u32>>,
    /// How long the canvas dries before the first coat.
    #[schemars(extend("needed" = "once"), transform = within(limits::DAYS))]
    pub(in crate::lesson) after: Field<Written<Days>>,
    /// Where the figures come from; stands beside them in the guide.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) basis: Field<Written<String>>,
}
