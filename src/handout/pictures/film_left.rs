//! The film left on a spun and on a tilted board against time.

use crate::handout::context::consistency as word;
use crate::handout::document::{FilmLeft, FilmLine, Picture, PictureKind};
use crate::handout::words::{FilmLeftWords, Words, fill};
use crate::lesson::Consistency;
use crate::plan::flow::Demonstration;
use crate::quantity::show::Show;
use crate::quantity::units::{in_mm, in_seconds};
use crate::quantity::{Duration, Length};

/// The alternative text gives every line at so many times, evenly spread.
const TOLD: usize = 3;

/// What is left on a board that is spun.
pub(in crate::handout) fn spun(show: &Show, words: &Words) -> Picture {
    let demonstration = Demonstration::of(show.units());
    let curve = |consistency| demonstration.spun_curve(consistency);
    picture(&words.pictures.film_spun, curve, show, words)
}

/// What is left, in the mean, on a board that is tilted.
pub(in crate::handout) fn tilted(show: &Show, words: &Words) -> Picture {
    let demonstration = Demonstration::of(show.units());
    let curve = |consistency| demonstration.tilted_curve(consistency);
    picture(&words.pictures.film_tilted, curve, show, words)
}

type Curve = Vec<(Duration, Length)>;

fn picture(
    texts: &FilmLeftWords,
    curve: impl Fn(Consistency) -> Curve,
    show: &Show,
    words: &Words,
) -> Picture {
    let curves = Consistency::ALL.map(|consistency| (word(consistency, words), curve(consistency)));
    let [(_, thin), .., (_, thick)] = &curves;
    let film_at_end = |curve: &Curve| curve.last().map(|(_, film)| show.film(*film));
    let time = thin.last().map(|(time, _)| show.seconds(*time)).unwrap_or_default();
    let start = thin.first().map(|(_, film)| show.film(*film)).unwrap_or_default();
    let title = fill(
        &texts.title,
        &[
            ("time", &time),
            ("thin", &film_at_end(thin).unwrap_or_default()),
            ("thick", &film_at_end(thick).unwrap_or_default()),
        ],
    );
    let told: Vec<String> = curves
        .iter()
        .map(|(name, curve)| {
            let films = told(curve).map(|(time, film)| {
                fill(&texts.film, &[("time", &show.seconds(time)), ("film", &show.film(film))])
            });
            let films: Vec<String> = films.collect();
            fill(&texts.told, &[("consistency", name), ("films", &films.join(&texts.between))])
        })
        .collect();
    let lines = curves.iter().map(|(name, curve)| {
        let film = film_at_end(curve).unwrap_or_default();
        FilmLine {
            label: fill(&texts.line, &[("consistency", name), ("film", &film)]),
            points: curve.iter().map(|(time, film)| (in_seconds(*time), in_mm(*film))).collect(),
        }
    });
    Picture {
        kind: PictureKind::FilmLeft(FilmLeft {
            title: title.clone(),
            x_label: texts.x.clone(),
            y_label: texts.y.clone(),
            lines: lines.collect(),
        }),
        alt: fill(&texts.alt, &[("title", &title), ("start", &start), ("lines", &told.join(" "))]),
    }
}

/// A few of the points of a curve, the last among them.
fn told(curve: &Curve) -> impl Iterator<Item = (Duration, Length)> {
    let last = curve.len().saturating_sub(1);
    (1..=TOLD).filter_map(move |part| curve.get(last * part / TOLD).copied())
}
