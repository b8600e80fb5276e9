//! Wrong lessons, each named for its mistake, and what the teacher is told. The answers
//! stand beside the lessons as snapshots; a change of words is a change to review.

use crate::lesson_tools::{SMALL, files_in, in_project, read_files, read_text, small_with};
use proptest::prelude::*;
use puddlebook::lesson::{Faults, Lesson, ProblemKind, Style, Unread, read, read_with};
use puddlebook::quantity::MisreadKind;
use std::path::Path;

/// Reads a lesson of `tests/wrong` by the path that a teacher in that folder would give.
fn read_wrong(name: &str) -> Result<Lesson, Faults> {
    let folder = in_project("tests/wrong");
    let load = |path: &Path| std::fs::read(folder.join(path)).map_err(|_| Unread::NotFound);
    read_with(Path::new(name), &load)
}

#[test]
fn every_wrong_lesson_is_answered() {
    let files = files_in("tests/wrong", "yaml");
    assert!(files.len() >= 150);
    for path in files {
        let file_name = path.file_name().unwrap().to_str().unwrap();
        let faults = match read_wrong(file_name) {
            Ok(_) => panic!("{file_name} reads as right"),
            Err(faults) => faults,
        };
        for problem in faults.problems() {
            assert!(problem.place.is_some(), "{file_name}: no place");
            assert_ne!(problem.kind, ProblemKind::Unexplained, "{file_name}");
        }
        let name = path.file_stem().unwrap().to_str().unwrap();
        insta::with_settings!({
            snapshot_path => "wrong",
            prepend_module_to_snapshot => false,
            omit_expression => true,
        }, {
            insta::assert_snapshot!(name, faults.render(Style::Plain));
        });
    }
}

/// How many mistakes a lesson says to hold: `# 3 mistakes: ...`.
fn said(lesson: &str) -> Option<usize> {
    let (count, _) = lesson.strip_prefix("# ")?.split_once(" mistake")?;
    count.parse().ok()
}

#[test]
fn one_mistake_is_told_once() {
    for path in files_in("tests/wrong", "yaml") {
        let name = path.file_name().unwrap().to_str().unwrap();
        let count = read_wrong(name).unwrap_err().problems().len();
        let expected = match name {
            "eight-mistakes.yaml" => 8,
            // A key in the wrong place is missing in the right one; two sizes are two.
            "students-misplaced.yaml" | "shape-with-size-of-another.yaml" => 2,
            _ => said(&std::fs::read_to_string(&path).unwrap()).unwrap_or(1),
        };
        assert_eq!(count, expected, "{name}:\n{}", read_wrong(name).unwrap_err());
    }
}

#[test]
fn amounts_are_held_against_the_currency_also_where_a_price_list_is_broken() {
    let more = "
shops:
  A shop (invented):
    currency: JPY
    packs:
      - {item: blue acrylic, size: 8 fl oz, price: 7.50}
money:
  fixed: {room: 0.5}
  for each student: {tea: 1.50}
  fee: 48.5
";
    let faults = read_text(&format!("{SMALL}{more}")).unwrap_err();
    assert_eq!(faults.problems().len(), 4, "{faults}");
    let decimals = ProblemKind::MoneyDecimals { currency: "JPY", decimals: 0 };
    assert!(faults.problems().iter().all(|problem| problem.kind == decimals));
}

#[test]
fn a_file_that_cannot_be_read_is_told_apart() {
    let faults = read(Path::new("no/such/lesson.yaml")).unwrap_err();
    assert!(faults.is_unread());
    assert!(faults.to_string().contains("no/such/lesson.yaml"));
    assert!(read(&in_project("tests")).unwrap_err().is_unread(), "a folder");
    assert!(!read_wrong("data-file-missing.yaml").unwrap_err().is_unread(), "the lesson names it");
}

#[test]
fn files_that_are_no_text_or_too_large_are_refused() {
    let latin = b"title: caf\xe9\n".to_vec();
    let faults = read_files(&[("lesson.yaml", &latin)]).unwrap_err();
    assert!(matches!(
        &faults.problems()[0].kind,
        ProblemKind::Unread { why: Unread::NotText { line: 1 }, .. }
    ));
    let large = vec![b'#'; 2 * 1024 * 1024];
    let faults = read_files(&[("lesson.yaml", &large)]).unwrap_err();
    assert!(matches!(
        &faults.problems()[0].kind,
        ProblemKind::Unread { why: Unread::TooLarge, .. }
    ));
}

#[test]
fn a_comma_points_into_the_value() {
    let faults = small_with("width: 10 in", "width: '25,4 cm'").unwrap_err();
    let problem = &faults.problems()[0];
    assert_eq!(problem.path, ["canvases", "square", "width"]);
    let corrected = "25.4 cm".to_owned();
    assert_eq!(problem.kind, ProblemKind::Misread(MisreadKind::DecimalComma { corrected }));
    let place = problem.place.as_ref().unwrap();
    assert_eq!(faults.sources().line_and_column(place), (6, 13), "inside the quotes");
}

#[test]
fn files_that_grow_without_end_are_stopped() {
    let mut aliases = String::from("a: &a {x: 1, y: 2, z: 3}\n");
    for (last, next) in ('a'..='y').zip('b'..='z') {
        aliases.push_str(&format!(
            "{next}: &{next} {{p: *{last}, q: *{last}, r: *{last}, s: *{last}}}\n"
        ));
    }
    let faults = read_text(&aliases).unwrap_err();
    assert!(faults.problems().iter().any(|problem| {
        matches!(problem.kind, ProblemKind::TooManyValues | ProblemKind::TooDeep)
    }));
    let deep = format!("title: {}", "[".repeat(100_000));
    let faults = read_text(&deep).unwrap_err();
    assert!(matches!(
        faults.problems()[0].kind,
        ProblemKind::TooDeep | ProblemKind::NotYaml { .. }
    ));
    let many: String = (0..40_000).map(|n| format!("key {n}: value\n")).collect();
    let faults = read_text(&many).unwrap_err();
    assert_eq!(faults.problems().len(), 100, "enough is enough");
    assert!(faults.to_string().contains("Only the first 100"));
}

#[test]
fn a_coloured_message_says_the_same() {
    let faults = read_wrong("depth-negative.yaml").unwrap_err();
    let coloured = faults.render(Style::Coloured);
    assert!(coloured.contains('\u{1b}'));
    assert!(!faults.render(Style::Plain).contains('\u{1b}'));
}

proptest! {
    #[test]
    fn no_text_breaks_the_reading(text in "\\PC{0,200}") {
        if let Err(faults) = read_text(&text) {
            prop_assert!(!faults.render(Style::Plain).is_empty());
        }
    }

    #[test]
    fn no_yaml_like_text_breaks_the_reading(text in "([a-z]{0,3}[-:{}\\[\\]#&*!|>'\"%@, \n\t]{0,3}){0,40}") {
        if let Err(faults) = read_text(&text) {
            prop_assert!(!faults.render(Style::Plain).is_empty());
        }
    }

    #[test]
    fn no_bytes_break_the_reading(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        if let Err(faults) = read_files(&[("lesson.yaml", &bytes)]) {
            prop_assert!(!faults.render(Style::Plain).is_empty());
        }
    }

    /// A right lesson with a piece put in or taken out somewhere.
    #[test]
    fn a_lesson_with_a_slip_does_not_break_the_reading(
        at in 0..SMALL.len(),
        out in 0_usize..12,
        piece in "[a-z0-9 :{}\\[\\]#&*'\"%,.½\n-]{0,6}",
    ) {
        let end = (at + out).min(SMALL.len());
        let text = format!("{}{piece}{}", &SMALL[..at], &SMALL[end..]);
        if let Err(faults) = read_text(&text) {
            prop_assert!(!faults.render(Style::Coloured).is_empty());
            for problem in faults.problems() {
                prop_assert!(problem.kind != ProblemKind::Unexplained, "{}", text);
            }
        }
    }

    #[test]
    fn the_unit_that_a_canvas_is_written_in_changes_nothing(eighths in 8_u32..400) {
        let inches = format!("width: {}/8 in", eighths);
        let metric = format!("width: {} mm", f64::from(eighths) * 25.4 / 8.0);
        let [one, other] = [inches, metric].map(|width| {
            let text = SMALL.replace("width: 10 in", &width).replace("depth: 1/2 in", "depth: 0");
            read_text(&text).unwrap_or_else(|faults| panic!("{faults}")).canvases[0].shape
        });
        let width = |shape| match shape {
            puddlebook::lesson::Shape::Rectangle { width, .. } => width.value,
            _ => f64::NAN,
        };
        prop_assert!((width(one) / width(other) - 1.0).abs() < 1e-12);
    }
}
