use super::colour::Colour;
use super::recipe::Mix;
use super::technique::{Finish, Technique};
use crate::quantity::{Length, Share};
use schemars::JsonSchema;
use serde::Deserialize;
use std::num::NonZeroU32;
use std::sync::Arc;

/// One kind of canvas in a lesson.
#[derive(Debug, Clone)]
pub struct Canvas {
    pub name: String,
    pub shape: Shape,
    /// Depth of the edge, zero for a panel without one.
    pub depth: Length,
    pub edge: Edge,
    /// How many of it each student paints.
    pub each: NonZeroU32,
    pub technique: Arc<Technique>,
    /// One entry for each layer of the technique, in its order.
    pub layers: Vec<CanvasLayer>,
    /// Layers that follow days later, in order.
    pub finishes: Vec<Arc<Finish>>,
}

/// Outline of the face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    Rectangle {
        width: Length,
        height: Length,
    },
    Round {
        diameter: Length,
    },
    Oval {
        width: Length,
        height: Length,
    },
    /// Regular, with 3 to 24 sides.
    Polygon {
        sides: u32,
        side: Length,
        given: PolygonSize,
    },
}

/// Which size of a regular polygon the lesson gives; the side follows from it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PolygonSize {
    Side,
    /// From side to opposite side.
    AcrossFlats,
    /// From corner to opposite corner.
    AcrossCorners,
}

/// What happens to the edge of the canvas.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Edge {
    /// Paint runs over it; it counts as painted area.
    Painted,
    /// It is taped or wiped clean.
    Bare,
}

/// Which mix and which colours go into one layer of a canvas.
#[derive(Debug, Clone)]
pub struct CanvasLayer {
    pub mix: Arc<Mix>,
    /// Shares add up to the whole exactly; no colour twice; never empty.
    pub colours: Vec<(Arc<Colour>, Share)>,
}
