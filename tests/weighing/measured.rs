//! The page that says what was measured, and the sheets that say what they rest on.

use super::sample::{LESSON, built_in, learned, plan_of, said, written};
use puddlebook::handout::{
    Block, Document, PictureKind, Sheet, WeighedChart, course_order, measured,
};
use puddlebook::lesson::{self, Print};
use puddlebook::plan::learn::{Learned, LearnedSpread, Method, SpreadPart};
use puddlebook::plan::{self, rule_film};
use puddlebook::quantity::units::in_us_fl_oz;
use std::path::Path;

fn print() -> Print {
    super::sample::read(LESSON).print
}

fn page(learned: &Learned) -> Document {
    measured(learned, print(), &built_in()).unwrap_or_else(|fault| panic!("{fault}"))
}

fn chart(document: &Document) -> (WeighedChart, String) {
    let found = document.blocks.iter().find_map(|block| match block {
        Block::Figure { picture, .. } => match &picture.kind {
            PictureKind::Weighed(data) => Some((data.clone(), picture.alt.clone())),
            _ => None,
        },
        _ => None,
    });
    found.expect("a chart")
}

#[test]
fn it_says_what_is_planned_from_now_on_and_why() {
    let text = said(&page(&learned()).blocks);
    for part in [
        "21 cups were weighed before and after pouring, for 12 canvases in 2 classes.",
        // 1.37 mm where 1.53 were planned.
        "spun pour, thin: 10 % less paint than before",
        "brushed base with spun colour, base thin: 3 % more paint than before",
        // 1.34 mm of 1.8336.
        "thin | 10 | 1.34 | 1.21–1.47 | 73 | 31 | 1.53 | 83 | 1.37",
        // One layer of several is no pour, and this one had no tray.
        "base thin | 1 | 0.52 | 0.40–0.65 |  |  | 0.47 | 30 | 0.485",
        "From class to class: 6.2 %.",
        "From canvas to canvas within a class: 11.7 %.",
        "restricted maximum likelihood, from 11 canvases in 2 classes",
        "Pouring twice, 14 March 2026: 10 cups, 6 canvases",
        "Student 3 | square | 120 |",
        "Pouring again, 21 March 2026: Ana, oval, layer “colour”, without sand",
    ] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
}

#[test]
fn what_could_not_be_told_is_said() {
    let spread = LearnedSpread {
        class: SpreadPart::NothingSeen,
        student: SpreadPart::TooFew(0.12),
        method: Method::None,
        ..learned().spread
    };
    let text = said(&page(&Learned { spread, ..learned() }).blocks);
    for part in [
        "From class to class: 0 %. No difference between classes was seen",
        "within a class: 12 %. Too few canvases were weighed to tell",
        "They could not be told apart",
    ] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
}

#[test]
fn the_chart_has_a_point_a_canvas_and_the_rule_of_thumb() {
    let learned = learned();
    let (data, alt) = chart(&page(&learned));
    assert_eq!(data.points.len(), 11);
    assert_eq!(data.groups, ["Pouring twice, 14 March 2026", "Pouring again, 21 March 2026"]);
    for (point, canvas) in data.points.iter().zip(&learned.films[0].canvases) {
        assert_eq!(point.group, canvas.class);
        assert!((point.x - in_us_fl_oz(canvas.planned)).abs() < 1e-9);
        assert!((point.y[1] - in_us_fl_oz(canvas.used.typical())).abs() < 1e-9);
        assert!(point.y[0] < point.y[1] && point.y[1] < point.y[2]);
    }
    // The base alone is compared with no rule: it is for whole pours.
    let [rule] = data.rules.as_slice() else { panic!("{:?}", data.rules) };
    assert_eq!(rule.label, "rule of thumb");
    let planned = learned.films[0].before.typical();
    assert!((rule.slope - (rule_film() / planned).value).abs() < 1e-9);
    for part in [data.title.as_str(), "6 canvases", "fl\u{a0}oz planned", "at 120\u{202f}%"] {
        assert!(alt.contains(part), "{part:?} in {alt}");
    }
    assert!(data.title.ends_with("less than planned"), "{}", data.title);
}

/// Films weighed by 34 cups, and a lesson that has others as well.
const WEIGHED: &str = "
techniques:
  spun pour:
    layers:
      colour:
        thin: {low: 1.2 mm, typical: 1.31 mm, high: 1.44 mm, weighed: {cups: 34, canvases: 17,
          classes: 3, mean: 1.28 mm, own weight: 83 %,
          instead of: {low: 1.38 mm, typical: 1.53 mm, high: 1.65 mm}}}
";

#[test]
fn every_sheet_says_what_its_amounts_rest_on() {
    let (one, rest) = LESSON.split_once("  oval:").unwrap();
    let (_, rest) = rest.split_once("palettes:").unwrap();
    let whole = plan_of(&format!("{one}palettes:{rest}{WEIGHED}"));
    let part = plan_of(&format!("{LESSON}{WEIGHED}"));
    let none = plan_of(LESSON);
    for sheet in
        [Sheet::Order, Sheet::Lesson, Sheet::Cards, Sheet::Worksheet, Sheet::Answers, Sheet::Guide]
    {
        let cups = match sheet {
            Sheet::Worksheet => "from 34 cups weighed",
            _ => "from your 34 weighed cups",
        };
        let of = |plan| said(&written(plan, sheet).blocks);
        assert!(of(&whole).contains(&format!("come {cups}")), "{}", of(&whole));
        assert!(of(&part).contains(&format!("come in part {cups}")), "{sheet:?}");
        assert!(!of(&none).contains("weighed cups"), "{sheet:?}");
    }
}

/// An order for several lessons says of each whether its amounts come from weighed cups.
#[test]
fn the_order_of_a_course_says_which_lessons_were_weighed() {
    let lesson = |name: &str| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("lessons").join(name);
        lesson::read(&path).unwrap()
    };
    let lessons = ["boathouse-evening.yaml", "boathouse-autumn.yaml"].map(lesson);
    let course = plan::course(lessons.to_vec(), &[]).unwrap();
    let order = said(&course_order(&course, &built_in()).unwrap().unwrap().blocks);
    assert!(
        order.contains("for “Two Ways to Pour Again” come from your 77 weighed cups"),
        "{order}"
    );
    assert_eq!(order.matches("weighed cups").count(), 1);
}
