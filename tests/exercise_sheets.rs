//! Exercises as students and the teacher read them: worked again from the printed words.

use crate::lesson_tools::in_project;
use puddlebook::handout::{Block, Desk, Document, Inline, RowKind, Sheet, Templates};
use puddlebook::lesson::{self, ExerciseLevel, ExerciseRule, Lesson, Students};
use puddlebook::plan;
use puddlebook::quantity::UnitSystem;
use std::collections::BTreeMap;
use std::num::NonZeroU32;

fn shipped(name: &str) -> Lesson {
    lesson::read(&in_project("lessons").join(name)).unwrap_or_else(|faults| panic!("{faults}"))
}

fn with_exercises(mut lesson: Lesson, count: u32, level: Option<ExerciseLevel>) -> Lesson {
    let count = NonZeroU32::new(count).unwrap();
    lesson.exercises = Some(ExerciseRule { count, level, seed: "harbour".into() });
    lesson
}

/// Worksheets and answer copy.
fn written(lesson: Lesson) -> [Document; 2] {
    let plan = plan::plan(lesson).unwrap_or_else(|reason| panic!("{reason}"));
    let templates = Templates::new(plan.lesson.print.language, &BTreeMap::new()).unwrap();
    let desk = Desk::new(&plan, &templates).unwrap();
    [Sheet::Worksheet, Sheet::Answers].map(|sheet| desk.write(sheet).unwrap())
}

fn words(inlines: &[Inline]) -> String {
    let one = |inline: &Inline| match inline {
        Inline::Text(text) => text.clone(),
        Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
            words(inner)
        }
        Inline::Blank { .. } => "_".to_owned(),
        Inline::Break => " / ".to_owned(),
        _ => String::new(),
    };
    inlines.iter().map(one).collect()
}

/// The pages of exercises: whose, and each exercise as heading and text.
fn pages(document: &Document) -> Vec<(String, Vec<(String, String)>)> {
    let mut pages: Vec<(String, Vec<_>)> = Vec::new();
    for block in &document.blocks {
        match block {
            Block::Section { header } => pages.push((header.1.clone(), Vec::new())),
            Block::Step { heading, body, .. } => {
                let text = body.iter().map(|block| match block {
                    Block::Paragraph(inlines) => words(inlines),
                    _ => String::new(),
                });
                let text = text.collect::<Vec<_>>().join(" / ");
                pages.last_mut().unwrap().1.push((words(heading), text));
            }
            _ => {}
        }
    }
    pages.retain(|(whose, _)| whose.ends_with(": exercises"));
    pages
}

/// The answers by student: each row as its cells.
fn answers(document: &Document) -> Vec<(String, Vec<Vec<String>>)> {
    let mut tables = document.blocks.iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    let mut students: Vec<(String, Vec<_>)> = Vec::new();
    for row in &tables.next_back().unwrap().rows {
        let cells: Vec<String> = row.cells.iter().map(|cell| words(cell)).collect();
        match row.kind {
            RowKind::Group => students.push((cells[0].clone(), Vec::new())),
            _ => students.last_mut().unwrap().1.push(cells),
        }
    }
    students
}

/// The numbers of a text, fractions of an inch among them.
fn numbers(text: &str) -> Vec<f64> {
    let fractions = [("½", 0.5), ("¼", 0.25), ("¾", 0.75)];
    let mut found = Vec::new();
    let mut open = String::new();
    for c in text.chars().chain([' ']) {
        let fraction = fractions.iter().find(|(sign, _)| sign.starts_with(c));
        match (c, fraction) {
            ('0'..='9' | '.', _) => open.push(c),
            (_, Some((_, part))) => {
                found.push(open.parse().unwrap_or(0.0) + part);
                open.clear();
            }
            _ => {
                found.extend(open.trim_end_matches('.').parse::<f64>());
                open.clear();
            }
        }
    }
    found
}

/// What sheets with rounds say.
const PI_ON_PAPER: &str = "Take 3.14 for π.";

/// Face + edge of a canvas as it is described.
fn painted(canvas: &str) -> f64 {
    let sizes = numbers(canvas);
    let depth = if canvas.contains("flat") { 0.0 } else { sizes[sizes.len() - 1] };
    if canvas.starts_with("Rectangle") {
        sizes[0] * sizes[1] + 2.0 * (sizes[0] + sizes[1]) * depth
    } else if canvas.starts_with("Round") {
        let pi = numbers(PI_ON_PAPER)[0];
        pi * sizes[0] / 2.0 * sizes[0] / 2.0 + pi * sizes[0] * depth
    } else {
        assert!(canvas.starts_with("Hexagon"), "{canvas}");
        6.0 * sizes[0] * sizes[1] / 2.0 + 6.0 * sizes[0] * depth
    }
}

/// The answer, worked from what the student reads: "1 fl oz covers about 25 in²" and so on.
fn worked((heading, text): &(String, String)) -> f64 {
    let given = numbers(text);
    if !text.contains("covers about") {
        return painted(heading);
    }
    let (with, area) = (given[0], given[1]);
    if heading.starts_with("From paint") {
        let (paint, width) = (given[2], given[3]);
        return paint / with * area / width;
    }
    let paint = painted(heading) / area * with;
    match text.contains("Share of") {
        // Past noise of binary arithmetic.
        true => (paint * given[2] / 100.0 * given[4] - 1e-9).ceil(),
        false => paint,
    }
}

/// Holds what the answer copy says against the exercises, worked again; gives how many.
fn compare([worksheets, copy]: &[Document; 2]) -> usize {
    let (pages, answers) = (pages(worksheets), answers(copy));
    assert_eq!(pages.len(), answers.len());
    for ((whose, exercises), (student, rows)) in pages.iter().zip(&answers) {
        assert_eq!(whose, &format!("{student}: exercises"));
        assert_eq!(exercises.len(), rows.len());
        for (exercise, row) in exercises.iter().zip(rows) {
            let answer = numbers(&row[row.len() - 1])[0];
            let worked = worked(exercise);
            assert!((answer - worked).abs() < 1e-9, "{exercise:?} {row:?} {worked}");
            // The last two numbers say between what it lies.
            let text = numbers(&exercise.1);
            let (low, high) = (text[text.len() - 2], text[text.len() - 1]);
            assert!(low < answer && answer < high, "{exercise:?}: {answer}");
        }
    }
    pages.iter().map(|(_, exercises)| exercises.len()).sum()
}

#[test]
fn answers_are_what_the_printed_numbers_give() {
    assert_eq!(compare(&written(shipped("youth-hexagons.yaml"))), 12 * 6);
    let metric = |name: &str| {
        let mut lesson = shipped(name);
        lesson.print.units = UnitSystem::Metric;
        lesson
    };
    for level in [None, Some(ExerciseLevel::Area), Some(ExerciseLevel::Colours)] {
        for lesson in [
            shipped("boathouse-evening.yaml"),
            metric("boathouse-evening.yaml"),
            metric("youth-hexagons.yaml"),
            // With rounds, ovals and a technique of two layers.
            shipped("kiln-yard-rounds.yaml"),
        ] {
            let students = match &lesson.class.students {
                Students::Count(count) => count.get() as usize,
                Students::Named(names) => names.len(),
            };
            assert_eq!(compare(&written(with_exercises(lesson, 9, level))), students * 9);
        }
    }
}

#[test]
fn named_students_find_their_exercises_behind_their_own_sheets() {
    let lesson = with_exercises(shipped("kiln-yard-rounds.yaml"), 2, None);
    let Students::Named(names) = lesson.class.students.clone() else { panic!("names") };
    let [worksheets, copy] = written(lesson);
    let heads = worksheets.blocks.iter().filter_map(|block| match block {
        Block::Section { header } => Some(header.1.clone()),
        _ => None,
    });
    let wished = names
        .iter()
        .flat_map(|name| ["disc", "cameo", "exercises"].map(|what| format!("{name}: {what}")));
    assert_eq!(heads.collect::<Vec<_>>(), wished.collect::<Vec<_>>());
    let students = answers(&copy).into_iter().map(|(student, _)| student);
    assert_eq!(students.collect::<Vec<_>>(), names);
}

#[test]
fn the_seed_stands_on_each_page_and_on_the_answer_copy() {
    let lesson = with_exercises(shipped("boathouse-evening.yaml"), 1, None);
    let [worksheets, copy] = written(lesson);
    let notes = worksheets.blocks.iter().filter(|block| match block {
        Block::SmallPrint(inlines) => words(inlines).contains("“harbour”"),
        _ => false,
    });
    assert_eq!(notes.count(), 8, "one for each of eight students");
    let heads = copy.blocks.iter().filter_map(|block| match block {
        Block::Masthead { facts, .. } => facts.iter().find(|fact| fact.label == "Seed"),
        _ => None,
    });
    assert_eq!(heads.map(|fact| fact.value.as_str()).collect::<Vec<_>>(), ["harbour"]);
}

#[test]
fn sheets_with_rounds_say_what_pi_is() {
    let lesson = with_exercises(shipped("kiln-yard-rounds.yaml"), 6, Some(ExerciseLevel::Area));
    let [worksheets, _] = written(lesson);
    let notes = worksheets.blocks.iter().filter_map(|block| match block {
        Block::SmallPrint(inlines) => Some(words(inlines)),
        _ => None,
    });
    let notes: Vec<String> = notes.filter(|note| note.contains("Edge = way round")).collect();
    assert_eq!(notes.len(), 6);
    assert!(
        notes.iter().all(|note| note.replace('\u{a0}', " ").contains(PI_ON_PAPER)),
        "{notes:?}"
    );
}

#[test]
fn a_seed_of_its_own_is_made_of_title_and_date() {
    let lesson = shipped("youth-hexagons.yaml");
    assert_eq!(lesson.exercises.unwrap().seed, "Honeycomb Pours, 2026-06-20");
}

/// Three hundred students with names: a sheet and a page each, all of them different.
#[test]
fn a_large_class_has_a_page_for_each() {
    let mut lesson = with_exercises(shipped("youth-hexagons.yaml"), 6, None);
    lesson.class.students = Students::Named((0..300).map(|n| format!("Nim {n}")).collect());
    let documents = written(lesson);
    assert_eq!(compare(&documents), 1800);
    let mut all: Vec<_> = pages(&documents[0]).into_iter().map(|(_, page)| page).collect();
    all.sort();
    all.dedup();
    assert_eq!(all.len(), 300);
}

#[test]
fn without_exercises_nothing_is_said_of_them() {
    let documents = written(shipped("boathouse-evening.yaml"));
    for document in documents {
        assert!(!format!("{:?}", document.blocks).contains("xercise"));
    }
}

/// What a step says of its answer: "between 80 and 150 in²", "from 140 to 190 g ... is usual".
fn range(step: &str) -> (f64, f64) {
    let (_, told) = step.rsplit_once("etween ").or_else(|| step.rsplit_once("rom ")).unwrap();
    let ends = numbers(told);
    (ends[0], ends[1])
}

/// Heading and text of each step, tables left out.
fn steps(document: &Document) -> Vec<(String, String)> {
    let steps = document.blocks.iter().filter_map(|block| match block {
        Block::Step { heading, body, .. } => {
            let text = body.iter().map(|block| match block {
                Block::Paragraph(inlines) => words(inlines),
                _ => String::new(),
            });
            Some((words(heading), text.collect::<Vec<_>>().join(" / ")))
        }
        _ => None,
    });
    steps.collect()
}

#[test]
fn what_worksheets_call_plausible_holds_what_is_planned() {
    for name in ["boathouse-evening.yaml", "youth-hexagons.yaml", "kiln-yard-rounds.yaml"] {
        let mut lesson = shipped(name);
        lesson.exercises = None;
        let plan = plan::plan(lesson.clone()).unwrap();
        let us = lesson.print.units == UnitSystem::Us;
        let [worksheets, _] = written(lesson);
        let steps = steps(&worksheets);
        for (at, canvas) in plan.canvases.iter().enumerate() {
            let of = |number: usize| range(&steps[10 * at + number - 1].1);
            let holds = |(low, high): (f64, f64), value: f64| {
                assert!(low < value && value < high, "{name}, {}: {value}", canvas.name);
            };
            let painted = canvas.areas.painted.value;
            holds(of(3), if us { painted / 0.0254 / 0.0254 } else { painted * 1e4 });
            let paint = canvas.paint.typical().value;
            holds(of(5), if us { paint / 29.573_529_562_5e-6 } else { paint * 1e6 });
            holds(of(8), canvas.paint_mass().value * 1e3);
        }
    }
}
