//! Mixed paint against painted area: one line a technique, the canvases marked.

use crate::handout::context::{consistencies, consistency as consistency_word};
use crate::handout::document::{
    Coverage, CoverageLine, CoverageMark, Picture, PictureKind, Weight,
};
use crate::handout::words::{Words, fill};
use crate::lesson::{Canvas, Consistency, Technique};
use crate::plan::{CanvasPlan, Plan, technique_film};
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
    let largest = marks.iter().map(|mark| mark.x).fold(0.0, f64::max);
    Picture {
        alt: fill(&texts.alt, &[("marks", &alt.join(" "))]),
        kind: PictureKind::Coverage(Coverage {
            title: title(plan, words, show),
            x_label: fill(&texts.x, &[("unit", show.area_unit())]),
            y_label: fill(&texts.y, &[("unit", show.volume_unit())]),
            band_label: texts.band.clone(),
            x_max: largest * ROOM_ON_AXIS,
            lines: lines(plan, words, show),
            marks,
        }),
    }
}

/// What is seen: the range that the techniques span for the largest canvas.
fn title(plan: &Plan, words: &Words, show: &Show) -> String {
    let area = plan
        .canvases
        .iter()
        .map(|canvas| canvas.areas.painted)
        .fold(Area::default(), |largest, area| if area > largest { area } else { largest });
    let films: Vec<Length> =
        films(plan, words).into_iter().map(|(_, _, film)| film.typical()).collect();
    let least = films.iter().copied().reduce(|a, b| if a < b { a } else { b }).unwrap_or_default();
    let most = films.iter().copied().reduce(|a, b| if a > b { a } else { b }).unwrap_or_default();
    fill(
        &words.pictures.coverage.title,
        &[
            ("area", &show.area(area)),
            ("least", &show.volume(area * least)),
            ("most", &show.volume(area * most)),
        ],
    )
}

fn lines(plan: &Plan, words: &Words, show: &Show) -> Vec<CoverageLine> {
    let unit_area = if show.area_unit() == "in²" {
        crate::quantity::units::square_inch(1.0)
    } else {
        crate::quantity::units::square_cm(1.0)
    };
    let slope = |film: Length| show.volume_number(unit_area * film);
    films(plan, words)
        .into_iter()
        .map(|(technique, consistency, film)| {
            let used = plan.lesson.canvases.iter().any(|c| c.technique.name == technique.name);
            CoverageLine {
                label: fill(
                    &words.pictures.coverage.line,
                    &[("technique", &technique.name), ("consistency", &consistency)],
                ),
                slope: [slope(film.low()), slope(film.typical()), slope(film.high())],
                emphasis: if used { Weight::Strong } else { Weight::Quiet },
            }
        })
        .collect()
}

/// Every technique once with its film and consistency in words: as the lesson pours it first,
/// or else in medium.
fn films<'a>(plan: &'a Plan, words: &Words) -> Vec<(&'a Technique, String, Spread<Length>)> {
    let poured: Vec<(&Canvas, &CanvasPlan)> =
        plan.lesson.canvases.iter().zip(&plan.canvases).collect();
    plan.lesson
        .techniques
        .iter()
        .map(|technique| {
            match poured.iter().find(|(canvas, _)| canvas.technique.name == technique.name) {
                Some((canvas, planned)) => {
                    let films = planned.layers.iter().map(|layer| layer.film);
                    let film = films.fold(Spread::exactly(Length::default()), |sum, f| sum + f);
                    (technique.as_ref(), consistencies(canvas, words), film)
                }
                None => {
                    let medium = Consistency::Medium;
                    let film = technique_film(technique, medium);
                    (technique.as_ref(), consistency_word(medium, words), film)
                }
            }
        })
        .collect()
}
