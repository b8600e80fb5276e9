//! Sets of pages within one file.

use super::sample::{PROSE, document, fact, pages, paragraph, runs};
use puddlebook::handout::{Block, Document, Form};
use puddlebook::ink::Faces;
use puddlebook::lesson::Edition;
use puddlebook::page::{Page, Role, lay_out};

fn sheet(student: &str, paragraphs: usize) -> Vec<Block> {
    let mut blocks = vec![
        Block::Section { header: ("Two Ways to Pour".to_owned(), format!("{student}: disc")) },
        Block::Masthead {
            kind: "Worksheet".to_owned(),
            title: "disc".to_owned(),
            facts: vec![fact("Student", student, "")],
        },
    ];
    blocks.extend((0..paragraphs).map(|_| paragraph(PROSE)));
    blocks
}

/// What stands above and below the text of a page.
fn furniture(page: &Page) -> Vec<&str> {
    let artifacts = runs(page).filter(|(_, role)| *role == Role::Artifact);
    artifacts.map(|(run, _)| run.text.as_str()).collect()
}

#[test]
fn every_page_of_a_section_says_whose_it_is_and_is_counted_within_it() {
    let lengths = [30, 1, 45];
    let names = ["Una", "Odo", "Ida"];
    let blocks = names.iter().zip(lengths).flat_map(|(name, length)| sheet(name, length));
    let pages = pages(Form::Sheet, blocks.collect());
    let mut rest = pages.pages.iter();
    for name in names {
        let first = rest.next().unwrap();
        let count: usize = furniture(first)
            .iter()
            .find_map(|text| text.strip_prefix("Page 1 of "))
            .and_then(|count| count.parse().ok())
            .unwrap_or_else(|| panic!("{name} starts a count: {:?}", furniture(first)));
        // The masthead says it already.
        assert!(!furniture(first).contains(&"Two Ways to Pour"));
        assert!(runs(first).any(|(run, _)| run.text == name));
        for number in 2..=count {
            let page = rest.next().unwrap();
            let folio = format!("Page {number} of {count}");
            let owner = format!("{name}: disc");
            let all = furniture(page);
            for text in ["Two Ways to Pour", &owner, &folio] {
                assert!(all.contains(&text), "{text} is not among {all:?}");
            }
        }
        assert_eq!(count > 1, name != "Odo");
    }
    assert!(rest.next().is_none(), "the sections are all there is");
}

#[test]
fn a_long_footer_is_broken_into_lines_below_the_text() {
    let words = "All names, places and prices are invented. An adult is at every table.";
    for edition in [Edition::Standard, Edition::LargePrint] {
        let blocks = (0..60).map(|_| paragraph(PROSE)).collect();
        let footer = words.to_owned();
        let made = Document { edition, footer, ..document(Form::Sheet, blocks) };
        let pages = lay_out(&made, &Faces::new());
        for page in &pages.pages {
            let is_below = |text: &str| words.contains(text);
            let below: Vec<&str> = runs(page)
                .map(|(run, _)| run.text.as_str())
                .filter(|text| is_below(text))
                .collect();
            assert_eq!(below.concat(), words);
            assert_eq!(below.len(), if edition == Edition::LargePrint { 2 } else { 1 });
            let top = runs(page).find(|(run, _)| run.text == below[0]).unwrap().0.origin.y;
            let text =
                runs(page).filter(|(run, role)| *role != Role::Artifact && !is_below(&run.text));
            let lowest = text.map(|(run, _)| run.origin.y).fold(0.0, f32::max);
            assert!(lowest + 20.0 < top, "{edition:?}: text at {lowest}, footer at {top}");
        }
    }
}
