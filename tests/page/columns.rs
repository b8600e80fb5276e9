//! Short lines in columns.

use super::sample::{document, heading, paragraph, runs, table, text};
use puddlebook::handout::{Block, Document, Form, HeadingLevel, Inline, Measure};
use puddlebook::ink::Faces;
use puddlebook::lesson::Edition;
use puddlebook::page::{Pages, lay_out};

fn listed(items: usize, before: usize, edition: Edition) -> Pages {
    let items = (0..items)
        .map(|item| vec![Block::Paragraph(vec![Inline::Tick, text(&format!(" thing{item}"))])])
        .collect();
    let mut blocks: Vec<Block> = (0..before).map(|_| paragraph("A line.")).collect();
    blocks.push(heading(HeadingLevel::Two, "Cupboard", "cupboard"));
    blocks.push(Block::Columns {
        count: 2,
        measure: Measure::Text,
        body: vec![Block::List { start: None, items }],
    });
    lay_out(&Document { edition, ..document(Form::Sheet, blocks) }, &Faces::new())
}

/// Page, x and y of every item in the order in which they are heard.
fn places(pages: &Pages) -> Vec<(usize, f32, f32)> {
    let mut all = Vec::new();
    for (number, page) in pages.pages.iter().enumerate() {
        for (run, _) in runs(page).filter(|(run, _)| run.text.starts_with("thing")) {
            assert_eq!(run.text, format!("thing{}", all.len()), "heard in order");
            all.push((number, run.origin.x, run.origin.y));
        }
    }
    all
}

#[test]
fn a_list_in_columns_is_read_down_and_stays_with_its_heading() {
    for edition in [Edition::Standard, Edition::LargePrint] {
        for before in 0..45 {
            let pages = listed(9, before, edition);
            let places = places(&pages);
            assert_eq!(places.len(), 9);
            let (page, left, top) = places[0];
            assert!(places.iter().all(|place| place.0 == page), "{before} before");
            assert!(runs(&pages.pages[page]).any(|(run, _)| run.text == "Cupboard"));
            let second = places.iter().position(|place| place.1 > left + 100.0);
            assert_eq!(second, Some(5), "five and four");
            assert!((places[5].2 - top).abs() < 0.01, "the columns start level");
        }
    }
}

#[test]
fn columns_higher_than_a_page_go_on_over_pages() {
    let pages = listed(400, 0, Edition::Standard);
    let places = places(&pages);
    assert_eq!(places.len(), 400);
    assert!(pages.pages.len() > 3);
    assert!(places.iter().all(|place| place.2 < pages.size.1 - 52.0));
}

#[test]
fn bold_words_over_a_list_do_not_end_a_column() {
    let list = |from: usize, count: usize| {
        let item =
            |n: usize| vec![Block::Paragraph(vec![Inline::Tick, text(&format!(" item{n}"))])];
        Block::List { start: None, items: (from..from + count).map(item).collect() }
    };
    for edition in [Edition::Standard, Edition::LargePrint] {
        for first in 3..16 {
            let over = Block::Paragraph(vec![Inline::Strong(vec![text("Teacher")])]);
            let body = vec![list(0, first), over, list(first, 12)];
            let blocks = vec![Block::Columns { count: 2, measure: Measure::Text, body }];
            let made =
                lay_out(&Document { edition, ..document(Form::Sheet, blocks) }, &Faces::new());
            let find = |words: &str| {
                let (run, _) =
                    runs(&made.pages[0]).find(|(run, _)| run.text.trim() == words).unwrap();
                run.origin
            };
            let (over, item) = (find("Teacher"), find(&format!("item{first}")));
            assert!(item.y > over.y, "{first} before");
            assert!((item.x - over.x).abs() < 60.0, "{first} before");
        }
    }
}

#[test]
fn wide_columns_take_the_width_of_the_page_and_start_under_its_notes() {
    let columns = |measure| {
        let items = (0..8).map(|n| vec![paragraph(&format!("answer{n} is here"))]).collect();
        let blocks = vec![
            Block::Aside(vec![paragraph(&"A note of some length. ".repeat(12))]),
            paragraph("Beside the note."),
            Block::Columns { count: 2, measure, body: vec![Block::List { start: Some(1), items }] },
        ];
        let made = lay_out(&document(Form::Book, blocks), &Faces::new());
        let page = &made.pages[0];
        let place = |start: &str| {
            let of = runs(page).filter(|(run, _)| run.text.contains(start));
            of.map(|(run, _)| run.origin).last().unwrap()
        };
        (place("answer0"), place("answer7"), place("length").y)
    };
    let (first, last, _) = columns(Measure::Text);
    let (wide_first, wide_last, note) = columns(Measure::Page);
    assert!(wide_last.x - wide_first.x > last.x - first.x + 50.0, "columns further apart");
    assert!(wide_first.y > note, "no words beside the note");
}

#[test]
fn a_table_stays_in_one_column_while_it_is_no_higher() {
    let words = |words: &str| vec![Block::Paragraph(vec![text(words)])];
    let list = |count: usize| Block::List { start: None, items: vec![words("note"); count] };
    for rows in [3, 8, 20] {
        let steps: Vec<String> = (0..rows).map(|row| format!("step{row}")).collect();
        let cells: Vec<[&str; 1]> = steps.iter().map(|step| [step.as_str()]).collect();
        let cells: Vec<&[&str]> = cells.iter().map(|row| &row[..]).collect();
        let table = Block::Table(table(&["Step"], &cells));
        for notes in 1..30 {
            let body = vec![table.clone(), list(notes)];
            let blocks = vec![Block::Columns { count: 2, measure: Measure::Text, body }];
            let made = lay_out(&document(Form::Sheet, blocks), &Faces::new());
            let steps = runs(&made.pages[0]).filter(|(run, _)| run.text.starts_with("step"));
            let lefts: Vec<f32> = steps.map(|(run, _)| run.origin.x).collect();
            assert_eq!(lefts.len(), rows, "{notes} notes");
            assert!(lefts.iter().all(|left| (left - lefts[0]).abs() < 0.1), "{lefts:?}");
        }
    }
}
