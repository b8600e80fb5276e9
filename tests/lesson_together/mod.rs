//! Mistakes side by side: none keeps another from being told, and none brings on a
//! message that one of them alone would not. Every slip is laid beside many others.

mod slips;

use crate::lesson_tools::{SMALL, read_files, read_text};
use proptest::prelude::*;
use puddlebook::lesson::{Faults, Lesson, ProblemKind};
use slips::{HIDDEN, LESSON, OPEN, SLIPS, STUDIO};
use std::mem::{Discriminant, discriminant};
use std::ops::Range;
use std::sync::LazyLock;

/// Where a problem is, and of what sort. The section may be misspelt.
type Told = (Vec<String>, Discriminant<ProblemKind>);

fn told(faults: Result<Lesson, Faults>) -> Vec<Told> {
    let faults = faults.err();
    let problems = faults.iter().flat_map(Faults::problems);
    let told = problems.map(|problem| {
        let inner = usize::from(problem.path.len() > 1);
        (problem.path[inner..].to_vec(), discriminant(&problem.kind))
    });
    told.collect()
}

/// What is told of a lesson that can read its data file.
fn told_of(lesson: &str) -> Vec<Told> {
    told(read_files(&[("lesson.yaml", lesson.as_bytes()), ("data/studio.yaml", STUDIO.as_bytes())]))
}

/// What is told of a lesson that cannot, besides that.
fn told_alone(lesson: &str) -> Vec<Told> {
    let mut told = told(read_files(&[("lesson.yaml", lesson.as_bytes())]));
    let unread = told.iter().position(|(path, _)| path[..] == ["no. 1"]).unwrap();
    told.remove(unread);
    told
}

/// All sections of the lesson.
const SECTIONS: [&str; 22] = [
    "class",
    "canvases",
    "palettes",
    "colours",
    "materials",
    "mixes",
    "techniques",
    "finishes",
    "sizes",
    "mixing",
    "supplies",
    "shops",
    "stock",
    "jars",
    "reserve",
    "cautions",
    "timetable",
    "exercises",
    "room",
    "washing",
    "money",
    "accepted",
];

/// Where a section stands, from its key to the next one.
fn section(name: &str) -> Range<usize> {
    let start = LESSON.find(&format!("\n{name}:")).unwrap() + 1;
    let lines = LESSON[start..].split_inclusive('\n');
    let inner = lines.skip(1).take_while(|line| line.starts_with(' ')).map(str::len);
    let first = LESSON[start..].find('\n').unwrap() + 1;
    start..start + first + inner.sum::<usize>()
}

/// The first slip in this text.
fn slip_of(right: &str) -> usize {
    SLIPS.iter().position(|(text, _)| *text == right).unwrap()
}

fn stretch(right: &str) -> Range<usize> {
    let at = LESSON.find(right).unwrap();
    at..at + right.len()
}

/// The lesson with some slips, and those of them that found room beside each other.
fn with(slips: impl IntoIterator<Item = usize>) -> (String, Vec<usize>) {
    let mut slips: Vec<_> = slips.into_iter().collect();
    slips.sort_by_key(|slip| stretch(SLIPS[*slip].0).start);
    let (mut lesson, mut end, mut made) = (String::new(), 0, Vec::new());
    for slip in slips {
        let (right, wrong) = SLIPS[slip];
        let stretch = stretch(right);
        if stretch.start >= end {
            lesson.push_str(&LESSON[end..stretch.start]);
            lesson.push_str(wrong);
            end = stretch.end;
            made.push(slip);
        }
    }
    lesson.push_str(&LESSON[end..]);
    (lesson, made)
}

/// The one message of each slip.
static ALONE: LazyLock<Vec<Told>> = LazyLock::new(|| {
    let alone = SLIPS.iter().enumerate().map(|(slip, (right, wrong))| {
        assert_eq!(LESSON.matches(right).count(), 1, "{right} stands there once");
        let told = told_of(&with([slip]).0);
        assert_eq!(told.len(), 1, "{wrong}: {told:?}");
        told[0].clone()
    });
    alone.collect()
});

/// Holds what is told of slips beside each other against what is told of each.
fn compare(slips: impl IntoIterator<Item = usize>) {
    let (lesson, slips) = with(slips);
    let wrong: Vec<&str> = slips.iter().map(|slip| SLIPS[*slip].1).collect();
    let is_there = |part: &str| wrong.iter().any(|wrong| wrong.contains(part));
    let is_hidden = |wrong: &str| {
        HIDDEN.iter().any(|(by, hidden)| wrong.contains(hidden) && by.iter().all(|by| is_there(by)))
    };
    let seen = slips.iter().filter(|slip| !is_hidden(SLIPS[**slip].1));
    let mut wanted: Vec<_> = seen.map(|slip| ALONE[*slip].clone()).collect();
    let mut found = told_of(&lesson);
    assert!(found.len() < 100, "more than are told in one go");
    let key = |told: &Told| format!("{told:?}");
    wanted.sort_by_key(key);
    found.sort_by_key(key);
    // One value that two slips make wrong.
    wanted.dedup();
    let hidden: Vec<_> = wanted.iter().filter(|told| !found.contains(told)).collect();
    let new: Vec<_> = found.iter().filter(|told| !wanted.contains(told)).collect();
    assert!(hidden.is_empty() && new.is_empty(), "{wrong:?}: hidden {hidden:?}, new {new:?}");
    assert_eq!(found.len(), wanted.len(), "{wrong:?}: told twice");
}

#[test]
fn the_lesson_without_slips_is_right() {
    assert_eq!(told_of(LESSON), []);
    assert_eq!(told_alone(LESSON), [], "nor is anything blamed on a lost file");
}

#[test]
fn no_slip_hides_another_or_brings_on_what_it_would_not_alone() {
    compare((0..SLIPS.len()).filter(|slip| slip % 2 == 0));
    compare((0..SLIPS.len()).filter(|slip| slip % 2 == 1));
    compare(0..SLIPS.len() / 2);
    compare(SLIPS.len() / 2..SLIPS.len());
}

#[test]
fn a_lost_file_hides_only_what_it_may_put_right() {
    for (slip, alone) in ALONE.iter().enumerate() {
        let (right, wrong) = SLIPS[slip];
        let told = told_alone(&with([slip]).0);
        if OPEN.iter().any(|open| right.contains(open)) {
            assert!(!told.contains(alone), "{wrong}: may be right");
        } else {
            assert_eq!(told, std::slice::from_ref(alone), "{wrong}");
        }
    }
}

#[test]
fn a_file_may_be_lost_in_many_ways() {
    let lesson = with([slip_of("navy: 44 %")]).0;
    let wanted = ALONE[slip_of("navy: 44 %")].clone();
    let many: String = (0..60).map(|n| format!("data/{n}.yaml, ")).collect();
    let uses = [
        "use: data/studio.yaml",
        "use: [[data/studio.yaml]]",
        "use: [data]",
        "uses: [data/studio.yaml]",
        "files: [data/studio.yaml]",
        "data: data/studio.yaml",
    ];
    for line in uses.into_iter().map(str::to_owned).chain([format!("use: [{many}]")]) {
        let told = told_of(&lesson.replace("use: [data/studio.yaml]", &line));
        assert!(told.contains(&wanted), "{line}: {told:?}");
        let own = told.iter().filter(|(path, _)| **path != wanted.0).count();
        assert_eq!(own, if line.len() > 80 { 51 } else { 1 }, "{line}: {told:?}");
    }
    let studios: [&[u8]; 5] = [
        b"",
        b"mixes: {",
        b"mixes: \xff",
        b"use: [more.yaml]",
        b"paints: {sand: {swatch: \"#D9B98A\"}}\nuse: [more.yaml]",
    ];
    for studio in studios {
        let files = [("lesson.yaml", lesson.as_bytes()), ("data/studio.yaml", studio)];
        let told = told(read_files(&files));
        let text = String::from_utf8_lossy(studio);
        assert!(told.contains(&wanted), "{text}: {told:?}");
        let own = told.iter().filter(|(path, _)| **path != wanted.0).count();
        assert_eq!(own, if text.starts_with("paints") { 2 } else { 1 }, "{text}: {told:?}");
    }
}

#[test]
fn nothing_is_lost_where_nothing_is_named() {
    for (right, empty) in [
        ("use: [data/studio.yaml]\n", "use: []\n"),
        ("use: [data/studio.yaml]\n", "use:\n"),
        ("use: [data/studio.yaml]\n", ""),
    ] {
        let told = told_of(&LESSON.replace(right, empty));
        assert!(told.len() > 5, "{empty:?} leaves names unknown: {told:?}");
    }
    let told =
        told_of(&LESSON.replace("white: {", "white: {paint: ~, ").replace("apron:", "aprons:"));
    assert_eq!(told.len(), 1, "a paint that is not said hides no item: {told:?}");
}

#[test]
fn a_section_that_is_lost_is_told_once() {
    for name in SECTIONS {
        let section = section(name);
        let text = &LESSON[section.clone()];
        let broken = LESSON.replace(text, &format!("{name}: none\n"));
        assert_eq!(told_of(&broken).len(), 1, "{name} of another form: {:?}", told_of(&broken));
        let unknown = LESSON.replace(text, &text.replacen(name, "unheard of", 1));
        let missing = usize::from(["class", "canvases"].contains(&name));
        assert_eq!(told_of(&unknown).len(), 1 + missing, "{name} unknown: {:?}", told_of(&unknown));
    }
}

#[test]
fn a_section_that_stands_there_twice_is_read_twice() {
    let white = "  white: {swatch: \"#F4F2EC\"}\n";
    let lesson = LESSON.replace(white, "") + "colours:\n" + white;
    let told = told_of(&lesson);
    assert_eq!(told.len(), 1, "{told:?}");
    let told = told_of(&lesson.replace("swatch: \"#F4F2EC\"", "swatch: snow"));
    assert_eq!(told.len(), 2, "{told:?}");
}

#[test]
fn a_section_with_nothing_in_it_changes_nothing() {
    for name in ["materials", "mixes", "techniques", "finishes", "mixing", "supplies", "cautions"] {
        let lesson = read_text(&format!("{SMALL}{name}:\n")).unwrap();
        let plain = read_text(SMALL).unwrap();
        assert_eq!(lesson.supplies.len(), plain.supplies.len());
        assert_eq!(lesson.cautions.len(), plain.cautions.len());
    }
}

proptest! {
    /// What is hidden is never the only thing that is wrong.
    #[test]
    fn no_piece_of_text_makes_a_lesson_wrong_without_a_reason(
        at in 0..LESSON.len(),
        out in 0_usize..20,
        piece in "[a-z0-9 :{}\\[\\]~&*'\"%,.½\n-]{0,4}",
    ) {
        let [at, end] = [at, at + out].map(|at| LESSON.floor_char_boundary(at));
        let text = format!("{}{piece}{}", &LESSON[..at], &LESSON[end..]);
        for studio in [STUDIO, "stock: {}"] {
            let files = [("lesson.yaml", text.as_bytes()), ("data/studio.yaml", studio.as_bytes())];
            let faults = read_files(&files).err();
            for problem in faults.iter().flat_map(Faults::problems) {
                prop_assert!(problem.kind != ProblemKind::Unexplained, "{}", text);
            }
        }
    }

    #[test]
    fn nor_does_any_choice_of_slips(slips in proptest::collection::btree_set(0..SLIPS.len(), 2..40)) {
        compare(slips);
    }
}
