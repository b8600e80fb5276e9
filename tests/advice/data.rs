//! Warnings where programs and papers see them: exit codes, streams, JSON, files.

use super::cases::QUIET;
use super::{plan_of, run, run_in, said, with};
use puddlebook::handout::{Desk, Sheet, Templates};
use puddlebook::lesson::Language;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;

fn two_open() -> String {
    with(&[("fee: 10", "fee: 9"), ("washing up: 20 min", "washing up: 25 min")])
}

#[test]
fn warnings_go_to_the_side_and_change_no_exit_code() {
    let made = ["make", "my-class.yaml", "--only", "lesson,cards", "--out", "."];
    for arguments in [&["plan", "my-class.yaml"][..], &made, &["order", "my-class.yaml"]] {
        let output = run(&two_open(), arguments);
        assert_eq!(output.status.code(), Some(0), "{arguments:?}");
        let told = said(&output.stderr);
        assert!(told.contains("warning[over-booking]") && told.contains("warning[fee-too-low]"));
        assert!(!said(&output.stdout).contains("warning["), "{arguments:?}");
    }
}

#[test]
fn the_handouts_are_written_all_the_same() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("my-class.yaml"), two_open()).unwrap();
    run_in(folder.path(), &["make", "my-class.yaml", "--only", "cards", "--out", "."]);
    assert!(fs::read(folder.path().join("my-class/cards.pdf")).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn plan_has_them_as_data_with_place_and_reason() {
    let lesson = format!("{}accepted: {{fee-too-low: The town pays.}}\n", two_open());
    let output = run(&lesson, &["plan", "my-class.yaml", "--json"]);
    assert_eq!(said(&output.stderr), "", "the data says it");
    let plan: Value = serde_json::from_slice(&output.stdout).unwrap();
    let warnings = plan["warnings"].as_array().unwrap();
    let names: Vec<_> = warnings.iter().map(|warning| &warning["name"]).collect();
    assert_eq!(names, ["over-booking", "fee-too-low"]);
    assert_eq!(warnings[0]["accepted"], Value::Null);
    assert_eq!(warnings[0]["path"], json!(["timetable", "booked until"]));
    assert_eq!(warnings[0]["place"], json!({"file": "my-class.yaml", "line": 25, "column": 17}));
    let message = warnings[0]["message"].as_str().unwrap();
    assert!(message.contains("5 minutes longer") && message.contains("20:05"), "{message}");
    assert_eq!(warnings[1]["accepted"], "The town pays.");
    assert_eq!(plan["cost"]["balance"]["budget"]["amount"], "40.00");
}

#[test]
fn a_course_has_them_lesson_by_lesson() {
    let output = run(&two_open(), &["order", "my-class.yaml", "--json"]);
    assert_eq!(said(&output.stderr), "");
    let course: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(course["lessons"][0]["warnings"].as_array().unwrap().len(), 2);
}

#[test]
fn a_lesson_that_cannot_be_planned_is_wrong() {
    let lesson = with(&[(
        "keeps: 13 days}",
        "keeps: 13 days}\nmixes: {medium: {drops: {silicone oil: 900 per 1 mL}}}",
    )]);
    let output = run(&lesson, &["check", "my-class.yaml"]);
    assert_eq!(output.status.code(), Some(1));
    assert!(said(&output.stderr).contains("would fill the cup"), "{}", said(&output.stderr));
}

/// A handout of the lesson as data, its texts among them.
fn written(lesson: &str, sheet: Sheet) -> String {
    let plan = plan_of(lesson);
    let templates = Templates::new(Language::English, &BTreeMap::new()).unwrap();
    format!("{:?}", Desk::new(&plan, &templates).unwrap().write(sheet).unwrap())
}

#[test]
fn what_a_label_warns_of_is_printed_on_cards_and_in_the_guide() {
    let warned = with(&[("white: {", "white: {caution: Irritates the eyes., ")]);
    for sheet in [Sheet::Cards, Sheet::Guide] {
        let text = written(&warned, sheet);
        assert_eq!(text.matches("Irritates the eyes.").count(), 1, "{sheet:?}");
        assert!(!written(QUIET, sheet).contains("The label comes first."), "{sheet:?}");
    }
    assert!(written(&warned, Sheet::Guide).contains("white: read its label first"));
    // Without a stop it gets one, for a sentence follows.
    let without = with(&[("white: {", "white: {caution: Irritates the eyes, ")]);
    assert!(written(&without, Sheet::Cards).contains("Irritates the eyes. The label comes first."));
}

#[test]
fn the_lesson_sheet_keeps_warnings_in_view() {
    let open = written(&two_open(), Sheet::Lesson);
    assert!(open.contains("Still to settle") && open.contains("(over-booking)"));
    assert!(open.contains("things are still to settle"));
    let lesson = format!("{}accepted: {{fee-too-low: The town pays.}}\n", two_open());
    let accepted = written(&lesson, Sheet::Lesson);
    assert!(accepted.contains("The town pays.") && !accepted.contains("(fee-too-low)"));
    assert!(!written(QUIET, Sheet::Lesson).contains("Still to settle"));
}

#[test]
fn a_long_caution_is_told_by_its_beginning() {
    let long = "Rinse with much water. ".repeat(30);
    let lesson = with(&[("white: {", &format!("white: {{caution: \"{}\", ", long.trim()))]);
    let told = said(&run(&lesson, &["check", "my-class.yaml"]).stderr);
    assert!(
        told.contains("^ Rinse with much water. Rinse with much water. Rinse with …"),
        "{told}"
    );
    assert_eq!(written(&lesson, Sheet::Cards).matches("Rinse with much water.").count(), 30);
}
