//! What is offered is what there is, in every language; and the notes of the file are true.

use super::script::begun;
use crate::lesson_tools::{in_project, read_text};
use puddlebook::plan::{self, Purchase};
use serde_yaml::Value;

const LANGUAGES: [(&str, &str, &str); 2] =
    [("en", "English, inches", "fill in"), ("es", "Spanish, cent", "por poner")];

/// Notes of the file that are entries when their # is taken away.
const EXAMPLES: [&str; 11] = [
    "subtitle",
    "teacher",
    "place",
    "date",
    "youngest age",
    "stock",
    "jars",
    "shops",
    "bought elsewhere",
    "timetable",
    "reserve",
];

fn names(tag: &str, section: &str) -> Vec<String> {
    let text = std::fs::read_to_string(in_project(&format!("lessons/start/{tag}.yaml"))).unwrap();
    let offers: Value = serde_yaml::from_str(&text).unwrap();
    let entries = offers[section].as_sequence().unwrap();
    entries.iter().map(|entry| entry["name"].as_str().unwrap().to_owned()).collect()
}

#[test]
fn all_techniques_and_mixes_are_offered() {
    for (tag, way, _) in LANGUAGES {
        let (_, text, _) = begun(&[("language", way)]);
        let lesson = read_text(&text).unwrap_or_else(|faults| panic!("{faults}"));
        let known: Vec<&str> = lesson.techniques.iter().map(|t| t.name.as_str()).collect();
        assert_eq!(names(tag, "techniques"), known);
        let mut mixes: Vec<&str> = lesson.mixes.iter().map(|mix| mix.name.as_str()).collect();
        let mut offered = names(tag, "consistencies");
        mixes.sort_unstable();
        offered.sort_unstable();
        assert_eq!(offered, mixes);
    }
}

#[test]
fn every_offered_palette_makes_a_lesson() {
    for (tag, way, _) in LANGUAGES {
        for palette in names(tag, "palettes") {
            let (_, text, script) = begun(&[("language", way), ("colours", &palette)]);
            assert_eq!(script.wrong, []);
            let lesson = read_text(&text).unwrap_or_else(|faults| panic!("{faults}"));
            assert!(lesson.canvases[0].layers[0].colours.len() >= 3);
            // Each colour has a look of its own.
            let colours = &lesson.canvases[0].layers[0].colours;
            let looks: std::collections::BTreeSet<_> =
                colours.iter().map(|(c, _)| [c.swatch.0, c.swatch.1, c.swatch.2]).collect();
            assert_eq!(looks.len(), colours.len(), "{palette}");
        }
    }
}

/// The file with every example turned into an entry.
fn with_examples(text: &str) -> (String, Vec<&'static str>) {
    let mut inside = false;
    let mut found = Vec::new();
    let lines: Vec<String> = text
        .lines()
        .map(|line| {
            let bare = line.trim_start();
            let indent = line.len() - bare.len();
            let key = EXAMPLES.iter().find(|key| bare.starts_with(&format!("# {key}:")));
            inside = key.is_some() || (inside && bare.starts_with("#  "));
            found.extend(key);
            match inside {
                true => format!("{}{}", &line[..indent], bare.strip_prefix("# ").unwrap()),
                false => line.to_owned(),
            }
        })
        .collect();
    (lines.join("\n"), found)
}

#[test]
fn every_example_in_the_notes_is_right() {
    for (_, way, blank) in LANGUAGES {
        let (_, text, _) = begun(&[("language", way)]);
        let (filled, found) = with_examples(&text);
        assert_eq!(found, EXAMPLES, "all of them are there");
        // A price that nobody has put in is told, never taken for nothing.
        let faults = read_text(&filled).unwrap_err().to_string();
        assert!(faults.contains(blank), "{faults}");
        let filled = filled.replace(blank, "1.25");
        let lesson = read_text(&filled).unwrap_or_else(|faults| panic!("{faults}\n{filled}"));
        assert!(lesson.timetable.is_some() && !lesson.jars.is_empty() && !lesson.stock.is_empty());
        let plan = plan::plan(lesson).unwrap();
        let unsold = plan.order.lines.iter().filter(|l| matches!(l.purchase, Purchase::NoPrice));
        assert_eq!(unsold.map(|line| line.item.as_str()).collect::<Vec<_>>(), [""; 0]);
    }
}
