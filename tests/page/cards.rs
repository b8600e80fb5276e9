//! Cards: readings lead, neighbours are level, and a page is well used.

use super::sample::{document, fact, paragraph, points, runs};
use puddlebook::handout::{Block, Card, Document, Form};
use puddlebook::ink::{Colour, Dash, Faces, Shape};
use puddlebook::lesson::{Edition, Paper};
use puddlebook::page::{Pages, lay_out};

fn card(name: &str, subtitle: &str) -> Card {
    Card {
        swatch: Some(Colour::new(30, 90, 120)),
        title: name.to_owned(),
        subtitle: subtitle.to_owned(),
        lines: vec![
            fact(&format!("{name} acrylic"), "101 g", "add 101 g, 162 mL"),
            fact("pouring medium", "371 g", "add 170 g, 162 mL"),
            fact("water", "412 g", "add 41 g, 41 mL"),
        ],
        foot: "Makes 365 mL, 412 g. Aim for medium: a ribbon sinks within two seconds.".to_owned(),
    }
}

fn sheet(paper: Paper, edition: Edition) -> Pages {
    let cards = vec![
        card("red", "medium, for 7 cups of 58 g"),
        card("white", "medium, for 7 cups of 65 g (disc), 7 cups of 50 g (cameo, base)"),
        card("blue", "thin, for 7 cups of 11 g"),
        card("ochre", "thin, for 7 cups of 8 g"),
    ];
    let blocks = vec![paragraph("One card is one batch."), Block::Cards(cards)];
    lay_out(&Document { paper, edition, ..document(Form::Cards, blocks) }, &Faces::new())
}

#[test]
fn readings_are_the_largest_figures_of_a_card_and_neighbours_are_level() {
    for paper in [Paper::A4, Paper::Letter] {
        for edition in [Edition::Standard, Edition::LargePrint] {
            let pages = sheet(paper, edition);
            let all: Vec<_> = pages.pages.iter().flat_map(runs).map(|(run, _)| run).collect();
            let size = |text: &str| all.iter().find(|run| run.text.trim() == text).unwrap().size;
            for name in ["red", "white", "blue", "ochre"] {
                assert!(size("412 g") > 1.15 * size(name), "{paper:?} {edition:?}: {name}");
            }
            if edition == Edition::Standard {
                let mut levels: Vec<f32> = all
                    .iter()
                    .filter(|run| run.text.trim() == "371 g")
                    .map(|run| run.origin.y)
                    .collect();
                assert_eq!(levels.len(), 4);
                levels.dedup_by(|a, b| (*a - *b).abs() < 0.01);
                assert_eq!(levels.len(), 2, "two rows of two cards each: {levels:?}");
            }
        }
    }
}

#[test]
fn what_is_read_before_the_cards_keeps_clear_of_the_knife() {
    let pages = sheet(Paper::Letter, Edition::Standard);
    let page = &pages.pages[0];
    let (words, _) = runs(page).find(|(run, _)| run.text.starts_with("One card")).unwrap();
    let cut = page
        .marks
        .iter()
        .filter(|mark| {
            matches!(&mark.shape, Shape::Path { stroke: Some(s), .. } if s.dash == Dash::Dashed)
        })
        .flat_map(|mark| points(&mark.shape))
        .map(|point| point.y)
        .fold(f32::MAX, f32::min);
    assert!(cut - words.origin.y > 12.0, "cut at {cut}, words at {}", words.origin.y);
}

#[test]
fn two_cards_of_large_print_stand_on_a_page_where_they_fit() {
    let pages = sheet(Paper::A4, Edition::LargePrint);
    let most = pages
        .pages
        .iter()
        .map(|page| runs(page).filter(|(run, _)| run.text.trim() == "412 g").count())
        .max();
    assert_eq!(most, Some(2));
}
