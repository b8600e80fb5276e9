//! `learn`: from weighed cups to the films of the next plan.

mod films;
mod report;

use super::args;
use super::disk::write_outputs;
use super::failure::Failure;
use super::words::Words;
use crate::cli::say::{eprintln, println};
use crate::handout::{Templates, measured, used_csv};
use crate::ink::Faces;
use crate::lesson::shown;
use crate::lesson::{Faults, Print, ProblemKind, Style, Weighings, read_weighings};
use crate::plan::learn::{Doubt, DoubtKind, Learned};
use crate::quantity::show::Show;
use std::path::PathBuf;

pub(super) fn learn(arguments: &args::Learn) -> Result<(), Failure> {
    let weighings = read_weighings(&arguments.weighings).map_err(|faults| failure(&faults))?;
    let learned = crate::plan::learn::learn(&weighings.classes)
        .map_err(|doubts| failure(&doubted(&weighings, doubts)))?;
    // As the last lesson is printed.
    let Some(class) = weighings.classes.last() else { return Ok(()) };
    let mut print = class.lesson.print;
    arguments.print.choose(&mut print);
    let templates = Words::with(arguments.templates.as_deref())?.of(print.language)?;
    let files = files(arguments, &learned, print, &templates)?;
    write_outputs(&files)?;
    report::print(&learned, &Show::new(print.units, print.currency));
    println!();
    for (path, _) in &files {
        println!("wrote {}", shown(path));
    }
    Ok(())
}

fn files(
    arguments: &args::Learn,
    learned: &Learned,
    print: Print,
    templates: &Templates,
) -> Result<Vec<(PathBuf, Vec<u8>)>, Failure> {
    let target = |name| arguments.out.join(name);
    let faces = Faces::new();
    let document = measured(learned, print, templates)?;
    let pages = crate::page::lay_out(&document, &faces);
    let page = target("measured.pdf");
    let bytes = crate::pdf::write(&pages, &faces)
        .map_err(|error| Failure::Wrong(format!("error: {}: {error}", shown(&page))))?;
    if !pages.missing.is_empty() {
        let names: Vec<String> =
            pages.missing.iter().map(|c| format!("{c} (U+{:04X})", u32::from(*c))).collect();
        eprintln!(
            "warning: {} has characters that the type lacks, shown as a box: {}",
            shown(&page),
            names.join(", ")
        );
    }
    let table = target("cups.csv");
    let cups =
        used_csv(learned).map_err(|error| Failure::write(&table, std::io::Error::other(error)))?;
    let films = films::films(learned).into_bytes();
    Ok(vec![(target("films.yaml"), films), (page, bytes), (table, cups)])
}

fn doubted(weighings: &Weighings, doubts: Vec<Doubt>) -> Faults {
    let found = doubts.into_iter().map(|Doubt { place, kind }| {
        let kind = match kind {
            DoubtKind::TooLight { weighed, planned } => {
                ProblemKind::OuncesAsGrams { weighed, planned }
            }
            DoubtKind::TooHeavy { weighed, planned } => {
                ProblemKind::GramsAsOunces { weighed, planned }
            }
        };
        (place, kind)
    });
    weighings.faults(found.collect())
}

fn failure(faults: &Faults) -> Failure {
    let text = faults.render(Style::Coloured);
    if faults.is_unread() { Failure::Disk(text) } else { Failure::Wrong(text) }
}
