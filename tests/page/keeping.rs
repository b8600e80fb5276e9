//! What stays together over the ends of pages.

use std::collections::BTreeMap;

use super::sample::{PROSE, document, everything, heading, pages, paragraph, runs, text, within};
use puddlebook::handout::{
    Block, Document, Form, HeadingLevel, Outline, Picture, PictureKind, Unfolded,
};
use puddlebook::ink::Faces;
use puddlebook::lesson::Edition;
use puddlebook::page::{Pages, Role, TagKind, lay_out};

fn is_heading(kind: TagKind) -> bool {
    matches!(kind, TagKind::Heading(_))
}

/// Many short sections, so that headings come near the foot of a page.
fn sections(lines_before: usize) -> Vec<Block> {
    let mut blocks: Vec<Block> = (0..lines_before).map(|_| paragraph("A line.")).collect();
    for number in 0..30 {
        blocks.push(heading(
            HeadingLevel::Two,
            &format!("Section {number}"),
            &format!("s{number}"),
        ));
        blocks.push(paragraph(PROSE));
    }
    blocks
}

#[test]
fn a_heading_never_ends_a_page() {
    for before in 0..12 {
        let pages = pages(Form::Book, sections(before));
        for (number, page) in pages.pages.iter().enumerate() {
            let last = runs(page).filter(|(_, role)| *role != Role::Artifact).last();
            let (run, role) = last.unwrap();
            assert!(!within(&pages, role, is_heading), "page {}: {:?}", number + 1, run.text);
        }
    }
}

/// How many lines of each paragraph stand on each page.
fn lines_by_page(pages: &Pages) -> BTreeMap<usize, BTreeMap<usize, usize>> {
    let mut lines: BTreeMap<usize, BTreeMap<usize, usize>> = BTreeMap::new();
    for (number, page) in pages.pages.iter().enumerate() {
        let mut seen: Vec<(usize, i32)> = Vec::new();
        for (run, role) in runs(page) {
            let Role::Content(tag) = role else { continue };
            if pages.tags[tag.0].kind == TagKind::Paragraph {
                seen.push((tag.0, (run.origin.y * 10.0) as i32));
            }
        }
        seen.dedup();
        for (tag, _) in seen {
            *lines.entry(tag).or_default().entry(number).or_default() += 1;
        }
    }
    lines
}

#[test]
fn no_line_of_a_paragraph_stands_alone_on_a_page() {
    let mut parted = 0;
    for before in 0..12 {
        for (tag, by_page) in lines_by_page(&pages(Form::Book, sections(before))) {
            if by_page.len() > 1 {
                parted += 1;
                assert!(by_page.values().all(|&lines| lines >= 2), "tag {tag}: {by_page:?}");
            }
        }
    }
    assert!(parted > 10, "too few paragraphs were parted to tell: {parted}");
}

#[test]
fn a_chapter_of_a_book_starts_a_page_and_one_of_a_sheet_does_not() {
    let blocks = || {
        vec![
            heading(HeadingLevel::One, "First", "a"),
            paragraph(PROSE),
            heading(HeadingLevel::One, "Second", "b"),
            paragraph(PROSE),
        ]
    };
    assert_eq!(pages(Form::Book, blocks()).pages.len(), 2);
    assert_eq!(pages(Form::Sheet, blocks()).pages.len(), 1);
}

#[test]
fn a_page_is_tightened_a_little_rather_than_leave_two_lines_for_the_next() {
    // Finds a number of paragraphs that just does not fit on the grid.
    let count = |paragraphs: usize| {
        let blocks = (0..paragraphs).map(|_| paragraph(PROSE)).collect();
        pages(Form::Sheet, blocks)
    };
    let last_lines = |pages: &Pages| {
        let page = pages.pages.last().unwrap();
        runs(page).filter(|(_, role)| *role != Role::Artifact).count()
    };
    for paragraphs in 1..40 {
        let pages = count(paragraphs);
        assert!(pages.pages.len() == 1 || last_lines(&pages) > 2, "{paragraphs} paragraphs");
    }
}

#[test]
fn a_figure_and_its_caption_share_a_page() {
    for form in [Form::Book, Form::Sheet] {
        let pages = lay_out(&document(form, everything(form)), &Faces::new());
        let page_of = |is: fn(TagKind) -> bool, word: &str| {
            pages.pages.iter().position(|page| {
                page.marks.iter().any(|mark| {
                    let Role::Content(tag) = mark.role else { return false };
                    let tag = &pages.tags[tag.0];
                    is(tag.kind) && tag.alt.as_deref().is_none_or(|alt| alt == word)
                }) && page.marks.len() > 3
            })
        };
        let caption = pages
            .pages
            .iter()
            .position(|page| runs(page).any(|(run, _)| run.text.starts_with("Rings, as a ring")));
        let last_figure = pages.pages.iter().rposition(|page| {
            page.marks.iter().any(|mark| match mark.role {
                Role::Content(tag) => pages.tags[tag.0].alt.as_deref() == Some("Rings of paint"),
                Role::Artifact | Role::Field(_) => false,
            })
        });
        assert!(page_of(|kind| kind == TagKind::Figure, "Rings of paint").is_some());
        assert_eq!(caption, last_figure, "{form:?}");
    }
}

/// From the baseline of each heading of level 2 to that of the line under it.
fn gaps_under_headings(pages: &Pages) -> Vec<f32> {
    let mut gaps = Vec::new();
    for page in &pages.pages {
        let mut heading = None;
        for (run, role) in runs(page) {
            if within(pages, role, |kind| kind == TagKind::Heading(2)) {
                heading = Some(run.origin.y);
            } else if let Some(y) = heading.take() {
                gaps.push(run.origin.y - y);
            }
        }
    }
    gaps
}

#[test]
fn the_gap_under_a_heading_is_the_same_on_all_pages() {
    for edition in [Edition::Standard, Edition::LargePrint] {
        let mut all = Vec::new();
        for before in 0..12 {
            let made = document(Form::Book, sections(before));
            let pages = lay_out(&Document { edition, ..made }, &Faces::new());
            all.extend(gaps_under_headings(&pages));
        }
        assert!(all.len() > 200);
        let (least, most) =
            all.iter().fold((f32::MAX, f32::MIN), |(a, b), gap| (a.min(*gap), b.max(*gap)));
        assert!(most - least < 0.01, "{edition:?}: from {least} to {most}");
    }
}

/// Paragraphs, a figure that is a good part of a page high, and paragraphs that go on.
fn with_figure(before: usize) -> Vec<Block> {
    let picture = Picture {
        alt: "A canvas".to_owned(),
        kind: PictureKind::Unfolded(Unfolded {
            outline: Outline::Rectangle { width: 10.0, height: 9.0 },
            depth: 0.0,
            face_label: "the face".to_owned(),
            edge_label: String::new(),
            width_label: "width".to_owned(),
            height_label: "height".to_owned(),
            depth_label: String::new(),
            middle_label: String::new(),
            blank_mm: 0.0,
        }),
    };
    let mut blocks: Vec<Block> = (0..before).map(|_| paragraph("A line.")).collect();
    blocks.push(Block::Figure { picture, caption: vec![text("The canvas.")] });
    blocks.extend((0..3).map(|number| paragraph(&format!("After {number}. {PROSE}"))));
    blocks.push(heading(HeadingLevel::Two, "Next section", "next"));
    blocks.extend((0..12).map(|_| paragraph(PROSE)));
    blocks
}

#[test]
fn a_figure_without_room_lets_words_go_first_but_no_heading() {
    let mut moved = 0;
    for before in 0..32 {
        let pages = pages(Form::Book, with_figure(before));
        let heard: Vec<(usize, &str)> = pages
            .pages
            .iter()
            .enumerate()
            .flat_map(|(number, page)| runs(page).map(move |(run, _)| (number, &*run.text)))
            .collect();
        let place = |words: &str| heard.iter().position(|(_, text)| text.starts_with(words));
        let (figure, first) = (place("the face").unwrap(), place("After 0").unwrap());
        assert!(figure < place("Next section").unwrap(), "{before} before");
        assert!(place("After 1").unwrap() > first && place("After 2").unwrap() > first);
        // The caption stays with its figure.
        assert_eq!(heard[figure].0, heard[place("The canvas").unwrap()].0);
        moved += usize::from(figure > first);
        // The last line of words above a figure that starts a page is low on its page.
        let page = &pages.pages[0];
        let lowest = runs(page)
            .filter(|(_, role)| *role != Role::Artifact)
            .map(|(run, _)| run.origin.y)
            .fold(0.0, f32::max);
        assert!(lowest > 0.72 * pages.size.1, "{before} before: page 1 ends at {lowest}");
    }
    assert!((3..20).contains(&moved), "moved {moved} times");
}
