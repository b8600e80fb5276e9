//! From weighed cups to the next plan: `learn`, its files, and what a lesson makes of them.

use crate::lesson_tools::{SMALL, files_in, in_project, read_files};
use puddlebook::lesson::{self, Lesson, WeighedFilm, WeighedSpread, read_weighings};
use puddlebook::plan::learn::{self, Learned};
use puddlebook::plan::{self, WeighedBasis};
use puddlebook::quantity::units::in_mm;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The weighings of the demo, in the order in which a shell gives them.
fn weighed() -> Vec<PathBuf> {
    let files = files_in("lessons/weighed", "yaml");
    files.into_iter().chain(files_in("lessons/weighed", "csv")).collect()
}

fn learned() -> Learned {
    let weighings = read_weighings(&weighed()).unwrap_or_else(|faults| panic!("{faults}"));
    learn::learn(&weighings.classes).unwrap()
}

/// Runs `learn`: its exit code, what it prints and what it says is wrong.
fn run(weighings: &[PathBuf], out: &Path) -> (Option<i32>, String, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    let program = program.arg("learn").args(weighings).arg("--out").arg(out);
    let output = program.current_dir(in_project("")).output().unwrap();
    let [said, wrong] = [output.stdout, output.stderr].map(|text| String::from_utf8(text).unwrap());
    (output.status.code(), said, wrong)
}

fn read(path: &str) -> Lesson {
    lesson::read(&in_project(path)).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The films of the demo below the line that names their schema, which lies where `learn` cannot
/// know.
fn kept_films() -> String {
    let kept = fs::read_to_string(in_project("lessons/data/films.yaml")).unwrap();
    let (schema, films) = kept.split_once('\n').unwrap();
    assert_eq!(schema, "# yaml-language-server: $schema=../schema/data.json");
    films.to_owned()
}

#[test]
fn the_films_of_the_demo_are_what_is_learned_from_its_cups() {
    let folder = tempfile::tempdir().unwrap();
    let (code, said, wrong) = run(&weighed(), folder.path());
    assert_eq!((code, wrong.as_str()), (Some(0), ""));
    let films = fs::read_to_string(folder.path().join("films.yaml")).unwrap();
    assert_eq!(films, kept_films(), "learn again: lessons/data/films.yaml is out of date");
    assert!(fs::read(folder.path().join("measured.pdf")).unwrap().starts_with(b"%PDF-"));
    let cups = fs::read_to_string(folder.path().join("cups.csv")).unwrap();
    assert_eq!(cups.lines().count(), 1 + 77, "a row for each cup that was weighed");
    insta::assert_snapshot!("learned", said.split("\nwrote ").next().unwrap());
}

#[test]
fn the_films_file_says_what_was_learned_to_four_digits() {
    let learned = learned();
    let lesson = read("lessons/boathouse-autumn.yaml");
    assert!(!learned.films.is_empty());
    for film in &learned.films {
        let technique = lesson.techniques.iter().find(|other| other.name == film.technique.name);
        let layer = technique.unwrap().layers.iter().find(|layer| layer.name == film.layer);
        let layer = layer.unwrap();
        let close = |read, wanted| {
            let (read, wanted) = (in_mm(read), in_mm(wanted));
            assert!((read / wanted - 1.0).abs() < 1e-3, "{read} is not {wanted}");
        };
        let read = layer.films.of(film.consistency);
        close(read.low(), film.film.low());
        close(read.typical(), film.film.typical());
        close(read.high(), film.film.high());
        let WeighedFilm { cups, canvases, classes, mean, instead_of, own_weight } =
            layer.weighed(film.consistency).unwrap();
        assert_eq!((*cups, *classes), (film.cups, film.classes));
        assert_eq!(usize::try_from(*canvases).unwrap(), film.canvases.len());
        close(*mean, film.mean.value);
        assert!((own_weight.as_f64() - film.own_weight).abs() <= 0.005);
        let same = |one, other| assert!((in_mm(one) - in_mm(other)).abs() < 1e-9);
        same(instead_of.low(), film.before.low());
        same(instead_of.typical(), film.before.typical());
        same(instead_of.high(), film.before.high());
    }
    let (rule, spread) = (lesson.reserve, learned.spread);
    assert!((rule.class_varies.as_f64() - spread.from_now_on.class).abs() <= 0.0005);
    assert!((rule.students_vary.as_f64() - spread.from_now_on.student).abs() <= 0.0005);
    let WeighedSpread { canvases, classes, class_varied, students_varied } = rule.weighed.unwrap();
    let before = (class_varied.as_f64(), students_varied.as_f64());
    assert_eq!(before, (spread.before.class, spread.before.student));
    assert_eq!((canvases, classes), (spread.canvases, spread.classes));
}

#[test]
fn learning_again_from_a_lesson_that_uses_its_films_gives_the_same_films() {
    let folder = tempfile::tempdir().unwrap();
    let lessons = folder.path().join("lessons");
    fs::create_dir_all(lessons.join("weighed")).unwrap();
    fs::create_dir_all(lessons.join("data")).unwrap();
    for path in files_in("lessons/data", "yaml") {
        fs::copy(&path, lessons.join("data").join(path.file_name().unwrap())).unwrap();
    }
    let evening = fs::read_to_string(in_project("lessons/boathouse-evening.yaml")).unwrap();
    let evening = evening.replace("data/stock.yaml]", "data/stock.yaml, data/films.yaml]");
    fs::write(lessons.join("boathouse-evening.yaml"), evening).unwrap();
    let copies: Vec<PathBuf> = weighed()
        .into_iter()
        .map(|path| {
            let copy = lessons.join("weighed").join(path.file_name().unwrap());
            fs::copy(&path, &copy).unwrap();
            copy
        })
        .collect();
    let (code, _, wrong) = run(&copies, &folder.path().join("out"));
    assert_eq!((code, wrong.as_str()), (Some(0), ""));
    let films = fs::read_to_string(folder.path().join("out/films.yaml")).unwrap();
    assert_eq!(films, kept_films());
}

#[test]
fn a_plan_knows_what_its_films_rest_on() {
    let before = plan::plan(read("lessons/boathouse-evening.yaml")).unwrap();
    assert_eq!(before.weighed(), None);
    assert!(before.compared().is_none());
    let now = plan::plan(read("lessons/boathouse-autumn.yaml")).unwrap();
    let basis = WeighedBasis { cups: 77, canvases: 22, classes: 3 };
    assert_eq!(now.weighed(), Some(basis));
    let compared = now.compared().unwrap();
    assert_eq!(compared.layers.len(), 2);
    // The same class, canvases and cups: only the films differ.
    let difference = compared.class_before - before.class_paint.typical();
    assert!((difference / compared.class_before).value.abs() < 1e-9);
    let difference = compared.class_now - now.class_paint.typical();
    assert!(difference.value.abs() < 1e-12);
    assert!(compared.class_now < compared.class_before, "the demo pours less than the rule");
}

#[test]
fn the_terminal_and_json_show_both_plans() {
    let show = |json: &[&str]| {
        let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
        program.args(["plan", "lessons/boathouse-autumn.yaml"]).args(json);
        let output = program.current_dir(in_project("")).output().unwrap();
        String::from_utf8(output.stdout).unwrap()
    };
    let text = show(&[]);
    let table = text.split("From your weighed cups").nth(1).unwrap().split("\n\n").next().unwrap();
    insta::assert_snapshot!("compared", table);
    let json: serde_json::Value = serde_json::from_str(&show(&["--json"])).unwrap();
    let weighed = &json["weighed"];
    assert_eq!((weighed["cups"].as_u64(), weighed["classes"].as_u64()), (Some(77), Some(3)));
    let layer = &weighed["layers"][1];
    assert_eq!(layer["technique"], "spun pour");
    assert_eq!(layer["film_before_mm"]["typical"].as_f64(), Some(1.53));
    let paint = |key: &str| weighed[key].as_f64().unwrap();
    assert!(paint("class_now_ml") < paint("class_before_ml"));
}

/// [`SMALL`] with these films for its technique in a file that it uses, and a film of its own.
fn with_films(own: &str) -> Lesson {
    let films = "techniques:\n  straight pour:\n    layers:\n      colour:\n        medium: {low: 1.5 mm, \
                 typical: 1.7 mm, high: 1.9 mm, weighed: {cups: 9, canvases: 3, classes: 2, mean: 1.65 \
                 mm, own weight: 60 %, instead of: {low: 1.6 mm, typical: 1.8336 mm, high: 2.1 mm}}}\n\
                 reserve: {class varies by: 6 %, weighed: {canvases: 3, classes: 2, \
                 instead of: {class varies by: 8 %, students vary by: 15 %}}}\n";
    let lesson = format!("{SMALL}use: [films.yaml]\n{own}");
    let files = [("lesson.yaml", lesson.as_bytes()), ("films.yaml", films.as_bytes())];
    read_files(&files).unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn what_a_lesson_says_itself_is_not_weighed() {
    let weighed = |lesson: Lesson| {
        let layer = &lesson.canvases[0].technique.layers[0];
        let film = layer.weighed(lesson::Consistency::Medium).map(|film| film.cups);
        (film, lesson.reserve.weighed.map(|spread| spread.canvases))
    };
    assert_eq!(weighed(with_films("")), (Some(9), Some(3)));
    let own = "techniques: {straight pour: {layers: {colour: {medium: {typical: 1.8 mm}}}}}\n";
    assert_eq!(weighed(with_films(own)), (None, Some(3)));
    assert_eq!(weighed(with_films("reserve: {class varies by: 9 %}\n")), (Some(9), None));
    assert_eq!(weighed(with_films("reserve: {enough in: 9 of 10}\n")), (Some(9), Some(3)));
}

#[test]
fn nothing_is_written_when_a_row_is_wrong_or_doubted() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    let (code, _, wrong) = run(&[in_project("tests/wrong_weighings/cup-twice.yaml")], &out);
    assert_eq!(code, Some(1), "{wrong}");
    let doubtful = fs::read_to_string(&weighed()[0]).unwrap();
    let lesson = in_project("lessons/boathouse-evening.yaml");
    let doubtful = doubtful.replace("../boathouse-evening.yaml", lesson.to_str().unwrap());
    let doubtful = doubtful.replacen("before: 68 g, after: 8 g", "before: 2.4 g, after: 0.3 g", 1);
    let path = folder.path().join("doubtful.yaml");
    fs::write(&path, &doubtful).unwrap();
    let (code, _, wrong) = run(std::slice::from_ref(&path), &out);
    assert_eq!(code, Some(1), "{wrong}");
    assert!(wrong.contains("about 28 times too light"), "{wrong}");
    assert!(wrong.contains("checked: yes"), "{wrong}");
    assert!(!out.exists());
    let believed = doubtful.replacen("after: 0.3 g, tray: 17 g", "after: 0.3 g, checked: yes", 1);
    fs::write(&path, believed).unwrap();
    let (code, _, wrong) = run(&[path], &out);
    assert_eq!(code, Some(0), "{wrong}");
}

#[test]
fn all_weighings_of_a_run_are_read_whatever_one_of_them_is() {
    let folder = tempfile::tempdir().unwrap();
    let files = ["no/such.yaml", "tests/wrong_weighings/cup-twice.yaml"].map(in_project);
    let (code, _, wrong) = run(&files, folder.path());
    assert_eq!(code, Some(3));
    for part in ["there is no such file", "this cup of white is weighed twice"] {
        assert!(wrong.contains(part), "{part} in\n{wrong}");
    }
}

#[test]
fn a_folder_that_cannot_be_written_leaves_no_half_file() {
    let folder = tempfile::tempdir().unwrap();
    // The last of the three files cannot be written, so none is.
    fs::create_dir_all(folder.path().join("cups.csv")).unwrap();
    let (code, _, wrong) = run(&weighed(), folder.path());
    assert_eq!(code, Some(3));
    assert!(wrong.contains("cups.csv: it is a folder"), "{wrong}");
    let left: Vec<_> =
        fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert_eq!(left, [folder.path().join("cups.csv")]);
    let file = folder.path().join("taken");
    fs::write(&file, "").unwrap();
    let (code, _, wrong) = run(&weighed(), &file);
    assert_eq!(code, Some(3));
    assert!(wrong.contains("is a file, not a folder; name another folder with --out"), "{wrong}");
}

#[test]
fn the_sheet_to_fill_in_is_read_back() {
    let folder = tempfile::tempdir().unwrap();
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    program.args(["make", "lessons/boathouse-evening.yaml", "--only", "weigh", "--out"]);
    assert!(program.arg(folder.path()).current_dir(in_project("")).status().unwrap().success());
    let table = folder.path().join("boathouse-evening/weigh.csv");
    let (code, _, wrong) = run(std::slice::from_ref(&table), folder.path());
    assert_eq!(code, Some(1));
    assert!(wrong.contains("no cup is weighed here yet"), "{wrong}");
    let text = fs::read_to_string(&table).unwrap();
    // The first row, a cup of harbour blue: before, after, tray.
    let filled = text.replacen("harbour blue,,,,", "harbour blue,67,10,,", 1);
    assert_ne!(text, filled);
    fs::write(&table, filled).unwrap();
    let (code, said, wrong) = run(&[table], &folder.path().join("out"));
    assert_eq!((code, wrong.as_str()), (Some(0), ""), "{said}");
    assert!(said.contains("1 cup"), "{said}");
    assert!(said.contains("no weight of sand, white"), "{said}");
}
