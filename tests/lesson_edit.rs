//! One value of a lesson changed in its text, and nothing else.

use crate::lesson_tools::{SMALL, files_in, read_text};
use proptest::prelude::*;
use puddlebook::lesson::{Form, Lesson, Students, Unplaced, edit, form_at, read_with};
use std::fs;
use std::path::Path;

/// Reads a text in the place of a file.
fn read_as(path: &Path, text: &str) -> Lesson {
    let read = read_with(path, &|asked| {
        let bytes = if asked == path { text.as_bytes().to_vec() } else { fs::read(asked).unwrap() };
        Ok(bytes)
    });
    read.unwrap_or_else(|faults| panic!("{faults}"))
}

/// The demo lessons, as they are and with the line ends of another system.
fn demos() -> Vec<(std::path::PathBuf, String)> {
    let texts = files_in("lessons", "yaml").into_iter().flat_map(|path| {
        let text = fs::read_to_string(&path).unwrap();
        let windows = format!("\u{feff}{}", text.replace('\n', "\r\n"));
        [(path.clone(), text), (path, windows)]
    });
    texts.collect()
}

/// Every comment, in its order.
fn comments(text: &str) -> Vec<&str> {
    let lines = text.split('\n');
    lines.filter_map(|line| line.find('#').map(|at| &line[at..])).collect()
}

fn debug(lesson: &Lesson) -> String {
    format!("{lesson:?}")
}

proptest! {
    // Each reads whole lessons.
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_number_of_students(demo in 0..demos().len(), count in 1_u32..=1000) {
        let (path, text) = demos().swap_remove(demo);
        let edited = edit(&text, &["class", "students"], &count.to_string());
        let before = read_as(&path, &text);
        if matches!(before.class.students, Students::Named(_)) {
            prop_assert_eq!(edited, Err(Unplaced::NotOneValue));
            return Ok(());
        }
        let edited = edited.unwrap();
        let mut after = read_as(&path, &edited);
        prop_assert!(matches!(after.class.students, Students::Count(now) if now.get() == count));
        after.class.students = before.class.students.clone();
        prop_assert_eq!(debug(&after), debug(&before));
        prop_assert_eq!(comments(&edited), comments(&text));
        prop_assert_eq!(edited.matches('\r').count(), text.matches('\r').count());
        prop_assert_eq!(edited.starts_with('\u{feff}'), text.starts_with('\u{feff}'));
    }

    #[test]
    fn any_mix_of_any_canvas(demo in 0..demos().len(), canvas in 0..4_usize, mix in 0..8_usize) {
        let (path, text) = demos().swap_remove(demo);
        let before = read_as(&path, &text);
        let canvas = canvas % before.canvases.len();
        let name = before.canvases[canvas].name.as_str();
        let mix = &before.mixes[mix % before.mixes.len()];
        let mut keys = vec!["canvases", name, "consistency"];
        let is_apart = form_at(&text, &keys) == Some(Form::Mapping);
        if is_apart {
            keys.push(before.canvases[canvas].technique.layers[0].name.as_str());
        }
        let edited = edit(&text, &keys, &mix.name).unwrap();
        let mut after = read_as(&path, &edited);
        let mixed: Vec<String> =
            after.canvases[canvas].layers.iter().map(|layer| layer.mix.name.clone()).collect();
        prop_assert_eq!(&mixed[0], &mix.name);
        if is_apart {
            prop_assert_eq!(&mixed[1], &before.canvases[canvas].layers[1].mix.name);
        }
        after.canvases[canvas].layers = before.canvases[canvas].layers.clone();
        prop_assert_eq!(debug(&after), debug(&before));
        prop_assert_eq!(comments(&edited), comments(&text));
    }
}

proptest! {
    /// Whatever word is put in, it reads back as that word, or is refused.
    #[test]
    fn any_word(word in "[ -~é日\u{1F3A8}]{1,12}", quoted in 0..3_usize) {
        let old = ["plain", "'single'", "\"double\""][quoted];
        let text = format!("a: {{b: {old}, c: 1}} # x\nd: {old}  # y\n");
        for path in ["a b", "d"] {
            match edit(&text, &keys(path), &word) {
                Ok(edited) => {
                    let (flow, block) = edited.split_once('\n').unwrap();
                    let is_kept = flow.starts_with("a: {b: ") && flow.ends_with(", c: 1} # x");
                    prop_assert!(is_kept, "{edited}");
                    prop_assert!(block.starts_with("d: ") && block.ends_with("  # y\n"));
                    let read: serde_yaml::Value = serde_yaml::from_str(&edited).unwrap();
                    let value = keys(path).iter().fold(&read, |value, key| &value[*key]);
                    // Numbers and the like are texts to us.
                    prop_assert!(value.as_str().is_none_or(|read| read == word), "{edited}");
                }
                Err(why) => prop_assert_eq!(why, Unplaced::Entangled),
            }
        }
    }
}

fn keys(path: &str) -> Vec<&str> {
    path.split(' ').collect()
}

#[test]
fn the_value_alone_is_replaced() {
    for (text, path, value, expected) in [
        ("a: 1 # one\n", "a", "22", "a: 22 # one\n"),
        ("a:   1   # one\nb: 2", "a", "22", "a:   22   # one\nb: 2"),
        ("a: {b: 'x y', c: \"d\"}", "a b", "it's", "a: {b: 'it''s', c: \"d\"}"),
        ("a: {b: 'x y', c: \"d\"}", "a c", "e\"f", "a: {b: 'x y', c: \"e\\\"f\"}"),
        ("a: {b: x}", "a b", "y, z", "a: {b: \"y, z\"}"),
        ("a: x", "a", "y: z", "a: \"y: z\""),
        ("a: x", "a", "~", "a: \"~\""),
        ("ä: é # ü\nb:\n  ñ: 1\n", "b ñ", "2", "ä: é # ü\nb:\n  ñ: 2\n"),
    ] {
        assert_eq!(edit(text, &keys(path), value).as_deref(), Ok(expected), "{text}");
    }
}

#[test]
fn what_cannot_be_changed_by_itself_is_left() {
    for (text, path, why) in [
        ("a: [1, 2]", "a", Unplaced::NotOneValue),
        ("a: {b: 1}", "a", Unplaced::NotOneValue),
        ("a: 1", "b", Unplaced::NotThere),
        ("a: &x 1\nb: *x", "a", Unplaced::Entangled),
        ("a: &x 1\nb: *x", "b", Unplaced::Entangled),
        ("a: &x {c: 1}\nb: *x", "b c", Unplaced::Entangled),
        ("a: &x {c: 1}\nb: *x", "a c", Unplaced::Entangled),
        ("a: >-\n  long\n  text\n", "a", Unplaced::Entangled),
        ("a: \"x\\ty\"", "a", Unplaced::Entangled),
        ("a: 1\na: 2\n", "a", Unplaced::NotALesson),
        ("a: {b: 1", "a b", Unplaced::NotALesson),
    ] {
        assert_eq!(edit(text, &keys(path), "9"), Err(why), "{text}");
    }
}

#[test]
fn an_edited_lesson_is_read_as_any_other() {
    let edited = edit(SMALL, &["class", "students"], "7").unwrap();
    let students = read_text(&edited).unwrap().class.students;
    assert!(matches!(students, Students::Count(count) if count.get() == 7));
}
