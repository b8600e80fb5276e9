//! Help while a lesson is written: schemas for editors, keys explained, help texts, completions,
//! the manual.

mod explained;
mod forms;
mod help;
mod schemas;

use jsonschema::Validator;
use puddlebook::lesson::{FileKind, schema};
use std::process::{Command, Output};
use std::sync::LazyLock;

static LESSON: LazyLock<Validator> = LazyLock::new(|| validator(FileKind::Lesson));
static DATA: LazyLock<Validator> = LazyLock::new(|| validator(FileKind::Data));
static WEIGHINGS: LazyLock<Validator> = LazyLock::new(|| validator(FileKind::Weighings));

fn validator(kind: FileKind) -> Validator {
    jsonschema::validator_for(&schema(kind)).unwrap()
}

/// What an editor would mark in a file; `None` when its YAML cannot be read.
pub fn complaints(kind: FileKind, text: &str) -> Option<Vec<String>> {
    let text = text.trim_start_matches('\u{feff}');
    let value: serde_json::Value = serde_yaml::from_str(text).ok()?;
    let validator = match kind {
        FileKind::Lesson => &LESSON,
        FileKind::Data => &DATA,
        FileKind::Weighings => &WEIGHINGS,
    };
    let errors = validator.iter_errors(&value);
    Some(errors.map(|error| format!("{}: {error}", error.instance_path())).collect())
}

/// Runs the program from the root of the project.
fn run(arguments: &[&str]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    program.args(arguments).current_dir(env!("CARGO_MANIFEST_DIR")).output().unwrap()
}

/// What a run that is done printed.
fn printed(arguments: &[&str]) -> String {
    let output = run(arguments);
    let wrong = String::from_utf8(output.stderr).unwrap();
    assert_eq!((output.status.code(), wrong.as_str()), (Some(0), ""), "{arguments:?}");
    String::from_utf8(output.stdout).unwrap()
}
