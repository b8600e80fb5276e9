//! Handouts in another language: every word of the program has its counterpart, figures are the
//! same, and numbers look as the language writes them.

mod counterparts;
mod sheets;

use puddlebook::lesson::{Faults, Language, Lesson};
use puddlebook::plan::{self, Impossible};

use crate::lesson_tools::{SMALL, files_in, read_text};

/// A small right lesson in Spanish.
const SPANISH: &str = r##"title: Una clase pequeña
language: es
class: {students: 2}
canvases:
  cuadro:
    shape: rectangle
    width: 20 cm
    height: 30 cm
    depth: 1.5 cm
    technique: vertido directo
    consistency: media
    palette: sencilla
palettes:
  sencilla:
    color: {azul: 40 %, blanco: the rest}
colours:
  azul: {swatch: "#1F5A7A"}
  blanco: {swatch: "#F4F2EC"}
"##;

fn told(faults: &Faults) -> Vec<String> {
    let text = faults.render(puddlebook::lesson::Style::Plain);
    text.lines().filter(|line| line.starts_with("error")).map(str::to_owned).collect()
}

fn read(text: &str) -> Lesson {
    read_text(text).unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn a_lesson_in_spanish_names_what_comes_with_the_program_in_spanish() {
    let lesson = read(SPANISH);
    assert_eq!(lesson.print.language, Language::Spanish);
    let paint = &lesson.canvases[0].layers[0].colours[0].0.paint;
    assert_eq!(paint.name, "acrílico azul", "what a paint is called when nothing is said");
    assert!(lesson.supplies.iter().any(|rule| rule.item == "bandeja de goteo"));
    assert_eq!(read(SMALL).print.language, Language::English, "without the key");
    for (spanish, english) in
        [("vertido directo", "straight pour"), ("media", "medium"), ("color:", "colour:")]
    {
        assert_eq!(told(&read_text(&SPANISH.replace(spanish, english)).unwrap_err()).len(), 1);
    }
}

#[test]
fn where_the_language_is_unknown_no_name_is_blamed() {
    for text in [SPANISH.to_owned(), format!("language: en\n{SMALL}")] {
        let [en, es] = ["en\n", "es\n"].map(|tag| format!("language: {tag}"));
        let text = text.replace(&en, "language: klingon\n").replace(&es, "language: klingon\n");
        let text =
            text + "stock: {acrílico azul: 100 mL, blue acrylic: 100 mL, pushpins: 3 pieces}\n";
        let faults = read_text(&text).unwrap_err();
        assert_eq!(told(&faults), ["error: \"klingon\" is no choice here"], "{faults}");
    }
}

#[test]
fn lessons_in_two_languages_are_not_ordered_together() {
    let lessons = [SMALL, SPANISH].map(read);
    let refused = plan::course(lessons.to_vec(), &[]).err();
    let (first, other) = (Language::English, Language::Spanish);
    assert_eq!(refused, Some(Impossible::TwoLanguages { first, other }));
}

#[test]
fn a_lesson_of_each_language_ships() {
    let lessons = files_in("lessons", "yaml");
    let lessons: Vec<Lesson> = lessons
        .iter()
        .map(|path| puddlebook::lesson::read(path).unwrap_or_else(|faults| panic!("{faults}")))
        .collect();
    for language in Language::ALL {
        assert!(lessons.iter().any(|lesson| lesson.print.language == language), "{language:?}");
    }
}
