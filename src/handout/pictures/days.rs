//! The days after a pour: what to do with every canvas, and when this class's finishes follow.

use jiff::Span;
use jiff::civil::Date;

use super::sketches::told;
use crate::handout::context::month;
use crate::handout::document::{Picture, PictureKind};
use crate::handout::sketch::{DaysSketch, DrawnDay, Part, Sketch};
use crate::handout::words::{Words, fill};
use crate::plan::{FinishDay, Plan};

/// When a pour is usually dry through and may be varnished (common practice, no source).
const DRY_THROUGH: u32 = 14;

pub(super) fn days(plan: &Plan, words: &Words) -> Picture {
    let texts = &words.pictures.sketches.days;
    let finishes = &plan.room.drying.finishes;
    let mut tasks: Vec<(u32, String)> =
        [(0, &texts.pour), (1, &texts.look), (3, &texts.peel), (7, &texts.lean)]
            .map(|(day, words)| (day, words.clone()))
            .into();
    if finishes.is_empty() {
        tasks.push((DRY_THROUGH, texts.varnish.clone()));
    }
    tasks.extend(finished(finishes, words));
    tasks.sort_by_key(|(day, _)| *day);
    let mut days: Vec<DrawnDay> = Vec::new();
    for (day, task) in tasks {
        match days.last_mut() {
            Some(last) if last.day == day => last.words = last.words.clone() + &texts.also + &task,
            _ => days.push(DrawnDay {
                day,
                name: fill(&texts.name, &[("day", &day.to_string())]),
                date: plan
                    .lesson
                    .heading
                    .date
                    .map(|from| date(from, day, words))
                    .unwrap_or_default(),
                words: task,
            }),
        }
    }
    let parts: Vec<Part> = days.iter().map(|day| heard(day, words)).collect();
    let blanks =
        [("dry", texts.dry.as_str()), ("soft", &texts.soft), ("parts", &told(&parts, words))];
    Picture {
        alt: fill(&texts.alt, &blanks),
        kind: PictureKind::Sketch(Sketch::Days(DaysSketch {
            dry: texts.dry.clone(),
            soft: texts.soft.clone(),
            days,
        })),
    }
}

/// A finish of several canvases on one day is one task.
fn finished(finishes: &[FinishDay], words: &Words) -> Vec<(u32, String)> {
    let texts = &words.pictures.sketches.days;
    let mut tasks: Vec<(&FinishDay, Vec<&str>)> = Vec::new();
    for finish in finishes {
        let same = |(known, _): &&mut (&FinishDay, Vec<&str>)| {
            (known.after_days, &known.finish) == (finish.after_days, &finish.finish)
        };
        match tasks.iter_mut().find(same) {
            Some((_, canvases)) => canvases.push(&finish.canvas),
            None => tasks.push((finish, vec![&finish.canvas])),
        }
    }
    let task = |(finish, canvases): (&FinishDay, Vec<&str>)| {
        let canvases = canvases.join(&texts.between);
        let words = [("canvases", canvases.as_str()), ("finish", &finish.finish)];
        (finish.after_days, fill(&texts.finish, &words))
    };
    tasks.into_iter().map(task).collect()
}

/// A day as it is heard.
fn heard(day: &DrawnDay, words: &Words) -> Part {
    let name = match day.date.as_str() {
        "" => day.name.clone(),
        date => fill(&words.pictures.sketches.days.dated, &[("name", &day.name), ("date", date)]),
    };
    Part { name, words: day.words.clone() }
}

/// The date some days later, without its year; empty beyond the calendar.
fn date(from: Date, days: u32, words: &Words) -> String {
    let later = Span::new().try_days(days).and_then(|days| from.checked_add(days));
    let blanks = |date: Date| {
        let day = date.day().to_string();
        let blanks = [("day", day.as_str()), ("month", month(date, words))];
        fill(&words.pictures.sketches.days.date, &blanks)
    };
    later.map(blanks).unwrap_or_default()
}
