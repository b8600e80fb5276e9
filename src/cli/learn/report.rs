//! What weighings teach, on the terminal.

use super::super::plan::table;
use crate::cli::say::println;
use crate::plan::learn::{Learned, LearnedFilm, LeftOut, SpreadPart};
use crate::plan::rule_film;
use crate::quantity::show::{Show, trimmed, with_unit};
use comfy_table::Table;

pub(super) fn print(learned: &Learned, show: &Show) {
    let cups: usize = learned.classes.iter().map(|class| class.cups.len()).sum();
    println!("Learned from {}", counted(cups, "cup", "cups"));
    for class in &learned.classes {
        let date = class.date.map(|date| date.to_string()).unwrap_or_default();
        let canvases = usize::try_from(class.canvases).unwrap_or(usize::MAX);
        println!(
            "{date:10}  {}: {}, {}",
            class.title,
            counted(canvases, "canvas", "canvases"),
            counted(class.cups.len(), "cup", "cups")
        );
    }
    if learned.films.is_empty() {
        println!("\nNo layer of a canvas has all its colours weighed, so there is no film yet.");
    } else {
        println!("\nWhat you used\n{}", used(&learned.films, show));
        println!(
            "\nWhat to plan with from now on: your own mean counts for as much as it is sure\n{}",
            planned(&learned.films, show)
        );
    }
    left_out(&learned.left_out);
    spreads(learned);
}

fn used(films: &[LearnedFilm], show: &Show) -> Table {
    let head = [
        "technique",
        "layer",
        "mix",
        "cups",
        "canvases",
        "classes",
        "mean",
        "19 in 20",
        "of rule",
        "ran off",
    ];
    let mut table = table(head, 3);
    for film in films {
        let mean = &film.mean;
        let interval = format!("{} to {}", number(show.film(mean.low)), show.film(mean.high));
        let ran_off = film.run_off.map(|run_off| show.percent(run_off.share)).unwrap_or_default();
        table.add_row([
            film.technique.name.clone(),
            film.layer.clone(),
            film.consistency.word().to_owned(),
            film.cups.to_string(),
            film.canvases.len().to_string(),
            film.classes.to_string(),
            show.film(mean.value),
            interval,
            show.percent((mean.value / rule_film()).value),
            ran_off,
        ]);
    }
    table
}

fn planned(films: &[LearnedFilm], show: &Show) -> Table {
    let head = ["technique", "layer", "mix", "before", "your weight", "now", "low", "high"];
    let mut table = table(head, 3);
    for film in films {
        table.add_row([
            film.technique.name.clone(),
            film.layer.clone(),
            film.consistency.word().to_owned(),
            show.film(film.before.typical()),
            show.percent(film.own_weight),
            show.film(film.film.typical()),
            show.film(film.film.low()),
            show.film(film.film.high()),
        ]);
    }
    table
}

/// Canvases that teach nothing because a cup is missing.
fn left_out(left_out: &[LeftOut]) {
    if left_out.is_empty() {
        return;
    }
    println!("\nNot counted, because not every colour was weighed");
    for LeftOut { student, canvas, layer, missing, .. } in left_out {
        let missing: Vec<&str> = missing.iter().map(|colour| colour.name.as_str()).collect();
        println!("  {student}, {canvas}, {layer}: no weight of {}", missing.join(", "));
    }
}

fn spreads(learned: &Learned) {
    let spread = &learned.spread;
    let percent = |part: f64| with_unit(&trimmed(part * 100.0, 1), "%");
    println!("\nHow much use varies");
    let now = |now: f64, before: f64| {
        format!("{} from now on instead of {}", percent(now), percent(before))
    };
    let class = match spread.class {
        SpreadPart::Weighed(part) => format!(
            "{} seen; {}",
            percent(part),
            now(spread.from_now_on.class, spread.before.class)
        ),
        SpreadPart::NothingSeen => {
            let planned = now(spread.from_now_on.class, spread.before.class);
            format!("nothing seen: classes differ no more than canvases of one class do; {planned}")
        }
        SpreadPart::TooFew(part) => {
            format!("too few classes to tell; {} stays", percent(part))
        }
    };
    let student = match spread.student {
        SpreadPart::Weighed(part) => format!(
            "{} seen; {}",
            percent(part),
            now(spread.from_now_on.student, spread.before.student)
        ),
        SpreadPart::NothingSeen => {
            format!("nothing seen; {}", now(spread.from_now_on.student, spread.before.student))
        }
        SpreadPart::TooFew(part) => {
            format!("too few canvases to tell; {} stays", percent(part))
        }
    };
    println!("  from one class to the next   {class}");
    println!("  from canvas to canvas        {student}");
}

fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// The number of a film, where its unit follows later.
fn number(film: String) -> String {
    crate::quantity::show::number_of(&film).to_owned()
}
