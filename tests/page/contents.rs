//! Contents, links, outline: what leads to a place leads to the right one.

use super::sample::{PROSE, document, everything, heading, paragraph, runs, text};
use puddlebook::handout::{Block, Form, HeadingLevel, Inline};
use puddlebook::ink::Faces;
use puddlebook::page::{LinkTarget, Pages, Role, lay_out};

fn book(chapters: usize) -> Pages {
    let mut blocks = vec![Block::Contents { title: "Contents".to_owned() }];
    for number in 0..chapters {
        blocks.push(heading(
            HeadingLevel::One,
            &format!("Chapter {number}"),
            &format!("c{number}"),
        ));
        blocks.extend((0..number % 9).map(|_| paragraph(PROSE)));
        blocks.push(heading(
            HeadingLevel::Two,
            &format!("Section {number}"),
            &format!("s{number}"),
        ));
        blocks
            .push(Block::Paragraph(vec![text("See page "), Inline::PageOf(format!("c{number}"))]));
    }
    lay_out(&document(Form::Book, blocks), &Faces::new())
}

/// Index of the page on which a heading stands.
fn page_of(pages: &Pages, title: &str) -> usize {
    let bookmark = pages.outline.iter().find(|bookmark| bookmark.title == title).unwrap();
    bookmark.page
}

#[test]
fn contents_name_the_page_of_every_chapter_and_section() {
    let pages = book(12);
    for kind in ["Chapter", "Section"] {
        for number in 0..12 {
            let title = format!("{kind} {number}");
            let page = page_of(&pages, &title);
            assert!(runs(&pages.pages[page]).any(|(run, _)| run.text.trim() == title));
            let line = runs(&pages.pages[0]).find(|(run, _)| run.text.trim() == title);
            let (line, _) = line.unwrap_or_else(|| panic!("{title} is not in the contents"));
            let number = runs(&pages.pages[0])
                .filter(|(run, role)| run.origin.y == line.origin.y && *role != Role::Artifact)
                .last()
                .map(|(run, _)| run.text.clone());
            assert_eq!(number, Some((page + 1).to_string()), "{title}");
        }
    }
}

#[test]
fn page_numbers_in_the_text_are_those_of_the_pages() {
    let pages = book(12);
    for number in 0..12 {
        let page = page_of(&pages, &format!("Section {number}"));
        let chapter = page_of(&pages, &format!("Chapter {number}")) + 1;
        let said = pages.pages[page..]
            .iter()
            .take(2)
            .flat_map(runs)
            .any(|(run, _)| run.text == chapter.to_string());
        assert!(said, "section {number} does not name page {chapter}");
    }
}

#[test]
fn links_lead_to_their_headings() {
    let pages = lay_out(&document(Form::Book, everything(Form::Book)), &Faces::new());
    let mixing = pages.outline.iter().find(|b| b.title == "Mixing by weight").unwrap();
    let links: Vec<_> = pages
        .pages
        .iter()
        .flat_map(|page| &page.links)
        .filter(|link| link.description == "the next chapter")
        .collect();
    assert!(!links.is_empty());
    for link in links {
        let LinkTarget::Place { page, y } = link.to else { panic!("{:?}", link.to) };
        assert_eq!(page, mixing.page);
        assert!((y - mixing.y).abs() < 1.0);
    }
}

#[test]
fn the_outline_is_in_order_and_skips_no_level() {
    for form in [Form::Book, Form::Sheet] {
        let pages = lay_out(&document(form, everything(form)), &Faces::new());
        let mut level = 0;
        let mut place = (0, 0.0);
        for bookmark in &pages.outline {
            assert!(bookmark.level <= level + 1, "{bookmark:?}");
            level = bookmark.level;
            assert!((bookmark.page, bookmark.y) >= place, "{bookmark:?}");
            place = (bookmark.page, bookmark.y);
        }
        assert!(pages.outline.iter().any(|bookmark| bookmark.title == "Mixing by weight"));
    }
}

#[test]
fn a_link_to_nowhere_is_plain_text_and_its_page_a_question_mark() {
    let blocks = vec![
        Block::Contents { title: "Contents".to_owned() },
        Block::Heading {
            level: HeadingLevel::One,
            text: vec![text("Lost")],
            anchor: String::new(),
        },
        paragraph(PROSE),
    ];
    let pages = lay_out(&document(Form::Book, blocks), &Faces::new());
    assert!(pages.pages.iter().all(|page| page.links.is_empty()));
    assert!(runs(&pages.pages[0]).any(|(run, _)| run.text == "?"));
}

/// An index: places within the text, by name, and their pages.
#[test]
fn pages_of_places_in_the_text_and_the_same_number_once() {
    let place = |name: &str| Inline::Anchor(name.to_owned());
    let page = |name: &str| Inline::PageOf(name.to_owned());
    let document = document(
        Form::Book,
        vec![
            Block::Paragraph(vec![
                text("Index: "),
                page("a"),
                text(", "),
                page("b"),
                text(", "),
                page("c"),
                text("."),
            ]),
            Block::Paragraph(vec![place("a"), text("Here is a, "), place("b"), text("and b.")]),
            Block::PageBreak,
            Block::Aside(vec![Block::Paragraph(vec![place("c"), text("Here is c.")])]),
            Block::Paragraph(vec![text("Beside it.")]),
        ],
    );
    let pages = lay_out(&document, &Faces::new());
    let said: String = runs(&pages.pages[0]).map(|(run, _)| run.text.as_str()).collect();
    assert!(said.contains("Index: 1, 2."), "{said}");
}
