//! The structure tree.

use super::sample::{document, everything};
use puddlebook::handout::Form;
use puddlebook::ink::Faces;
use puddlebook::lesson::Edition;
use puddlebook::page::{Pages, Role, TagId, TagKind, lay_out};

fn all() -> Vec<Pages> {
    let faces = Faces::new();
    let mut all = Vec::new();
    for form in [Form::Book, Form::Sheet] {
        for edition in [Edition::Standard, Edition::LargePrint] {
            let mut made = document(form, everything(form));
            made.edition = edition;
            all.push(lay_out(&made, &faces));
        }
    }
    all
}

#[test]
fn the_tree_starts_with_the_document_and_parents_come_first() {
    for pages in all() {
        assert_eq!(pages.tags[0].kind, TagKind::Document);
        assert_eq!(pages.tags[0].parent, None);
        for (index, tag) in pages.tags.iter().enumerate().skip(1) {
            assert!(tag.parent.is_some_and(|TagId(parent)| parent < index));
        }
    }
}

#[test]
fn headings_skip_no_level() {
    for pages in all() {
        let mut level = 0;
        for tag in &pages.tags {
            if let TagKind::Heading(at) = tag.kind {
                assert!(at <= level + 1, "{at} after {level}");
                level = at;
            }
        }
        assert!(level > 0);
    }
}

#[test]
fn every_figure_and_field_has_words_and_every_content_a_tag() {
    for pages in all() {
        for tag in &pages.tags {
            let speaks = matches!(tag.kind, TagKind::Figure | TagKind::Field(_));
            assert_eq!(speaks, tag.alt.is_some());
            assert!(tag.alt.as_deref() != Some(""));
        }
        for mark in pages.pages.iter().flat_map(|page| &page.marks) {
            if let Role::Content(TagId(tag)) = mark.role {
                assert!(tag < pages.tags.len());
            }
        }
    }
}

#[test]
fn lists_and_tables_are_built_as_the_standard_asks() {
    // ISO 32000-1, 14.8.4.3: list items hold a label and a body; rows hold cells.
    for pages in all() {
        let parent = |tag: &puddlebook::page::Tag| tag.parent.map(|TagId(at)| pages.tags[at].kind);
        for tag in &pages.tags {
            let expected = match tag.kind {
                TagKind::ListItem => TagKind::List,
                TagKind::Label | TagKind::ListBody => TagKind::ListItem,
                TagKind::TableRow => TagKind::Table,
                TagKind::ColumnHeader | TagKind::RowHeader | TagKind::TableCell => {
                    TagKind::TableRow
                }
                TagKind::ContentsItem => TagKind::Contents,
                _ => continue,
            };
            assert_eq!(parent(tag), Some(expected), "{:?}", tag.kind);
        }
    }
}

#[test]
fn a_note_too_long_for_the_margin_is_tagged_once() {
    let long = super::sample::paragraph(&super::sample::PROSE.repeat(12));
    let blocks =
        vec![puddlebook::handout::Block::Aside(vec![long]), super::sample::paragraph("After.")];
    let pages = super::sample::pages(Form::Book, blocks);
    let notes = pages.tags.iter().filter(|tag| tag.kind == TagKind::Note).count();
    let paragraphs = pages.tags.iter().filter(|tag| tag.kind == TagKind::Paragraph).count();
    assert_eq!((notes, paragraphs), (1, 2));
}

/// The first cells of rows head them, unless headings would outnumber what they head.
#[test]
fn rows_have_heads_where_there_is_enough_to_head() {
    let kinds = |head: &[&str], rows: usize| {
        let row: Vec<&str> = head.iter().map(|_| "x").collect();
        let rows: Vec<&[&str]> = (0..rows).map(|_| row.as_slice()).collect();
        let table = super::sample::table(head, &rows);
        let pages =
            super::sample::pages(Form::Sheet, vec![puddlebook::handout::Block::Table(table)]);
        let count = |kind| pages.tags.iter().filter(|tag| tag.kind == kind).count();
        (count(TagKind::ColumnHeader), count(TagKind::RowHeader), count(TagKind::TableCell))
    };
    assert_eq!(kinds(&["Cup", "Before", "After", "Used"], 5), (4, 5, 15));
    assert_eq!(kinds(&["Term", "Meaning"], 30), (2, 0, 60));
    assert_eq!(kinds(&["Canvas", "Finish", "Coats"], 2), (3, 0, 6));
}
