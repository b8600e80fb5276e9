//! The tables that are written: no cell runs in a spreadsheet, numbers stay numbers, and what is
//! written is read again.

use crate::lesson_tools::read_text;
use puddlebook::handout::{Templates, order_csv, used_csv, weigh_csv};
use puddlebook::lesson::{Language, Lesson, Unread, read_weighings_with};
use puddlebook::plan::{self, Errand, learn::learn};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Names that a spreadsheet would take for formulas, in every place that reaches a table.
const LESSON: &str = r##"title: "=HYPERLINK(\"x\")"
date: 2026-04-11
class: {students: ["@Ana", "-Bo", "＝Cem", "'=Dee", "Eve"]}
canvases:
  "+square":
    {shape: rectangle, width: 10 in, height: 10 in, depth: 0, technique: "-pour", consistency: "@mix", palette: "=p"}
palettes:
  "=p": {"+layer": {"=1+1": 40 %, "\u200B=blue": the rest}}
colours:
  "=1+1": {swatch: "#1F5A7A", paint: "=cmd|'/C calc'!A0"}
  "\u200B=blue": {swatch: "#F4F2EC", paint: "+paint"}
mixes:
  "@mix": {consistency: thin, by: volume, parts: {paint: 1}}
techniques:
  "-pour":
    summary: A pour of names.
    layers:
      "+layer":
        basis: invented
        thin: {low: 1 mm, typical: 1.2 mm, high: 1.4 mm}
        medium: {low: 1.2 mm, typical: 1.4 mm, high: 1.6 mm}
        thick: {low: 1.4 mm, typical: 1.6 mm, high: 1.8 mm}
shops:
  "=shop (invented)":
    currency: USD
    delivery: 4
    packs:
      - {item: "=cmd|'/C calc'!A0", size: 8 fl oz, price: 7.50}
      - {item: "+paint", size: 8 fl oz, price: 7.50}
"##;

fn lesson() -> Lesson {
    read_text(LESSON).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The rows of a table, head first.
fn rows(table: &[u8]) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(table);
    let rows = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect());
    rows.collect()
}

/// Asserts that a cell is a number or no formula.
fn harmless(table: &[u8]) {
    let mut texts = 0;
    for row in rows(table).iter().skip(1) {
        for cell in row.iter().filter(|cell| cell.parse::<f64>().is_err()) {
            let seen = cell.trim_start_matches(|c: char| c.is_whitespace() || c == '\u{feff}');
            assert!(!seen.starts_with(['=', '+', '-', '@', '＝', '＋', '－', '＠']), "{cell:?}");
            assert!(!cell.starts_with(['\t', '\r', '\n']), "{cell:?}");
            texts += usize::from(cell.starts_with('\''));
        }
    }
    assert!(texts > 0, "some were made texts");
}

#[test]
fn the_order_and_the_cups_run_nowhere() {
    let plan = plan::plan(lesson()).unwrap();
    let templates = Templates::new(Language::English, &BTreeMap::new()).unwrap();
    let order = order_csv(&[Errand::of(&plan)], templates.words()).unwrap();
    harmless(&order);
    assert!(String::from_utf8(order).unwrap().contains("'=cmd|'/C calc'!A0"));
}

#[test]
fn a_weigh_sheet_of_formulas_is_read_as_it_was_written() {
    let plan = plan::plan(lesson()).unwrap();
    let table = weigh_csv(&plan, "-lessons/=x.yaml").unwrap();
    harmless(&table);
    let filled = String::from_utf8(table).unwrap().replace(",,,,1 g", ",50,40,,1 g");
    let load = |path: &Path| match path.to_str() {
        Some("cups.csv") => Ok(filled.clone().into_bytes()),
        Some("-lessons/=x.yaml") => Ok(LESSON.as_bytes().to_vec()),
        _ => Err(Unread::NotFound),
    };
    let weighings = read_weighings_with(&[PathBuf::from("cups.csv")], &load);
    let weighings = weighings.unwrap_or_else(|faults| panic!("{faults}"));
    let cups = &weighings.classes[0].cups;
    assert_eq!(cups.len(), 10);
    let students: Vec<&str> = cups.iter().step_by(2).map(|cup| cup.student.as_str()).collect();
    assert_eq!(students, ["@Ana", "-Bo", "＝Cem", "'=Dee", "Eve"]);
    let used = used_csv(&learn(&weighings.classes).unwrap()).unwrap();
    harmless(&used);
    let least: Vec<String> = rows(&used).into_iter().skip(1).map(|row| row[10].clone()).collect();
    assert!(least.iter().all(|cell| cell == "9"), "numbers stay numbers: {least:?}");
}
