//! What the README shows is true.

use crate::lesson_tools::SMALL;
use puddlebook::lesson::{self, Style, Unread};
use std::fs;
use std::path::Path;
use std::process::Command;

const README: &str = include_str!("../README.md");

/// The text of the first fenced block that begins so.
fn block(fence: &str, first_line: &str) -> &'static str {
    let opening = format!("```{fence}\n");
    README
        .split(&opening)
        .skip(1)
        .map(|rest| rest.split("```").next().unwrap())
        .find(|body| body.starts_with(first_line))
        .unwrap_or_else(|| panic!("no {fence} block that begins with {first_line}"))
}

/// The lesson of the README, as if it stood among the demo lessons.
fn read(text: &str) -> Result<lesson::Lesson, lesson::Faults> {
    let lessons = Path::new(env!("CARGO_MANIFEST_DIR")).join("lessons");
    let here = lessons.join("my-class.yaml");
    lesson::read_with(&here, &|path| {
        if path == here {
            Ok(text.as_bytes().to_vec())
        } else {
            fs::read(path).map_err(|error| Unread::Refused(error.to_string()))
        }
    })
}

#[test]
fn the_lesson_by_example_reads_clean() {
    let lesson = read(block("yaml", "title: Two Ways")).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.canvases.len(), 1);
    assert!(!lesson.shops.is_empty());
}

#[test]
fn a_lesson_may_change_a_single_film() {
    let change = block("yaml", "techniques:");
    let text = format!("{}{change}", block("yaml", "title: Two Ways"));
    let lesson = read(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let film = lesson.canvases[0].technique.layers[0].films.medium.typical();
    assert!((puddlebook::quantity::units::in_mm(film) - 1.9).abs() < 1e-12);
}

#[test]
fn the_reserve_shown_is_the_built_in_one() {
    let lesson = block("yaml", "title: Two Ways");
    let built_in = read(lesson).unwrap_or_else(|faults| panic!("{faults}"));
    let shown = read(&format!("{lesson}{}", block("yaml", "reserve:")));
    let shown = shown.unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(shown.reserve, built_in.reserve);
}

#[test]
fn the_reserve_is_as_large_as_it_says() {
    let text = README.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("on one canvas gets 28 % more, on ten 15 %, on forty 14 %"));
    for (canvases, said) in [(1, 28.0), (10, 15.0), (40, 14.0)] {
        let lesson = block("yaml", "title: Two Ways")
            .replace("students: 8 ", &format!("students: {canvases} "))
            .replace("demonstrations: 1", "demonstrations: 0")
            .replace("spares: 1", "spares: 0");
        let mut lesson = read(&lesson).unwrap_or_else(|faults| panic!("{faults}"));
        lesson.mixing.cup_loss = puddlebook::quantity::units::ml(0.0);
        let batch = puddlebook::plan::plan(lesson).unwrap().mixing.remove(0);
        assert_eq!(batch.cups, canvases);
        let percent = 100.0 * (batch.reserve / batch.expected).value;
        assert_eq!(percent.round(), said);
    }
}

#[test]
fn the_errors_shown_are_the_errors_given() {
    let wrong = r##"title: Two Ways to Pour
units: us
class: {students: 8}
canvases:
  square:
    shape: rectangle
    width: 10 in
    height: 10,5 in
    technique: strait pour
    consistency: medium
    palette: shoreline
palettes:
  shoreline:
    colour: {blue: 60 %, sand: 44 %}
colours:
  blue: {swatch: "#1F5A7A"}
  sand: {swatch: "#D9C08A"}
"##;
    let faults = lesson::read_with(Path::new("my-class.yaml"), &|_| Ok(wrong.into())).unwrap_err();
    assert_eq!(faults.render(Style::Plain).trim_end(), block("text", "error:").trim_end());
}

#[test]
fn the_shops_by_example_sell_to_the_lesson() {
    let example = block("yaml", "title: Two Ways");
    let text = example.replace(", data/shop.yaml, data/stock.yaml", "");
    let lesson = read(&format!("{text}{}", block("yaml", "shops:")))
        .unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!((lesson.shops.len(), lesson.jars.len(), lesson.elsewhere.len()), (2, 1, 1));
    let plan = puddlebook::plan::plan(lesson).unwrap();
    assert!(!plan.order.bills.is_empty());
}

#[test]
fn a_lesson_may_ask_for_exercises() {
    for shown in [block("yaml", "exercises: 6"), block("yaml", "exercises:\n")] {
        let lesson = read(&format!("{}{shown}", block("yaml", "title: Two Ways")));
        let rule = lesson.unwrap_or_else(|faults| panic!("{faults}")).exercises.unwrap();
        assert_eq!(rule.count.get(), 6);
    }
}

#[test]
fn a_lesson_may_say_when_and_where() {
    let day = block("yaml", "timetable:");
    let text = format!("{}{day}", block("yaml", "title: Two Ways"));
    let lesson = read(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let timetable = lesson.timetable.unwrap();
    let minutes: Vec<u32> = timetable.steps.iter().map(|step| step.minutes).collect();
    assert_eq!(minutes, [15, 25, 90, 20]);
    assert!(lesson.room.table.is_some() && lesson.room.level_surface.is_some());
}

#[test]
fn a_lesson_may_have_sizes_of_its_own() {
    let sizes = block("yaml", "  sizes:").replace("\n  ", "\n");
    let text = format!("{}{}", block("yaml", "title: Two Ways"), sizes.trim());
    let lesson = read(&text).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.sizes.us.len(), 1);
    assert!(lesson.sizes.metric.len() > 1, "the other list stays");
}

#[test]
fn every_warning_stands_in_the_table() {
    let table = README.split("## What a colleague would say").nth(1).unwrap();
    let table = table.split("## Commands").next().unwrap();
    let names: Vec<&str> =
        table.lines().filter_map(|line| line.strip_prefix("| `")?.split('`').next()).collect();
    assert_eq!(names, lesson::Concern::ALL.map(lesson::Concern::word));
}

#[test]
fn a_warning_may_be_accepted() {
    let accepted = block("yaml", "accepted:");
    let lesson = read(&format!("{}{accepted}", block("yaml", "title: Two Ways")));
    let lesson = lesson.unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.accepted[0].concern, lesson::Concern::NoReserve);
}

#[test]
fn a_colour_may_carry_a_caution() {
    let colours = block("yaml", "colours:\n  signal");
    let text = block("yaml", "title: Two Ways");
    let lesson = read(&format!("{text}{colours}")).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.unused[0].name, "signal yellow");
}

#[test]
fn the_warning_shown_is_the_warning_given() {
    let folder = tempfile::tempdir().unwrap();
    let lesson = format!("{SMALL}reserve: {{enough in: 1 class out of 2}}\n");
    fs::write(folder.path().join("my-class.yaml"), lesson).unwrap();
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    let output = program.args(["check", "my-class.yaml"]).current_dir(folder.path()).output();
    let told = String::from_utf8(output.unwrap().stderr).unwrap();
    assert_eq!(told.trim_end(), block("text", "warning[").trim_end());
}
