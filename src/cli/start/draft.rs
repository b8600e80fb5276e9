//! The answers so far, read as the lesson file that they will be and really planned.

use super::answers::Answers;
use super::ask::Complaint;
use super::offers::Offers;
use super::sheet;
use crate::lesson::{self, Faults};
use crate::plan::{self, Plan};
use std::path::Path;

/// Problems of one answer that are told together.
const TOLD: usize = 3;

/// Reads and plans the lesson of the answers.
pub(super) fn plan(answers: &Answers, offers: &Offers) -> Result<Plan, Complaint> {
    let text = sheet::write(answers, offers, Path::new("lesson.yaml"), None).map_err(broken)?;
    read(&text)
}

/// The lesson file of the answers, with the list of what it has to buy; it has been read back
/// as it will be read from the disk.
pub(super) fn finished(
    answers: &Answers,
    offers: &Offers,
    path: &Path,
    plan: &Plan,
) -> Result<String, Complaint> {
    let text = sheet::write(answers, offers, path, Some(plan)).map_err(broken)?;
    read(&text).map(|_| text)
}

fn read(text: &str) -> Result<Plan, Complaint> {
    let lesson = lesson::read_with(Path::new("lesson.yaml"), &|_| Ok(text.as_bytes().to_vec()));
    let lesson = lesson.map_err(|faults| complaint(&faults))?;
    let no_plan = |why: plan::Impossible| Complaint { wrong: why.to_string(), right: Vec::new() };
    plan::plan(lesson).map_err(no_plan)
}

/// A template that came with the program and cannot be filled.
fn broken(error: tera::Error) -> Complaint {
    Complaint { wrong: format!("the lesson cannot be written: {error}"), right: Vec::new() }
}

/// What the readers of the lesson file say is wrong.
fn complaint(faults: &Faults) -> Complaint {
    let mut wrong = Vec::new();
    let mut right: Vec<String> = Vec::new();
    for said in faults.said().into_iter().take(TOLD) {
        let told = match said.text.trim_matches('"') {
            "" => said.wrong,
            text if said.wrong.contains(text) => said.wrong,
            text => format!("{}: {text}", said.wrong),
        };
        if !wrong.contains(&told) {
            wrong.push(told);
        }
        for help in said.right {
            if !right.contains(&help) {
                right.push(help);
            }
        }
    }
    Complaint { wrong: wrong.join("\n"), right }
}
