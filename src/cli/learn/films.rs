//! The films file: a data file that lessons name under `use:`.

use crate::cli::quoted::quoted;
use crate::plan::learn::mean::Varies;
use crate::plan::learn::{Learned, LearnedFilm, LearnedSpread, Method};
use crate::quantity::show::trimmed;
use crate::quantity::units::in_mm;
use crate::quantity::{Length, Spread};
use std::fmt::Write;

/// Digits of a film; weighings never give more.
const DIGITS: i32 = 4;
/// What a lesson takes as a spread at most, in percent.
const MOST_SPREAD: f64 = 50.0;

/// The file, in the format of lessons.
pub(super) fn films(learned: &Learned) -> String {
    let mut file = String::from(HEAD);
    for class in &learned.classes {
        let date = class.date.map(|date| format!("{date}  ")).unwrap_or_default();
        let (canvases, cups) = (class.canvases, class.cups.len());
        line(&mut file, &format!("#   {date}{}: canvases {canvases}, cups {cups}", class.title));
    }
    techniques(&mut file, &learned.films);
    reserve(&mut file, &learned.spread);
    file
}

const HEAD: &str = "\
# Films from weighed cups, written by \"puddlebook learn\". Name this file in a lesson, after the
# files of its techniques:
#
#   use: [learned/films.yaml]
#
# low, typical and high are what is planned with. \"weighed\" says what they rest on: \"mean\" is the
# mean of the canvases that were weighed, \"own weight\" how much of the film is that mean; the rest
# is \"instead of\", what was planned with before anything was weighed. Do not change it by hand:
# weigh more cups and learn again from all of them, which starts from \"instead of\" each time.
#
# Learned from:
";

/// Techniques, layers and films in the order in which they first appear.
fn techniques(file: &mut String, films: &[LearnedFilm]) {
    if films.is_empty() {
        return;
    }
    line(file, "\ntechniques:");
    for technique in firsts(films.iter().map(|film| film.technique.name.as_str())) {
        line(file, &format!("  {}:\n    layers:", quoted(technique)));
        let of = || films.iter().filter(|film| film.technique.name == technique);
        for layer in firsts(of().map(|film| film.layer.as_str())) {
            line(file, &format!("      {}:", quoted(layer)));
            of().filter(|film| film.layer == layer).for_each(|film| one(file, film));
        }
    }
}

fn one(file: &mut String, film: &LearnedFilm) {
    let LearnedFilm { cups, classes, .. } = film;
    let canvases = film.canvases.len();
    let percent = trimmed(film.own_weight * 100.0, 0);
    line(file, &format!("        {}:", film.consistency.word()));
    for (name, length) in ends(film.film) {
        line(file, &format!("          {name}: {}", mm(length)));
    }
    line(file, "          weighed:");
    line(file, &format!("            cups: {cups}"));
    line(file, &format!("            canvases: {canvases}"));
    line(file, &format!("            classes: {classes}"));
    line(file, &format!("            mean: {}", mm(film.mean.value)));
    line(file, &format!("            own weight: {percent} %"));
    // Learning again starts from these, so they stay as they are.
    let exact = |length| trimmed(in_mm(length), 6);
    let before = ends(film.before).map(|(name, length)| format!("{name}: {} mm", exact(length)));
    line(file, &format!("            instead of: {{{}}}", before.join(", ")));
}

/// The spreads to plan with; nothing where there were too few weighings to tell.
fn reserve(file: &mut String, spread: &LearnedSpread) {
    if spread.method == Method::None {
        return;
    }
    line(file, "\nreserve:");
    for (name, percent, note) in spreads(spread.from_now_on) {
        line(file, &format!("  {name}: {percent} %{note}"));
    }
    let LearnedSpread { canvases, classes, .. } = spread;
    let before = spreads(spread.before).map(|(name, percent, _)| format!("{name}: {percent} %"));
    let before = before.join(", ");
    line(file, "  weighed:");
    line(file, &format!("    canvases: {canvases}"));
    line(file, &format!("    classes: {classes}"));
    line(file, &format!("    instead of: {{{before}}}"));
}

/// Names, percentages as far as a lesson takes them, and a note where that is not all.
fn spreads(varies: Varies) -> [(&'static str, String, &'static str); 2] {
    let parts = [("class varies by", varies.class), ("students vary by", varies.student)];
    parts.map(|(name, part)| {
        let percent = part * 100.0;
        let more = "    # more was found; this is the most";
        let note = if percent > MOST_SPREAD { more } else { "" };
        (name, trimmed(percent.min(MOST_SPREAD), 1), note)
    })
}

fn ends(film: Spread<Length>) -> [(&'static str, Length); 3] {
    [("low", film.low()), ("typical", film.typical()), ("high", film.high())]
}

/// Each text once.
fn firsts<'a>(texts: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut firsts = Vec::new();
    for text in texts {
        if !firsts.contains(&text) {
            firsts.push(text);
        }
    }
    firsts
}

/// To [`DIGITS`] digits.
fn mm(length: Length) -> String {
    let mm = in_mm(length);
    let before_point = if mm > 0.0 { mm.log10().floor() as i32 + 1 } else { 1 };
    let decimals = usize::try_from(DIGITS - before_point).unwrap_or(0);
    format!("{} mm", trimmed(mm, decimals))
}

fn line(file: &mut String, text: &str) {
    // Writing to a string does not fail.
    let _ = writeln!(file, "{text}");
}
