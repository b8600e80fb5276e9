//! The handouts of Spanish lessons, read page by page: no English is left in them, and numbers
//! are those of the language.

use puddlebook::handout::{Desk, Document, Sheet, Templates, measured, order_csv, weigh_csv};
use puddlebook::ink::{Faces, Shape};
use puddlebook::lesson::{self, Edition, Language, Lesson};
use puddlebook::page::{Pages, lay_out};
use puddlebook::plan::{self, Errand, Plan};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::in_gram;
use std::collections::BTreeMap;

use super::read;
use crate::lesson_tools::in_project;

/// Common words of English that are no words of Spanish. "In" is the sign of the inch.
const ENGLISH: [&str; 66] = [
    "the", "and", "of", "with", "your", "is", "are", "to", "for", "from", "this", "that", "which",
    "not", "it", "its", "by", "on", "at", "or", "an", "be", "you", "was", "were", "what", "how",
    "who", "when", "then", "them", "they", "there", "more", "less", "than", "each", "one", "two",
    "all", "up", "out", "into", "over", "before", "after", "until", "used", "page", "paint",
    "canvas", "canvases", "cup", "cups", "stick", "colour", "layer", "weigh", "student",
    "students", "thin", "thick", "medium", "water", "edge", "source",
];

/// What stays in the language in which it was published, and the names of a command and of
/// columns of a table.
const PUBLISHED: [&str; 6] = [
    "NIOSH Pocket Guide to Chemical Hazards",
    "Journal of Applied Physics",
    "Proceedings of the Cambridge Philosophical Society",
    "Journal of Fluid Mechanics",
    "puddlebook learn weigh.csv",
    "columnas before , after y tray",
];

/// Numbers of laws, standards and licences, whose points are not decimal.
const NUMBERED: [&str; 6] =
    ["Apache 2.0", "License 1.1", "1910.252", "1910.1200", "1500.14", "II 2.8"];

/// Something of everything that a handout may talk about: every shape, technique and note.
const WHOLE: &str = r##"
title: De todo un poco
subtitle: Una tarde larga
teacher: Maris Olmeda
place: Casa del Muelle
note: Todo es inventado.
language: es
class: {students: 5, demonstrations: 1, spares: 1, youngest age: 11, per table: 3}
practices: [torch, heat gun, hair dryer, sanding, resin]
canvases:
  cuadro:
    {shape: rectangle, width: 20 cm, height: 20 cm, depth: 1.5 cm, each: 2,
     technique: vertido soplado, consistency: celdas, palette: doble, finishes: [barniz a brocha]}
  redondo:
    {shape: round, diameter: 20 cm, technique: vaso invertido, consistency: espesa, palette: mar}
  óvalo:
    {shape: oval, width: 20 cm, height: 30 cm, depth: 1.5 cm, edge: bare,
     technique: barrido, consistency: fluida, palette: mar}
  panal:
    {shape: polygon, sides: 6, across flats: 20 cm, depth: 2 cm,
     technique: vertido centrifugado, consistency: fluida, palette: mar}
  heptágono:
    {shape: polygon, sides: 7, side: 8 cm, technique: vertido sucio, consistency: media, palette: mar}
palettes:
  mar: {color: {azul: 40 %, blanco: the rest}}
  doble: {base: {blanco: 100 %}, color: {azul: 70 %, blanco: the rest}}
colours:
  azul: {swatch: "#1F5A7A", pigments: [cobalto]}
  blanco: {swatch: "#F4F2EC"}
mixes:
  celdas:
    consistency: medium
    parts: {paint: 3, médium de vertido: 1 1/2, agua: 1/3}
    drops: {aceite de silicona: 2.5 per 100 mL, alcohol isopropílico: 3 per 100 mL}
stock: {médium de vertido: 100 mL, chinchetas: 4 pieces}
supplies:
  gafas de protección: {count: 1, per: student, life: washable}
exercises: 8
timetable: {start: 9:00, booked until: 10:30, steps: {mezclar: 45 min, verter: 1 h 30 min}}
room: {table: {length: 150 cm, width: 75 cm}, level surface: 0.5 m²}
"##;

const PRICES: &str = r##"
date: 2026-01-15
jars: [{colour: azul, mix: fluida, amount: 40 g, mixed: 2026-01-02}]
money: {fixed: {sala: 40}, fee: 12.50}
bought elsewhere: [delantal]
shops:
  Almacén del Faro (inventado):
    {currency: EUR, delivery: 4.50, free from: 80, packs: [
     {item: acrílico azul, size: 250 mL, price: 9.40}, {item: acrílico blanco, size: 1 L, price: 21},
     {item: médium de vertido, size: 1 L, price: 17.20}]}
  Papelería del Cabo (inventada):
    {currency: EUR, packs: [{item: acrílico azul, size: 250 mL, price: 8.90}]}
"##;

fn demo() -> Lesson {
    let path = in_project("lessons/taller-de-ola.yaml");
    lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The lessons to read, in both systems of units.
fn plans() -> Vec<Plan> {
    let lessons = [demo(), read(WHOLE), read(&format!("{WHOLE}{PRICES}"))];
    let both = lessons.into_iter().flat_map(|lesson| {
        [UnitSystem::Metric, UnitSystem::Us].map(|units| {
            let mut lesson = lesson.clone();
            lesson.print.units = units;
            lesson
        })
    });
    both.map(|lesson| plan::plan(lesson).unwrap_or_else(|reason| panic!("{reason}"))).collect()
}

fn spanish() -> Templates {
    Templates::new(Language::Spanish, &BTreeMap::new()).unwrap()
}

/// What weighing says of a lesson whose cups lost what was planned, but for one that nobody weighed.
fn weighed() -> Document {
    let folder = tempfile::tempdir().unwrap();
    let (lesson, table) = (folder.path().join("clase.yaml"), folder.path().join("weigh.csv"));
    std::fs::write(&lesson, WHOLE).unwrap();
    let plan = plan::plan(read(WHOLE)).unwrap();
    let blank = weigh_csv(&plan, "clase.yaml").unwrap();
    let mut rows = csv::Reader::from_reader(blank.as_slice());
    let heads = rows.headers().unwrap().clone();
    let at = |name: &str| heads.iter().position(|head| head == name).unwrap();
    let mut filled = csv::Writer::from_path(&table).unwrap();
    filled.write_record(&heads).unwrap();
    for (number, row) in rows.records().enumerate() {
        let mut row: Vec<String> = row.unwrap().iter().map(str::to_owned).collect();
        let canvas = plan.canvases.iter().find(|canvas| canvas.name == row[at("canvas")]).unwrap();
        let layer = canvas.layers.iter().find(|layer| layer.name == row[at("layer")]).unwrap();
        let cup = layer.cups.iter().find(|cup| cup.colour.name == row[at("colour")]).unwrap();
        if number != 1 {
            row[at("before")] = format!("{:.1} g", in_gram(cup.fill));
            row[at("after")] = format!("{:.1} g", in_gram(cup.fill - cup.paint * cup.density()));
        }
        filled.write_record(&row).unwrap();
    }
    filled.flush().unwrap();
    let weighings = lesson::read_weighings(&[table]).unwrap_or_else(|faults| panic!("{faults}"));
    let learned = plan::learn::learn(&weighings.classes).unwrap();
    assert!(!learned.left_out.is_empty());
    measured(&learned, plan.lesson.print, &spanish()).unwrap_or_else(|fault| panic!("{fault}"))
}

/// Everything that can be read or heard on the pages, with words that were divided put together.
fn said(pages: &Pages) -> String {
    let mut text = format!("{}\n", pages.title);
    for mark in pages.pages.iter().flat_map(|page| &page.marks) {
        if let Shape::Text(run) = &mark.shape {
            match run.text.strip_suffix('\u{AD}') {
                Some(first_part) => text.push_str(first_part),
                None => text.extend([run.text.as_str(), " "]),
            }
        }
    }
    for tag in &pages.tags {
        text.extend(["\n", tag.alt.as_deref().unwrap_or_default()]);
    }
    text.replace(['\u{202F}', '\u{A0}'], " ")
}

/// The pages of everything that is made of a plan.
fn sheets(plan: &Plan) -> impl Iterator<Item = (String, String)> {
    let (templates, faces) = (spanish(), Faces::new());
    let desk = Desk::new(plan, &templates).unwrap();
    let title = plan.lesson.heading.title.clone();
    let all = Sheet::ALL.map(|sheet| {
        let document = desk.write(sheet).unwrap_or_else(|fault| panic!("{fault}"));
        assert_eq!(document.language, "es");
        (format!("{title}, {}", sheet.word()), said(&lay_out(&document, &faces)))
    });
    all.into_iter()
}

fn without<'t>(text: &str, phrases: impl IntoIterator<Item = &'t str>) -> String {
    phrases.into_iter().fold(text.to_owned(), |text, phrase| text.replace(phrase, " "))
}

/// English words of a text, with what stands around them.
fn english(text: &str) -> Vec<String> {
    let text = without(&text.split_whitespace().collect::<Vec<_>>().join(" "), PUBLISHED);
    let words: Vec<&str> = text.split_whitespace().collect();
    let is_english = |word: &&str| {
        let word = word.trim_matches(|c: char| !c.is_alphabetic()).to_lowercase();
        ENGLISH.contains(&word.as_str())
    };
    let found = words.iter().enumerate().filter(|(_, word)| is_english(word));
    found.map(|(at, _)| words[at.saturating_sub(3)..(at + 4).min(words.len())].join(" ")).collect()
}

/// Numbers with this sign between their figures.
fn numbers_with(text: &str, sign: char) -> Vec<String> {
    let text = without(text, NUMBERED);
    let letters: Vec<char> = text.chars().collect();
    let marks = letters.windows(3).enumerate().filter(|(_, part)| {
        part[1] == sign && part[0].is_ascii_digit() && part[2].is_ascii_digit()
    });
    let around = |at: usize| letters[at.saturating_sub(8)..(at + 8).min(letters.len())].iter();
    marks.map(|(at, _)| around(at).collect()).collect()
}

#[test]
fn no_english_is_left_and_every_number_has_its_comma() {
    let mut commas = 0;
    for plan in plans() {
        for (sheet, text) in sheets(&plan) {
            assert_eq!(english(&text), [""; 0], "{sheet}");
            assert_eq!(numbers_with(&text, '.'), [""; 0], "{sheet}");
            commas += numbers_with(&text, ',').len();
        }
    }
    assert!(commas > 1000, "{commas}");
    let text = said(&lay_out(&weighed(), &Faces::new()));
    assert_eq!(english(&text), [""; 0], "what was measured");
    assert_eq!(numbers_with(&text, '.'), [""; 0], "what was measured");
}

#[test]
fn english_would_be_found() {
    assert_eq!(english("Pesa «the cup» y ya")[0], "Pesa «the cup» y ya");
    assert_eq!(english("y el palito, «Journal of Applied Physics»"), [""; 0]);
    assert_eq!(numbers_with("29 CFR 1910.252 y 3.5 g", '.').len(), 1);
}

#[test]
fn large_print_says_the_same() {
    let mut lesson = demo();
    lesson.print.edition = Edition::LargePrint;
    for (sheet, text) in sheets(&plan::plan(lesson).unwrap()) {
        assert_eq!(english(&text), [""; 0], "{sheet}");
        assert_eq!(numbers_with(&text, '.'), [""; 0], "{sheet}");
    }
}

#[test]
fn dates_prices_and_clocks_are_written_as_in_spanish() {
    let plan = plan::plan(demo()).unwrap();
    let text: String = sheets(&plan).map(|(_, text)| text).collect();
    for piece in
        ["19 de septiembre de 2026", "123,80 €", "de 16:30 a 19:45", "Página 1 de 2", "40 %"]
    {
        assert!(text.contains(piece), "{piece}");
    }
    let mut lesson = demo();
    lesson.print.units = UnitSystem::Us;
    let plan = plan::plan(lesson).unwrap();
    let text: String = sheets(&plan).map(|(_, text)| text).collect();
    assert!(text.contains("de 4:30 p. m. a 7:45 p. m."));
}

#[test]
fn what_is_mixed_in_brings_its_safety_notes_in_spanish_too() {
    let plan = plans().swap_remove(2);
    let notes: Vec<&str> = plan.cautions.iter().map(|note| note.name.as_str()).collect();
    assert_eq!(notes.len(), plan.lesson.cautions.len(), "every note there is: {notes:?}");
    let few = plan::plan(demo()).unwrap();
    let notes: Vec<&str> = few.cautions.iter().map(|note| note.name.as_str()).collect();
    assert_eq!(notes, ["pigmentos", "aire fresco", "guantes", "agua sucia", "la etiqueta primero"]);
}

#[test]
fn tables_for_spreadsheets_keep_their_columns_and_their_points() {
    let plan = plan::plan(demo()).unwrap();
    let english = Templates::new(Language::English, &BTreeMap::new()).unwrap();
    let table = |templates: &Templates| order_csv(&[Errand::of(&plan)], templates.words()).unwrap();
    let [here, there] = [table(&english), table(&spanish())].map(|table| {
        let mut rows = csv::Reader::from_reader(table.as_slice());
        let heads = rows.headers().unwrap().clone();
        let note = heads.iter().position(|head| head == "note").unwrap();
        let rows: Vec<csv::StringRecord> = rows.records().map(Result::unwrap).collect();
        let figures = rows.iter().map(|row| row.iter().take(note).map(str::to_owned).collect());
        (heads, figures.collect::<Vec<Vec<String>>>())
    });
    assert_eq!(here, there, "all but the notes");
    let cost = here.0.iter().position(|head| head == "cost").unwrap();
    assert!(here.1.iter().any(|row| row[cost] == "11.90"));
}
