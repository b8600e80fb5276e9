//! Every key of a file, explained: what it means, how its value is written, an example.
//!
//! In: what a teacher says of a key, or an error names. Out: [`KeyHelp`], all of it from the
//! schema (`atlas`) and from two files by example (`example`), so that nothing is said twice.

mod atlas;
mod example;
mod said;

pub(super) use example::Examples;

use super::raw;
use super::schema::FileKind;
use crate::quantity::nearest::nearest;
use atlas::{Known, Step};
use serde_json::Value;
use std::collections::BTreeSet;

/// What there is to say of one key.
#[derive(Debug, Clone, PartialEq)]
pub struct KeyHelp {
    /// Keys from the top of the file down, `NAME` where a name of one's own stands.
    pub path: Vec<String>,
    /// The kind of file, and for a lesson whether data files may hold it as well.
    pub kind: FileKind,
    pub in_data_files: bool,
    pub meaning: String,
    /// The forms that its value may have.
    pub forms: Vec<String>,
    /// The words to choose from, with what they mean.
    pub words: Vec<(String, String)>,
    /// How far the value may go.
    pub limits: Option<String>,
    pub need: Need,
    /// What holds when it is left out.
    pub default: Option<String>,
    /// Lines of a file in which it stands.
    pub example: String,
    /// The keys below it, with what they mean.
    pub below: Vec<(String, String)>,
}

/// Whether a key has to be there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Need {
    /// Wherever what it belongs to is there.
    Always,
    /// In one of the files that say something of what it belongs to.
    Once,
    /// It may be left out.
    No,
}

/// Keys that were meant, or nearly.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// One key, and others of the same name in other places.
    Key(Box<KeyHelp>, Vec<KeyHelp>),
    /// Several places, none of them before the others.
    Places(Vec<KeyHelp>),
    /// No such key; the nearest names there are.
    Nothing(Vec<String>),
}

/// All keys of a kind of file, those of one place in the order of its file by example.
pub fn keys(kind: FileKind) -> Vec<KeyHelp> {
    let all = atlas::of(kind);
    let examples = Examples::of(kind);
    let mut help: Vec<_> = all.iter().map(|known| help(known, kind, &all, &examples)).collect();
    if kind == FileKind::Lesson {
        let place = |help: &KeyHelp| {
            raw::KEYS.iter().position(|key| help.path.first().is_some_and(|first| first == key))
        };
        help.sort_by_key(place);
    }
    help
}

/// The key that is meant by `canvases`, `class.students`, `canvases > square > width` or
/// `bought elsewhere`.
pub fn explain(said: &str) -> Found {
    let mut found = Vec::new();
    for kind in [FileKind::Lesson, FileKind::Weighings] {
        let all = atlas::of(kind);
        let examples = Examples::of(kind);
        for known in &all {
            if let Some(fit) = said::fits(said, &known.path) {
                found.push((fit, help(known, kind, &all, &examples)));
            }
        }
    }
    // Where the words are the keys themselves, none of them is a name of one's own.
    let least = found.iter().map(|(fit, _)| fit.names).min().unwrap_or_default();
    found.retain(|(fit, _)| fit.names == least);
    let from_top = found.iter().filter(|(fit, _)| fit.from_top).count();
    if let (1, Some(at)) = (from_top, found.iter().position(|(fit, _)| fit.from_top)) {
        let (_, key) = found.remove(at);
        return Found::Key(Box::new(key), found.into_iter().map(|(_, key)| key).collect());
    }
    let mut keys: Vec<KeyHelp> = found.into_iter().map(|(_, key)| key).collect();
    match (keys.len(), keys.pop()) {
        (_, None) => Found::Nothing(near(said)),
        (1, Some(key)) => Found::Key(Box::new(key), Vec::new()),
        (_, Some(last)) => {
            keys.push(last);
            Found::Places(keys)
        }
    }
}

/// Names of keys that are near to what was said, or hold one of its words. Where keys above it were
/// said as well, the last one is what nobody knows.
fn near(said: &str) -> Vec<String> {
    const FEW: usize = 5;
    let kinds = [FileKind::Lesson, FileKind::Weighings];
    let known = kinds.into_iter().flat_map(atlas::of);
    let names: BTreeSet<String> =
        known.filter_map(|known| known.name().map(str::to_owned)).collect();
    let last = said::parts(said).pop().unwrap_or_default();
    // A word that is a key by itself is not what is wrong.
    let words = last.split(' ').filter(|word| word.chars().count() > 2 && !names.contains(*word));
    let words: Vec<&str> = [last.as_str()].into_iter().chain(words).collect();
    let all = || names.iter().map(String::as_str);
    let alike = words.iter().filter_map(|word| nearest(word, all()));
    let begun = words.iter().flat_map(|word| {
        all().filter(move |name| name.split(' ').any(|part| part.starts_with(word)))
    });
    let mut near: Vec<String> = Vec::new();
    for name in alike.chain(begun).filter(|_| !last.is_empty()) {
        if !near.iter().any(|known| known == name) {
            near.push(name.to_owned());
        }
    }
    near.truncate(FEW);
    near
}

fn help(known: &Known, kind: FileKind, all: &[Known], examples: &Examples) -> KeyHelp {
    let schema = &known.schema;
    let below = all.iter().filter(|other| other.is_below(known));
    let default = schema.get("default").map(plain);
    let needed = schema.get("needed").and_then(Value::as_str);
    KeyHelp {
        path: known.path.iter().filter_map(Step::shown).collect(),
        kind,
        in_data_files: kind == FileKind::Lesson && known.is_in(raw::DATA_KEYS),
        meaning: known.meaning().to_owned(),
        forms: atlas::forms(schema),
        words: atlas::words(schema),
        limits: known.limits(),
        need: match needed {
            _ if default.is_some() => Need::No,
            Some("always") => Need::Always,
            Some(_) => Need::Once,
            None => Need::No,
        },
        default,
        example: examples.excerpt(known, all).unwrap_or_default(),
        below: below
            .map(|below| (below.name().unwrap_or_default().to_owned(), below.meaning().to_owned()))
            .collect(),
    }
}

/// A value as it is written in a file.
fn plain(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), str::to_owned)
}
