//! What a reader who listens hears: everything, in order.

use super::sample::{PROSE, document, everything, heard, pages, paragraph, plain, text};
use puddlebook::handout::{Block, Form, Inline};
use puddlebook::ink::Faces;
use puddlebook::page::lay_out;

#[test]
fn paragraphs_are_heard_whole_and_in_order() {
    let blocks: Vec<Block> = (0..40).map(|i| paragraph(&format!("Number {i}. {PROSE}"))).collect();
    let expected: Vec<String> = (0..40).map(|i| format!("Number {i}. {PROSE}")).collect();
    for form in [Form::Book, Form::Sheet] {
        assert_eq!(heard(&pages(form, blocks.clone())), plain(&expected.join(" ")));
    }
}

#[test]
fn a_note_in_the_margin_is_heard_before_what_it_stands_beside() {
    let blocks = vec![
        paragraph("Before."),
        Block::Aside(vec![paragraph("In the margin.")]),
        paragraph("After."),
    ];
    assert_eq!(heard(&pages(Form::Book, blocks)), "Before. In the margin. After.");
}

#[test]
fn no_header_is_heard_and_the_footer_once_at_the_end() {
    let mut made = document(Form::Book, everything(Form::Book));
    made.footer = "All names are invented.".to_owned();
    let heard = heard(&lay_out(&made, &Faces::new()));
    assert!(!heard.contains("14 March 2026"));
    assert!(!heard.contains("Page 3"));
    assert!(heard.ends_with("All names are invented."));
    assert_eq!(heard.matches("All names are invented.").count(), 1);
}

#[test]
fn each_page_says_its_number_and_how_many_there_are() {
    let pages = pages(Form::Sheet, (0..60).map(|_| paragraph(PROSE)).collect());
    let count = pages.pages.len();
    assert!(count > 2);
    for (index, page) in pages.pages.iter().enumerate() {
        let folio = format!("Page {} of {count}", index + 1);
        assert!(super::sample::runs(page).any(|(run, _)| run.text == folio), "{folio}");
    }
}

#[test]
fn characters_that_no_face_has_are_named_once_in_order() {
    let mut made =
        document(Form::Sheet, vec![paragraph("a 水 b 火 c 水"), paragraph("é π Ж are there")]);
    made.footer = "木".to_owned();
    let pages = lay_out(&made, &Faces::new());
    assert_eq!(pages.missing, ['水', '火', '木']);
    assert_eq!(heard(&pages), "a 水 b 火 c 水 é π Ж are there 木");
}

#[test]
fn emphasis_changes_the_face_and_loses_no_word() {
    let blocks = vec![Block::Paragraph(vec![
        text("plain "),
        Inline::Emphasis(vec![text("slanted "), Inline::Strong(vec![text("both")])]),
        text(" plain"),
    ])];
    let pages = pages(Form::Sheet, blocks);
    let faces: Vec<_> = super::sample::runs(&pages.pages[0])
        .filter(|(_, role)| *role != puddlebook::page::Role::Artifact)
        .map(|(run, _)| run.face)
        .collect();
    use puddlebook::ink::Face::{BoldItalic, Italic, Regular};
    assert_eq!(faces, [Regular, Italic, BoldItalic, Regular]);
    assert_eq!(heard(&pages), "plain slanted both plain");
}
