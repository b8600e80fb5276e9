//! Words in charts and drawings.

use super::SketchWords;
use schemars::JsonSchema;
use serde::Deserialize;

/// Charts and drawings.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PictureWords {
    pub coverage: CoverageWords,
    pub colours: ColourWords,
    pub bought: BoughtWords,
    pub fee: FeeWords,
    pub film_spun: FilmLeftWords,
    pub film_tilted: FilmLeftWords,
    pub weighed: WeighedWords,
    pub unfolded: UnfoldedWords,
    pub nomogram: NomogramWords,
    pub edge_gauge: EdgeGaugeWords,
    pub spread_rings: SpreadRingWords,
    pub check_length: CheckLengthWords,
    pub cover: CoverWords,
    pub sketches: SketchWords,
}

/// The coverage chart.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CoverageWords {
    pub title: String,
    pub x: String,
    pub y: String,
    /// `{marks}`, `{title}`, `{lines}`
    pub alt: String,
    pub mark: String,
    pub line: String,
    /// What a line gives for the area of the title: `{line}`, `{paint}`, and with its band
    /// `{low}`, `{high}`.
    pub amount: String,
    pub range: String,
    pub between: String,
    pub band: String,
}

/// The bars of colours.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ColourWords {
    /// `{colour}`, `{canvas}`, `{paint}` of the longest part.
    pub title: String,
    pub axis: String,
    pub alt: String,
    pub bar: String,
    pub layer: String,
}

/// The bars of needed against bought.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BoughtWords {
    /// `{item}`, `{share}` of the bar that is used up most.
    pub title: String,
    /// The parts of a bar.
    pub expected: String,
    pub reserve: String,
    pub left: String,
    pub alt: String,
    /// `{item}`, `{whole}`, `{need}`, `{left}`; without a reserve, and with one: `{reserve}`.
    pub bar: String,
    pub reserved: String,
    pub sentence: String,
}

/// The fee against the number of students.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FeeWords {
    pub title: String,
    pub title_from: String,
    pub title_always: String,
    pub title_first: String,
    pub title_never: String,
    pub x: String,
    pub y: String,
    pub line: String,
    pub asked: String,
    pub here: String,
    pub dots: String,
    pub alt: String,
    pub point: String,
    pub between: String,
    pub asked_sentence: String,
}

/// The film left on a board against time.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FilmLeftWords {
    /// `{time}`, and what it leaves of `{thin}` and `{thick}` paint.
    pub title: String,
    pub x: String,
    pub y: String,
    /// `{consistency}`, `{film}` at the end.
    pub line: String,
    /// `{title}`, `{start}`, `{lines}`
    pub alt: String,
    /// `{consistency}`, `{films}`
    pub told: String,
    /// `{film}`, `{time}`
    pub film: String,
    pub between: String,
}

/// Used against planned.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeighedWords {
    /// `{share}`
    pub title_less: String,
    /// `{share}`
    pub title_more: String,
    pub title_even: String,
    /// `{unit}`
    pub x: String,
    /// `{unit}`
    pub y: String,
    pub even: String,
    /// The only rule of thumb, and one of several: `{poured}`
    pub rule: String,
    pub rule_of: String,
    /// `{technique}`, `{consistency}`
    pub poured: String,
    /// `{title}`, `{classes}`, `{rules}`
    pub alt: String,
    /// `{class}`, `{canvases}`, `{planned}`, `{used}`
    pub class: String,
    /// `{rule}`, `{share}`
    pub rule_sentence: String,
}

/// The canvas unfolded.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UnfoldedWords {
    /// `{shape}`, `{canvas}`, `{size}`, `{areas}`; with a painted edge, and without.
    pub alt: String,
    pub bare: String,
    pub areas: String,
    pub face: String,
    /// Of a polygon: `{areas}`, `{side}`, `{middle}`
    pub sides: String,
    pub asked: String,
    pub edge: String,
    pub perimeter: String,
    pub width: String,
    pub height: String,
    pub across: String,
    pub side: String,
    pub middle: String,
    pub depth: String,
}

/// The nomogram.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NomogramWords {
    pub area: String,
    pub volume: String,
    pub film: String,
    pub marks: String,
    /// `{what}`, `{consistency}`
    pub mark: String,
    /// One of several layers: `{technique}`, `{layer}`
    pub layer: String,
    pub between: String,
    /// `{area}`, `{film}`, `{volume}`, each a `range`, and `{marks}`
    pub alt: String,
    /// `{low}`, `{high}`
    pub range: String,
    /// `{mark}`, `{film}`
    pub told: String,
}

/// The gauge for the depth of a canvas.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EdgeGaugeWords {
    pub fold: String,
    pub ruler: String,
    /// `{canvas}`, `{depth}`
    pub mark: String,
    pub between: String,
    /// `{depth}`, `{ruler}`, `{marks}`
    pub alt: String,
}

/// The rings over which a blob spreads.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SpreadRingWords {
    /// `{volume}`
    pub centre: String,
    /// `{volume}`, `{time}`, `{rings}`, `{bands}`
    pub alt: String,
    /// `{viscosity}`, `{radius}`
    pub ring: String,
    /// `{consistency}`, `{inner}`, `{outer}`
    pub band: String,
}

/// The bars of known length.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CheckLengthWords {
    pub alt: String,
}

/// The cover of the guide.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CoverWords {
    pub alt: String,
}
