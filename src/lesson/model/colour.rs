use super::Language;
use crate::quantity::{MassDensity, Volume};
use schemars::JsonSchema;
use serde::Deserialize;
use std::sync::Arc;

/// A colour: the paint it starts from.
#[derive(Debug, Clone, PartialEq)]
pub struct Colour {
    pub name: String,
    /// The paint as bought (`Material::kind` is `Paint`).
    pub paint: Arc<Material>,
    pub swatch: Rgb,
    /// Pigments on the label that call for care, such as "cadmium".
    pub pigments: Vec<String>,
    /// What its label or safety data sheet warns of.
    pub caution: Option<String>,
}

/// What the paint of a colour is called when nothing else is said.
pub(in crate::lesson) fn paint_of(colour: &str, language: Language) -> String {
    match language {
        Language::English => format!("{colour} acrylic"),
        Language::Spanish => format!("acrílico {colour}"),
    }
}

/// A colour of the screen, sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rgb(pub u8, pub u8, pub u8);

/// Something that goes into a cup and can be bought, or comes from the tap.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    pub name: String,
    pub kind: MaterialKind,
    /// Positive.
    pub density: MassDensity,
    /// Volume of one drop, for additives that are counted.
    pub drop: Option<Volume>,
    /// What its label or safety data sheet warns of; that of a paint stands with its colour.
    pub caution: Option<String>,
}

/// Kinds of material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum MaterialKind {
    /// Paint stands under "colours", not here.
    #[schemars(skip)]
    Paint,
    /// Makes paint flow; some are poured over a dry canvas too.
    Medium,
    /// Water.
    Water,
    /// In drops or small parts, such as silicone oil.
    Additive,
    /// Over a dry canvas.
    Varnish,
}
