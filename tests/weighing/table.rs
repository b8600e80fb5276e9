//! The weigh sheet as a table, read back.

use super::sample::{LESSON, plan_of};
use crate::lesson_tools::in_project;
use puddlebook::handout::weigh_csv;
use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

fn rows(bytes: &[u8]) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::Reader::from_reader(bytes);
    reader.deserialize().collect::<Result<_, _>>().unwrap()
}

#[test]
fn the_table_has_the_cups_of_the_sheet() {
    let bytes = weigh_csv(&plan_of(LESSON), "../lesson.yaml").unwrap();
    let text = String::from_utf8(bytes.clone()).unwrap();
    // RFC 4180, section 2: lines end with CRLF, every one has as many fields.
    assert_eq!(
        text.lines().next().unwrap(),
        "lesson,date,student,canvas,piece,technique,consistency,layer,colour,before,after,tray,\
         scale,checked,note"
    );
    assert_eq!(text.matches("\r\n").count(), text.matches('\n').count());
    let rows = rows(&bytes);
    // Two students, two demonstrations and a spare with seven cups each.
    assert_eq!(rows.len(), 5 * 7);
    for row in &rows {
        for (column, wanted) in [
            ("lesson", "../lesson.yaml"),
            ("date", "2026-03-14"),
            ("before", ""),
            ("after", ""),
            ("tray", ""),
            ("scale", "1 g"),
        ] {
            assert_eq!(row[column], wanted);
        }
    }
    let cell = |at: usize, column: &str| rows[at][column].as_str();
    assert_eq!((cell(0, "student"), cell(7, "student")), ("Ana", "'=Bo"));
    let first = ["canvas", "piece", "technique", "consistency", "layer", "colour"];
    assert_eq!(
        first.map(|column| cell(2, column)),
        ["square", "2", "spun pour", "thin", "colour", "sea blue"]
    );
    assert_eq!(
        first.map(|column| cell(4, column)),
        ["oval", "", "brushed base with spun colour", "thin", "base", "white"]
    );
    // A cup is named by who, which canvas, which of several, layer and colour.
    let key = |row: &BTreeMap<String, String>| {
        ["student", "canvas", "piece", "layer", "colour"].map(|column| row[column].clone())
    };
    let distinct: std::collections::BTreeSet<_> = rows.iter().map(key).collect();
    assert_eq!(distinct.len(), rows.len());
    let sets = rows.iter().filter(|row| row["student"] == "demonstration");
    let pieces: Vec<&str> = sets
        .filter(|row| row["canvas"] == "square" && row["colour"] == "white")
        .map(|row| row["piece"].as_str())
        .collect();
    assert_eq!(pieces, ["1", "2", "3", "4"]);
}

#[test]
fn make_puts_it_beside_the_sheet_and_it_leads_back_to_the_lesson() {
    let folder =
        tempfile::tempdir_in(in_project("target")).unwrap_or_else(|_| tempfile::tempdir().unwrap());
    let lesson = folder.path().join("small.yaml");
    std::fs::write(&lesson, LESSON).unwrap();
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    let done = program
        .args([Path::new("make"), Path::new("small.yaml")])
        .args(["--only", "weigh", "--out", "out"])
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
    let beside = folder.path().join("out/small");
    assert!(beside.join("weigh.pdf").is_file());
    let rows = rows(&std::fs::read(beside.join("weigh.csv")).unwrap());
    assert_eq!(rows[0]["lesson"], "../../small.yaml");
    assert_eq!(std::fs::read_to_string(beside.join(&rows[0]["lesson"])).unwrap(), LESSON);
}
