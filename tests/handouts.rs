//! What the handouts say: templates, their directives, and what a teacher may change.

use puddlebook::handout::{
    Align, Block, Desk, Document, Inline, NoticeKind, PictureKind, RowKind, Sheet, Sign, Table,
    TemplateFault, Templates, Weight, order_csv,
};
use puddlebook::lesson::{self, Language, Lesson};
use puddlebook::plan::{self, Errand, Plan};
use std::collections::BTreeMap;
use std::path::Path;

const LESSON: &str = r##"
title: Pouring *stars*
units: us
class: {students: 4}
canvases:
  panel | one:
    {shape: rectangle, width: 10 in, height: 10 in, depth: 1/2 in,
     technique: straight pour, consistency: medium, palette: shore}
palettes:
  shore: {colour: {sea_blue: 40 %, "=sum": 25 %, white: the rest}}
colours:
  sea_blue: {swatch: "#1F5A7A"}
  "=sum": {swatch: "#D9C08A"}
  white: {swatch: "#F7F5F0"}
shops:
  A shop (invented):
    currency: USD
    packs:
      - {item: "=sum acrylic", size: 8 fl oz, price: 5.49}
"##;

fn read(text: &str) -> Lesson {
    lesson::read_with(Path::new("test.yaml"), &|_| Ok(text.as_bytes().to_vec()))
        .unwrap_or_else(|faults| panic!("{faults}"))
}

fn plan_of(text: &str) -> Plan {
    plan::plan(read(text)).unwrap_or_else(|reason| panic!("{reason}"))
}

pub fn built_in() -> Templates {
    Templates::new(Language::English, &BTreeMap::new()).unwrap()
}

fn lesson_sheet_of(plan: &Plan, template: &str) -> Result<Document, TemplateFault> {
    let own = BTreeMap::from([("lesson.md".to_string(), template.to_string())]);
    Desk::new(plan, &Templates::new(Language::English, &own)?)?.write(Sheet::Lesson)
}

/// What a teacher earns is nothing for the guide, which students take home.
#[test]
fn the_guide_keeps_what_the_teacher_earns_to_itself() {
    let plan = plan_of(&format!("{LESSON}money: {{fixed: {{my wage: 61}}, fee: 23}}\n"));
    let templates = built_in();
    let desk = Desk::new(&plan, &templates).unwrap();
    let has =
        |sheet: Sheet, words: &str| format!("{:?}", desk.write(sheet).unwrap()).contains(words);
    for words in ["my\u{a0}wage", "my wage", "61.00", "23.00"] {
        assert!(!has(Sheet::Guide, words), "{words}");
    }
    assert!(has(Sheet::Lesson, "61.00") && has(Sheet::Lesson, "23.00"));
}

/// One room at 60.00 and nothing bought that has a price but a pack of paint at 5.49, which is
/// enough for twelve: (60 + 5.49) / 4 = 16.3725.
#[test]
fn the_lesson_sheet_shows_fees_and_describes_their_chart_in_words() {
    let plan = plan_of(&format!("{LESSON}money: {{fixed: {{room | hall: 60}}, fee: 20}}\n"));
    let template = "{{ cost.pays_for_itself }} {{ fees.pays_from }} {{ cost.fixed[0].what }}

```picture fee
```
";
    let document = lesson_sheet_of(&plan, template).unwrap();
    let Block::Paragraph(inlines) = &document.blocks[0] else { panic!("no paragraph") };
    assert_eq!(words(inlines), "$16.38 4\u{a0}room | hall");
    let Block::Figure { picture, .. } = &document.blocks[1] else { panic!("no picture") };
    let PictureKind::Fees(data) = &picture.kind else { panic!("another picture") };
    assert_eq!((data.dots.len(), data.here.as_ref().map(|(at, _)| *at)), (12, Some(3)));
    for text in ["A fee of $20.00 pays from 4 students on", "With 1: $65.49", "With 4: $16.38"] {
        assert!(picture.alt.contains(text), "{}", picture.alt);
    }
}

#[test]
fn a_lesson_that_says_no_prices_has_no_fees() {
    let (no_shop, _) = LESSON.split_once("shops:").unwrap();
    let document =
        lesson_sheet_of(&plan_of(no_shop), "[{{ cost.total }}{{ fees.classes | length }}]")
            .unwrap();
    let Block::Paragraph(inlines) = &document.blocks[0] else { panic!("no paragraph") };
    assert_eq!(words(inlines), "[0]");
}

/// Without a price list the order is still what one goes shopping with.
#[test]
fn an_order_without_prices_says_how_much_of_everything() {
    let (no_shop, _) = LESSON.split_once("shops:").unwrap();
    let stock = format!("{no_shop}stock: {{white acrylic: 1 fl oz}}\n");
    for (text, print, columns) in [
        (no_shop, "standard", vec!["Item", "To buy"]),
        (no_shop, "large print", vec!["Item", "To buy"]),
        (stock.as_str(), "standard", vec!["Item", "Needed", "In stock", "To buy"]),
        (stock.as_str(), "large print", vec!["Item", "To buy"]),
    ] {
        let plan = plan_of(&format!("{text}print: {print}\n"));
        let templates = built_in();
        let order = Desk::new(&plan, &templates).unwrap().write(Sheet::Order).unwrap();
        let table = order.blocks.iter().find_map(|block| match block {
            Block::Table(table) => Some(table),
            _ => None,
        });
        let table = table.unwrap();
        let heads: Vec<String> = table.columns.iter().map(|it| words(&it.heading)).collect();
        assert_eq!(heads, columns, "{print}");
        let bought = plan.order.lines.iter().filter(|line| line.item != "water").count();
        assert_eq!(table.rows.len(), bought, "{print}");
        for row in &table.rows {
            let amount: f64 = words(row.cells.last().unwrap()).parse().unwrap();
            assert!(amount > 0.0, "{}", words(&row.cells[0]));
        }
    }
}

/// What no shop sells is told with how much of it is missing.
#[test]
fn what_no_shop_sells_has_its_amount() {
    let plan = plan_of(LESSON);
    let order = Desk::new(&plan, &built_in()).unwrap().write(Sheet::Order).unwrap();
    let remark = order.blocks.iter().find_map(|block| match block {
        Block::Notice { body, .. } => match &body[..] {
            [Block::Paragraph(inlines)] => Some(words(inlines)),
            _ => None,
        },
        _ => None,
    });
    let remark = remark.unwrap();
    assert!(remark.contains("white acrylic (") && remark.contains("fl\u{a0}oz"), "{remark}");
}

/// The order written with a template of the test's own.
fn with_template(template: &str) -> Result<Document, TemplateFault> {
    let own = BTreeMap::from([("order.md".to_string(), template.to_string())]);
    Desk::new(&plan_of(LESSON), &Templates::new(Language::English, &own)?)?.write(Sheet::Order)
}

fn blocks(template: &str) -> Vec<Block> {
    with_template(template).unwrap_or_else(|fault| panic!("{}", fault.message)).blocks
}

fn words(inlines: &[Inline]) -> String {
    inlines
        .iter()
        .map(|inline| match inline {
            Inline::Text(text) => text.clone(),
            Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
                words(inner)
            }
            _ => String::new(),
        })
        .collect()
}

fn table(block: &Block) -> &Table {
    match block {
        Block::Table(table) => table,
        other => panic!("not a table: {other:?}"),
    }
}

#[test]
fn names_from_a_lesson_never_turn_into_markdown() {
    let written = blocks(
        "{{ title }}\n\n| Canvas | Colour |\n| :-- | :-- |\n{% for canvas in canvases %}| {{ canvas.name }} | {% for cup in canvas.layers[0].cups %}{{ cup.colour }} {% endfor %}|\n{% endfor %}",
    );
    assert_eq!(written[0], Block::Paragraph(vec![Inline::Text("Pouring *stars*".into())]));
    let row = &table(&written[1]).rows[0];
    assert_eq!(words(&row.cells[0]), "panel | one");
    assert_eq!(words(&row.cells[1]), "sea_blue =sum white");
    assert_eq!(row.kind, RowKind::Body);
}

#[test]
fn tables_have_totals_groups_and_columns_on_the_decimal_mark() {
    let written = blocks(
        "```table\nA caption\n\n| Item | Cost |\n| :-- | --: |\n| Paints | |\n| blue | 5.49 |\n| = Total | 5.49 |\n```\n",
    );
    let table = table(&written[0]);
    assert_eq!(words(&table.caption), "A caption");
    let kinds: Vec<RowKind> = table.rows.iter().map(|row| row.kind).collect();
    assert_eq!(kinds, [RowKind::Group, RowKind::Body, RowKind::Total]);
    assert_eq!(words(&table.rows[2].cells[0]), "Total");
    assert_eq!(table.columns[1].align, Align::Decimal);
}

#[test]
fn a_name_that_begins_with_an_equals_sign_is_no_total() {
    let written = blocks(
        "| Item | Cost |\n| :-- | --: |\n{% for colour in colours %}| {{ colour.name }} | 1 |\n{% endfor %}",
    );
    assert!(table(&written[0]).rows.iter().all(|row| row.kind == RowKind::Body));
}

#[test]
fn directives_stand_in_each_other() {
    let written = blocks(
        "````practice\nTry *it*\n\n1. Measure: `blank 40 the face`\n\n```caution flame\nKeep the flame away\n\nIt burns.\n```\n````\n",
    );
    let Block::Notice { kind: NoticeKind::Practice, heading, body } = &written[0] else {
        panic!("{written:?}")
    };
    assert_eq!(words(heading), "Try it");
    let Block::List { start: Some(1), items } = &body[0] else { panic!("{body:?}") };
    let Block::Paragraph(item) = &items[0][0] else { panic!("{items:?}") };
    assert_eq!(item[1], Inline::Blank { width_mm: 40.0, label: "the face".into() });
    assert!(matches!(body[1], Block::Notice { kind: NoticeKind::Caution(Sign::Flame), .. }));
}

#[test]
fn what_a_template_gets_wrong_is_said_with_what_would_be_right() {
    let cases = [
        ("```boxx\n```", "directives are aside, cards"),
        ("```picture nothing\n```", "there are canvas-1"),
        ("```caution fire\nHot\n```", "signs are flame, heat"),
        ("`blanc 40`", "inline marks are `blank`"),
        ("See `page mixng`, `anchor mixing`mixing.", "did you mean “mixing”?"),
        ("```index 2\nno bar\n```", "an entry is `what | place, place`"),
        ("```index\nswipe | a\n```", "from 1 to 4 columns"),
        ("[there](#nowhere)", "no heading or anchor is called “nowhere”"),
        ("`blank 4000 x`", "1 to 170 mm"),
        ("<b>bold</b>", "HTML is not understood"),
        ("{{ nobody }}", "nobody"),
        ("{% for x in canvases %}", "order.md"),
        ("{{ get_env(name=\"HOME\") }}", "cannot call"),
    ];
    for (template, expected) in cases {
        let message = match with_template(template) {
            Ok(document) => panic!("{template} was taken: {document:?}"),
            Err(fault) => format!("{}: {}", fault.template, fault.message),
        };
        assert!(message.contains(expected), "{template} gave: {message}");
    }
}

#[test]
fn an_index_leaves_out_what_is_not_there() {
    let made = blocks(
        "# One { #one }\n\n`anchor two`Two.\n\n```index 1\nfirst | one, gone\nsecond | two, one\n\n\
         *third* | gone\n```",
    );
    let Some(Block::Columns { count: 1, body, .. }) = made.last() else { panic!("{made:?}") };
    let page = |name: &str| Inline::PageOf(name.to_owned());
    let text = |words: &str| Inline::Text(words.to_owned());
    let entries = vec![
        text("first"),
        text(", "),
        page("one"),
        Inline::Break,
        text("second"),
        text(", "),
        page("two"),
        text(", "),
        page("one"),
    ];
    assert_eq!(body[..], [Block::Paragraph(entries)]);
}

#[test]
fn a_dictionary_may_replace_single_words() {
    let own = BTreeMap::from([("words.yaml".into(), "sheets: {order: What we need}".into())]);
    let templates = Templates::new(Language::English, &own).unwrap();
    let plan = plan_of(LESSON);
    let desk = Desk::new(&plan, &templates).unwrap();
    assert_eq!(desk.write(Sheet::Order).unwrap().title, "What we need: Pouring *stars*");
    assert_eq!(desk.write(Sheet::Cards).unwrap().title, "Mixing cards: Pouring *stars*");
    let wrong = BTreeMap::from([("words.yaml".into(), "sheets: {ordre: x}".into())]);
    let fault =
        Templates::new(Language::English, &wrong).err().expect("an unknown word is refused");
    assert!(fault.message.contains("ordre"), "{}", fault.message);
}

#[test]
fn named_students_get_a_sheet_each_and_a_number_gets_one_to_copy() {
    let templates = built_in();
    let mastheads = |text: &str| {
        let plan = plan_of(text);
        let sheet = Desk::new(&plan, &templates).unwrap().write(Sheet::Worksheet).unwrap();
        sheet
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Masthead { facts, .. } => Some(facts.clone()),
                _ => None,
            })
            .collect::<Vec<_>>()
    };
    assert_eq!(mastheads(LESSON).len(), 1);
    let named = mastheads(&LESSON.replace("students: 4", "students: [Ada, Bo, Cy]"));
    assert_eq!(named.len(), 3);
    let students: Vec<&str> = named
        .iter()
        .map(|facts| facts.iter().find(|fact| fact.label == "Student").unwrap().value.as_str())
        .collect();
    assert_eq!(students, ["Ada", "Bo", "Cy"]);
}

#[test]
fn the_worksheet_asks_what_the_answer_copy_answers() {
    let plan = plan_of(LESSON);
    let templates = built_in();
    let desk = Desk::new(&plan, &templates).unwrap();
    let steps = |sheet| {
        desk.write(sheet)
            .unwrap()
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Step { number, heading, .. } => Some((*number, words(heading))),
                _ => None,
            })
            .collect::<Vec<_>>()
    };
    let asked = steps(Sheet::Worksheet);
    assert!(asked.len() >= 8);
    assert_eq!(asked, steps(Sheet::Answers));
    assert!(asked.iter().zip(1..).all(|((number, _), expected)| *number == expected));
}

#[test]
fn pictures_say_in_words_what_they_show() {
    let plan = plan_of(LESSON);
    let templates = built_in();
    let desk = Desk::new(&plan, &templates).unwrap();
    let guide = desk.write(Sheet::Guide).unwrap();
    let pictures: Vec<_> = guide
        .blocks
        .iter()
        .filter_map(|block| match block {
            Block::Figure { picture, .. } => Some(picture),
            _ => None,
        })
        .collect();
    assert!(pictures.len() >= 3);
    let coverage = pictures
        .iter()
        .find(|picture| matches!(picture.kind, PictureKind::Coverage(_)))
        .expect("the guide has the coverage chart");
    // 120 in² by the rule of thumb, 1 fl oz for 25 in² (common practice, no source).
    assert!(coverage.alt.contains("120\u{202F}in² take 4.8\u{202F}fl\u{a0}oz"), "{}", coverage.alt);
}

/// What the guide of a lesson says, headings of its cautions included.
fn guide(lesson: &str) -> String {
    let plan = plan_of(lesson);
    let guide = Desk::new(&plan, &built_in()).unwrap().write(Sheet::Guide).unwrap();
    format!("{:?}", guide.blocks)
}

#[test]
fn the_guide_speaks_of_a_torch_where_the_lesson_has_one() {
    let plain = guide(LESSON);
    assert!(plain.contains("this class does without"));
    assert!(!plain.contains("Clear the table before a torch is lit"));
    let torch = guide(&format!("{LESSON}practices: [torch]\n"));
    assert_eq!(torch.matches("Clear the table before a torch is lit").count(), 2);
    let children = LESSON.replace("{students: 4}", "{students: 4, youngest age: 11}");
    let dryer = guide(&format!("{children}practices: [hair dryer]\n"));
    assert!(dryer.contains("An adult may pass"));
    assert!(!dryer.contains("pass a torch"), "children read nothing of it");
}

#[test]
fn the_guide_names_what_stands_under_a_canvas_in_this_class() {
    assert!(guide(LESSON).contains("Four push pins"));
    let none = guide(&format!("{LESSON}supplies: {{push pins: {{count: 0}}}}\n"));
    assert!(!none.contains("push pin"));
}

#[test]
fn a_polygon_is_as_large_as_the_lesson_says_it_is() {
    let hexagon = "shape: polygon, sides: 6, across flats: 6 in, depth: 0";
    let rectangle = "shape: rectangle, width: 10 in, height: 10 in, depth: 1/2 in";
    let text = guide(&LESSON.replace(rectangle, hexagon));
    assert!(text.contains(r"6\u{202f}in across flats"));
    let corners = LESSON.replace(rectangle, &hexagon.replace("flats", "corners"));
    assert!(guide(&corners).contains(r"6\u{202f}in across corners"));
}

#[test]
fn a_figure_is_an_amount_without_its_unit() {
    let written = blocks("{{ canvases[0].painted | figure }} and {{ canvases[0].paint }}");
    let expected = "120\u{a0}and 4.8\u{202F}fl\u{a0}oz";
    assert_eq!(written[0], Block::Paragraph(vec![Inline::Text(expected.into())]));
    assert!(with_template("{{ canvases | figure }}").is_err());
}

#[test]
fn the_order_as_csv_is_a_table_that_no_spreadsheet_runs() {
    let plan = plan_of(LESSON);
    let bytes = order_csv(&[Errand::of(&plan)], built_in().words()).unwrap();
    let text = String::from_utf8(bytes.clone()).unwrap();
    assert!(text.contains("\r\n"), "RFC 4180 ends lines with CRLF");
    let mut table = csv::Reader::from_reader(bytes.as_slice());
    let head = table.headers().unwrap().clone();
    let rows: Vec<csv::StringRecord> = table.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), plan.order.lines.len());
    let item = head.iter().position(|name| name == "item").unwrap();
    assert!(rows.iter().any(|row| &row[item] == "'=sum acrylic"));
    let cost = head.iter().position(|name| name == "cost").unwrap();
    let priced: Vec<&str> =
        rows.iter().map(|row| &row[cost]).filter(|cost| !cost.is_empty()).collect();
    assert_eq!(priced, ["5.49"]);
}

#[test]
fn every_canvas_lies_on_the_line_of_its_technique_in_the_consistency_of_each_layer() {
    for file in ["boathouse-evening", "kiln-yard-rounds", "youth-hexagons"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("lessons/{file}.yaml"));
        let lesson = lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"));
        let plan = plan::plan(lesson).unwrap();
        let templates = built_in();
        let guide = Desk::new(&plan, &templates).unwrap().write(Sheet::Guide).unwrap();
        let chart = guide
            .blocks
            .iter()
            .find_map(|block| match block {
                Block::Figure { picture, .. } => match &picture.kind {
                    PictureKind::Coverage(chart) => Some(chart),
                    _ => None,
                },
                _ => None,
            })
            .expect("the guide has the coverage chart");
        for mark in &chart.marks {
            let on = chart.lines.iter().filter(|line| {
                line.emphasis == Weight::Strong
                    && (line.slope[1] * mark.x - mark.y).abs() < 0.002 * mark.y
            });
            assert!(on.count() >= 1, "{file}: {} lies on no line", mark.label);
        }
    }
}

/// All words of a sheet, for a look at what stands on it.
fn lesson_sheet(text: &str) -> String {
    let plan = plan_of(text);
    let templates = built_in();
    format!("{:?}", Desk::new(&plan, &templates).unwrap().write(Sheet::Lesson).unwrap().blocks)
}

#[test]
fn a_lesson_sheet_does_without_a_timetable_and_a_room() {
    let text = lesson_sheet(LESSON);
    assert!(!text.contains("Timetable"));
    assert!(text.contains("of level surface") || text.contains("to dry on"));
    // 4 canvases of 10 x 10 in, 5 cm apart: 4 x 30.4 x 30.4 cm = 3696.64 cm2, 3.98 ft2.
    assert!(text.contains("lie level and 2\\u{202f}in apart on 4\\u{202f}ft²"), "{text}");
    assert!(text.contains("Nothing is moved for 3\\u{a0}days"));
    assert!(text.contains("Wear gloves"), "the notes of the lesson are said");
}

#[test]
fn a_lesson_sheet_says_whether_time_and_room_are_enough() {
    let with = |until: &str, surface: &str| {
        lesson_sheet(&format!(
            "{LESSON}timetable: {{start: 6:30 pm, booked until: {until}, steps: {{pouring: 2 h}}}}\n\
             room: {{level surface: {surface}, table: {{length: 6 ft, width: 30 in}}}}\n"
        ))
    };
    let enough = with("9:00 pm", "5 ft²");
    assert!(
        enough.contains("8:30\\u{a0}pm") && enough.contains("30\\u{a0}min to spare"),
        "{enough}"
    );
    // 5 - 3.98 ft² are to spare; rows of (182.88 + 5) / 30.4 = 6 canvases: one table.
    assert!(enough.contains("of the 5\\u{202f}ft² that there are"));
    assert!(enough.contains("they would take 1."));
    let too_little = with("8:20 pm", "3 ft²");
    assert!(too_little.contains("10\\u{a0}min after the booking"), "{too_little}");
    assert!(too_little.contains("1\\u{202f}ft² more than the 3\\u{202f}ft²"), "{too_little}");
    assert!(with("8:30 pm", "5 ft²").contains("just what is booked"));
}

#[test]
fn a_lesson_sheet_is_two_pages_at_most_and_one_of_money() {
    let templates = built_in();
    let faces = puddlebook::ink::Faces::new();
    for file in ["boathouse-evening", "kiln-yard-rounds", "youth-hexagons"] {
        for paper in [lesson::Paper::A4, lesson::Paper::Letter] {
            let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("lessons/{file}.yaml"));
            let mut lesson = lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"));
            lesson.print.paper = paper;
            let plan = plan::plan(lesson).unwrap();
            let mut sheet = Desk::new(&plan, &templates).unwrap().write(Sheet::Lesson).unwrap();
            let money = sheet.blocks.iter().position(|block| matches!(block, Block::PageBreak));
            let money = sheet.blocks.split_off(money.unwrap());
            for blocks in [(sheet.blocks.clone(), 2), (money[1..].to_vec(), 1)] {
                let (blocks, most) = blocks;
                let pages =
                    puddlebook::page::lay_out(&Document { blocks, ..sheet.clone() }, &faces);
                assert!(pages.pages.len() <= most, "{file} on {paper:?}");
            }
        }
    }
}
