//! What is painted.

use super::super::field::{At, Entries, Field, Items, Written};
use super::super::limits;
use super::super::model::Edge;
use super::super::schema::{sizes_by_shape, within};
use crate::quantity::Length;
use schemars::JsonSchema;
use serde::Deserialize;

/// One kind of canvas. Measure your own, the depth of the edge as well: the sides take paint too.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(transform = sizes_by_shape)]
pub(in crate::lesson) struct Canvas {
    /// The outline of the face. It says which sizes are wanted: width and height of a rectangle
    /// or an oval, diameter of a round, sides and one size of a polygon.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) shape: Field<At<Outline>>,
    /// From left to right, of a rectangle or an oval.
    #[schemars(transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) width: Field<Written<Length>>,
    /// From top to bottom, of a rectangle or an oval.
    #[schemars(transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) height: Field<Written<Length>>,
    /// Across the middle, of a round canvas.
    #[schemars(transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) diameter: Field<Written<Length>>,
    /// How many sides a polygon has; they are all alike.
    #[schemars(transform = within(limits::SIDES))]
    pub(in crate::lesson) sides: Field<Written<u32>>,
    /// The length of one side of a polygon. A polygon has this size, or is measured across.
    #[schemars(transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) side: Field<Written<Length>>,
    /// From one side of a polygon to the opposite one, for an even number of sides.
    #[serde(rename = "across flats")]
    #[schemars(transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) across_flats: Field<Written<Length>>,
    /// From one corner of a polygon to the opposite one, for an even number of sides.
    #[serde(rename = "across corners")]
    #[schemars(transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) across_corners: Field<Written<Length>>,
    /// How deep the edge is, from the face to the wall. Leave it out for a flat panel.
    #[schemars(extend("default" = "0"), transform = within(limits::DEPTH))]
    pub(in crate::lesson) depth: Field<Written<Length>>,
    /// Whether paint runs over the edge, or the edge is kept clean.
    #[schemars(extend("default" = "painted"))]
    pub(in crate::lesson) edge: Field<Edge>,
    /// How many of it each student paints.
    #[schemars(extend("default" = 1), transform = within(limits::EACH))]
    pub(in crate::lesson) each: Field<Written<u32>>,
    /// How it is poured: the name of one of the techniques.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) technique: Field<Written<String>>,
    /// The mix that the paint is poured in: thin, medium, thick, or one of your own mixes. Where
    /// layers take different mixes, one for each layer of the technique.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) consistency: Field<At<MixChoice>>,
    /// Its colours: the name of one of the palettes.
    #[schemars(extend("needed" = "always"))]
    pub(in crate::lesson) palette: Field<Written<String>>,
    /// What goes over it when it is dry: names of finishes, in their order.
    pub(in crate::lesson) finishes: Field<Items<Written<String>>>,
}

/// Outlines of a canvas.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(in crate::lesson) enum Outline {
    /// Has width and height; a square as well.
    Rectangle,
    /// Has a diameter.
    Round,
    /// An ellipse; has width and height.
    Oval,
    /// Has sides, and one of: side, across flats, across corners.
    Polygon,
}

/// One mix for all layers, or one for each.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename = "puddlebook: by form")]
#[schemars(rename = "MixChoice", untagged)]
pub(in crate::lesson) enum MixChoice {
    #[serde(rename = "text")]
    One(Written<String>),
    #[serde(rename = "mapping")]
    ByLayer(Entries<Written<String>>),
}

/// Canvas sizes for the table of paint.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Sizes {
    /// The sizes of lessons with US units.
    #[schemars(extend("needed" = "once", "maxItems" = limits::SIZES))]
    pub(in crate::lesson) us: Field<At<Items<Size>>>,
    /// The sizes of metric lessons.
    #[schemars(extend("needed" = "once", "maxItems" = limits::SIZES))]
    pub(in crate::lesson) metric: Field<At<Items<Size>>>,
}

/// A rectangle, as shops have it.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Size {
    /// From left to right.
    #[schemars(extend("needed" = "always"), transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) width: Field<Written<Length>>,
    /// From top to bottom.
    #[schemars(extend("needed" = "always"), transform = within(limits::CANVAS_SIZE))]
    pub(in crate::lesson) height: Field<Written<Length>>,
    /// How deep the edge is. Leave it out for a flat panel.
    #[schemars(extend("default" = "0"), transform = within(limits::DEPTH))]
    pub(in crate::lesson) depth: Field<Written<Length>>,
}
