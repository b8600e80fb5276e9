//! `start` as it is called where nobody can be asked.

use crate::lesson_tools::read_text;
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};

/// Runs the program in a folder; exit code, what it prints and what it says is wrong.
fn run(folder: &Path, arguments: &[&str]) -> (Option<i32>, String, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    let program = program.args(arguments).current_dir(folder).stdin(Stdio::null());
    let output = program.env("LANG", "en_US.UTF-8").env_remove("LC_ALL").output().unwrap();
    let [said, wrong] = [output.stdout, output.stderr].map(|text| String::from_utf8(text).unwrap());
    (output.status.code(), said, wrong)
}

#[test]
fn every_question_has_an_option() {
    let folder = tempfile::tempdir().unwrap();
    let (code, said, wrong) = run(
        folder.path(),
        &[
            "start",
            "mine.yaml",
            "--no-questions",
            "--language",
            "en",
            "--units",
            "metric",
            "--paper",
            "a4",
            "--title",
            "Shore",
            "--teacher",
            "Rowan Teck",
            "--place",
            "Mill",
            "--date",
            "2026-06-20",
            "--people",
            "12",
            "--youngest",
            "11",
            "--demonstrations",
            "0",
            "--spares",
            "2",
            "--canvas",
            "square 10 x 10 in, 1/2 in deep, 2 each",
            "--canvas",
            "round 12 in, 3/4 in deep",
            "--technique",
            "blown pour",
            "--technique",
            "spun pour",
            "--consistency",
            "medium",
            "--colours",
            "blue 2, sand 1, white 1",
            "--base",
            "white",
            "--cupboard",
            "pouring medium 16 fl oz",
            "--cupboard",
            "apron 10",
            "--jar",
            "white, medium, 300 g, 2026-06-01",
        ],
    );
    assert_eq!((code, wrong.as_str()), (Some(0), ""), "{said}");
    // All was given, so nothing was taken.
    assert!(!said.contains("(--"), "{said}");
    let lesson = read_text(&fs::read_to_string(folder.path().join("mine.yaml")).unwrap()).unwrap();
    assert_eq!(lesson.heading.teacher.as_deref(), Some("Rowan Teck"));
    assert_eq!((lesson.class.demonstrations, lesson.class.spares), (0, 2));
    let poured: Vec<_> = lesson.canvases.iter().map(|c| c.technique.name.as_str()).collect();
    assert_eq!(poured, ["blown pour", "spun pour"]);
    assert_eq!((lesson.stock.len(), lesson.jars.len()), (2, 1));
    for next in ["check mine.yaml", "preview mine.yaml", "make mine.yaml"] {
        assert!(said.contains(next), "{next} in {said}");
    }
    let (code, said, _) = run(folder.path(), &["check", "mine.yaml"]);
    assert_eq!(code, Some(0));
    assert_eq!(said, "mine.yaml: right (Shore)\n1 lesson right, no warnings\n");
}

#[test]
fn what_is_not_given_takes_the_offered_answer_and_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let (code, said, wrong) = run(folder.path(), &["start", "--people", "5"]);
    assert_eq!((code, wrong.as_str()), (Some(0), ""));
    assert!(said.starts_with("Nobody can be asked here.\n"), "{said}");
    for part in ["(--title)", "(--canvas)", "How is it poured? straight pour (--technique)"] {
        assert!(said.contains(part), "{part} in {said}");
    }
    assert!(!said.contains("(--people)"), "{said}");
    let written = folder.path().join("a-first-evening-of-pouring.yaml");
    assert!(read_text(&fs::read_to_string(written).unwrap()).is_ok());
}

#[test]
fn wrong_options_are_told_all_at_once_and_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let (code, _, wrong) = run(
        folder.path(),
        &[
            "start",
            "x.yaml",
            "--people",
            "many",
            "--date",
            "tomorrow",
            "--technique",
            "strait pour",
            "--canvas",
            "square 10,5 in",
            "--colours",
            "blue 60 %, sand 44 %",
        ],
    );
    assert_eq!(code, Some(2));
    for part in [
        "error: --people \"many\"",
        "error: --date \"tomorrow\"",
        "did you mean \"straight pour\"?",
        "write 10.5 in",
        "add up to 104 %",
    ] {
        assert!(wrong.contains(part), "{part} in {wrong}");
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn a_file_that_is_there_stays() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.yaml");
    fs::write(&path, "mine").unwrap();
    let (code, _, wrong) = run(folder.path(), &["start", "mine.yaml", "--no-questions"]);
    assert_eq!(code, Some(3));
    assert!(wrong.contains("is there already") && wrong.contains("--replace"), "{wrong}");
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");
    let (code, ..) = run(folder.path(), &["start", "mine.yaml", "--no-questions", "--replace"]);
    assert_eq!(code, Some(0));
    assert!(read_text(&fs::read_to_string(&path).unwrap()).is_ok());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    let (code, _, wrong) = run(folder.path(), &["start", ".", "--no-questions", "--replace"]);
    assert_eq!(code, Some(3));
    assert!(wrong.contains("it is a folder"), "{wrong}");
}
