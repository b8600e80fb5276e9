//! Every key explained: all of them, with examples that can be read, by whatever a teacher calls
//! them.

use super::{printed, run};
use crate::lesson_tools::in_project;
use puddlebook::lesson::{
    FileKind, Found, KeyHelp, Lesson, Need, Unread, explain, keys, read_weighings_with, read_with,
};
use serde_yaml::Value;
use std::fs;
use std::path::{Path, PathBuf};

/// A lesson with the names that the examples use, and no more.
const LESSON: &str = r##"title: A small class
date: 2026-03-14
class: {students: 8}
canvases:
  square:
    shape: rectangle
    width: 10 in
    height: 10 in
    technique: straight pour
    consistency: medium
    palette: shoreline
palettes:
  shoreline:
    colour: {harbour blue: 40 %, sand: 25 %, white: the rest}
colours:
  harbour blue: {swatch: "#1F5A7A"}
  sand: {swatch: "#D9B98A"}
  white: {swatch: "#F4F2EC"}
"##;

/// The lesson by example in which every key stands.
fn by_example() -> String {
    fs::read_to_string(in_project("src/lesson/keys/lesson.yaml")).unwrap()
}

/// Reads a lesson; the data files that it names are empty but for a note.
fn read(text: &str) -> Result<Lesson, String> {
    let load = |path: &Path| match path.starts_with("data") {
        true => Ok(b"stock:\n".to_vec()),
        false => Ok(text.as_bytes().to_vec()),
    };
    read_with(Path::new("lesson.yaml"), &load).map_err(|faults| format!("{faults}\nof:\n{text}"))
}

fn merge(base: &mut Value, over: Value) {
    match (base, over) {
        (Value::Mapping(base), Value::Mapping(over)) => {
            for (key, value) in over {
                merge(base.entry(key).or_insert(Value::Null), value);
            }
        }
        (base, over) => *base = over,
    }
}

/// A file with an example laid over it.
fn with(base: &str, example: &str) -> String {
    let mut value: Value = serde_yaml::from_str(base).unwrap();
    merge(&mut value, serde_yaml::from_str(example).unwrap());
    serde_yaml::to_string(&value).unwrap()
}

/// Whether a file holds this path of keys, `NAME` and places in lists being any.
fn holds(value: &Value, path: &[String]) -> bool {
    let Some((key, rest)) = path.split_first() else { return true };
    match value {
        Value::Sequence(items) => items.iter().any(|item| holds(item, path)),
        Value::Mapping(entries) if key == "NAME" => {
            entries.values().any(|value| holds(value, rest))
        }
        Value::Mapping(entries) => {
            entries.get(key.as_str()).is_some_and(|value| holds(value, rest))
        }
        _ => false,
    }
}

#[test]
fn the_lesson_by_example_is_a_lesson() {
    let lesson = read(&by_example()).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.canvases.len(), 5);
    assert!(puddlebook::plan::plan(lesson).is_ok());
}

#[test]
fn every_key_is_explained_with_an_example_that_can_be_read() {
    let all = keys(FileKind::Lesson);
    assert!(all.len() > 120, "{} keys", all.len());
    for key in &all {
        let name = key.path.join(" > ");
        assert!(key.meaning.ends_with('.'), "{name}: {}", key.meaning);
        assert!(!key.forms.is_empty() || !key.below.is_empty(), "{name} has no form");
        assert!(!key.example.is_empty(), "{name}: src/lesson/keys/lesson.yaml lacks it");
        let value: Value = serde_yaml::from_str(&key.example).unwrap();
        assert!(holds(&value, &key.path), "{name} is not in\n{}", key.example);
        read(&with(LESSON, &key.example)).unwrap_or_else(|faults| panic!("{name}: {faults}"));
    }
}

#[test]
fn every_key_of_weighings_is_explained_with_an_example_that_can_be_read() {
    let base = "lesson: my-class.yaml\nscale: 1 g\ncups:\n  \
                - {student: 1, canvas: square, colour: sand, before: 45 g, after: 11 g}\n";
    let all = keys(FileKind::Weighings);
    assert_eq!(all.len(), 17);
    for key in all {
        let name = key.path.join(" > ");
        assert!(key.meaning.ends_with('.') && !key.forms.is_empty(), "{name}");
        let value: Value = serde_yaml::from_str(&key.example).unwrap();
        assert!(holds(&value, &key.path), "{name} is not in\n{}", key.example);
        let text = with(base, &key.example);
        let load = |path: &Path| match path == Path::new("my-class.yaml") {
            true => Ok(LESSON.as_bytes().to_vec()),
            false if path == Path::new("class.yaml") => Ok(text.as_bytes().to_vec()),
            false => Err(Unread::NotFound),
        };
        let read = read_weighings_with(&[PathBuf::from("class.yaml")], &load);
        read.unwrap_or_else(|faults| panic!("{name}: {faults}"));
    }
}

/// Puts a value under the last key of a path wherever what it belongs to stands and lacks it;
/// how often that was.
fn put(value: &mut Value, path: &[String], default: &str) -> usize {
    let Some((key, rest)) = path.split_first() else { return 0 };
    match value {
        Value::Sequence(items) => items.iter_mut().map(|item| put(item, path, default)).sum(),
        Value::Mapping(entries) if key == "NAME" => {
            entries.values_mut().map(|value| put(value, rest, default)).sum()
        }
        Value::Mapping(entries) if rest.is_empty() => {
            entries.insert(key.as_str().into(), default.into());
            1
        }
        Value::Mapping(entries) => {
            entries.get_mut(key.as_str()).map_or(0, |value| put(value, rest, default))
        }
        _ => 0,
    }
}

/// Takes out the last key of a path wherever it stands.
fn take_out(value: &mut Value, path: &[String]) {
    let Some((key, rest)) = path.split_first() else { return };
    match value {
        Value::Sequence(items) => items.iter_mut().for_each(|item| take_out(item, path)),
        Value::Mapping(entries) if key == "NAME" => {
            entries.values_mut().for_each(|value| take_out(value, rest));
        }
        Value::Mapping(entries) if rest.is_empty() => {
            entries.remove(key.as_str());
        }
        Value::Mapping(entries) => {
            entries.get_mut(key.as_str()).into_iter().for_each(|value| take_out(value, rest));
        }
        _ => {}
    }
}

#[test]
fn a_default_is_what_holds_without_the_key() {
    let whole: Value = serde_yaml::from_str(&by_example()).unwrap();
    let with_default: Vec<KeyHelp> =
        keys(FileKind::Lesson).into_iter().filter(|key| key.default.is_some()).collect();
    assert!(with_default.len() > 20, "{} defaults", with_default.len());
    for key in with_default {
        let default = key.default.unwrap();
        let name = key.path.join(" > ");
        let mut without = whole.clone();
        // What is weighed belongs to the values that it came with.
        take_out(&mut without, &["reserve".to_owned(), "weighed".to_owned()]);
        take_out(&mut without, &key.path);
        let mut written = without.clone();
        assert!(put(&mut written, &key.path, &default) > 0, "{name}");
        let [without, written] = [without, written].map(|value| {
            let lesson = read(&serde_yaml::to_string(&value).unwrap());
            format!("{:?}", lesson.unwrap_or_else(|faults| panic!("{name}: {faults}")))
        });
        assert!(without == written, "{name} is not {default} when it is left out");
    }
}

#[test]
fn what_is_needed_is_missed() {
    let whole: Value = serde_yaml::from_str(&by_example()).unwrap();
    let needed = keys(FileKind::Lesson).into_iter().filter(|key| key.need == Need::Always);
    let mut count = 0;
    for key in needed {
        let mut without = whole.clone();
        take_out(&mut without, &key.path);
        let read = read(&serde_yaml::to_string(&without).unwrap());
        assert!(read.is_err(), "{} can be left out", key.path.join(" > "));
        count += 1;
    }
    assert!(count > 15, "{count} keys");
}

#[test]
fn a_key_is_found_by_whatever_it_is_called() {
    let found = |said: &str| match explain(said) {
        Found::Key(key, _) => key.path.join(" > "),
        other => panic!("{said}: {other:?}"),
    };
    for (said, path) in [
        ("canvases", "canvases"),
        ("class.students", "class > students"),
        ("class students", "class > students"),
        ("students", "class > students"),
        ("bought elsewhere", "bought elsewhere"),
        ("Bought-Elsewhere", "bought elsewhere"),
        ("mixes", "mixes"),
        ("canvases > square > width", "canvases > NAME > width"),
        ("canvases.width", "canvases > NAME > width"),
        (
            "shops > Corner supply shop (invented) > packs > no. 2 > price",
            "shops > NAME > packs > price",
        ),
        ("reserve: enough in", "reserve > enough in"),
        ("jars colour", "jars > colour"),
        ("before", "cups > before"),
        (
            "techniques straight pour layers colour medium weighed own weight",
            "techniques > NAME > layers > NAME > medium > weighed > own weight",
        ),
    ] {
        assert_eq!(found(said), path, "{said}");
    }
}

#[test]
fn a_key_of_several_places_names_them() {
    let Found::Places(places) = explain("width") else { panic!("a canvas and a table have one") };
    let places: Vec<_> = places.iter().map(|key| key.path[0].as_str()).collect();
    assert_eq!(places, ["canvases", "room", "sizes", "sizes"]);
    // One at the top goes before the others.
    let Found::Key(key, others) = explain("finishes") else { panic!("a section") };
    assert_eq!(key.path, ["finishes"]);
    assert!(others.iter().any(|other| other.path == ["canvases", "NAME", "finishes"]));
    let said = printed(&["explain", "width"]);
    for place in ["canvases.width", "room.table.width", "sizes.us.width"] {
        assert!(said.contains(place), "{said}");
    }
}

#[test]
fn an_unknown_key_is_wrong_use_and_gets_the_nearest() {
    for (said, near) in [
        ("canvasses", "canvases"),
        ("studens", "student"),
        ("class.studnets", "students"),
        ("elsewhere", "bought elsewhere"),
        ("colors", "colours"),
    ] {
        let output = run(&["explain", said]);
        assert_eq!(output.status.code(), Some(2), "{said}");
        assert!(output.stdout.is_empty());
        let wrong = String::from_utf8(output.stderr).unwrap();
        assert!(wrong.contains(&format!("no key called \"{said}\"")), "{wrong}");
        assert!(wrong.contains(&format!("\"{near}\"")), "{wrong}");
    }
    let output = run(&["explain", "qwertz"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8(output.stderr).unwrap().contains("\"puddlebook explain\" lists"));
}

#[test]
fn the_overview_has_every_key_once() {
    let said = printed(&["explain"]);
    let (said, _) = said.split_once("Keys of weighings").unwrap();
    for key in keys(FileKind::Lesson).iter().filter(|key| key.path.len() == 1) {
        let star = if key.need == Need::Always { " *" } else { "" };
        let row = format!("  {}{star}  ", key.path[0]);
        assert_eq!(said.lines().filter(|line| line.starts_with(&row)).count(), 1, "{row}\n{said}");
    }
}

#[test]
fn an_explanation_reads_as_a_whole() {
    insta::assert_snapshot!(printed(&["explain", "canvases", "edge"]));
}
