//! The words between numbers, in the language of the handouts: one file a language,
//! `words.yaml` beside the templates.

mod concerns;
mod pictures;
pub(super) mod schema;
mod sketches;

use crate::lesson::Print;
use crate::quantity::Notation;
use crate::quantity::show::Show;
use schemars::JsonSchema;
use serde::Deserialize;

pub use concerns::ConcernWords;
pub use pictures::*;
pub use sketches::{PartWords, SketchWords};

/// Everything in `words.yaml`. Texts with names in braces go through `fill`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Words {
    /// BCP 47 tag of the language.
    pub language: String,
    /// How numbers and prices are written.
    pub numbers: Notation,
    pub folio: String,
    /// Follows what was begun on an earlier page.
    pub continued: String,
    /// A box to tick, for those who hear the page.
    pub tick_box: String,
    /// What a ruled line to write on is called.
    pub ruled_line: String,
    /// To which size cards and labels are cut: `{width}`, `{height}` in millimetres.
    pub cut_to: String,
    pub running: RunningWords,
    pub date: String,
    pub months: [String; 12],
    pub sheets: SheetWords,
    pub consistency: ConsistencyWords,
    pub shapes: ShapeWords,
    pub sizes: SizeWords,
    pub mixes: MixWords,
    pub order: OrderWords,
    pub reasons: ReasonWords,
    pub reserve: ReserveWords,
    pub steps: StepWords,
    pub pictures: PictureWords,
    pub day: DayWords,
    pub weigh: WeighWords,
    pub exercises: ExerciseWords,
    pub concerns: ConcernWords,
}

impl Words {
    /// What turns quantities into text in this language, as a lesson is printed.
    pub(super) fn show(&self, print: &Print) -> Show {
        Show::new(print.units, print.currency).written(self.numbers)
    }
}

/// What each kind of handout is called.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetWords {
    pub order: String,
    pub lesson: String,
    pub cards: String,
    pub worksheet: String,
    pub weigh: String,
    pub answers: String,
    pub tools: String,
    pub guide: String,
    pub measured: String,
}

/// Heads of the pages of one student’s worksheet.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RunningWords {
    /// `{student}`, `{canvas}`
    pub named: String,
    /// `{canvas}`
    pub unnamed: String,
    /// `{student}`
    pub exercises: String,
}

/// Consistencies.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ConsistencyWords {
    pub thin: String,
    pub medium: String,
    pub thick: String,
}

/// Outlines.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShapeWords {
    pub rectangle: String,
    pub square: String,
    pub round: String,
    pub oval: String,
    pub triangle: String,
    pub hexagon: String,
    pub octagon: String,
    /// `{sides}`
    pub polygon: String,
}

/// How the size of a shape is said.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SizeWords {
    /// `{width}`, `{height}`
    pub rectangle: String,
    /// `{width}`
    pub round: String,
    /// `{side}`
    pub polygon: String,
    /// `{width}`
    pub polygon_flats: String,
    /// `{width}`
    pub polygon_corners: String,
    /// `{side}`, `{middle}`
    pub polygon_middle: String,
}

/// Recipes.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MixWords {
    pub one_part: String,
    pub parts: String,
    pub paint: String,
    pub between: String,
    /// The consistency of one layer among several.
    pub of_layer: String,
    pub by_volume: String,
    pub by_weight: String,
    pub drops: String,
}

/// Why an order is as it is.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReasonWords {
    pub one_shop: String,
    pub dearer: String,
    pub between: String,
    pub nobody_else: String,
    pub split: String,
    pub no_one_sells_all: String,
    pub free_delivery: String,
    pub within: String,
}

/// Lines of the order.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OrderWords {
    pub pack: String,
    pub between: String,
    pub pieces: String,
    pub no_price: String,
    pub elsewhere: String,
    pub covers: String,
    pub covers_layer: String,
    pub or: String,
    pub in_cupboard: String,
    pub tap: String,
    pub delivery: String,
    /// Several lessons ordered together.
    pub course: String,
    pub used_up: String,
    pub washable: String,
}

/// The reserve.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReserveWords {
    /// `{classes}`, `{out_of}`
    pub level: String,
}

/// Steps of a worked example.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StepWords {
    pub face: String,
    pub face_rectangle: String,
    pub face_round: String,
    pub face_oval: String,
    pub face_polygon: String,
    pub perimeter: String,
    pub perimeter_rectangle: String,
    pub perimeter_round: String,
    pub perimeter_oval: String,
    pub perimeter_polygon: String,
    pub edge: String,
    pub edge_words: String,
    pub painted: String,
    pub painted_words: String,
    pub layer: String,
    pub layer_words: String,
    pub colour: String,
    pub colour_words: String,
    pub mass: String,
    pub mass_words: String,
    pub rounded_up: String,
    pub per_fluid_ounce: String,
    pub per_millilitre: String,
    pub per_100_millilitres: String,
}

/// Times of the day and how long things take.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DayWords {
    /// `{hour}` of 24, `{minute}`
    pub clock_metric: String,
    /// `{hour}` of 12, `{minute}`, `{half}`
    pub clock_us: String,
    pub morning: String,
    pub afternoon: String,
    pub minutes: String,
    pub hours: String,
    pub both: String,
}

/// The weigh sheet.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeighWords {
    /// A student without a name: `{number}`
    pub student: String,
    pub demonstration: String,
    pub spare: String,
    /// One of several alike canvases: `{canvas}`, `{piece}`
    pub piece: String,
    /// A layer of a canvas that has several: `{canvas}`, `{layer}`
    pub layer: String,
    /// A class that was weighed: `{title}`, `{date}`
    pub class: String,
    /// A layer that teaches nothing: `{class}`, `{student}`, `{canvas}`, `{layer}`, `{missing}`
    pub left_out: String,
}

/// Exercises of students.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ExerciseWords {
    /// `{shape}`, `{size}`
    pub canvas: String,
    /// `{technique}`, `{consistency}`
    pub by: String,
}

/// Puts values into the braces of a text: `fill("{a} and {b}", &[("a", x), ("b", y)])`.
pub fn fill(pattern: &str, values: &[(&str, &str)]) -> String {
    let mut out = String::with_capacity(pattern.len() + 16);
    let mut rest = pattern;
    while let Some((before, from)) = rest.split_once('{') {
        out.push_str(before);
        let Some((name, after)) = from.split_once('}') else {
            out.push('{');
            rest = from;
            continue;
        };
        match values.iter().find(|(known, _)| *known == name) {
            Some((_, value)) => out.push_str(value),
            None => {
                out.push('{');
                out.push_str(name);
                out.push('}');
            }
        }
        rest = after;
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::fill;

    #[test]
    fn names_in_braces_are_replaced_and_others_stay() {
        assert_eq!(fill("{a} of {b}{", &[("a", "1"), ("b", "{a}")]), "1 of {a}{");
        assert_eq!(fill("{unknown}", &[]), "{unknown}");
    }
}
