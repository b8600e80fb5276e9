//! Wrong weighings, each named for its mistake, and what the teacher is told.

use super::{read_files, read_text};
use crate::lesson_tools::{files_in, in_project};
use proptest::prelude::*;
use puddlebook::lesson::{
    Faults, ProblemKind, Style, Unread, Weighings, read_weighings, read_weighings_with,
};
use puddlebook::quantity::units::gram;
use std::path::{Path, PathBuf};

const FOLDER: &str = "tests/wrong_weighings";

fn read_wrong(name: &str) -> Result<Weighings, Faults> {
    let folder = in_project(FOLDER);
    let load = |path: &Path| std::fs::read(folder.join(path)).map_err(|_| Unread::NotFound);
    read_weighings_with(&[PathBuf::from(name)], &load)
}

fn all() -> Vec<PathBuf> {
    files_in(FOLDER, "yaml").into_iter().chain(files_in(FOLDER, "csv")).collect()
}

#[test]
fn every_wrong_file_is_answered() {
    let files = all();
    assert!(files.len() >= 80);
    for path in files {
        let file_name = path.file_name().unwrap().to_str().unwrap();
        let faults = match read_wrong(file_name) {
            Ok(_) => panic!("{file_name} reads as right"),
            Err(faults) => faults,
        };
        for problem in faults.problems() {
            assert!(problem.place.is_some(), "{file_name}: no place");
            assert_ne!(problem.kind, ProblemKind::Unexplained, "{file_name}");
        }
        let name = path.file_stem().unwrap().to_str().unwrap();
        insta::with_settings!({
            snapshot_path => "../wrong_weighings",
            prepend_module_to_snapshot => false,
            omit_expression => true,
        }, {
            insta::assert_snapshot!(name, faults.render(Style::Plain));
        });
    }
}

#[test]
fn one_mistake_is_told_once() {
    for path in all() {
        let text = std::fs::read_to_string(&path).unwrap();
        let said = text.strip_prefix("# ").and_then(|text| text.split_once(" mistakes"));
        let said = said.and_then(|(count, _)| count.parse().ok());
        let name = path.file_name().unwrap().to_str().unwrap();
        let faults = read_wrong(name).unwrap_err();
        assert_eq!(faults.problems().len(), said.unwrap_or(1), "{name}:\n{faults}");
    }
}

#[test]
fn a_cup_that_stands_in_two_files_is_shown_in_both() {
    let class = "lesson: lessons/small.yaml\nscale: 1 g\ncups:\n  - {student: Ana, canvas: square, \
                 colour: white, before: 91 g, after: 45 g}\n";
    let table =
        "lesson,student,canvas,colour,before,after\n../lessons/small.yaml,Ana,square,white,\
                 91 g,45 g\n"
            .replace("after\n", "after,scale\n")
            .replace("45 g\n", "45 g,1 g\n");
    let files = [("class.yaml", class.as_bytes()), ("more/class.csv", table.as_bytes())];
    let faults = read_files(&files).unwrap_err();
    insta::assert_snapshot!(faults, @r#"
    error: this cup of white is weighed twice
     --> more/class.csv:2:34
      |
    2 | ../lessons/small.yaml,Ana,square,white,91 g,45 g,1 g
      |                                  ^^^^^ again
      |
      = note: first here: class.yaml:4:44
      = note: in row 2 > colour
      = help: another canvas of the same kind is another piece: piece: 2
      = help: another class is another day: give each its date
    "#);
}

#[test]
fn a_doubt_is_told_at_its_row() {
    let class = "lesson: lessons/small.yaml\nscale: 0.1 oz\ncups:\n  - {student: Ana, canvas: \
                 square, colour: white, before: 3.2 g, after: 1.6 g}\n";
    let weighings = read_text("class.yaml", class).unwrap();
    let place = weighings.classes[0].cups[0].place.clone();
    let light = ProblemKind::OuncesAsGrams { weighed: gram(3.2), planned: gram(90.0) };
    let faults = weighings.faults(vec![(place, light)]);
    insta::assert_snapshot!(faults, @r#"
    error: this cup weighs 3.2 g where 90 g were planned: about 28 times too light
     --> class.yaml:4:59
      |
    4 |   - {student: Ana, canvas: square, colour: white, before: 3.2 g, after: 1.6 g}
      |                                                           ^^^^^ grams or ounces?
      |
      = note: in cups > no. 1
      = help: was the scale set to ounces? then write oz; this one says grams
      = help: if it is right, say so in this row: checked: yes
    "#);
    let table = "lesson,student,canvas,colour,before,after,scale\nlessons/small.yaml,Ana,square,\
                 white,91 oz,45 oz,0.1 oz\n";
    let weighings = read_text("class.csv", table).unwrap();
    let place = weighings.classes[0].cups[0].place.clone();
    let heavy = ProblemKind::GramsAsOunces { weighed: gram(2580.0), planned: gram(90.0) };
    insta::assert_snapshot!(weighings.faults(vec![(place, heavy)]), @r#"
    error: this cup weighs 2580 g where 90 g were planned: about 28 times too heavy
     --> class.csv:2:37
      |
    2 | lessons/small.yaml,Ana,square,white,91 oz,45 oz,0.1 oz
      |                                     ^^^^^ grams or ounces?
      |
      = note: in row 2
      = help: was the scale set to grams? then write g; this one says ounces
      = help: if it is right, say so in this row: checked: yes
    "#);
}

#[test]
fn a_file_that_cannot_be_read_is_told_apart() {
    let faults = read_weighings(&[PathBuf::from("no/such.yaml")]).unwrap_err();
    assert!(faults.is_unread());
    let faults = faults.to_string();
    assert!(faults.contains("no/such.yaml") && !faults.contains("data files"), "{faults}");
    assert!(!read_wrong("lesson-not-there.yaml").unwrap_err().is_unread(), "the weighings name it");
    let latin = b"student,caf\xe9\n".to_vec();
    assert!(read_files(&[("class.csv", &latin)]).unwrap_err().is_unread());
}

/// A right table.
const TABLE: &str = "lesson,date,student,canvas,piece,layer,colour,before,after,tray,scale,note\n\
                     lessons/small.yaml,2026-03-14,Ana,square,,,white,91,45,,1 g,\"a, b\"\n\
                     lessons/small.yaml,2026-03-14,Bo,pair,2,,blue,35.5,33,12,0.5 g,\n";

proptest! {
    #[test]
    fn no_table_breaks_the_reading(text in "([a-z0-9]{0,4}[,;\"'\n\r ½g]{0,3}){0,40}") {
        if let Err(faults) = read_text("class.csv", &text) {
            prop_assert!(!faults.render(Style::Plain).is_empty());
            prop_assert!(faults.problems().iter().all(|told| told.kind != ProblemKind::Unexplained));
        }
    }

    #[test]
    fn no_slip_breaks_the_reading_of_a_table(
        at in 0..TABLE.len(),
        out in 0_usize..12,
        piece in "[a-z0-9,;\"\n ½-]{0,6}",
    ) {
        let end = (at + out).min(TABLE.len());
        let text = format!("{}{piece}{}", &TABLE[..at], &TABLE[end..]);
        if let Err(faults) = read_text("class.csv", &text) {
            prop_assert!(!faults.render(Style::Coloured).is_empty());
            for problem in faults.problems() {
                prop_assert!(problem.kind != ProblemKind::Unexplained, "{}", text);
            }
        }
    }
}
