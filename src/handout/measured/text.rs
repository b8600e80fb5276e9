//! What was learned, as text.

use crate::handout::context::{consistency, spelled};
use crate::handout::words::{Words, fill};
use crate::lesson::{Edition, Print};
use crate::plan::learn::{
    CanvasUse, Learned, LearnedClass, LearnedFilm, LeftOut, Method, SpreadPart,
};
use crate::plan::rule_film;
use crate::quantity::show::{Show, with_unit};
use crate::quantity::{Length, UnitSystem};
use serde::Serialize;

/// Everything that the template of this page may name.
#[derive(Debug, Clone, Serialize)]
pub(super) struct MeasuredText {
    pub units: UnitSystem,
    pub large_print: bool,
    pub cups: String,
    pub canvases: String,
    /// What the rule of thumb covers with a fluid ounce or 100 mL.
    pub rule_covers: String,
    pub techniques: Vec<TechniqueText>,
    pub spread: SpreadText,
    pub classes: Vec<ClassText>,
    pub left_out: Vec<String>,
}

/// A technique and its films.
#[derive(Debug, Clone, Serialize)]
pub(super) struct TechniqueText {
    pub name: String,
    pub films: Vec<FilmText>,
}

/// A film. What was not weighed is empty.
#[derive(Debug, Clone, Serialize)]
pub(super) struct FilmText {
    /// Layer, where the technique has several, and consistency.
    pub name: String,
    pub cups: String,
    pub canvases: String,
    pub classes: String,
    pub mean: String,
    pub low: String,
    pub high: String,
    /// The mean as a part of the rule of thumb; empty for one layer of several.
    pub rule_share: String,
    pub run_off: String,
    pub run_off_canvases: String,
    pub before: String,
    pub own_weight: String,
    pub now: String,
    /// The area that a fluid ounce or 100 mL covers.
    pub covered_before: String,
    pub covers_now: String,
    /// One of the two is empty, or both.
    pub less: String,
    pub more: String,
}

/// How use varies.
#[derive(Debug, Clone, Serialize)]
pub(super) struct SpreadText {
    pub canvases: String,
    pub classes: String,
    pub class: PartText,
    pub student: PartText,
    /// "anova", "reml" or "none".
    pub method: &'static str,
}

/// One component.
#[derive(Debug, Clone, Serialize)]
pub(super) struct PartText {
    /// "weighed", "nothing seen" or "too few".
    pub how: &'static str,
    pub value: String,
    /// To plan with from now on.
    pub now: String,
}

/// A class and what its canvases took.
#[derive(Debug, Clone, Serialize)]
pub(super) struct ClassText {
    pub name: String,
    pub cups: String,
    pub canvases: String,
    pub rows: Vec<RowText>,
}

/// One layer of one canvas.
#[derive(Debug, Clone, Serialize)]
pub(super) struct RowText {
    pub student: String,
    /// With piece and layer where there are several.
    pub canvas: String,
    pub area: String,
    pub planned: String,
    pub used: String,
    pub least: String,
    pub most: String,
    /// Used as a part of planned.
    pub share: String,
}

impl MeasuredText {
    pub(super) fn of(learned: &Learned, print: Print, words: &Words, show: &Show) -> Self {
        let cups: usize = learned.classes.iter().map(|class| class.cups.len()).sum();
        let canvases: u64 = learned.classes.iter().map(|class| u64::from(class.canvases)).sum();
        let spread = &learned.spread;
        let classes = learned.classes.iter().enumerate();
        Self {
            units: print.units,
            large_print: print.edition == Edition::LargePrint,
            cups: cups.to_string(),
            canvases: canvases.to_string(),
            rule_covers: show.covered(rule_film(), 0),
            techniques: techniques(learned, words, show),
            spread: SpreadText {
                canvases: spread.canvases.to_string(),
                classes: spread.classes.to_string(),
                class: part(spread.class, spread.from_now_on.class, show),
                student: part(spread.student, spread.from_now_on.student, show),
                method: match spread.method {
                    Method::Anova => "anova",
                    Method::Reml => "reml",
                    Method::None => "none",
                },
            },
            classes: classes
                .map(|(at, class)| class_text(learned, at, class, words, show))
                .collect(),
            left_out: learned.left_out.iter().map(|out| left_out(learned, out, words)).collect(),
        }
    }
}

fn techniques(learned: &Learned, words: &Words, show: &Show) -> Vec<TechniqueText> {
    let mut techniques: Vec<TechniqueText> = Vec::new();
    for film in &learned.films {
        let text = film_text(film, words, show);
        match techniques.iter_mut().find(|known| known.name == film.technique.name) {
            Some(known) => known.films.push(text),
            None => techniques
                .push(TechniqueText { name: film.technique.name.clone(), films: vec![text] }),
        }
    }
    techniques
}

fn is_layered(film: &LearnedFilm) -> bool {
    film.technique.layers.len() > 1
}

fn film_text(film: &LearnedFilm, words: &Words, show: &Show) -> FilmText {
    let by = consistency(film.consistency, words);
    let share = |of: Length| (of / rule_film()).value;
    let (before, now) = (film.before.typical(), film.film.typical());
    let change = if before > Length::default() { (now / before).value - 1.0 } else { 0.0 };
    let changed = |is: bool| if is { show.percent(change.abs()) } else { String::new() };
    let percent = (change * 100.0).round();
    FilmText {
        name: match is_layered(film) {
            true => fill(&words.mixes.of_layer, &[("layer", &film.layer), ("consistency", &by)]),
            false => by,
        },
        cups: film.cups.to_string(),
        canvases: film.canvases.len().to_string(),
        classes: film.classes.to_string(),
        mean: show.film(film.mean.value),
        low: show.film(film.mean.low),
        high: show.film(film.mean.high),
        rule_share: match is_layered(film) {
            true => String::new(),
            false => show.percent(share(film.mean.value)),
        },
        run_off: film.run_off.map(|run_off| show.percent(run_off.share)).unwrap_or_default(),
        run_off_canvases: film
            .run_off
            .map(|run_off| run_off.canvases.to_string())
            .unwrap_or_default(),
        before: show.film(before),
        own_weight: show.percent(film.own_weight),
        now: show.film(now),
        covered_before: show.covered(before, 0),
        covers_now: show.covered(now, 0),
        less: changed(percent < 0.0),
        more: changed(percent > 0.0),
    }
}

fn part(part: SpreadPart, now: f64, show: &Show) -> PartText {
    let percent = |value: f64| with_unit(&show.trimmed(value * 100.0, 1), "%");
    PartText {
        how: match part {
            SpreadPart::Weighed(_) => "weighed",
            SpreadPart::NothingSeen => "nothing seen",
            SpreadPart::TooFew(_) => "too few",
        },
        value: percent(part.value()),
        now: percent(now),
    }
}

/// A class by its title and day.
pub(super) fn class_name(class: &LearnedClass, words: &Words) -> String {
    match class.date {
        Some(date) => {
            let blanks = [("title", class.title.as_str()), ("date", &spelled(date, words))];
            fill(&words.weigh.class, &blanks)
        }
        None => class.title.clone(),
    }
}

fn class_text(
    learned: &Learned,
    at: usize,
    class: &LearnedClass,
    words: &Words,
    show: &Show,
) -> ClassText {
    let own = |film: &'_ LearnedFilm| -> Vec<CanvasUse> {
        film.canvases.iter().filter(|canvas| canvas.class == at).cloned().collect()
    };
    let mut rows: Vec<(usize, RowText)> = Vec::new();
    for film in &learned.films {
        for canvas in own(film) {
            let first = class.cups.iter().position(|cup| {
                cup.student == canvas.student
                    && cup.canvas == canvas.canvas
                    && cup.piece == canvas.piece
                    && cup.layer == film.layer
            });
            rows.push((first.unwrap_or(usize::MAX), row(class, film, &canvas, words, show)));
        }
    }
    rows.sort_by_key(|(first, _)| *first);
    ClassText {
        name: class_name(class, words),
        cups: class.cups.len().to_string(),
        canvases: class.canvases.to_string(),
        rows: rows.into_iter().map(|(_, row)| row).collect(),
    }
}

fn row(
    class: &LearnedClass,
    film: &LearnedFilm,
    canvas: &CanvasUse,
    words: &Words,
    show: &Show,
) -> RowText {
    let texts = &words.weigh;
    let numbered = numbered(class, &canvas.canvas, canvas.piece, words);
    let used = canvas.used;
    RowText {
        student: student(&canvas.student, words),
        canvas: match is_layered(film) {
            true => fill(&texts.layer, &[("canvas", &numbered), ("layer", &film.layer)]),
            false => numbered,
        },
        area: show.area(canvas.area),
        planned: show.volume(canvas.planned),
        used: show.volume(used.typical()),
        least: show.volume(used.low()),
        most: show.volume(used.high()),
        share: show.percent((used.typical() / canvas.planned).value),
    }
}

/// A canvas with its number where somebody in the class has several of it.
fn numbered(class: &LearnedClass, canvas: &str, piece: u32, words: &Words) -> String {
    let several = class.cups.iter().any(|cup| cup.canvas == canvas && cup.piece > 1);
    match several {
        true => {
            let blanks = [("canvas", canvas), ("piece", &piece.to_string())];
            fill(&words.weigh.piece, &blanks)
        }
        false => canvas.to_owned(),
    }
}

/// A student as weighings name one, in words.
fn student(name: &str, words: &Words) -> String {
    let texts = &words.weigh;
    match name {
        "demonstration" => texts.demonstration.clone(),
        "spare" => texts.spare.clone(),
        number if number.parse::<u32>().is_ok() => fill(&texts.student, &[("number", number)]),
        name => name.to_owned(),
    }
}

fn left_out(learned: &Learned, out: &LeftOut, words: &Words) -> String {
    let class = learned.classes.get(out.class);
    let missing: Vec<&str> = out.missing.iter().map(|colour| colour.name.as_str()).collect();
    fill(
        &words.weigh.left_out,
        &[
            ("class", &class.map(|class| class_name(class, words)).unwrap_or_default()),
            ("student", &student(&out.student, words)),
            (
                "canvas",
                &class
                    .map(|class| numbered(class, &out.canvas, out.piece, words))
                    .unwrap_or_default(),
            ),
            ("layer", &out.layer),
            ("missing", &missing.join(&words.mixes.between)),
        ],
    )
}
