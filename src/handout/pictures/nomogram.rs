//! The nomogram of area, film and paint.

use crate::handout::context::consistency as word;
use crate::handout::document::{Picture, PictureKind, Weight};
use crate::handout::paper_tools::{Division, FilmMark, Nomogram, Scale};
use crate::handout::words::{Words, fill};
use crate::lesson::{Consistency, Technique, TechniqueLayer};
use crate::plan::Plan;
use crate::quantity::show::{Show, with_unit};
use crate::quantity::units::{in_ml, in_mm, in_square_cm, square_inch, us_fl_oz};
use crate::quantity::{Length, UnitSystem};

/// Ends of the scales: from a tile of 4 in to a canvas of 24 in by 36 in with its sides, in cm²;
/// and the films of the techniques, in mm. Canvases and films of the lesson beyond them widen
/// the scales, up to where divisions would run together.
const AREA: (f64, f64) = (100.0, 6_500.0);
const AREA_WIDEST: (f64, f64) = (30.0, 20_000.0);
const FILM: (f64, f64) = (0.15, 3.0);
const FILM_WIDEST: (f64, f64) = (0.05, 8.0);

/// From the outermost value to the end of a scale, as a ratio.
const BEYOND: f64 = 1.1;

/// Volumes in cm² × mm: a millilitre is 1 cm³.
const ML: f64 = 10.0;

pub(super) fn nomogram(plan: &Plan, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.nomogram;
    let painted = plan.canvases.iter().map(|canvas| in_square_cm(canvas.areas.painted));
    let area_ends = ends(AREA, AREA_WIDEST, painted);
    let marks = marks(plan, words, show);
    let film_ends = ends(FILM, FILM_WIDEST, marks.iter().map(|mark| mark.film));
    let scale = |title: &String, [left, right]: [Division; 2]| Scale {
        title: title.clone(),
        left,
        right: Some(right),
    };
    let division = |unit: &str, size| Division { unit: unit.to_owned(), size };
    // The units of the lesson stand left.
    let sides = |us, metric| match show.units() {
        UnitSystem::Us => [us, metric],
        UnitSystem::Metric => [metric, us],
    };
    let fl_oz = in_ml(us_fl_oz(1.0)) * ML;
    let areas = sides(division("in²", in_square_cm(square_inch(1.0))), division("cm²", 1.0));
    let volumes = sides(division("fl\u{A0}oz", fl_oz), division("mL", ML));
    let volume_ends = (area_ends.0 * film_ends.0, area_ends.1 * film_ends.1);
    let range = |(low, high): (f64, f64), unit: &Division| {
        let text = |value: f64| show.trimmed(value / unit.size, 2);
        let high = with_unit(&text(high), &unit.unit);
        fill(&texts.range, &[("low", &text(low)), ("high", &high)])
    };
    let millimetres = division("mm", 1.0);
    let told = marks.iter().map(|mark| {
        let film = with_unit(&show.trimmed(mark.film, 3), "mm");
        fill(&texts.told, &[("mark", &mark.label), ("film", &film)])
    });
    let told: Vec<String> = told.collect();
    let alt = fill(
        &texts.alt,
        &[
            ("area", &range(area_ends, &areas[0])),
            ("film", &range(film_ends, &millimetres)),
            ("volume", &range(volume_ends, &volumes[0])),
            ("marks", &told.join("; ")),
        ],
    );
    let kind = PictureKind::Nomogram(Nomogram {
        area: scale(&texts.area, areas),
        volume: scale(&texts.volume, volumes),
        film: Scale { title: texts.film.clone(), left: millimetres, right: None },
        area_ends,
        film_ends,
        marks_title: texts.marks.clone(),
        marks,
        example: example(plan),
    });
    Picture { alt, kind }
}

/// The area of the first canvas and the film of its first layer.
fn example(plan: &Plan) -> Option<(f64, f64)> {
    let canvas = plan.canvases.first()?;
    let film = canvas.layers.first()?.film.typical();
    Some((in_square_cm(canvas.areas.painted), in_mm(film)))
}

/// Ends that hold all values, but no further than the widest.
fn ends(
    (low, high): (f64, f64),
    (lowest, highest): (f64, f64),
    values: impl Iterator<Item = f64>,
) -> (f64, f64) {
    values.fold((low, high), |(low, high), value| {
        (low.min((value / BEYOND).max(lowest)), high.max((value * BEYOND).min(highest)))
    })
}

/// What leaves a film: every layer of every technique in each consistency, those that leave the
/// same film on one mark.
fn marks(plan: &Plan, words: &Words, show: &Show) -> Vec<FilmMark> {
    let texts = &words.pictures.nomogram;
    let mut groups: Vec<Group> = Vec::new();
    for technique in &plan.lesson.techniques {
        for layer in &technique.layers {
            let what = match technique.layers.len() {
                1 => technique.name.clone(),
                _ => fill(&texts.layer, &[("technique", &technique.name), ("layer", &layer.name)]),
            };
            for consistency in Consistency::ALL {
                let film = layer.films.of(consistency).typical();
                let weight = weight(plan, technique, layer, consistency);
                let alike = groups.iter_mut().find(|group| {
                    (group.consistency, group.weight) == (consistency, weight)
                        && show.film(group.film) == show.film(film)
                });
                match alike {
                    Some(group) => group.what.push(what.clone()),
                    None => {
                        groups.push(Group { film, consistency, weight, what: vec![what.clone()] });
                    }
                }
            }
        }
    }
    let mark = |group: Group| FilmMark {
        label: fill(
            &texts.mark,
            &[
                ("what", &group.what.join(&texts.between)),
                ("consistency", &word(group.consistency, words)),
            ],
        ),
        film: in_mm(group.film),
        weight: group.weight,
    };
    groups.into_iter().map(mark).collect()
}

/// What leaves one film.
struct Group {
    film: Length,
    consistency: Consistency,
    weight: Weight,
    what: Vec<String>,
}

/// Strong where the lesson pours it.
fn weight(
    plan: &Plan,
    technique: &Technique,
    layer: &TechniqueLayer,
    consistency: Consistency,
) -> Weight {
    let mut poured = plan.lesson.canvases.iter().zip(&plan.canvases);
    let used = poured.any(|(canvas, planned)| {
        canvas.technique.name == technique.name
            && planned.layers.iter().any(|poured| {
                poured.name == layer.name && poured.layer.mix.consistency == consistency
            })
    });
    if used { Weight::Strong } else { Weight::Quiet }
}
