//! Words of the schematic drawings.

use schemars::JsonSchema;
use serde::Deserialize;

/// Every drawing. Each `alt` has `{parts}`, written by `part`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SketchWords {
    /// `{name}`, `{words}`
    pub part: String,
    pub film: FilmWords,
    pub set_up: SetUpWords,
    pub ribbons: RibbonWords,
    pub pours: PourWords,
    pub days: DayLineWords,
    pub wash_water: WashWaterWords,
    pub faults: FaultWords,
}

/// A part that is drawn by itself.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PartWords {
    pub name: String,
    pub words: String,
}

/// A film as it dries.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FilmWords {
    /// Also `{water}`
    pub alt: String,
    pub water: String,
    pub wet: PartWords,
    pub skin: PartWords,
    pub dry: PartWords,
}

/// A canvas on its feet.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetUpWords {
    pub alt: String,
    /// Between the words of one part.
    pub between: String,
    pub before: String,
    pub level: String,
    pub canvas: String,
    pub feet: String,
    pub tray: String,
    pub drying: String,
    pub cover: String,
    pub film: String,
    pub drip: String,
    pub gap: String,
}

/// The ribbon test; names are those of the consistencies.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RibbonWords {
    pub alt: String,
    pub thin: String,
    pub medium: String,
    pub thick: String,
}

/// Techniques; what is seen of each is for those who hear it.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PourWords {
    pub alt: String,
    pub straight: PartWords,
    pub flip_cup: PartWords,
    pub ring: PartWords,
    pub swipe: PartWords,
    pub blown: PartWords,
    pub spun: PartWords,
}

/// The days after a pour.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DayLineWords {
    /// Also `{dry}`, `{soft}`
    pub alt: String,
    /// `{name}`, `{date}`
    pub dated: String,
    /// `{day}`, counted from the pour
    pub name: String,
    /// `{day}`, `{month}`
    pub date: String,
    pub dry: String,
    pub soft: String,
    pub pour: String,
    pub look: String,
    pub peel: String,
    pub lean: String,
    pub varnish: String,
    /// `{canvases}`, `{finish}`
    pub finish: String,
    /// Between canvases, and between things to do on one day.
    pub between: String,
    pub also: String,
}

/// Wash water over night.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WashWaterWords {
    pub alt: String,
    pub evening: PartWords,
    pub morning: PartWords,
    pub water: PartWords,
    pub sludge: PartWords,
}

/// Faults of a film.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FaultWords {
    pub alt: String,
    pub crazing: PartWords,
    pub pinholes: PartWords,
    pub craters: PartWords,
    pub puddle: PartWords,
    pub drips: PartWords,
    pub bare_rim: PartWords,
}
