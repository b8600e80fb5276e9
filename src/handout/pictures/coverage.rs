//! Mixed paint against painted area: one line a technique, the canvases marked.

use crate::handout::context::{consistencies, consistency as consistency_word};
use crate::handout::document::{
    Coverage, CoverageLine, CoverageMark, Picture, PictureKind, Weight,
};
use crate::handout::words::{Words, fill};
use crate::lesson::{Consistency, Technique};
use crate::plan::{Plan, technique_film};
use crate::quantity::Spread;
use crate::quantity::show::Show;
use crate::quantity::{Area, Length};

/// How far the axis reaches beyond the largest canvas.
const ROOM_ON_AXIS: f64 = 1.15;

pub(super) fn coverage(plan: &Plan, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.coverage;
    let marks: Vec<CoverageMark> = plan
        .canvases
        .iter()
        .map(|canvas| CoverageMark {
            label: canvas.name.clone(),
            x: show.area_number(canvas.areas.painted),
            y: show.volume_number(canvas.paint.typical()),
        })
        .collect();
    let alt: Vec<String> = plan
        .canvases
        .iter()
        .map(|canvas| {
            fill(
                &texts.mark,
                &[
                    ("canvas", &canvas.name),
                    ("area", &show.area(canvas.areas.painted)),
                    ("paint", &show.volume(canvas.paint.typical())),
                ],
            )
        })
        .collect();
    let recipes = recipes(plan, words);
    let largest = marks.iter().map(|mark| mark.x).fold(0.0, f64::max);
    let title = title(plan, &recipes, words, show);
    let amounts = recipes.iter().map(|recipe| amount(recipe, largest_area(plan), words, show));
    let lines = amounts.collect::<Vec<_>>().join(&texts.between);
    Picture {
        alt: fill(&texts.alt, &[("marks", &alt.join(" ")), ("title", &title), ("lines", &lines)]),
        kind: PictureKind::Coverage(Coverage {
            title,
            x_label: fill(&texts.x, &[("unit", show.area_unit())]),
            y_label: fill(&texts.y, &[("unit", show.volume_unit())]),
            band_label: texts.band.clone(),
            x_max: largest * ROOM_ON_AXIS,
            lines: recipes.iter().map(|recipe| line(recipe, words, show)).collect(),
            marks,
        }),
    }
}

/// A line of the chart: a technique in the consistencies of its layers.
struct Recipe<'p> {
    technique: &'p Technique,
    /// In words, as the sheets say them.
    consistency: String,
    film: Spread<Length>,
    weight: Weight,
}

/// What the lesson's canvases take, each technique in the consistencies in which its layers
/// are really poured, then the other techniques in medium.
fn recipes<'p>(plan: &'p Plan, words: &Words) -> Vec<Recipe<'p>> {
    let mut recipes: Vec<Recipe<'p>> = Vec::new();
    for (canvas, worked_out) in plan.lesson.canvases.iter().zip(&plan.canvases) {
        let consistency = consistencies(canvas, words);
        let films = worked_out.layers.iter().map(|layer| layer.film);
        let film = films.fold(Spread::exactly(Length::default()), |sum, film| sum + film);
        let same = |known: &Recipe<'_>| {
            known.technique.name == canvas.technique.name
                && known.consistency == consistency
                && known.film.typical() == film.typical()
        };
        if !recipes.iter().any(same) {
            recipes.push(Recipe {
                technique: canvas.technique.as_ref(),
                consistency,
                film,
                weight: Weight::Strong,
            });
        }
    }
    for technique in &plan.lesson.techniques {
        if recipes.iter().all(|known| known.technique.name != technique.name) {
            recipes.push(Recipe {
                technique: technique.as_ref(),
                consistency: consistency_word(Consistency::Medium, words),
                film: technique_film(technique, Consistency::Medium),
                weight: Weight::Quiet,
            });
        }
    }
    recipes
}

/// What is seen: the range that the lines span for the largest canvas.
fn title(plan: &Plan, recipes: &[Recipe<'_>], words: &Words, show: &Show) -> String {
    let area = largest_area(plan);
    let films = || recipes.iter().map(|recipe| recipe.film.typical());
    let least = films().reduce(|a, b| if a < b { a } else { b }).unwrap_or_default();
    let most = films().reduce(|a, b| if a > b { a } else { b }).unwrap_or_default();
    fill(
        &words.pictures.coverage.title,
        &[
            ("area", &show.area(area)),
            ("least", &show.volume(area * least)),
            ("most", &show.volume(area * most)),
        ],
    )
}

/// Painted area of the largest canvas.
fn largest_area(plan: &Plan) -> Area {
    plan.canvases
        .iter()
        .map(|canvas| canvas.areas.painted)
        .fold(Area::default(), |largest, area| if area > largest { area } else { largest })
}

/// What a line of the chart says for an area, in words.
fn amount(recipe: &Recipe<'_>, area: Area, words: &Words, show: &Show) -> String {
    let texts = &words.pictures.coverage;
    let Recipe { film, weight, .. } = recipe;
    let pattern = match weight {
        Weight::Strong => &texts.range,
        Weight::Quiet => &texts.amount,
    };
    let [low, paint, high] =
        [film.low(), film.typical(), film.high()].map(|film| show.volume(area * film));
    let line = label(recipe, words);
    fill(pattern, &[("line", &line), ("paint", &paint), ("low", &low), ("high", &high)])
}

fn label(Recipe { technique, consistency, .. }: &Recipe<'_>, words: &Words) -> String {
    let values = [("technique", technique.name.as_str()), ("consistency", consistency)];
    fill(&words.pictures.coverage.line, &values)
}

fn line(recipe: &Recipe<'_>, words: &Words, show: &Show) -> CoverageLine {
    let unit_area = if show.area_unit() == "in²" {
        crate::quantity::units::square_inch(1.0)
    } else {
        crate::quantity::units::square_cm(1.0)
    };
    let slope = |film: Length| show.volume_number(unit_area * film);
    let Recipe { film, weight, .. } = recipe;
    CoverageLine {
        label: label(recipe, words),
        slope: [slope(film.low()), slope(film.typical()), slope(film.high())],
        emphasis: *weight,
    }
}
