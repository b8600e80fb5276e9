//! The program as it is called: what it says when the disk is in its way, and its exit code.

use crate::lesson_tools::{SMALL, in_project};
use std::fs;
use std::path::Path;
use std::process::Command;

/// Runs the program; its exit code and what it says is wrong.
fn run(arguments: &[&Path]) -> (Option<i32>, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    let output = program.args(arguments).current_dir(in_project("")).output().unwrap();
    (output.status.code(), String::from_utf8(output.stderr).unwrap())
}

/// Runs it with words and paths for arguments.
macro_rules! run {
    ($($argument:expr),* $(,)?) => {
        run(&[$(Path::new($argument)),*])
    };
}

#[test]
fn a_file_where_the_handouts_should_go() {
    let folder = tempfile::tempdir().unwrap();
    let lesson = folder.path().join("small.yaml");
    fs::write(&lesson, SMALL).unwrap();
    let below = lesson.join("deeper/still");
    let wanted = format!(
        "error: {} is a file, not a folder; name another folder with --out\n",
        lesson.display()
    );
    for out in [&lesson, &below] {
        let (code, said) = run!("make", &lesson, "--only", "cards", "--out", out);
        assert_eq!((code, said), (Some(3), wanted.clone()));
    }
    let (code, said) = run!("make", &lesson, "--templates", &lesson, "--out", folder.path());
    assert_eq!((code, said), (Some(3), wanted.replace("--out", "--templates")));
}

#[test]
fn a_folder_where_a_handout_should_go() {
    let folder = tempfile::tempdir().unwrap();
    let lesson = folder.path().join("small.yaml");
    fs::write(&lesson, SMALL).unwrap();
    let taken = folder.path().join("small/cards.pdf");
    fs::create_dir_all(&taken).unwrap();
    let (code, said) = run!("make", &lesson, "--only", "cards", "--out", folder.path());
    assert_eq!(code, Some(3));
    assert!(said.contains(&format!("{}: it is a folder", taken.display())), "{said}");
}

#[test]
fn all_lessons_of_a_run_are_read_whatever_one_of_them_is() {
    let wrong = "tests/wrong/depth-negative.yaml";
    let (code, said) = run!("check", "no/such.yaml", wrong, "no/other.yaml");
    assert_eq!(code, Some(3));
    for part in ["no/such.yaml", "this cannot be less than zero", "no/other.yaml"] {
        assert!(said.contains(part), "{part} in\n{said}");
    }
    let (code, said) = run!("check", wrong, "tests/wrong/title-missing.yaml");
    assert_eq!(code, Some(1));
    assert_eq!(said.matches("error: ").count(), 2, "{said}");
}

#[test]
fn a_preview_that_cannot_begin_says_why_and_ends() {
    let folder = tempfile::tempdir().unwrap();
    let lesson = folder.path().join("small.yaml");
    let (code, said) = run!("preview", &lesson, "--no-browser");
    assert_eq!(code, Some(3));
    let (_, checked) = run!("check", &lesson);
    assert_eq!(said, checked);
    fs::write(&lesson, SMALL).unwrap();
    let taken = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let port = taken.local_addr().unwrap().port().to_string();
    let (code, said) = run!("preview", &lesson, "--no-browser", "--port", &port);
    assert_eq!(code, Some(3));
    assert!(said.contains(&format!("port {port} is taken")), "{said}");
    let (code, said) = run!("preview", &lesson, "--no-browser", "--templates", &lesson);
    assert_eq!(code, Some(3));
    assert!(said.contains("name another folder with --templates"), "{said}");
}
