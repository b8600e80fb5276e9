//! Any document can be laid out: nothing panics, leaves the page or gets lost.

use super::sample::{document, heard, plain, points, table, text};
use proptest::prelude::*;
use puddlebook::handout::{Block, Form, HeadingLevel, Inline, NoticeKind};
use puddlebook::ink::Faces;
use puddlebook::lesson::{Edition, Paper, Sign};
use puddlebook::page::lay_out;
use std::sync::LazyLock;

static FACES: LazyLock<Faces> = LazyLock::new(Faces::new);

fn words() -> impl Strategy<Value = String> {
    let word = prop_oneof![
        8 => "[a-z]{1,12}",
        2 => "[A-Z][a-z]{2,9}[.,;:]?",
        1 => "[0-9]{1,4}\u{202F}mL",
        1 => "[a-z]{20,120}",
        1 => Just("wet\u{AD}ness".to_owned()),
        1 => Just("self-made".to_owned()),
    ];
    prop::collection::vec(word, 1..60).prop_map(|words| words.join(" "))
}

fn inlines() -> impl Strategy<Value = Vec<Inline>> {
    prop_oneof![
        words().prop_map(|words| vec![text(&words)]),
        (words(), words(), words()).prop_map(|(a, b, c)| vec![
            text(&format!("{a} ")),
            Inline::Strong(vec![text(&b)]),
            text(" "),
            Inline::Emphasis(vec![text(&c)]),
        ]),
    ]
}

fn block() -> impl Strategy<Value = Block> {
    let leaf = prop_oneof![
        4 => inlines().prop_map(Block::Paragraph),
        1 => inlines().prop_map(Block::SmallPrint),
        1 => (0..3_usize, "[A-Z][a-z]{1,12}( [a-z]{1,9}){0,9}").prop_map(|(level, words)| {
            let level = [HeadingLevel::One, HeadingLevel::Two, HeadingLevel::Three][level];
            Block::Heading { level, text: vec![text(&words)], anchor: words }
        }),
        1 => prop::collection::vec(("[a-z ]{1,30}", "[0-9]{1,4}(\\.[0-9]{1,2})?"), 1..30)
            .prop_map(|rows| {
                let rows: Vec<[&str; 2]> =
                    rows.iter().map(|(name, number)| [name.as_str(), number.as_str()]).collect();
                let rows: Vec<&[&str]> = rows.iter().map(<[&str; 2]>::as_slice).collect();
                Block::Table(table(&["Name", "Amount"], &rows))
            }),
    ];
    leaf.prop_recursive(2, 24, 6, |inner| {
        let blocks = prop::collection::vec(inner, 1..6);
        prop_oneof![
            (inlines(), blocks.clone(), 0..4_usize).prop_map(|(heading, body, kind)| {
                let kind = [
                    NoticeKind::Caution(Sign::Slip),
                    NoticeKind::Practice,
                    NoticeKind::Example,
                    NoticeKind::Remark,
                ][kind];
                Block::Notice { kind, heading, body }
            }),
            (blocks.clone(), 1..99_u32).prop_map(|(body, number)| Block::Step {
                number,
                heading: Vec::new(),
                body,
            }),
            prop::collection::vec(blocks, 1..4)
                .prop_map(|items| Block::List { start: None, items }),
        ]
    })
}

/// The words of blocks in order, with the marks that the page adds.
fn say(blocks: &[Block], said: &mut String) {
    let inline = |inlines: &[Inline], said: &mut String| {
        fn one(inlines: &[Inline], said: &mut String) {
            for inline in inlines {
                match inline {
                    Inline::Text(words) => said.push_str(words),
                    Inline::Strong(inner) | Inline::Emphasis(inner) => one(inner, said),
                    _ => {}
                }
            }
        }
        one(inlines, said);
        said.push(' ');
    };
    for block in blocks {
        match block {
            Block::Paragraph(words) | Block::SmallPrint(words) => inline(words, said),
            Block::Heading { text, .. } => inline(text, said),
            Block::Table(table) => {
                inline(&table.caption, said);
                for column in &table.columns {
                    inline(&column.heading, said);
                }
                for cell in table.rows.iter().flat_map(|row| &row.cells) {
                    inline(cell, said);
                }
            }
            Block::Notice { heading, body, .. } => {
                inline(heading, said);
                say(body, said);
            }
            Block::Step { number, heading, body } => {
                said.push_str(&number.to_string());
                inline(heading, said);
                say(body, said);
            }
            Block::List { items, .. } => {
                for item in items {
                    said.push_str("• ");
                    say(item, said);
                }
            }
            _ => {}
        }
    }
}

/// Text without any space: words of two cells are apart by their places alone.
fn letters(text: &str) -> String {
    plain(text).replace([' ', '\u{202F}'], "")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, max_shrink_iters: 400, ..ProptestConfig::default() })]

    #[test]
    fn any_document_is_laid_out_whole_and_within_its_pages(
        blocks in prop::collection::vec(block(), 1..14),
        book in any::<bool>(),
        letter in any::<bool>(),
        large in any::<bool>(),
    ) {
        let mut made = document(if book { Form::Book } else { Form::Sheet }, blocks);
        made.paper = if letter { Paper::Letter } else { Paper::A4 };
        made.edition = if large { Edition::LargePrint } else { Edition::Standard };
        let pages = lay_out(&made, &FACES);
        for page in &pages.pages {
            for mark in &page.marks {
                for point in points(&mark.shape) {
                    prop_assert!(
                        (0.0..=pages.size.0).contains(&point.x) && (0.0..=pages.size.1).contains(&point.y),
                        "{point:?} of {:?}",
                        mark.shape
                    );
                }
            }
        }
        let mut said = String::new();
        say(&made.blocks, &mut said);
        prop_assert_eq!(letters(&heard(&pages)), letters(&said));
    }
}
