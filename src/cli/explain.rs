//! `explain`: what a key means, with an example.

use super::args;
use super::failure::Failure;
use super::say;
use super::wrapped::{columns, paragraph};
use crate::lesson::{self, FileKind, Found, KeyHelp, Need};
use std::fmt::Write;

pub(super) fn explain(arguments: &args::Explain) -> Result<(), Failure> {
    let said = arguments.key.join(" ");
    if said.trim().is_empty() {
        say::bytes(overview().as_bytes());
        return Ok(());
    }
    match lesson::explain(&said) {
        Found::Key(key, others) => {
            let mut text = whole(&key);
            if !others.is_empty() {
                text.push_str("\nAlso in other places:\n");
                text.push_str(&places(&others));
            }
            say::bytes(text.as_bytes());
            Ok(())
        }
        Found::Places(keys) => {
            let mut text = format!("\"{said}\" stands in several places:\n");
            text.push_str(&places(&keys));
            let first = keys.first().map(called).unwrap_or_default();
            let _ = writeln!(text, "\nName one of them for more: puddlebook explain {first}");
            say::bytes(text.as_bytes());
            Ok(())
        }
        Found::Nothing(near) => Err(Failure::Use(unknown(&said, &near))),
    }
}

/// All keys at the top of files.
fn overview() -> String {
    let mut text = String::new();
    for kind in [FileKind::Lesson, FileKind::Weighings] {
        text.push_str(match kind {
            FileKind::Weighings => "\nKeys of weighings (a file for each class):\n",
            _ => "Keys of a lesson; those with a * must be there:\n",
        });
        let keys = lesson::keys(kind).into_iter().filter(|key| key.path.len() == 1);
        let rows: Vec<_> = keys
            .map(|key| {
                let star = if key.need == Need::Always { " *" } else { "" };
                (format!("{}{star}", called(&key)), first_sentence(&key.meaning))
            })
            .collect();
        text.push_str(&columns(&rows));
    }
    let more = "\nMore about a key and the keys below it: puddlebook explain canvases. From \
                \"colours\" to \"cautions\" data files may hold the keys of a lesson as well, \
                but for those that must be there.\n";
    text.push_str(&format!("\n{}", paragraph(more.trim())));
    text
}

/// Everything about a key.
fn whole(key: &KeyHelp) -> String {
    let mut text = format!("{}\n\n{}\n", key.path.join(" > "), paragraph(&key.meaning));
    let mut facts = vec![("stands in".to_owned(), stands_in(key).to_owned())];
    facts.push(("value".to_owned(), key.forms.join("; or ")));
    facts.extend(key.limits.iter().map(|limits| ("allowed".to_owned(), limits.clone())));
    facts.push(("needed".to_owned(), needed(key)));
    text.push_str(&columns(&facts));
    if !key.words.is_empty() {
        text.push_str("\nWords:\n");
        text.push_str(&columns(&key.words));
    }
    if !key.below.is_empty() {
        let below = key.below.iter();
        let rows: Vec<_> =
            below.map(|(key, meaning)| (key.clone(), first_sentence(meaning))).collect();
        text.push_str("\nKeys below it:\n");
        text.push_str(&columns(&rows));
    }
    text.push_str("\nExample:\n");
    for line in key.example.lines() {
        let _ = writeln!(text, "  {line}");
    }
    text
}

fn stands_in(key: &KeyHelp) -> &'static str {
    match key.kind {
        FileKind::Weighings => "a file of weighings",
        _ if key.in_data_files => "a lesson or a data file",
        _ => "a lesson",
    }
}

fn needed(key: &KeyHelp) -> String {
    match (key.need, &key.default) {
        (Need::Always, _) => "yes".to_owned(),
        (Need::Once, _) => "yes, unless an earlier file says it already".to_owned(),
        (Need::No, Some(default)) => format!("no; without it: {default}"),
        (Need::No, None) => "no".to_owned(),
    }
}

/// Keys with what they mean, one below the other.
fn places(keys: &[KeyHelp]) -> String {
    let rows: Vec<_> = keys.iter().map(|key| (called(key), first_sentence(&key.meaning))).collect();
    columns(&rows)
}

/// A key as it may be asked for.
fn called(key: &KeyHelp) -> String {
    let keys = key.path.iter().filter(|key| *key != "NAME");
    let mut called: String = keys.map(String::as_str).collect::<Vec<_>>().join(".");
    if key.kind == FileKind::Weighings && key.path.len() > 1 {
        called.push_str(" (weighings)");
    }
    called
}

fn first_sentence(text: &str) -> String {
    text.split_once(". ").map_or(text, |(first, _)| first).trim_end_matches('.').to_owned()
}

fn unknown(said: &str, near: &[String]) -> String {
    let mut text = format!("error: there is no key called \"{said}\"\n");
    match near {
        [] => text.push_str("help: \"puddlebook explain\" lists all keys"),
        [one] => {
            let _ = write!(text, "help: did you mean \"{one}\"?");
        }
        several => {
            let names: Vec<String> = several.iter().map(|name| format!("\"{name}\"")).collect();
            let _ = write!(text, "help: did you mean one of {}?", names.join(", "));
        }
    }
    text
}
