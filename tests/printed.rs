//! What stands on the sheets of the demo lessons, read as a proof reader would: printed
//! figures come out on a pocket calculator, and pages are filled.

use puddlebook::handout::{Block, Desk, Document, Inline, Sheet, Table, Templates};
use puddlebook::ink::{Faces, Point, Shape};
use puddlebook::lesson::{self, Language, Paper};
use puddlebook::page::{Page, Pages, Role, lay_out};
use puddlebook::plan::{self, Plan};
use puddlebook::quantity::UnitSystem;
use std::collections::BTreeMap;
use std::path::Path;

const DEMOS: [&str; 3] = ["boathouse-evening", "kiln-yard-rounds", "youth-hexagons"];

fn planned(file: &str, paper: Paper, units: Option<UnitSystem>) -> Plan {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("lessons/{file}.yaml"));
    let mut lesson = lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"));
    lesson.print.paper = paper;
    lesson.print.units = units.unwrap_or(lesson.print.units);
    plan::plan(lesson).unwrap()
}

fn templates() -> Templates {
    Templates::new(Language::English, &BTreeMap::new()).unwrap()
}

fn written(plan: &Plan, sheet: Sheet) -> Document {
    Desk::new(plan, &templates()).unwrap().write(sheet).unwrap()
}

/// The demo lessons, each in both systems of units.
fn everywhere() -> impl Iterator<Item = (&'static str, Plan)> {
    let units = [UnitSystem::Us, UnitSystem::Metric];
    let all = DEMOS.into_iter().flat_map(move |file| units.map(|units| (file, units)));
    all.map(|(file, units)| (file, planned(file, Paper::A4, Some(units))))
}

fn words(inlines: &[Inline]) -> String {
    let text = |inline: &Inline| match inline {
        Inline::Text(text) => text.clone(),
        Inline::Emphasis(inner) | Inline::Strong(inner) => words(inner),
        _ => String::new(),
    };
    inlines.iter().map(text).collect()
}

fn tables(blocks: &[Block]) -> Vec<&Table> {
    let mut all = Vec::new();
    for block in blocks {
        match block {
            Block::Table(table) => all.push(table),
            Block::Step { body, .. } | Block::Columns { body, .. } => all.extend(tables(body)),
            _ => {}
        }
    }
    all
}

fn paragraphs(blocks: &[Block]) -> Vec<String> {
    let inner = |block: &Block| match block {
        Block::Paragraph(inlines) => vec![words(inlines)],
        Block::Step { body, .. } | Block::Columns { body, .. } => paragraphs(body),
        Block::List { items, .. } => items.iter().flat_map(|item| paragraphs(item)).collect(),
        _ => Vec::new(),
    };
    blocks.iter().flat_map(inner).collect()
}

/// The numbers of a text, without those that are part of a word.
fn numbers(text: &str) -> Vec<f64> {
    let split = text.split(|c: char| !c.is_ascii_digit() && c != '.');
    split.filter_map(|part| part.trim_matches('.').parse().ok()).collect()
}

#[test]
fn grams_used_add_up_and_turn_into_the_printed_volume() {
    for (file, plan) in everywhere() {
        let answers = written(&plan, Sheet::Answers);
        let canvases = plan.canvases.len();
        let used: Vec<f64> = tables(&answers.blocks)
            .into_iter()
            .filter(|table| table.columns.last().is_some_and(|it| words(&it.heading) == "Used"))
            .map(|table| {
                let last = |row: &puddlebook::handout::Row| {
                    row.cells.last().and_then(|cell| numbers(&words(cell)).first().copied())
                };
                table.rows.iter().filter_map(last).sum()
            })
            .collect();
        assert_eq!(used.len(), canvases);
        let text = paragraphs(&answers.blocks);
        let near = text.iter().filter(|line| line.contains("all cups together near"));
        let near: Vec<f64> = near.map(|line| numbers(line)[1]).collect();
        assert_eq!(used, near, "{file}");
        let half = match plan.lesson.print.units {
            UnitSystem::Us => 0.005,
            UnitSystem::Metric => 0.05,
        };
        let turned: Vec<&str> =
            text.iter().filter_map(|it| it.strip_prefix("By plan, with more digits: ")).collect();
        assert_eq!(turned.len(), canvases);
        for line in turned {
            let [grams, weight, paint] = numbers(line)[..] else { panic!("{line}") };
            assert!((grams / weight - paint).abs() <= half + 1e-9, "{file}: {line}");
        }
    }
}

/// A student reads one figure for one cup, whichever sheet lies on the table.
#[test]
fn the_weigh_sheet_plans_the_grams_of_the_answers() {
    for (file, plan) in everywhere() {
        let grams = |sheet, head: &str| {
            let document = written(&plan, sheet);
            let with = |table: &&Table| table.columns.iter().any(|it| words(&it.heading) == head);
            let column = |table: &Table| {
                let at = table.columns.iter().position(|it| words(&it.heading) == head).unwrap();
                let cells = table.rows.iter().filter_map(|row| row.cells.get(at));
                cells.filter_map(|cell| numbers(&words(cell)).first().copied()).collect()
            };
            tables(&document.blocks).into_iter().filter(with).map(column).collect()
        };
        let answers: Vec<Vec<f64>> = grams(Sheet::Answers, "Used");
        let each = plan.lesson.canvases.iter().map(|canvas| canvas.each.get() as usize);
        let one_student: Vec<f64> =
            answers.iter().zip(each).flat_map(|(cups, each)| cups.repeat(each)).collect();
        let sheet: Vec<f64> = grams(Sheet::Weigh, "Planned").concat();
        assert!(sheet.len() > one_student.len());
        for cups in sheet.chunks(one_student.len()).take(plan.heads.students as usize) {
            assert_eq!(cups, one_student, "{file}");
        }
    }
}

/// The gap between a number and its unit is the same everywhere.
#[test]
fn units_stand_a_thin_space_behind_their_numbers() {
    for file in DEMOS {
        let plan = planned(file, Paper::A4, None);
        for sheet in [Sheet::Guide, Sheet::Answers, Sheet::Order, Sheet::Lesson] {
            let pages = laid_out(&plan, sheet);
            for (_, text) in pages.pages.iter().flat_map(texts) {
                for unit in ["mL", "L", "g", "kg", "mm", "cm", "cm²", "in", "in²", "fl", "ft²"] {
                    for gap in [' ', '\u{a0}'] {
                        let wide =
                            text.match_indices(&format!("{gap}{unit}")).any(|(at, found)| {
                                let after = text[at + found.len()..].chars().next();
                                text[..at].ends_with(|c: char| c.is_numeric())
                                    && !after.is_some_and(char::is_alphanumeric)
                            });
                        assert!(!wide, "{file}: {text:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn what_a_student_costs_adds_up() {
    for file in DEMOS {
        let sheet = written(&planned(file, Paper::A4, None), Sheet::Lesson);
        let table = tables(&sheet.blocks)
            .into_iter()
            .find(|table| words(&table.caption).starts_with("What this class pays"))
            .unwrap();
        for column in [1, 2] {
            let cents: Vec<i64> = table
                .rows
                .iter()
                .map_while(|row| numbers(&words(row.cells.get(column)?)).first().copied())
                .map(|money| (money * 100.0).round() as i64)
                .collect();
            let total = table.rows.iter().position(|row| words(&row.cells[0]) == "In all").unwrap();
            assert_eq!(cents[..total].iter().sum::<i64>(), cents[total], "{file}: {cents:?}");
        }
    }
}

#[test]
fn wash_water_adds_up() {
    for (file, plan) in everywhere() {
        let sheet = written(&plan, Sheet::Lesson);
        let said = sheet.blocks.iter().find_map(|block| match block {
            Block::KeyFigures(facts) => facts.iter().find(|fact| fact.label == "Wash water"),
            _ => None,
        });
        let said = numbers(&said.unwrap().value)[0];
        let line = paragraphs(&sheet.blocks).into_iter().find(|it| it.contains("Wash the jug"));
        let line = line.unwrap();
        let parts: f64 = line.split(": ").skip(1).map(|part| numbers(part)[0]).sum();
        assert!((parts - said).abs() < 1e-9, "{file}: {line} is not {said}");
    }
}

/// A number that ends a line is never one of something: the line after it does not begin with
/// a sign or a unit.
#[test]
fn no_line_ends_between_a_count_and_what_it_counts() {
    for file in DEMOS {
        let plan = planned(file, Paper::Letter, None);
        for sheet in [Sheet::Order, Sheet::Lesson, Sheet::Answers, Sheet::Guide] {
            let pages = laid_out(&plan, sheet);
            for page in &pages.pages {
                let runs: Vec<_> = texts(page).collect();
                for pair in runs.windows(2) {
                    let ((from, upper), (to, lower)) = (pair[0], pair[1]);
                    let is_next =
                        to.y > from.y + 1.0 && to.y < from.y + 20.0 && to.x < from.x + 1.0;
                    let unit =
                        ["×", "in ", "in² ", "fl oz", "mL ", "g ", "cm ", "days ", "buckets"]
                            .iter()
                            .any(|unit| lower.starts_with(unit));
                    let ends = upper.trim_end().ends_with(|c: char| c.is_ascii_digit());
                    assert!(!(is_next && ends && unit), "{file}: {upper:?} / {lower:?}");
                }
            }
        }
    }
}

fn laid_out(plan: &Plan, sheet: Sheet) -> Pages {
    lay_out(&written(plan, sheet), &Faces::new())
}

fn texts(page: &Page) -> impl Iterator<Item = (Point, &str)> {
    page.marks.iter().filter_map(|mark| match (&mark.shape, mark.role) {
        (Shape::Text(run), Role::Content(_)) => Some((run.origin, run.text.as_str())),
        _ => None,
    })
}

/// Mixing cards are few enough for two pages, whatever the most lines of one.
#[test]
fn cards_of_a_lesson_take_two_pages_at_most() {
    for file in DEMOS {
        for paper in [Paper::A4, Paper::Letter] {
            let pages = laid_out(&planned(file, paper, None), Sheet::Cards);
            assert!(pages.pages.len() <= 2, "{file} on {paper:?}");
        }
    }
}

/// Within a chapter no page is left empty by a fifth; a chapter ends on more than a few lines.
#[test]
fn pages_of_the_guide_are_filled() {
    for file in DEMOS {
        for paper in [Paper::A4, Paper::Letter] {
            let pages = laid_out(&planned(file, paper, None), Sheet::Guide);
            let chapters: Vec<usize> =
                pages.outline.iter().filter(|it| it.level == 1).map(|it| it.page).collect();
            let (top, foot) = (0.065 * pages.size.1, 0.93 * pages.size.1);
            // The last page has no chapter after it, but ends one.
            let ends =
                |page: usize| chapters.contains(&(page + 1)) || page + 1 == pages.pages.len();
            for (at, page) in pages.pages.iter().enumerate().skip(chapters[0]) {
                let low = texts(page).map(|(origin, _)| origin.y).fold(0.0, f32::max);
                let filled = (low - top) / (foot - top);
                let least = if ends(at) { 0.25 } else { 0.8 };
                assert!(filled > least, "{file} on {paper:?}, page {}: {filled}", at + 1);
            }
        }
    }
}
