//! Large print is larger print, not a loose copy: what would waste its pages.

use super::sample::{
    PROSE, document, everything, fact, heading, paragraph, runs, table, text, within,
};
use puddlebook::handout::{
    Block, Card, Column, Document, Form, HeadingLevel, Inline, Picture, PictureKind,
};
use puddlebook::ink::{Colour, Faces};
use puddlebook::lesson::{Edition, Paper};
use puddlebook::page::{Pages, TagKind, lay_out};

const PAPERS: [Paper; 2] = [Paper::A4, Paper::Letter];

fn pages(form: Form, paper: Paper, edition: Edition, blocks: Vec<Block>) -> Pages {
    lay_out(&Document { paper, edition, ..document(form, blocks) }, &Faces::new())
}

/// Pages and heights of the runs that say exactly this.
fn places(pages: &Pages, words: &str) -> Vec<(usize, f32)> {
    let mut places = Vec::new();
    for (number, page) in pages.pages.iter().enumerate() {
        let found = runs(page).filter(|(run, _)| run.text.trim() == words);
        places.extend(found.map(|(run, _)| (number, run.origin.y)));
    }
    places
}

#[test]
fn a_title_page_keeps_its_last_line_and_its_picture_gives_way() {
    let colours = vec![Colour::new(30, 90, 120), Colour::new(230, 220, 200)];
    let title = |lines: usize| Block::TitlePage {
        title: "Pour, Tilt, Weigh".to_owned(),
        subtitle: "A guide to acrylic pouring".to_owned(),
        lines: (0..lines).map(|line| format!("Line{line}")).collect(),
        picture: Some(Picture {
            alt: "Rings".to_owned(),
            kind: PictureKind::Rings { colours: colours.clone() },
        }),
    };
    for paper in PAPERS {
        for lines in 1..10 {
            let blocks = vec![title(lines), paragraph("After")];
            let made = pages(Form::Book, paper, Edition::LargePrint, blocks);
            assert_eq!(made.pages.len(), 2, "{paper:?}, {lines} lines");
            assert_eq!(places(&made, &format!("Line{}", lines - 1))[0].0, 0);
        }
    }
}

/// A book of chapters that fill less than half a page of large print each.
fn short_chapters(count: usize) -> Vec<Block> {
    let mut blocks = vec![Block::Contents { title: "Contents".to_owned() }];
    for number in 0..count {
        let chapter = format!("Chapter{number}");
        blocks.push(heading(HeadingLevel::One, &chapter, &format!("c{number}")));
        blocks.push(paragraph(PROSE));
        let section = format!("Section{number}");
        blocks.push(heading(HeadingLevel::Two, &section, &format!("s{number}")));
        blocks.extend((0..number % 3).map(|_| paragraph("A line or two of words.")));
        blocks.push(paragraph("The end."));
    }
    blocks
}

#[test]
fn contents_stand_on_one_page_and_name_sections_where_it_has_room() {
    for paper in PAPERS {
        let named = |edition, words: &str| {
            let made = pages(Form::Book, paper, edition, short_chapters(14));
            places(&made, words).first().is_some_and(|place| place.0 == 0)
        };
        assert!(named(Edition::Standard, "Chapter13") && named(Edition::Standard, "Section13"));
        assert!(named(Edition::LargePrint, "Chapter13"));
        assert!(!named(Edition::LargePrint, "Section0"));
    }
}

#[test]
fn short_chapters_share_a_page_but_none_starts_at_its_foot() {
    for paper in PAPERS {
        let starts = |edition| {
            let made = pages(Form::Book, paper, edition, short_chapters(14));
            let starts: Vec<(usize, f32)> = (0..14)
                .map(|number| *places(&made, &format!("Chapter{number}")).last().unwrap())
                .collect();
            (starts, made)
        };
        let (standard, _) = starts(Edition::Standard);
        assert!(standard.windows(2).all(|pair| pair[0].0 < pair[1].0), "one to a page");
        let (large, made) = starts(Edition::LargePrint);
        assert!(made.pages.len() < 12, "{} pages", made.pages.len());
        for (page, y) in large {
            assert!(page > 0, "contents have a page of their own");
            assert!(y < 0.7 * made.size.1, "a chapter at {y} of page {}", page + 1);
        }
    }
}

#[test]
fn two_cards_of_five_lines_stand_on_a_page_with_notes_beside_their_labels() {
    let card = |name: &str| Card {
        swatch: Some(Colour::new(30, 90, 120)),
        title: name.to_owned(),
        subtitle: "medium".to_owned(),
        lines: vec![
            fact("white acrylic", "289 g", "add 289 g"),
            fact("medium", "513 g", "add 224 g"),
            fact("water", "566 g", "add 53 g"),
            fact("from the jar", "716 g", "add 150 g"),
            fact("fill 10 cups, each", "63 g", "for the square"),
        ],
        foot: "16 fl oz, 566 g; one fl oz weighs 34.82 g; 86 g stay in the jug. A ribbon sinks \
               within one to two seconds."
            .to_owned(),
    };
    for paper in PAPERS {
        let blocks = vec![Block::Cards(["one", "two", "three", "four"].map(card).to_vec())];
        let made = pages(Form::Cards, paper, Edition::LargePrint, blocks);
        assert_eq!(made.pages.len(), 2, "{paper:?}");
        let line = |words: &str| places(&made, words)[0].1;
        assert!((line("716 g") - line("from the jar")).abs() < 0.01);
        assert!((line("716 g") - line("add 150 g")).abs() < 0.01);
    }
}

#[test]
fn headings_of_a_table_fold_before_its_cells() {
    let blank = || Inline::Blank { width_mm: 28.0, label: "weight".to_owned() };
    for paper in PAPERS {
        let mut made = table(
            &["Colour", "Step 6 with what stays", "One fl oz of it weighs", "Into the cup then"],
            &[&["harbour blue", "", "", ""], &["white", "", "", ""]],
        );
        made.columns = made.columns.into_iter().map(|c| Column { ..c }).collect();
        for row in &mut made.rows {
            row.cells.iter_mut().skip(1).for_each(|cell| *cell = vec![blank()]);
        }
        let laid = pages(Form::Sheet, paper, Edition::LargePrint, vec![Block::Table(made)]);
        let lines = |kind: TagKind, words: &[&str]| {
            let mut lines: Vec<f32> = runs(&laid.pages[0])
                .filter(|(run, role)| {
                    words.iter().any(|word| run.text.contains(word))
                        && within(&laid, *role, |of| of == kind)
                })
                .map(|(run, _)| run.origin.y)
                .collect();
            lines.dedup();
            lines.len()
        };
        assert_eq!(lines(TagKind::RowHeader, &["harbour", "blue"]), 1, "{paper:?}");
        assert!(lines(TagKind::ColumnHeader, &["One", "weighs"]) > 1, "{paper:?}");
    }
}

#[test]
fn a_small_step_stays_on_one_page() {
    for paper in PAPERS {
        for before in 0..30 {
            let mut blocks: Vec<Block> = (0..before).map(|_| paragraph("A line.")).collect();
            blocks.push(Block::Step {
                number: 1,
                heading: vec![text("Measure")],
                body: vec![paragraph("Firstly:"), paragraph("Secondly:")],
            });
            blocks.extend((0..9).map(|_| paragraph("A line.")));
            let made = pages(Form::Sheet, paper, Edition::LargePrint, blocks);
            let pages = ["Measure", "Firstly:", "Secondly:"].map(|words| places(&made, words)[0].0);
            assert!(pages.iter().all(|page| *page == pages[0]), "{before} before: {pages:?}");
        }
    }
}

#[test]
fn pages_hold_about_as_much_as_their_size_allows() {
    // Words of 18 points take (18 / 10.5)² = 2.94 times the room of 10.5 points.
    for paper in PAPERS {
        let prose = || (0..60).map(|_| paragraph(PROSE)).collect();
        let count = |edition| pages(Form::Sheet, paper, edition, prose()).pages.len() as f32;
        let ratio = count(Edition::LargePrint) / count(Edition::Standard);
        assert!(ratio < 2.94, "{paper:?}: {ratio} times as many pages");
    }
}

#[test]
fn every_page_of_everything_keeps_its_footer_clear() {
    for paper in PAPERS {
        let made = pages(Form::Book, paper, Edition::LargePrint, everything(Form::Book));
        for page in made.pages.iter().skip(1) {
            let foot = runs(page).map(|(run, _)| run.origin.y).fold(0.0, f32::max);
            let text = runs(page)
                .filter(|(run, _)| run.origin.y < foot - 1.0)
                .map(|(run, _)| run.origin.y)
                .fold(0.0, f32::max);
            assert!(foot - text > 24.0, "text at {text}, footer at {foot}");
        }
    }
}
