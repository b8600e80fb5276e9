//! Lessons to weigh in, and things learned, all invented.

use puddlebook::handout::{Block, Desk, Document, Inline, Sheet, Templates};
use puddlebook::lesson::{self, Consistency, Language, Lesson, Technique};
use puddlebook::plan::learn::mean::Varies;
use puddlebook::plan::learn::{
    CanvasUse, CupUse, Estimate, Learned, LearnedClass, LearnedFilm, LearnedSpread, LeftOut,
    Method, RunOff, SpreadPart,
};
use puddlebook::plan::{self, Plan};
use puddlebook::quantity::Spread;
use puddlebook::quantity::units::{gram, mm, square_inch};
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// Two canvases, the second with two layers; the first is painted twice.
pub const LESSON: &str = r##"
title: Pouring twice
date: 2026-03-14
units: us
class: {students: [Ana, "=Bo"], demonstrations: 2, spares: 1}
canvases:
  square:
    {shape: rectangle, width: 10 in, height: 10 in, depth: 1/2 in, each: 2,
     technique: spun pour, consistency: thin, palette: shore}
  oval:
    {shape: oval, width: 8 in, height: 10 in,
     technique: brushed base with spun colour, consistency: thin, palette: veil}
palettes:
  shore: {colour: {sea blue: 40 %, white: the rest}}
  veil: {base: {white: 100 %}, colour: {sea blue: 60 %, sand: the rest}}
colours:
  sea blue: {swatch: "#1F5A7A"}
  sand: {swatch: "#D9C08A"}
  white: {swatch: "#F7F5F0"}
shops:
  A shop (invented):
    currency: USD
    packs:
      - {item: sea blue acrylic, size: 8 fl oz, price: 5.50}
      - {item: sand acrylic, size: 8 fl oz, price: 5.50}
      - {item: white acrylic, size: 16 fl oz, price: 8}
      - {item: pouring medium, size: 32 fl oz, price: 14}
"##;

pub fn read(text: &str) -> Lesson {
    lesson::read_with(Path::new("test.yaml"), &|_| Ok(text.as_bytes().to_vec()))
        .unwrap_or_else(|faults| panic!("{faults}"))
}

pub fn plan_of(text: &str) -> Plan {
    plan::plan(read(text)).unwrap_or_else(|reason| panic!("{reason}"))
}

pub fn built_in() -> Templates {
    Templates::new(Language::English, &BTreeMap::new()).unwrap()
}

pub fn written(plan: &Plan, sheet: Sheet) -> Document {
    Desk::new(plan, &built_in()).unwrap().write(sheet).unwrap_or_else(|fault| panic!("{fault}"))
}

pub fn words(inlines: &[Inline]) -> String {
    let word = |inline: &Inline| match inline {
        Inline::Text(text) => text.replace(['\u{202F}', '\u{A0}'], " "),
        Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
            words(inner)
        }
        Inline::Blank { .. } => "_".to_owned(),
        _ => String::new(),
    };
    inlines.iter().map(word).collect::<String>().trim().to_owned()
}

/// All that a document says, a line a paragraph or row.
pub fn said(blocks: &[Block]) -> String {
    let line = |block: &Block| match block {
        Block::Paragraph(text) | Block::SmallPrint(text) => words(text),
        Block::Heading { text, .. } => words(text),
        Block::Masthead { kind, title, facts } => {
            let facts = facts.iter().map(|fact| format!("{}: {}", fact.label, fact.value));
            format!("{kind}\n{title}\n{}", facts.collect::<Vec<_>>().join("\n"))
        }
        Block::Columns { body, .. } => said(body),
        Block::List { items, .. } => items.iter().map(|item| said(item)).collect::<String>(),
        Block::Step { heading, body, .. } => format!("{}\n{}", words(heading), said(body)),
        Block::Figure { picture, caption } => format!("{}\n{}", picture.alt, words(caption)),
        Block::Table(table) => {
            let rows = table.rows.iter().map(|row| {
                let cells = row.cells.iter().map(|cell| words(cell));
                cells.collect::<Vec<_>>().join(" | ")
            });
            let head = table.columns.iter().map(|column| words(&column.heading));
            let head = head.collect::<Vec<_>>().join(" | ");
            let rows = rows.collect::<Vec<_>>().join("\n");
            format!("{}\n{head}\n{rows}", words(&table.caption))
        }
        _ => String::new(),
    };
    let mut out: String = blocks.iter().map(|block| line(block) + "\n").collect();
    while out.contains("\n\n") {
        out = out.replace("\n\n", "\n");
    }
    out.replace(['\u{202F}', '\u{A0}'], " ")
}

fn technique(lesson: &Lesson, name: &str) -> Arc<Technique> {
    let found = lesson.techniques.iter().find(|technique| technique.name == name);
    Arc::clone(found.expect("a technique of the program"))
}

/// Ten canvases of spun pour in two classes and a brushed one; a third has no sand.
pub fn learned() -> Learned {
    let lesson = read(LESSON);
    let spun = technique(&lesson, "spun pour");
    let brushed = technique(&lesson, "brushed base with spun colour");
    let mut classes = vec![class("Pouring twice", 14, 6), class("Pouring again", 21, 6)];
    for (at, class) in classes.iter_mut().enumerate() {
        for number in 0..5 {
            class.cups.extend(cups(&lesson, &format!("{}", number + 1), "square", at));
        }
    }
    classes[1].cups.push(cup(&lesson, "Ana", "oval", "base", 1, 60.0, 14.0));
    let canvases = (0..10).map(|at| {
        let part = [0.70, 0.78, 0.83, 0.88, 0.95, 0.80, 0.86, 0.92, 0.99, 1.06][at];
        use_of(at / 5, &format!("{}", at % 5 + 1), "square", spun.as_ref(), part)
    });
    let thin = |technique: &Technique, layer: usize| technique.layers[layer].films.thin;
    let film = |technique: &Arc<Technique>, layer: usize| LearnedFilm {
        technique: Arc::clone(technique),
        layer: technique.layers[layer].name.clone(),
        consistency: Consistency::Thin,
        cups: 20,
        classes: 2,
        canvases: Vec::new(),
        mean: Estimate { value: mm(1.34), low: mm(1.21), high: mm(1.47) },
        from_scale: mm(0.01),
        run_off: Some(RunOff { canvases: 4, share: 0.31 }),
        before: thin(technique, layer),
        own_weight: 0.83,
        film: Spread::new(mm(1.2), mm(1.37), mm(1.5)).unwrap(),
    };
    let base = use_of(1, "Ana", "oval", &brushed, 1.1);
    Learned {
        films: vec![
            LearnedFilm { canvases: canvases.collect(), ..film(&spun, 0) },
            LearnedFilm {
                canvases: vec![base],
                cups: 1,
                classes: 1,
                run_off: None,
                mean: Estimate { value: mm(0.52), low: mm(0.4), high: mm(0.65) },
                film: Spread::new(mm(0.42), mm(0.485), mm(0.55)).unwrap(),
                own_weight: 0.3,
                ..film(&brushed, 0)
            },
        ],
        left_out: vec![LeftOut {
            class: 1,
            student: "Ana".to_owned(),
            canvas: "oval".to_owned(),
            piece: 1,
            layer: "colour".to_owned(),
            missing: vec![Arc::clone(&lesson.canvases[1].layers[1].colours[1].0)],
        }],
        classes,
        spread: LearnedSpread {
            canvases: 11,
            classes: 2,
            class: SpreadPart::Weighed(0.062),
            student: SpreadPart::Weighed(0.117),
            method: Method::Reml,
            raw_class: None,
            from_now_on: Varies { class: 0.075, student: 0.123 },
            before: Varies { class: 0.08, student: 0.15 },
        },
    }
}

fn class(title: &str, day: i8, canvases: u32) -> LearnedClass {
    let date = puddlebook::quantity::Date::new(2026, 3, day).ok();
    LearnedClass { title: title.to_owned(), date, canvases, cups: Vec::new() }
}

fn cups(lesson: &Lesson, student: &str, canvas: &str, class: usize) -> [CupUse; 2] {
    let left = 8.0 - class as f64;
    [
        cup(lesson, student, canvas, "colour", 0, 60.0, left),
        cup(lesson, student, canvas, "colour", 1, 82.0, left),
    ]
}

fn cup(
    lesson: &Lesson,
    student: &str,
    canvas: &str,
    layer: &str,
    colour: usize,
    before: f64,
    after: f64,
) -> CupUse {
    let used = before - after;
    CupUse {
        student: student.to_owned(),
        canvas: canvas.to_owned(),
        piece: 1,
        layer: layer.to_owned(),
        colour: Arc::clone(&lesson.canvases[0].layers[0].colours[colour].0),
        before: gram(before),
        after: gram(after),
        used: Spread::new(gram(used - 1.0), gram(used), gram(used + 1.0)).unwrap(),
    }
}

/// So much of what was planned for 120 square inches, give or take a fortieth.
fn use_of(
    class: usize,
    student: &str,
    canvas: &str,
    technique: &Technique,
    part: f64,
) -> CanvasUse {
    let area = square_inch(120.0);
    let planned = area * technique.layers[0].films.thin.typical();
    let used = planned * part;
    CanvasUse {
        class,
        student: student.to_owned(),
        canvas: canvas.to_owned(),
        piece: 1,
        area,
        planned,
        used: Spread::new(used * 0.975, used, used * 1.025).unwrap(),
    }
}
