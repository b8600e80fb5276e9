//! Counts the work of a template while it is filled in, and stops it where it is too much.
//!
//! A counter is a call that is put into every loop, behind every `set` and before every file: it
//! prints nothing. One round costs its expressions, each as much as the largest value that the
//! template has made itself, for the engine copies such a value wherever it is named; values of
//! the plan are not copied.

use super::tags::Piece;
use std::cell::RefCell;
use std::collections::HashMap;
use std::io::{self, Write};
use tera::{Tera, Value};

/// What filling in one template may cost: about a million rounds of a short loop.
const WORK: u64 = 60_000_000;
/// What it may cost for each part of a plan so large that this is more.
const WORK_A_PART: u64 = 400;
/// What an expression costs beside the values in it.
const EXPRESSION: u64 = 40;
/// Most that the templates of one handout may write, in bytes: more than ten thousand pages of
/// text.
const WRITTEN: usize = 32 << 20;
/// Most numbers of one range.
const RANGE: u64 = 1_000;

/// What is wrong with a template that costs more.
const TOO_OFTEN: &str = "the loops of this template go round too often";

/// The call that counts. A template cannot name it: it may call nothing but `range`.
const COUNTER: &str = "puddlebook_count";

/// Why a template was stopped, and which: its place in the order of names, and the line.
#[derive(Debug, Clone)]
pub(in crate::handout) struct Stopped {
    pub(in crate::handout) file: usize,
    pub(in crate::handout) line: usize,
    pub(in crate::handout) message: &'static str,
    pub(in crate::handout) help: &'static str,
}

/// How a template that was not filled in came to its end.
pub(in crate::handout) enum Halt {
    Stopped(Stopped),
    /// What the engine said, and the file and line of the last counter that it came by.
    Engine(tera::Error, (usize, usize)),
}

/// What the templates of one handout may still write.
pub(in crate::handout) struct Allowance(usize);

impl Allowance {
    /// That of a handout of which nothing is written yet.
    pub(in crate::handout) fn whole() -> Self {
        Self(WRITTEN)
    }
}

/// One template on its way.
struct Run {
    left: u64,
    /// The size of the largest value that it has made.
    weight: u64,
    /// The last counter that it came by.
    file: usize,
    line: usize,
    stopped: Option<Stopped>,
}

thread_local! {
    /// The template that this thread fills in. The engine hands nothing of its own to the calls
    /// and filters that it makes.
    static RUN: RefCell<Option<Run>> = const { RefCell::new(None) };
}

/// Fills in a template with a counter at hand. `parts` counts the values of the plan; it is
/// asked only where the work may depend on it.
pub(in crate::handout) fn metered(
    allowance: &mut Allowance,
    parts: impl FnOnce() -> u64,
    fill: impl Fn(&mut Paper) -> tera::Result<()>,
) -> Result<String, Halt> {
    match within(WORK, allowance, &fill) {
        Err(Halt::Stopped(stopped)) if stopped.message == TOO_OFTEN => {
            let work = parts().saturating_mul(WORK_A_PART);
            let again = (work > WORK).then(|| within(work, allowance, &fill));
            again.unwrap_or(Err(Halt::Stopped(stopped)))
        }
        filled => filled,
    }
}

fn within(
    work: u64,
    allowance: &mut Allowance,
    fill: impl Fn(&mut Paper) -> tera::Result<()>,
) -> Result<String, Halt> {
    let run = Run { left: work, weight: 0, file: 0, line: 1, stopped: None };
    RUN.set(Some(run));
    let mut paper = Paper { bytes: Vec::new(), most: allowance.0 };
    let filled = fill(&mut paper);
    let (stopped, place) =
        RUN.take().map_or((None, (0, 1)), |run| (run.stopped, (run.file, run.line)));
    match (stopped, filled) {
        (Some(stopped), _) => Err(Halt::Stopped(stopped)),
        (None, Err(error)) => Err(Halt::Engine(error, place)),
        (None, Ok(())) => {
            allowance.0 -= paper.bytes.len().min(allowance.0);
            let text = String::from_utf8(paper.bytes);
            text.map_err(|error| Halt::Engine(tera::Error::msg(error), place))
        }
    }
}

/// What is written, up to a limit.
pub(in crate::handout) struct Paper {
    bytes: Vec<u8>,
    most: usize,
}

impl Write for Paper {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if self.bytes.len() + bytes.len() > self.most {
            stop(
                "this handout gets longer than 32 MB of words",
                "that would be more than ten thousand pages; look for a loop in a loop",
            );
            return Err(io::Error::other("too much is written"));
        }
        self.bytes.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

fn with<T>(of: impl FnOnce(&mut Run) -> T) -> Option<T> {
    RUN.with_borrow_mut(|run| run.as_mut().map(of))
}

fn stop(message: &'static str, help: &'static str) {
    with(|run| {
        let stopped = Stopped { file: run.file, line: run.line, message, help };
        run.stopped.get_or_insert(stopped);
    });
}

/// Takes the cost of some work from what is left.
pub(super) fn spend(cost: u64) -> tera::Result<()> {
    let enough = with(|run| {
        let left = run.left.checked_sub(cost);
        run.left = left.unwrap_or(0);
        left.is_some()
    });
    if enough == Some(false) {
        stop(
            TOO_OFTEN,
            "a loop in a loop goes round for every pair, and so on; leave one of them out",
        );
        return Err(tera::Error::msg("too much work"));
    }
    Ok(())
}

/// Remembers that the template has a value of this size now.
pub(super) fn made(size: u64) {
    with(|run| run.weight = run.weight.max(size));
}

/// How large a value is: its parts, and a part for every line of a text.
pub(in crate::handout) fn size(value: &Value) -> u64 {
    match value {
        Value::Null | Value::Bool(_) | Value::Number(_) => 1,
        Value::String(text) => 1 + text.len() as u64 / 40,
        Value::Array(items) => 1 + items.iter().map(size).sum::<u64>(),
        Value::Object(entries) => 1 + entries.values().map(|value| 1 + size(value)).sum::<u64>(),
    }
}

/// The counter behind a tag of the file of this place in the order of names.
pub(super) fn counter(
    file: usize,
    text: &str,
    tag: &Piece,
    expressions: usize,
    of: Option<&str>,
) -> String {
    let line = text.get(..tag.outer.start).unwrap_or_default().matches('\n').count() + 1;
    let of = of.map(|name| format!(", of={name}")).unwrap_or_default();
    let end = if tag.trims { "-}}" } else { "}}" };
    format!("{{{{ {COUNTER}(n={expressions}, file={file}, line={line}{of}) {end}")
}

fn count(arguments: &HashMap<String, Value>) -> tera::Result<Value> {
    let number = |name: &str| arguments.get(name).and_then(Value::as_u64).unwrap_or(1);
    let weight = with(|run| {
        run.file = usize::try_from(number("file")).unwrap_or(0);
        run.line = usize::try_from(number("line")).unwrap_or(1);
        run.weight
    });
    let made_here = arguments.get("of").map_or(0, size);
    made(made_here);
    spend(number("n") * (EXPRESSION + weight.unwrap_or(0)) + made_here)?;
    Ok(Value::String(String::new()))
}

/// The numbers from `start` (0 when it is not said) to before `end`.
fn range(arguments: &HashMap<String, Value>) -> tera::Result<Value> {
    let number = |name: &str| arguments.get(name).and_then(Value::as_u64);
    let Some(end) = number("end") else {
        return Err(tera::Error::msg("a range has an end: range(end=5)"));
    };
    let start = number("start").unwrap_or(0);
    if end.saturating_sub(start) > RANGE {
        return Err(tera::Error::msg("a range has up to 1000 numbers"));
    }
    Ok((start..end).map(Value::from).collect())
}

/// Gives the counter and what may be called to the engine, and takes what sees the machine.
pub(super) fn furnish(tera: &mut Tera) {
    tera.register_function(COUNTER, count);
    tera.register_function("range", range);
    for name in ["get_env", "now", "get_random", "throw"] {
        tera.register_function(name, |_: &HashMap<String, Value>| {
            Err(tera::Error::msg("templates see the plan and nothing of the machine"))
        });
    }
}
