//! Nothing off the page, nothing over anything else.

use super::sample::{capitals, document, everything, points, runs};
use puddlebook::handout::{Document, Form};
use puddlebook::ink::Faces;
use puddlebook::lesson::{Edition, Paper};
use puddlebook::page::{Pages, lay_out};

/// The sample in every form, paper and edition.
fn all() -> Vec<(String, Pages)> {
    let faces = Faces::new();
    let mut all = Vec::new();
    for form in [Form::Sheet, Form::Book, Form::Cards] {
        for paper in [Paper::A4, Paper::Letter] {
            for edition in [Edition::Standard, Edition::LargePrint] {
                let made = Document { paper, edition, ..document(form, everything(form)) };
                all.push((format!("{form:?} {paper:?} {edition:?}"), lay_out(&made, &faces)));
            }
        }
    }
    all
}

#[test]
fn no_mark_leaves_the_page() {
    for (name, pages) in all() {
        for (number, page) in pages.pages.iter().enumerate() {
            for mark in &page.marks {
                for point in points(&mark.shape) {
                    let inside = (0.0..=pages.size.0).contains(&point.x)
                        && (0.0..=pages.size.1).contains(&point.y);
                    assert!(inside, "{name}, page {}: {point:?} of {:?}", number + 1, mark.shape);
                }
            }
        }
    }
}

#[test]
fn no_two_lines_of_text_overlap() {
    for (name, pages) in all() {
        for (number, page) in pages.pages.iter().enumerate() {
            let boxes: Vec<_> = runs(page).map(|(run, _)| (capitals(run), &run.text)).collect();
            for (index, (a, text)) in boxes.iter().enumerate() {
                for (b, other) in boxes.iter().skip(index + 1) {
                    let across = (a.x + a.width).min(b.x + b.width) - a.x.max(b.x);
                    let down = (a.y + a.height).min(b.y + b.height) - a.y.max(b.y);
                    assert!(
                        across < 0.3 || down < 0.3,
                        "{name}, page {}: {text:?} over {other:?}",
                        number + 1
                    );
                }
            }
        }
    }
}

#[test]
fn text_keeps_clear_of_the_punched_holes() {
    // ISO 838: holes of 6 mm, their centres 12 mm from the edge.
    let holes = 15.0 / 25.4 * 72.0;
    for (name, pages) in all() {
        for page in &pages.pages {
            for (run, _) in runs(page) {
                assert!(run.origin.x > holes, "{name}: {:?}", run.text);
                assert!(
                    run.origin.x + run.width() < pages.size.0 - holes,
                    "{name}: {:?}",
                    run.text
                );
            }
        }
    }
}

#[test]
fn body_lines_of_a_page_stand_on_one_grid() {
    let pages = super::sample::pages(
        Form::Book,
        (0..12).map(|_| super::sample::paragraph(super::sample::PROSE)).collect(),
    );
    for page in &pages.pages {
        let mut baselines: Vec<f32> =
            runs(page).filter(|(run, _)| run.size == 10.5).map(|(run, _)| run.origin.y).collect();
        baselines.dedup();
        for pair in baselines.windows(2) {
            let steps = (pair[1] - pair[0]) / 7.5;
            assert!((steps - steps.round()).abs() < 0.01, "{pair:?} is off the grid");
        }
    }
}

#[test]
fn the_same_document_makes_the_same_pages() {
    let made = document(Form::Book, everything(Form::Book));
    assert!(lay_out(&made, &Faces::new()) == lay_out(&made, &Faces::new()));
}

#[test]
fn a_drawing_higher_than_a_page_is_scaled_down_to_it() {
    use puddlebook::handout::{Bar, BarPart, Bars, Block, Picture, PictureKind};
    let bar = |number: usize| Bar {
        label: format!("Colour {number}"),
        parts: vec![BarPart { label: "40 mL".to_owned(), value: 40.0, swatch: None }],
        mark: None,
    };
    let bars =
        Bars { title: "Many".to_owned(), axis: "mL".to_owned(), bars: (0..120).map(bar).collect() };
    let picture = Picture { alt: "Many bars".to_owned(), kind: PictureKind::Bars(bars) };
    let figure = Block::Figure { picture, caption: vec![super::sample::text("Too many.")] };
    let pages = super::sample::pages(Form::Sheet, vec![figure]);
    assert_eq!(pages.pages.len(), 1);
    for point in pages.pages[0].marks.iter().flat_map(|mark| points(&mark.shape)) {
        assert!((0.0..=pages.size.1).contains(&point.y), "{point:?}");
    }
}
