//! Where the file goes, and that none is lost for it.

use super::script::Script;
use crate::lesson_tools::read_text;
use puddlebook::cli::start::{Existing, Given, Stop, Wanted, begin};
use std::fs;
use std::path::{Path, PathBuf};

fn wanted(path: &Path) -> Wanted {
    Wanted { lesson: Some(path.to_owned()), existing: Existing::Stays }
}

fn files(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> =
        entries.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

#[test]
fn a_file_that_is_there_stays_unless_somebody_says_replace() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("my class 🌊.yaml");
    let begin = |script: &mut Script| begin(script, &Given::default(), wanted(&path), "");
    let mut script = Script::default();
    assert_eq!(begin(&mut script).unwrap(), path);
    assert!(read_text(&fs::read_to_string(&path).unwrap()).is_ok());
    fs::write(&path, "mine").unwrap();

    // Before anything else is asked; what is offered keeps it.
    let mut script = Script::default();
    let other = begin(&mut script).unwrap();
    assert_eq!(script.asked[0], "replace");
    assert_eq!(other, folder.path().join("my class 🌊-2.yaml"));
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");

    let mut script = Script::of(&[("replace", "leave")]);
    assert!(matches!(begin(&mut script), Err(Stop::Left)));
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");

    let mut script = Script::of(&[("replace", "replace it")]);
    assert_eq!(begin(&mut script).unwrap(), path);
    assert!(read_text(&fs::read_to_string(&path).unwrap()).is_ok());
    assert_eq!(files(folder.path()), ["my class 🌊-2.yaml", "my class 🌊.yaml"]);
}

#[test]
fn who_leaves_in_the_middle_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("deeper/lesson.yaml");
    let mut script = Script::default().leaving_at("cupboard");
    let left = begin(&mut script, &Given::default(), wanted(&path), "");
    assert!(matches!(left, Err(Stop::Left)));
    assert_eq!(files(folder.path()), Vec::<String>::new());
}

#[test]
fn a_place_that_will_not_do_costs_no_answer() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a-file");
    fs::write(&file, "mine").unwrap();
    let below = file.join("lesson.yaml").display().to_string();
    let good = folder.path().join("good.yaml").display().to_string();
    let inside = folder.path().display().to_string();
    let mut script = Script::of(&[
        ("title", "Kept"),
        ("lesson", &below),
        ("lesson", &inside),
        ("lesson", &good),
    ]);
    let wanted = Wanted { lesson: None, existing: Existing::Stays };
    let written = begin(&mut script, &Given::default(), wanted, "").unwrap();
    assert_eq!(written, PathBuf::from(&good));
    let told: Vec<_> = script.wrong.iter().map(|(_, why)| why.as_str()).collect();
    assert!(told[0].contains("could not write"), "{told:?}");
    assert!(told[1].contains("is a folder"), "{told:?}");
    assert_eq!(script.asked.iter().filter(|option| **option == "title").count(), 1);
    let lesson = read_text(&fs::read_to_string(good).unwrap()).unwrap();
    assert_eq!(lesson.heading.title, "Kept");
    assert_eq!(files(folder.path()), ["a-file", "good.yaml"]);
}
