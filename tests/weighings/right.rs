//! What is read of weighings that are right.

use super::{read_files, read_text};
use puddlebook::lesson::{Trust, WeighedClass};
use puddlebook::quantity::Mass;
use puddlebook::quantity::units::in_gram;

const CLASS: &str = r#"lesson: lessons/small.yaml
scale: 1 g
cups:
  - {student: Ana, canvas: square, colour: white, before: 91 g, after: 45 g}
  - {student: demonstration, canvas: pair, piece: 2, colour: blue, before: 2 oz, after: 0 g, scale: 0.1 oz}
  - {student: Bo, canvas: petals, layer: base, colour: white, before: 0.12 kg, after: 60.5 g, tray: 12 g, checked: yes, note: spilled a little}
  - {student: Cem, canvas: square, technique: swipe, consistency: thick, colour: white, before: 91 g, after: 45 g}
  - {student: Cem, canvas: square, technique: swipe, consistency: thick, colour: blue, before: , after: }
"#;

fn class(text: &str) -> WeighedClass {
    let weighings = read_text("class.yaml", text).unwrap_or_else(|faults| panic!("{faults}"));
    weighings.classes.into_iter().next().unwrap()
}

fn grams(mass: Mass) -> f64 {
    (in_gram(mass) * 1e4).round() / 1e4
}

#[test]
fn a_row_says_what_differs_and_the_lesson_the_rest() {
    let class = class(CLASS);
    assert_eq!(class.date.unwrap().to_string(), "2026-03-14", "the lesson's");
    let [ana, shown, bo, cem] = class.cups.as_slice() else { panic!("four are weighed") };
    assert_eq!((grams(ana.before), grams(ana.after), grams(ana.step)), (91.0, 45.0, 1.0));
    assert_eq!((ana.technique.name.as_str(), ana.mix.name.as_str()), ("straight pour", "medium"));
    assert_eq!((ana.layer.as_str(), ana.piece, ana.trust), ("colour", 1, Trust::Plain));
    assert_eq!((shown.student.as_str(), shown.piece), ("demonstration", 2));
    assert_eq!((grams(shown.before), grams(shown.step)), (56.699, 2.835));
    assert_eq!((bo.layer.as_str(), bo.mix.name.as_str()), ("base", "medium"));
    assert_eq!((grams(bo.before), grams(bo.after), bo.tray.map(grams)), (120.0, 60.5, Some(12.0)));
    assert_eq!((bo.trust, bo.note.as_deref()), (Trust::Checked, Some("spilled a little")));
    assert_eq!((cem.technique.name.as_str(), cem.mix.name.as_str()), ("swipe", "thick"));
    assert_eq!(cem.canvas.technique.name, "straight pour", "the canvas is that of the lesson");
}

#[test]
fn a_table_says_the_same_as_a_file() {
    // Columns in another order, quotation marks, CRLF, an empty row, a byte-order mark.
    let table = "\u{feff}student,canvas,layer,colour,before,after,tray,\"scale\",note,checked,piece,lesson,technique,consistency\r\n\
        Ana,square,,white,91,45,,1 g,,,,lessons/small.yaml,,\r\n\
        ,,,,,,,,,,,,,\r\n\
        demonstration,pair,,blue,2,0,,0.1 oz,,,2,lessons/small.yaml,,\r\n\
        Bo,petals,base,\"white\",0.12 kg,60.5,12,1 g,\"spilled a little\",yes,,./lessons/small.yaml,,\r\n\
        Cem,square,,white,91 g,45 g,,1 g,,,,lessons/small.yaml,swipe,thick\r\n\
        Cem,square,,blue,,,,1 g,,,,lessons/small.yaml,swipe,thick\r\n";
    let weighings = read_text("class.csv", table).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(weighings.classes.len(), 1);
    let said = |class: &WeighedClass| {
        let cups = class.cups.iter().map(|cup| {
            let cup = cup.clone();
            let weights = [Some(cup.before), Some(cup.after), cup.tray, Some(cup.step)];
            let names =
                [cup.student, cup.canvas.name.clone(), cup.layer, cup.note.unwrap_or_default()];
            let of_lesson =
                [cup.technique.name.clone(), cup.mix.name.clone(), cup.colour.name.clone()];
            (names, of_lesson, weights.map(|mass| mass.map(grams)), cup.piece, cup.trust)
        });
        cups.collect::<Vec<_>>()
    };
    assert_eq!(said(&weighings.classes[0]), said(&class(CLASS)));
}

#[test]
fn a_quoted_cell_may_hold_commas_quotation_marks_and_line_ends() {
    let table = "lesson,student,canvas,colour,before,after,scale,note\n\
                 lessons/small.yaml,Ana,square,white,91,45,1 g,\"spilled, \"\"a\nlittle\"\"\"\n\
                 lessons/small.yaml,Bo,square,white,45,91,1 g,\n";
    let faults = read_text("class.csv", table).unwrap_err();
    let [problem] = faults.problems() else { panic!("{faults}") };
    let place = problem.place.as_ref().unwrap();
    assert_eq!(faults.sources().line_and_column(place), (4, 39), "{faults}");
    assert_eq!(problem.path, ["row 4", "after"]);
    let right = table.replace("45,91", "91,45");
    let weighings = read_text("class.csv", &right).unwrap_or_else(|faults| panic!("{faults}"));
    let note = weighings.classes[0].cups[0].note.as_deref();
    assert_eq!(note, Some("spilled, \"a little\""));
}

#[test]
fn a_table_holds_several_classes_and_files_add_up() {
    let table = "lesson,date,student,canvas,colour,before,after,scale\n\
                 lessons/small.yaml,2026-03-14,Ana,square,white,91,45,1 g\n\
                 lessons/small.yaml,2026-03-21,Ana,square,white,91,45,1 g\n\
                 lessons/small.yaml,2026-03-14,Bo,square,white,91,45,1 g\n";
    let more = CLASS.replace("student: Ana", "student: Cem, piece: 1");
    let more = more.split("  - {student: Cem, canvas: square, technique").next().unwrap();
    let files = [("class.csv", table.as_bytes()), ("class.yaml", more.as_bytes())];
    let weighings = read_files(&files).unwrap_or_else(|faults| panic!("{faults}"));
    let cups: Vec<usize> = weighings.classes.iter().map(|class| class.cups.len()).collect();
    assert_eq!(cups, [5, 1], "one class a day");
    let again = [("class.csv", table.as_bytes()), ("class.csv", table.as_bytes())];
    assert_eq!(read_files(&again).unwrap().classes.len(), 2, "a file named twice is read once");
}
