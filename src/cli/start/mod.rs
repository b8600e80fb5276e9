//! `start`: from a few questions to a lesson file that is right.
//!
//! In: somebody who answers ([`Ask`]: a terminal, nobody at all, a script) and what was given on
//! the command line ([`Given`]). Out: a lesson ([`Begun`]) that was read and planned after every
//! answer, by the readers of lesson files themselves, so that a wrong answer gets the words that
//! a wrong file gets. Questions know no terminal; `place` puts the file on the disk and never
//! over another without being told to.

mod answers;
mod ask;
mod consequence;
mod draft;
pub(super) mod given;
mod interview;
mod lines;
mod offered;
mod offers;
mod place;
mod questions;
mod reading;
mod sheet;
mod terminal;

pub use super::disk::Existing;
pub use ask::{Ask, Choice, Complaint, Next, Question, Stop};
pub use given::{Given, GivenCanvases, GivenCupboard, GivenHeading, GivenPeople, GivenSheets};
pub use interview::{Begun, interview};
pub use offered::Offered;

use super::failure::Failure;
use crate::cli::say::println;
use crate::lesson::shown;
use given::Start;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use terminal::Terminal;

/// Begins a lesson.
pub(super) fn start(arguments: &Start) -> Result<(), Failure> {
    let people = std::io::stdin().is_terminal() && std::io::stderr().is_terminal();
    let finished =
        if people && !arguments.no_questions { asked(arguments) } else { taken(arguments) };
    match finished {
        Ok(()) => Ok(()),
        Err(End::Stop(Stop::Left)) => {
            println!("You left before the end: nothing was written.");
            Ok(())
        }
        Err(End::Stop(Stop::Broken(error))) => {
            Err(Failure::disk(format!("could not ask on this terminal: {error}")))
        }
        Err(End::Stop(Stop::Unready(complaint))) => {
            Err(Failure::Wrong(format!("error: {complaint}\n")))
        }
        Err(End::Failure(failure)) => Err(failure),
    }
}

/// Why no lesson was begun.
enum End {
    Stop(Stop),
    Failure(Failure),
}

impl From<Stop> for End {
    fn from(stop: Stop) -> Self {
        Self::Stop(stop)
    }
}

impl From<Failure> for End {
    fn from(failure: Failure) -> Self {
        Self::Failure(failure)
    }
}

/// Where the lesson file is wanted.
#[derive(Debug, Clone)]
pub struct Wanted {
    /// Asked where it is not given.
    pub lesson: Option<PathBuf>,
    /// What happens to a file that is there.
    pub existing: Existing,
}

/// Asks somebody and writes the file; its path. A file that is there is never lost without a
/// word, and a place that will not do costs no answer.
///
/// # Errors
/// [`Stop`] when somebody leaves; then nothing is written.
pub fn begin(
    ask: &mut dyn Ask,
    given: &Given,
    wanted: Wanted,
    locale: &str,
) -> Result<PathBuf, Stop> {
    let Wanted { lesson, existing } = wanted;
    // A file that is in the way is told before the questions, not after them.
    let place = lesson.map(|path| place::free(ask, path, existing)).transpose()?;
    let begun = interview(ask, given, locale)?;
    let mut place = match place {
        Some(place) => place,
        None => place::asked(ask, &begun.file_name(), existing)?,
    };
    loop {
        let text = begun.text(&place.path).map_err(Stop::Unready)?;
        match place::write(&place, &text) {
            Ok(()) => return Ok(place.path),
            Err(complaint) => place = place::another(ask, &place, &complaint)?,
        }
    }
}

/// Somebody is asked.
fn asked(arguments: &Start) -> Result<(), End> {
    let wanted = Wanted { lesson: arguments.lesson.clone(), existing: existing(arguments) };
    let path = begin(&mut Terminal, &arguments.given, wanted, &locale())?;
    told(&path);
    Ok(())
}

/// Nobody is asked.
fn taken(arguments: &Start) -> Result<(), End> {
    let existing = existing(arguments);
    let refused = |path: &Path| place::refused(path, existing).map_or(Ok(()), Err);
    if let Some(path) = &arguments.lesson {
        refused(path)?;
    }
    if !arguments.no_questions {
        println!("Nobody can be asked here.");
    }
    println!("What was not given takes the answer that is offered:");
    let mut ask = Offered::default();
    let begun = interview(&mut ask, &arguments.given, &locale())?;
    if !ask.complaints().is_empty() {
        return Err(Failure::Use(ask.complaints().join("\n")).into());
    }
    let path = match &arguments.lesson {
        Some(path) => path.clone(),
        None => begun.file_name().into(),
    };
    refused(&path)?;
    let text = begun.text(&path).map_err(Stop::Unready)?;
    place::write_or_fail(&path, &text, existing)?;
    told(&path);
    Ok(())
}

fn existing(arguments: &Start) -> Existing {
    if arguments.replace { Existing::Replaced } else { Existing::Stays }
}

/// Language and country of the machine, as POSIX has them.
fn locale() -> String {
    let said = ["LC_ALL", "LC_MEASUREMENT", "LANG"].into_iter().filter_map(std::env::var_os);
    let mut said = said.map(|value| value.to_string_lossy().into_owned());
    said.find(|value| !value.is_empty()).unwrap_or_default()
}

/// What there is now, and what comes next.
fn told(path: &Path) {
    let file = sheet::argument(&path.display().to_string());
    println!();
    println!("Wrote {}.", shown(path));
    println!("Open it in any editor: every line is explained. Next:");
    println!("  is it still right after a change?");
    println!("    puddlebook check {file}");
    println!("  see the handouts while changing it");
    println!("    puddlebook preview {file}");
    println!("  the handouts as PDF, to print");
    println!("    puddlebook make {file}");
}
