//! The weigh sheet as a table, read back.

use super::sample::{LESSON, built_in, plan_of};
use puddlebook::handout::{measured, weigh_csv};
use puddlebook::lesson;
use puddlebook::plan::learn::learn;
use puddlebook::quantity::units::in_gram;
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
    let folder = tempfile::tempdir().unwrap();
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

/// Typed in as planned, the table comes back as weighings, and these teach what was planned.
#[test]
fn filled_in_it_can_be_learned_from() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("lesson.yaml"), LESSON).unwrap();
    let plan = plan_of(LESSON);
    let mut rows = rows(&weigh_csv(&plan, "lesson.yaml").unwrap());
    for row in &mut rows {
        let canvas = plan.canvases.iter().find(|canvas| canvas.name == row["canvas"]).unwrap();
        let layer = canvas.layers.iter().find(|layer| layer.name == row["layer"]).unwrap();
        let cup = layer.cups.iter().find(|cup| cup.colour.name == row["colour"]).unwrap();
        let left = cup.fill - cup.paint * cup.density();
        row.insert("before".to_owned(), format!("{:.3} g", in_gram(cup.fill)));
        row.insert("after".to_owned(), format!("{:.3} g", in_gram(left)));
    }
    let path = folder.path().join("weigh.csv");
    let mut table = csv::Writer::from_path(&path).unwrap();
    table.write_record(rows[0].keys()).unwrap();
    for row in &rows {
        table.write_record(row.values()).unwrap();
    }
    table.flush().unwrap();
    let weighings = lesson::read_weighings(&[path]).unwrap_or_else(|faults| panic!("{faults}"));
    let cups: usize = weighings.classes.iter().map(|class| class.cups.len()).sum();
    assert_eq!(cups, rows.len());
    let learned = learn(&weighings.classes).unwrap_or_else(|doubts| panic!("{doubts:?}"));
    assert!(learned.left_out.is_empty());
    for film in &learned.films {
        let part = (film.mean.value / film.before.typical()).value;
        assert!((part - 1.0).abs() < 0.002, "{}: {part}", film.layer);
    }
    measured(&learned, plan.lesson.print, &built_in()).unwrap_or_else(|fault| panic!("{fault}"));
}
