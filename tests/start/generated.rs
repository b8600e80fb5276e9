//! Whatever is answered and accepted gives a file that reads back to the same values.

use super::script::Script;
use crate::lesson_tools::read_text;
use proptest::collection::vec;
use proptest::prelude::*;
use puddlebook::cli::start::{Given, interview};
use puddlebook::lesson::{Shape, Students};
use puddlebook::plan;
use puddlebook::quantity::read;
use std::path::Path;

/// Text of every kind: plain, signs of YAML, quotation marks, ends of lines, emoji, right-to-left.
fn anything() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z]{1,8}( [a-z]{1,8}){0,2}",
        "[-:#'\"{}\\[\\]&*!|>%@`?~,\\\\ a-z0-9]{1,20}",
        "[ \\n\\r\\ta-z\u{85}\u{2028}\u{FEFF}]{1,12}",
        "[🌊🎨é½םשא\u{202E}\u{200F} :#-]{1,10}",
        any::<String>(),
        Just("null".to_owned()),
        Just("~".to_owned()),
        Just("--- # x".to_owned()),
        Just("no".to_owned()),
    ]
}

/// Names that a list can hold: without commas and numbers of their own.
fn name() -> impl Strategy<Value = String> {
    prop_oneof!["[a-z]{1,8}( [a-z]{1,8})?", "[-#'\"{}&*!|>@`?~\\\\ a-zé🌊שא]{1,14}"]
}

/// One line, as the readers make it.
fn line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, ..ProptestConfig::default() })]

    #[test]
    fn accepted_answers_read_back(
        title in anything(),
        teacher in anything(),
        place in anything(),
        people in prop_oneof![(1..60_u32).prop_map(|count| vec![count.to_string()]), vec(name(), 2..5)],
        (width, height) in (1..90_u32, 1..90_u32),
        each in 1..4_u32,
        board in name(),
        colours in vec((name(), 1..9_u32), 1..5),
    ) {
        let people_text = people.join(", ");
        let canvas = format!("{board}: rectangle {width} x {height} cm, {each} each");
        let parts: Vec<String> =
            colours.iter().map(|(colour, part)| format!("{colour} {part}")).collect();
        let parts = parts.join(", ");
        let mut script = Script::of(&[
            ("title", &title),
            ("teacher", &teacher),
            ("place", &place),
            ("people", &people_text),
            ("canvas", &canvas),
            ("colours", "my own"),
            ("colours", &parts),
        ]);
        let begun = interview(&mut script, &Given::default(), "en_GB").unwrap();
        let text = begun.text(Path::new("class.yaml")).unwrap();
        let lesson = read_text(&text).map_err(|faults| {
            TestCaseError::fail(format!("{faults}\n{text}"))
        })?;
        let accepted = |option: &str| script.wrong.iter().all(|(wrong, _)| *wrong != option);
        let heading = &lesson.heading;
        if accepted("title") {
            prop_assert_eq!(&heading.title, &line(&title));
        }
        for (option, said, read) in
            [("teacher", &teacher, &heading.teacher), ("place", &place, &heading.place)]
        {
            if accepted(option) {
                prop_assert_eq!(read.clone().unwrap_or_default(), line(said));
            }
        }
        if accepted("people") {
            match &lesson.class.students {
                Students::Count(count) => prop_assert_eq!(count.to_string(), line(&people_text)),
                Students::Named(names) => {
                    let said: Vec<String> =
                        people.iter().map(|name| line(name)).filter(|n| !n.is_empty()).collect();
                    prop_assert_eq!(names, &said);
                }
            }
        }
        if accepted("canvas") {
            let canvas = &lesson.canvases[0];
            prop_assert_eq!(&canvas.name, &line(&board));
            let length = |size: u32| read::length(&format!("{size} cm")).unwrap();
            let wanted = Shape::Rectangle { width: length(width), height: length(height) };
            prop_assert_eq!(canvas.shape, wanted);
            prop_assert_eq!(canvas.each.get(), each);
        }
        if accepted("colours") {
            let all: u32 = colours.iter().map(|(_, part)| part).sum();
            let read = &lesson.canvases[0].layers[0].colours;
            prop_assert_eq!(read.len(), colours.len());
            for ((colour, share), (said, part)) in read.iter().zip(&colours) {
                prop_assert_eq!(&colour.name, &line(said));
                let wanted = f64::from(*part) / f64::from(all);
                prop_assert!((share.as_f64() - wanted).abs() < 3e-4, "{} of {}", part, all);
            }
        }
        prop_assert!(plan::plan(lesson).is_ok());
    }
}
