//! What a good colleague would say: each warning comes where it is due, and not a hair before;
//! it can be accepted with a reason; it never changes what is made.

mod accepted;
mod cases;
mod data;

use crate::lesson_tools::{files_in, in_project, read_files, read_text};
use cases::{CASES, Case, QUIET};
use puddlebook::lesson::{Concern, Lesson, read};
use puddlebook::plan::{self, Matter, Needy, Plan};
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn planned(lesson: Lesson) -> Plan {
    plan::plan(lesson).unwrap()
}

fn plan_of(text: &str) -> Plan {
    planned(read_text(text).unwrap_or_else(|faults| panic!("{text}\n{faults}")))
}

/// The names of what is open, in their order.
fn open(plan: &Plan) -> Vec<&'static str> {
    plan.advice().open.iter().map(|warning| warning.matter.concern().word()).collect()
}

/// The quiet lesson with pieces of it changed.
fn with(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(QUIET.to_owned(), |text, (old, new)| {
        assert_eq!(text.matches(old).count(), 1, "{old:?} stands there once");
        text.replace(old, new)
    })
}

/// Runs the program in a folder with this lesson.
fn run(lesson: &str, arguments: &[&str]) -> Output {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("my-class.yaml"), lesson).unwrap();
    run_in(folder.path(), arguments)
}

fn run_in(folder: &Path, arguments: &[&str]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    program.args(arguments).current_dir(folder).output().unwrap()
}

fn said(output: &[u8]) -> String {
    String::from_utf8(output.to_vec()).unwrap()
}

#[test]
fn nothing_is_said_of_the_quiet_lesson() {
    let plan = plan_of(QUIET);
    assert!(plan.advice().is_silent(), "{:?}", plan.advice());
    let output = run(QUIET, &["check", "my-class.yaml"]);
    assert_eq!(said(&output.stderr), "");
    assert!(said(&output.stdout).ends_with("1 lesson right, no warnings\n"));
}

#[test]
fn each_warning_comes_where_it_is_due_and_not_a_hair_before() {
    for Case { name, due, near } in CASES {
        assert_eq!(open(&plan_of(&with(due))), [*name], "{due:?}");
        assert!(plan_of(&with(near)).advice().is_silent(), "{name}: {near:?}");
    }
}

#[test]
fn each_has_a_case() {
    // These two want more than a change of the lesson.
    let elsewhere = [Concern::LateDelivery, Concern::NoPrice];
    for concern in Concern::ALL {
        let has = CASES.iter().any(|case| case.name == concern.word());
        assert!(has || elsewhere.contains(&concern), "{}", concern.word());
    }
}

/// The words of the first case of each, as the terminal shows them.
#[test]
fn in_a_colleagues_words() {
    for concern in Concern::ALL {
        let Some(case) = CASES.iter().find(|case| case.name == concern.word()) else { continue };
        let output = run(&with(case.due), &["check", "my-class.yaml"]);
        assert_eq!(output.status.code(), Some(0), "{}", case.name);
        assert!(said(&output.stdout).ends_with("1 lesson right, 1 warning\n"), "{}", case.name);
        insta::with_settings!({
            snapshot_path => "snapshots",
            prepend_module_to_snapshot => false,
            omit_expression => true,
        }, {
            insta::assert_snapshot!(case.name, said(&output.stderr));
        });
    }
}

/// A shop that sells paint alone, and what is bought elsewhere.
fn with_a_shop(elsewhere: &str) -> String {
    let shop = "shops:\n  A shop (invented):\n    currency: EUR\n    packs:\n      \
                - {item: blue acrylic, size: 250 mL, price: 0}\n";
    format!("{QUIET}{shop}bought elsewhere: [{elsewhere}]\n")
}

#[test]
fn what_no_shop_sells_is_named_until_it_comes_from_elsewhere() {
    let plan = plan_of(&with_a_shop(""));
    let [warning] = plan.advice().open.try_into().unwrap();
    let Matter::NoPrice { items } = warning.matter else { panic!("{warning:?}") };
    assert!(items.contains(&"white acrylic".to_owned()) && !items.contains(&"water".to_owned()));
    let all_but_one = items[1..].join(", ");
    assert_eq!(open(&plan_of(&with_a_shop(&all_but_one))), ["no-price"]);
    assert!(plan_of(&with_a_shop(&items.join(", "))).advice().is_silent());
    let output = run(&with_a_shop(&all_but_one), &["check", "my-class.yaml"]);
    assert!(said(&output.stderr).contains(&format!("no shop sells \"{}\"", items[0])));
}

#[test]
fn a_delivery_on_the_day_of_the_lesson_is_in_time() {
    let course = |days: &[&str]| {
        let days: Vec<_> = days.iter().map(|day| day.parse().unwrap()).collect();
        let course = plan::course(vec![read_text(QUIET).unwrap()], &days).unwrap();
        let advice = course.advice(&days);
        advice[0].open.iter().map(|warning| warning.matter.clone()).collect::<Vec<_>>()
    };
    assert_eq!(course(&[]), []);
    assert_eq!(course(&["2026-03-14"]), []);
    assert_eq!(course(&["2026-03-20", "2026-03-13"]), [], "one of them is");
    let (lesson, delivery) = ("2026-03-14".parse().unwrap(), "2026-03-15".parse().unwrap());
    assert_eq!(course(&["2026-03-20", "2026-03-15"]), [Matter::LateDelivery { lesson, delivery }]);
    let output = run(QUIET, &["order", "my-class.yaml", "--delivery", "2026-03-15", "--out", "."]);
    assert_eq!(output.status.code(), Some(0));
    let text = said(&output.stderr);
    assert!(text.contains("my-class.yaml:2:7") && text.contains("late-delivery"), "{text}");
}

#[test]
fn a_jar_that_a_lesson_before_left_stands_in_no_file() {
    let later = with(&[("date: 2026-03-14", "date: 2026-06-01")]);
    let lessons = [QUIET, &later].map(|text| read_text(text).unwrap()).to_vec();
    assert_eq!(open(&planned(lessons[1].clone())), ["old-jar"]);
    let course = plan::course(lessons, &[]).unwrap();
    assert!(course.advice(&[]).iter().all(|advice| advice.open.is_empty()));
}

#[test]
fn what_a_data_file_holds_is_no_ones_leftover() {
    let spare = "colours:\n  sand: {swatch: \"#D9B98A\"}\n";
    let lesson = format!("use: [more.yaml]\n{QUIET}");
    let files = [("lesson.yaml", lesson.as_bytes()), ("more.yaml", spare.as_bytes())];
    assert!(planned(read_files(&files).unwrap()).advice().is_silent());
}

#[test]
fn a_pigment_is_told_as_the_notes_of_the_lesson_name_it() {
    let young = ("youngest age: 16", "youngest age: 15");
    let cobalt = with(&[young, ("[ultramarine]", "[ultramarine, Cobalt]")]);
    let plan = plan_of(&cobalt);
    let [warning] = plan.advice().open.try_into().unwrap();
    let Matter::ColourCaution(product) = warning.matter else { panic!("{warning:?}") };
    let pigments = vec!["ultramarine".to_owned(), "Cobalt".to_owned()];
    assert_eq!(product.why, Needy::Pigments { pigments, age: 15 });
    assert_eq!(warning.path, ["colours", "blue", "pigments"]);
}

#[test]
fn half_a_step_is_held_against_the_smallest_amount() {
    for grams in 1..60 {
        let text = with(&[("scale step: 1 g", &format!("scale step: {grams} g"))]);
        let plan = plan_of(&text);
        let ingredients = plan.mixing.iter().flat_map(|batch| &batch.ingredients);
        let least = ingredients.map(|poured| puddlebook::quantity::units::in_gram(poured.mass));
        let least = least.fold(f64::INFINITY, f64::min);
        let due = f64::from(grams) / 2.0 > 0.1 * least;
        assert_eq!(open(&plan), if due { vec!["coarse-scale"] } else { vec![] }, "{grams} g");
    }
}

#[test]
fn the_demo_lessons_give_no_noise() {
    let mut accepted = Vec::new();
    for path in files_in("lessons", "yaml") {
        let plan = planned(read(&path).unwrap());
        let advice = plan.advice();
        let name = path.display();
        assert!(advice.open.is_empty() && advice.idle.is_empty(), "{name}: {advice:?}");
        let names = advice.accepted.iter().map(|(warning, _)| warning.matter.concern().word());
        accepted.extend(names);
    }
    // Warnings that are due, and how they are accepted.
    assert_eq!(accepted, ["old-jar", "over-booking", "fee-too-low", "fee-too-low"]);
}

#[test]
fn a_spanish_lesson_is_warned_in_english() {
    let spanish = fs::read_to_string(in_project("lessons/taller-de-ola.yaml")).unwrap();
    let lesson =
        spanish.replace("[data/es/", &format!("[{}/", in_project("lessons/data/es").display()));
    let lesson =
        lesson.replace(", data/es/", &format!(", {}/", in_project("lessons/data/es").display()));
    let lesson = lesson.replace("booked until: 20:00", "booked until: 19:00");
    let output = run(&lesson, &["check", "my-class.yaml"]);
    let text = said(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{text}");
    assert!(text.contains("warning[over-booking]: the steps take 45 minutes longer"), "{text}");
}
