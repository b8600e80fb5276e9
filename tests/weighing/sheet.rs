//! The weigh sheet: its rows, and where they stand on the pages.

use super::sample::{LESSON, plan_of, said, words, written};
use puddlebook::handout::{Block, Inline, RowKind, Sheet, Table};
use puddlebook::ink::{Faces, PathSegment, Shape};
use puddlebook::lesson::Edition;
use puddlebook::page::{self, Pages};
use puddlebook::plan::Plan;
use puddlebook::quantity::units::in_gram;

fn table(plan: &Plan) -> Table {
    let tables = written(plan, Sheet::Weigh).blocks.into_iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    let tables: Vec<Table> = tables.collect();
    let [table] = tables.try_into().unwrap();
    table
}

#[test]
fn every_cup_has_a_row_under_who_pours_it() {
    let plan = plan_of(LESSON);
    let groups = |rows: &Table| -> Vec<(String, usize)> {
        let mut groups: Vec<(String, usize)> = Vec::new();
        for row in &rows.rows {
            match row.kind {
                RowKind::Group => groups.push((words(&row.cells[0]), 0)),
                _ => groups.last_mut().unwrap().1 += 1,
            }
        }
        groups
    };
    // A set has two squares of two colours, and an oval of one colour and two.
    let set = 2 * 2 + 1 + 2;
    let wanted = [("Ana", set), ("=Bo", set), ("Demonstration", 2 * set), ("Spare", set)];
    let wanted: Vec<(String, usize)> =
        wanted.iter().map(|(who, cups)| ((*who).to_owned(), *cups)).collect();
    assert_eq!(groups(&table(&plan)), wanted);
    let numbered = plan_of(&LESSON.replace("[Ana, \"=Bo\"]", "2"));
    assert_eq!(groups(&table(&numbered))[1].0, "Student 2");
}

#[test]
fn a_row_is_filled_in_as_far_as_the_plan_knows() {
    let plan = plan_of(LESSON);
    let table = table(&plan);
    let rows: Vec<Vec<String>> = table
        .rows
        .iter()
        .skip(1)
        .take(7)
        .map(|row| row.cells.iter().map(|cell| words(cell)).collect())
        .collect();
    let mut at = 0;
    let names = ["square 1", "square 2", "oval, base", "oval, colour"];
    let layers = [
        &plan.canvases[0].layers[0],
        &plan.canvases[0].layers[0],
        &plan.canvases[1].layers[0],
        &plan.canvases[1].layers[1],
    ];
    for (name, layer) in names.iter().zip(layers) {
        for (cup_at, cup) in layer.cups.iter().enumerate() {
            let row = &rows[at];
            assert_eq!((row[0].as_str(), &row[1]), (*name, &cup.colour.name));
            assert_eq!(row[2..5], ["_", "_", "_"]);
            let planned: f64 = row[5].parse().unwrap();
            assert!((planned - in_gram(cup.paint * cup.density())).abs() <= 0.5, "{row:?}");
            assert_eq!(row[6], if cup_at == 0 { "_" } else { "" }, "one tray a layer");
            at += 1;
        }
    }
    assert_eq!(at, rows.len());
    let labels: Vec<&str> = table.rows[1].cells.iter().flatten().filter_map(label).collect();
    let wanted = ["before", "after", "used"].map(|what| format!("Ana, square 1, sea blue: {what}"));
    assert_eq!(labels[..3], wanted);
}

fn label(inline: &Inline) -> Option<&str> {
    match inline {
        Inline::Blank { label, .. } => Some(label),
        _ => None,
    }
}

#[test]
fn it_says_how_to_weigh_and_what_comes_after() {
    let text = said(&written(&plan_of(LESSON), Sheet::Weigh).blocks);
    for part in ["in steps of 1 g", "same stick", "Tared", "Wipe nothing out", "weigh.csv", "learn"]
    {
        let (low, part) = (text.to_lowercase(), part.to_lowercase());
        assert!(low.contains(&part), "{part} in\n{text}");
    }
    let finer = format!("{LESSON}mixing: {{scale step: 0.1 g}}\n");
    assert!(said(&written(&plan_of(&finer), Sheet::Weigh).blocks).contains("in steps of 0.1 g"));
}

fn pages(plan: &Plan, faces: &Faces) -> Pages {
    page::lay_out(&written(plan, Sheet::Weigh), faces)
}

/// The texts of a page, with their height on it.
fn texts(page: &page::Page) -> Vec<(f32, &str)> {
    let texts = page.marks.iter().filter_map(|mark| match &mark.shape {
        Shape::Text(run) => Some((run.origin.y, run.text.as_str())),
        Shape::Path { .. } => None,
    });
    texts.collect()
}

#[test]
fn students_stay_whole_and_rows_are_high_enough_to_write_in() {
    let faces = Faces::new();
    let names: Vec<String> = (0..17).map(|at| format!("Student{}", (b'a' + at) as char)).collect();
    let text = LESSON.replace("[Ana, \"=Bo\"]", &format!("[{}]", names.join(", ")));
    for edition in [Edition::Standard, Edition::LargePrint] {
        let mut lesson = super::sample::read(&text);
        lesson.print.edition = edition;
        let plan = puddlebook::plan::plan(lesson).unwrap();
        let pages = pages(&plan, &faces);
        assert!(pages.pages.len() > 3);
        for page in &pages.pages {
            let all = texts(page);
            assert!(all.iter().all(|(_, text)| !text.contains("continued")), "a student is parted");
            let blanks = blanks(page);
            if !blanks.is_empty() {
                for head in ["Before", "After", "Tray"] {
                    assert!(all.iter().any(|(_, text)| *text == head), "no {head} on a page");
                }
            }
            // 8 mm are 22.68 points.
            for pair in blanks.windows(2) {
                assert!(pair[1] - pair[0] >= 22.67, "rows {} points apart", pair[1] - pair[0]);
            }
        }
    }
}

/// Heights of the rules to write on, each once.
fn blanks(page: &page::Page) -> Vec<f32> {
    let mut heights: Vec<f32> = page
        .marks
        .iter()
        .filter_map(|mark| match (&mark.shape, &mark.role) {
            (Shape::Path { segments, fill: None, .. }, page::Role::Field(_)) => {
                match segments.as_slice() {
                    [PathSegment::Move(from), PathSegment::Line(to)] if from.y == to.y => {
                        Some(from.y)
                    }
                    _ => None,
                }
            }
            _ => None,
        })
        .collect();
    heights.sort_by(f32::total_cmp);
    heights.dedup_by(|a, b| (*a - *b).abs() < 0.1);
    heights
}

#[test]
fn three_hundred_students_have_a_row_for_every_cup() {
    let plan = plan_of(&LESSON.replace("[Ana, \"=Bo\"]", "300"));
    let pages = pages(&plan, &Faces::new());
    let rows: usize = pages.pages.iter().map(|page| blanks(page).len()).sum();
    assert_eq!(rows, 303 * 7);
}
