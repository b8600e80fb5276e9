//! The schemas: those that lie beside the lessons are those of the types, every file of the
//! project names its own and fits it, and wrong lessons do not.

use super::{complaints, printed};
use crate::lesson_tools::{files_in, in_project};
use jsonschema::Validator;
use puddlebook::lesson::{FileKind, ProblemKind, Unread, read_weighings_with, read_with, schema};
use puddlebook::quantity::MisreadKind;
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

const KINDS: [&str; 4] = ["lesson", "data", "weighings", "words"];

fn kept(kind: &str) -> Value {
    let text = fs::read_to_string(in_project(&format!("lessons/schema/{kind}.json"))).unwrap();
    serde_json::from_str(&text).unwrap()
}

#[test]
fn the_schemas_beside_the_lessons_are_those_of_the_types() {
    for kind in KINDS {
        let path = in_project(&format!("lessons/schema/{kind}.json"));
        let kept = fs::read_to_string(path).unwrap_or_default();
        let printed = printed(&["schema", kind]);
        assert!(kept == printed, "write them anew: puddlebook schema --out lessons/schema");
    }
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().to_str().unwrap();
    let said = super::printed(&["schema", "--out", out]);
    assert_eq!(said.lines().count(), KINDS.len());
    let written = fs::read_to_string(folder.path().join("data.json")).unwrap();
    assert_eq!(written, super::printed(&["schema", "data"]));
}

#[test]
fn a_schema_is_a_schema_and_tells_the_kinds_apart() {
    for kind in KINDS {
        let schema = kept(kind);
        assert!(jsonschema::meta::is_valid(&schema), "{kind}");
        assert_eq!(schema["$schema"], "http://json-schema.org/draft-07/schema#");
        assert_eq!(schema["additionalProperties"], false, "unknown keys are refused: {kind}");
        let said = schema["description"].as_str().unwrap();
        assert!(said.ends_with('.') && schema["title"].is_string(), "{kind}");
    }
    let said = super::printed(&["schema"]);
    assert!(KINDS.iter().all(|kind| said.contains(kind)), "{said}");
}

/// Every key has words that an editor can show, and keeps no notes of ours.
#[test]
fn every_key_is_described() {
    fn look(schema: &Value, path: &str, count: &mut usize) {
        let Value::Object(inner) = schema else { return };
        for note in ["needed", "limits"] {
            assert!(inner.get(note).is_none(), "{path} has {note}");
        }
        for (key, below) in inner.get("properties").and_then(Value::as_object).into_iter().flatten()
        {
            if below.is_boolean() {
                continue;
            }
            let said = below["description"].as_str().unwrap_or_default();
            assert!(said.ends_with('.'), "{path} > {key}: {said:?}");
            *count += 1;
            look(below, &format!("{path} > {key}"), count);
        }
        for part in ["additionalProperties", "items"] {
            inner.get(part).into_iter().for_each(|below| look(below, path, count));
        }
        for part in ["anyOf", "oneOf"] {
            let parts = inner.get(part).and_then(Value::as_array).into_iter().flatten();
            parts.for_each(|below| look(below, path, count));
        }
    }
    let mut count = 0;
    for kind in FileKind::ALL {
        look(&schema(kind), "", &mut count);
    }
    assert!(count > 200, "{count} keys");
}

/// All files of the project in YAML that a person may write.
fn files() -> Vec<PathBuf> {
    let folders = [
        "lessons",
        "lessons/data",
        "lessons/data/es",
        "lessons/defaults",
        "lessons/defaults/en",
        "lessons/defaults/es",
        "lessons/weighed",
        "templates/en",
        "templates/es",
    ];
    folders.iter().flat_map(|folder| files_in(folder, "yaml")).collect()
}

#[test]
fn every_file_names_its_schema_and_fits_it() {
    let files = files();
    assert!(files.len() >= 30);
    for path in files {
        let text = fs::read_to_string(&path).unwrap();
        let name = path.display();
        let first = text.lines().next().unwrap();
        let schema = first.strip_prefix("# yaml-language-server: $schema=");
        let schema = schema.unwrap_or_else(|| panic!("{name} names no schema"));
        let schema = fs::canonicalize(path.parent().unwrap().join(schema));
        let schema = schema.unwrap_or_else(|error| panic!("{name}: {error}"));
        let kind = match path.strip_prefix(in_project("")).unwrap() {
            file if file.starts_with("templates") => "words",
            file if file.starts_with("lessons/weighed") => "weighings",
            file if file.parent() == Some(Path::new("lessons")) => "lesson",
            _ => "data",
        };
        let wanted = in_project(&format!("lessons/schema/{kind}.json"));
        assert_eq!(schema, fs::canonicalize(wanted).unwrap(), "{name}");
        let value: Value = serde_yaml::from_str(&text).unwrap();
        let validator: Validator = jsonschema::validator_for(&kept(kind)).unwrap();
        let wrong: Vec<_> = validator.iter_errors(&value).map(|error| error.to_string()).collect();
        assert_eq!(wrong, Vec::<String>::new(), "{name}");
    }
}

/// Whether a schema has to refuse what is wrong so: what can be seen in one value or one
/// mapping, without names and sums.
fn is_plain_to_see(kind: &ProblemKind) -> bool {
    match kind {
        ProblemKind::UnknownKey { .. }
        | ProblemKind::LessonKeyInData { .. }
        | ProblemKind::WrongForm { .. }
        | ProblemKind::UnknownWord { .. }
        | ProblemKind::NotATime
        | ProblemKind::TimeOfDay
        | ProblemKind::NotACurrency { .. }
        | ProblemKind::NotASwatch
        | ProblemKind::NotADropRate
        | ProblemKind::NotAPercentage
        | ProblemKind::BlankText
        | ProblemKind::NotForShape { .. }
        | ProblemKind::NoCanvases
        | ProblemKind::NoTimedSteps
        | ProblemKind::TooManyTimedSteps
        | ProblemKind::TooManySizes
        | ProblemKind::PaintIsAColour => true,
        ProblemKind::Misread(kind) => matches!(
            kind,
            MisreadKind::NotANumber { .. }
                | MisreadKind::DecimalComma { .. }
                | MisreadKind::ThousandsComma { .. }
                | MisreadKind::MissingUnit { .. }
                | MisreadKind::UnknownUnit { .. }
                | MisreadKind::BareOunce { .. }
                | MisreadKind::WrongDimension { .. }
                | MisreadKind::UnitNotWanted { .. }
                | MisreadKind::Negative
        ),
        _ => false,
    }
}

#[test]
fn wrong_lessons_are_refused_by_the_schema_too() {
    let folder = in_project("tests/wrong");
    let load = |path: &Path| fs::read(folder.join(path)).map_err(|_| Unread::NotFound);
    let (mut seen, mut passed) = (0, Vec::new());
    for path in files_in("tests/wrong", "yaml") {
        let name = path.file_name().unwrap();
        let faults = read_with(Path::new(name), &load).unwrap_err();
        let here = |problem: &&puddlebook::lesson::Problem| {
            let file = problem.place.as_ref().and_then(|place| faults.sources().get(place.file));
            file.is_some_and(|file| Path::new(&file.name) == Path::new(name))
        };
        let plain =
            faults.problems().iter().filter(here).any(|problem| is_plain_to_see(&problem.kind));
        let Some(wrong) = complaints(FileKind::Lesson, &fs::read_to_string(&path).unwrap()) else {
            continue;
        };
        if plain {
            seen += 1;
            if wrong.is_empty() {
                passed.push(name.to_owned());
            }
        }
    }
    assert!(seen >= 80, "{seen} lessons that an editor can see to be wrong");
    assert!(passed.is_empty(), "the schema lets pass: {passed:?}");
}

#[test]
fn wrong_weighings_are_refused_by_the_schema_too() {
    let folder = in_project("tests/wrong_weighings");
    let load = |path: &Path| fs::read(folder.join(path)).map_err(|_| Unread::NotFound);
    let (mut seen, mut passed) = (0, Vec::new());
    for path in files_in("tests/wrong_weighings", "yaml") {
        let name = PathBuf::from(path.file_name().unwrap());
        let faults = read_weighings_with(std::slice::from_ref(&name), &load).unwrap_err();
        let here = |problem: &&puddlebook::lesson::Problem| {
            let file = problem.place.as_ref().and_then(|place| faults.sources().get(place.file));
            file.is_some_and(|file| Path::new(&file.name) == name)
        };
        let plain =
            faults.problems().iter().filter(here).any(|problem| is_plain_to_see(&problem.kind));
        let text = fs::read_to_string(&path).unwrap();
        let Some(wrong) = complaints(FileKind::Weighings, &text).filter(|_| plain) else {
            continue;
        };
        seen += 1;
        if wrong.is_empty() {
            passed.push(name);
        }
    }
    assert!(seen >= 10, "{seen} files that an editor can see to be wrong");
    assert!(passed.is_empty(), "the schema lets pass: {passed:?}");
}

#[test]
fn a_data_file_may_not_hold_keys_of_a_lesson() {
    let fits = |text: &str| complaints(FileKind::Data, text).unwrap().is_empty();
    assert!(fits("mixing: {cup loss: 5 mL}\nstock:\n"), "an empty section says nothing");
    assert!(!fits("title: A class\n"));
    assert!(!fits("mixing: {cup lost: 5 mL}\n"));
    assert!(!fits("mixing: {cup loss: 5 g}\n"));
}

#[test]
fn a_dictionary_may_hold_single_words() {
    let validator = jsonschema::validator_for(&kept("words")).unwrap();
    let fits = |text: &str| validator.is_valid(&serde_yaml::from_str::<Value>(text).unwrap());
    assert!(fits("numbers: {decimal: point, currency: before}\n"));
    assert!(fits("sheets: {order: What to buy}\n"));
    assert!(!fits("sheets: {ordre: What to buy}\n"));
    assert!(!fits("numbers: {decimal: dot}\n"));
    let guide = &kept("words")["properties"]["sheets"]["properties"]["guide"];
    assert_eq!(guide["default"], "Beginner’s guide", "an editor shows what holds without it");
}
