//! What stands in one language stands in every other: templates, words, names.

use puddlebook::lesson::Language;
use serde_yaml::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use crate::lesson_tools::{files_in, in_project};

fn others() -> impl Iterator<Item = &'static str> {
    Language::ALL.into_iter().map(Language::tag).filter(|tag| *tag != "en")
}

fn read(path: &str) -> String {
    fs::read_to_string(in_project(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

fn yaml(path: &str) -> Value {
    serde_yaml::from_str(&read(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// How often each thing is there.
fn counted(things: impl IntoIterator<Item = String>) -> BTreeMap<String, usize> {
    let mut counts = BTreeMap::new();
    for thing in things {
        *counts.entry(thing).or_insert(0) += 1;
    }
    counts
}

/// What stands between two marks, wherever they stand.
fn between<'t>(text: &'t str, open: &str, close: &str) -> Vec<&'t str> {
    let parts = text.split(open).skip(1);
    parts.filter_map(|part| part.split(close).next()).map(str::trim).collect()
}

/// Without what is between quotes: names of the language.
fn unnamed(code: &str) -> String {
    code.split('"').step_by(2).collect::<Vec<_>>().join("\"\"")
}

/// What a template does, without what it says: values, loops, blocks, marks within lines,
/// headings, anchors and links.
fn frame(template: &str) -> BTreeMap<String, usize> {
    let values = between(template, "{{", "}}").into_iter().map(unnamed);
    let code = between(template, "{%", "%}").into_iter().map(|code| code.trim_matches('-').trim());
    let loops =
        code.filter(|code| ["for ", "set", "inc"].iter().any(|word| code.starts_with(word)));
    let loops =
        loops.map(|code| if code.starts_with("inc") { code.to_owned() } else { unnamed(code) });
    let blocks = template.lines().filter(|line| line.starts_with("```")).map(|line| {
        // A word behind the name of these is said; that of the others is done.
        let said = ["masthead", "contents"];
        let block = line.trim_start_matches('`');
        let name = block.split(' ').next().unwrap_or_default();
        format!("block {}", if said.contains(&name) { name } else { block })
    });
    let inline = between(template, "`", "`").into_iter().filter(|code| !code.contains('\n'));
    let marks = inline.filter_map(|code| match code.split(' ').collect::<Vec<_>>().as_slice() {
        ["blank", width, ..] => Some(format!("blank {width}")),
        ["tick"] => Some("tick".to_owned()),
        ["page" | "anchor", anchor] => Some(format!("page or anchor {anchor}")),
        _ => None,
    });
    let headings = template.lines().filter_map(|line| {
        let (level, text) = line.split_once("# ")?;
        let level = (level.is_empty() || level.starts_with('#')).then_some(level)?;
        Some(format!("{level}# {}", text.split_once('{').map_or("", |(_, anchor)| anchor)))
    });
    // What is explained, and the places where.
    let places = between(template, "```index", "```").into_iter().flat_map(str::lines);
    let places = places.filter_map(|line| Some(format!("places {}", line.split_once(" | ")?.1)));
    let links = between(template, "](", ")").into_iter().map(str::to_owned);
    counted(
        values.chain(loops).chain(blocks).chain(marks).chain(headings).chain(places).chain(links),
    )
}

fn names(folder: &str, ending: &str) -> Vec<String> {
    let files = files_in(folder, ending);
    files.iter().map(|path| path.file_name().unwrap().to_string_lossy().into_owned()).collect()
}

#[test]
fn every_template_has_its_counterpart_that_does_the_same() {
    let english = names("templates/en", "md");
    assert!(english.len() >= 24);
    for tag in others() {
        assert_eq!(names(&format!("templates/{tag}"), "md"), english, "{tag}");
        for name in &english {
            let here = frame(&read(&format!("templates/en/{name}")));
            let there = frame(&read(&format!("templates/{tag}/{name}")));
            for (what, count) in &here {
                let found = there.get(what).unwrap_or(&0);
                assert_eq!(found, count, "{tag}/{name} has {found} of {what}, en has {count}");
            }
            let new: Vec<_> = there.keys().filter(|what| !here.contains_key(*what)).collect();
            assert!(new.is_empty(), "{tag}/{name} has what en has not: {new:?}");
        }
    }
}

#[test]
fn a_missing_value_is_noticed() {
    let whole = "{{ a }} is {{ b }} `blank 40 x` [see](#there)`anchor b`\n\n```step 1\n```\n## On { #on }\n\
                 ```index 2\nx | c, d\n```\n";
    for part in ["{{ a }}", "`blank 40 x`", "(#there)", "step 1", "#on", "`anchor b`", "c, d"] {
        assert!(frame(&whole.replace(part, "")) != frame(whole), "{part}");
    }
}

/// Keys down to the texts, each with the blanks that are filled in.
fn blanks(value: &Value, path: &str, found: &mut BTreeMap<String, BTreeSet<String>>) {
    match value {
        Value::Mapping(entries) => {
            for (key, value) in entries {
                blanks(value, &format!("{path}.{}", key.as_str().unwrap()), found);
            }
        }
        Value::Sequence(items) => {
            for (at, item) in items.iter().enumerate() {
                blanks(item, &format!("{path}.{at}"), found);
            }
        }
        text => {
            let names = between(text.as_str().unwrap_or_default(), "{", "}");
            found.insert(path.to_owned(), names.into_iter().map(str::to_owned).collect());
        }
    }
}

#[test]
fn every_dictionary_has_the_same_words_with_the_same_blanks() {
    let words = |tag: &str| {
        let mut found = BTreeMap::new();
        blanks(&yaml(&format!("templates/{tag}/words.yaml")), "", &mut found);
        found
    };
    let english = words("en");
    assert!(english.len() > 150);
    for tag in others() {
        let found = words(tag);
        let keys = |words: &BTreeMap<String, _>| words.keys().cloned().collect::<Vec<_>>();
        assert_eq!(keys(&found), keys(&english), "{tag}");
        for (key, blanks) in found {
            assert_eq!(blanks, english[&key], "{tag}: {key}");
        }
        let own = yaml(&format!("templates/{tag}/words.yaml"));
        assert_eq!(own["language"].as_str(), Some(tag));
    }
}

/// Keys whose values are words for people.
const SAID: [&str; 5] = ["summary", "basis", "heading", "reason", "source"];

/// Sections of names, and keys below them whose values are names or are named.
const NAMED: [&str; 8] =
    ["materials", "mixes", "techniques", "finishes", "supplies", "cautions", "layers", "parts"];

/// Two files of names say the same: the same keys in one order, the same figures.
fn same(one: &Value, other: &Value, path: &str) {
    match (one, other) {
        (Value::Mapping(one), Value::Mapping(other)) => {
            assert_eq!(one.len(), other.len(), "{path} has as many entries");
            let above = path.rsplit('.').next().unwrap_or_default();
            let named = NAMED.contains(&above) || above == "each piece";
            for ((key, value), (name, counterpart)) in one.iter().zip(other) {
                let (key, name) = (key.as_str().unwrap(), name.as_str().unwrap());
                assert!(named || key == name, "{path}: {key} and {name}");
                if !SAID.contains(&key) && key != "material" && key != "pigments" {
                    same(value, counterpart, &format!("{path}.{key}"));
                }
            }
        }
        _ => assert_eq!(one, other, "{path}"),
    }
}

#[test]
fn every_name_that_comes_with_the_program_has_its_counterpart_with_the_same_figures() {
    let english = names("lessons/defaults/en", "yaml");
    assert_eq!(english.len(), 7);
    for tag in others() {
        assert_eq!(names(&format!("lessons/defaults/{tag}"), "yaml"), english, "{tag}");
        for name in &english {
            let [here, there] =
                ["en", tag].map(|tag| yaml(&format!("lessons/defaults/{tag}/{name}")));
            same(&here, &there, name);
        }
    }
}
