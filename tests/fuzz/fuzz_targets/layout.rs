//! A text as the Markdown of a handout: read, laid out on a paper that its first letter
//! chooses, and written as PDF.
#![no_main]

use libfuzzer_sys::fuzz_target;
use puddlebook::handout::{Desk, Form, Sheet, Templates};
use puddlebook::ink::Faces;
use puddlebook::lesson::{Edition, Language, Paper};
use puddlebook::{page, pdf};
use puddlebook_fuzz::{replaced, small};
use std::sync::OnceLock;

static FACES: OnceLock<Faces> = OnceLock::new();

fuzz_target!(|text: &str| {
    let Some(first) = text.chars().next() else { return };
    let kind = u32::from(first);
    let body = &text[first.len_utf8()..];
    if body.contains("{%") {
        // Nothing that the templates would read.
        return;
    }
    let mut own = replaced();
    own.insert("order.md".to_owned(), format!("{{% raw %}}{body}{{% endraw %}}"));
    let Ok(templates) = Templates::new(Language::English, &own) else { return };
    let Ok(desk) = Desk::new(small(), &templates) else { return };
    let Ok(mut document) = desk.write(Sheet::Order) else { return };
    document.paper = if kind & 1 == 0 { Paper::A4 } else { Paper::Letter };
    document.edition = if kind & 2 == 0 { Edition::Standard } else { Edition::LargePrint };
    document.form = if kind & 4 == 0 { Form::Sheet } else { Form::Book };
    let faces = FACES.get_or_init(Faces::new);
    let pages = page::lay_out(&document, faces);
    let bytes = match kind & 8 {
        0 => pdf::write(&pages, faces),
        _ => pdf::write_booklet(&pages, faces),
    };
    assert!(bytes.expect("pages that were laid out can be written").starts_with(b"%PDF-"));
});
