//! A text as templates of a user's own, filled with the plan of a small lesson. A line of
//! equals signs parts `order.md` from `lesson.md`, which it may include, and that from
//! `words.yaml`.
#![no_main]

use libfuzzer_sys::fuzz_target;
use puddlebook_fuzz::{replaced, small};
use puddlebook::handout::{Desk, Sheet, Templates};
use puddlebook::lesson::Language;

fuzz_target!(|text: &str| {
    let mut parts = text.splitn(3, "\n=====\n");
    let mut own = replaced();
    for name in ["order.md", "lesson.md", "words.yaml"] {
        if let Some(part) = parts.next() {
            own.insert(name.to_owned(), part.to_owned());
        }
    }
    let said = match Templates::new(Language::English, &own) {
        Ok(templates) => Desk::new(small(), &templates)
            .and_then(|desk| desk.write(Sheet::Order))
            .map(|document| document.blocks.len()),
        Err(fault) => Err(fault),
    };
    if let Err(fault) = said {
        assert!(!fault.to_string().is_empty());
    }
});
