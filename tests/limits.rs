//! The bounds of lessons, tables and handouts: what is just inside is taken, what is just outside
//! is answered with the bound.

use crate::lesson_tools::{SMALL, read_files, read_text, small_with};
use puddlebook::handout::{Desk, Sheet, Templates};
use puddlebook::ink::Faces;
use puddlebook::lesson::{
    Faults, Language, Lesson, ProblemKind, Style, Unread, read_weighings_with,
};
use puddlebook::pdf::PdfError;
use puddlebook::plan::plan;
use puddlebook::{page, pdf};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

fn taken(read: Result<Lesson, Faults>) {
    read.unwrap_or_else(|faults| panic!("{faults}"));
}

/// Refused with these words, once.
fn refused(read: Result<Lesson, Faults>, words: &[&str]) {
    let faults = read.err().unwrap_or_else(|| panic!("taken, instead of {words:?}"));
    let said = faults.render(Style::Plain);
    assert!(words.iter().all(|words| said.contains(words)), "{words:?} in\n{said}");
    assert_eq!(faults.problems().len(), 1, "{said}");
}

/// So many pieces in a row.
fn many(count: usize, piece: impl Fn(usize) -> String) -> String {
    (0..count).map(piece).collect()
}

#[test]
fn files_up_to_a_megabyte() {
    let filled = |size: usize| format!("{SMALL}{}", "#".repeat(size - SMALL.len()));
    taken(read_text(&filled(1024 * 1024)));
    refused(read_text(&filled(1024 * 1024 + 1)), &["it is too large", "up to 1024 kB"]);
}

#[test]
fn data_files_up_to_fifty() {
    let with = |count: usize| {
        let names = many(count, |at| format!("d{at}.yaml, "));
        let lesson = format!("{SMALL}use: [{names}]\n");
        let files: Vec<_> = (0..count).map(|at| format!("d{at}.yaml")).collect();
        let mut all = vec![("lesson.yaml", lesson.as_bytes())];
        all.extend(files.iter().map(|name| (name.as_str(), &b"stock: {}"[..])));
        read_files(&all)
    };
    taken(with(50));
    refused(with(51), &["too many data files", "up to 50"]);
}

#[test]
fn entries_in_each_other_up_to_32_levels() {
    let deep = |levels: usize| {
        let (open, shut) = ("{a: ".repeat(levels - 2), "}".repeat(levels - 2));
        read_text(&format!("{SMALL}stock: {{x: {open}1{shut}}}\n"))
    };
    // It is no stock, but it is read.
    let said = deep(32).unwrap_err().to_string();
    assert!(!said.contains("too many times over"), "{said}");
    let said = deep(33).unwrap_err().to_string();
    assert!(said.contains("too many times over") && said.contains("up to 32 levels"), "{said}");
}

#[test]
fn values_up_to_200_000_with_copies_counted() {
    // Twice ten copies of as many copies of a list.
    let aliases = |times: usize| {
        let list = many(1_000, |_| "1, ".to_owned());
        let copies = "*a, ".repeat(times);
        read_text(&format!("{SMALL}notes: [&a [{list}], {copies}]\n")).unwrap_err().to_string()
    };
    assert!(!aliases(150).contains("more than a lesson can hold"));
    let said = aliases(250);
    assert!(
        said.contains("more than a lesson can hold") && said.contains("up to 200000"),
        "{said}"
    );
}

#[test]
fn a_hundred_problems_at_once() {
    let wrong =
        |count: usize| read_text(&format!("{SMALL}{}", many(count, |at| format!("k{at}: 1\n"))));
    let faults = wrong(99).unwrap_err();
    assert_eq!(faults.problems().len(), 99);
    assert!(!faults.to_string().contains("Only the first"));
    let faults = wrong(5_000).unwrap_err();
    assert_eq!(faults.problems().len(), 100);
    assert!(faults.to_string().contains("Only the first 100 problems"));
}

#[test]
fn names_up_to_80_letters_and_texts_up_to_1000() {
    let named = |letters: usize| {
        let name = "é".repeat(letters);
        read_text(&SMALL.replace("  square:", &format!("  {name}:")))
    };
    taken(named(80));
    refused(named(81), &["this key is too long", "up to 80"]);
    taken(small_with("A small class", &"é".repeat(1_000)));
    refused(small_with("A small class", &"é".repeat(1_001)), &["1000"]);
}

#[test]
fn students_up_to_a_thousand() {
    taken(small_with("students: 2", "students: 1000"));
    refused(small_with("students: 2", "students: 1001"), &["1 to 1000"]);
    refused(small_with("students: 2", "students: 0"), &["1 to 1000"]);
    refused(small_with("students: 2", "students: 99999999999999999999"), &["too large"]);
    let named = |count| {
        small_with(
            "{students: 2}",
            &format!("{{students: [{}]}}", many(count, |at| format!("Ana {at}, "))),
        )
    };
    taken(named(1_000));
    refused(named(1_001), &["too many students", "up to 1000"]);
    for key in ["demonstrations", "spares"] {
        taken(small_with("students: 2", &format!("students: 2, {key}: 100")));
        refused(small_with("students: 2", &format!("students: 2, {key}: 101")), &["0 to 100"]);
    }
}

#[test]
fn cups_of_a_class_up_to_ten_thousand() {
    let each = |students: u32, each: u32| {
        let text = SMALL.replace("students: 2", &format!("students: {students}"));
        read_text(
            &text.replace("    palette: plain", &format!("    palette: plain\n    each: {each}")),
        )
    };
    // Two colours each.
    taken(each(50, 100));
    refused(each(51, 100), &["this class would fill 10200 cups", "up to 10000", "several lessons"]);
    refused(each(1_000, 100), &["200000 cups"]);
    refused(each(2, 101), &["1 to 100"]);
}

#[test]
fn worksheets_with_names_up_to_three_thousand() {
    let kinds = |names: usize, kinds: usize| {
        let square = SMALL.split("  square:").nth(1).unwrap().split("palettes:").next().unwrap();
        let canvases = many(kinds, |at| format!("  c{at}:{square}"));
        let (head, rest) = SMALL.split_once("canvases:\n").unwrap();
        let head = head.replace(
            "students: 2",
            &format!("students: [{}]", many(names, |at| format!("N{at}, "))),
        );
        read_text(&format!(
            "{head}canvases:\n{canvases}palettes:{}",
            rest.split_once("palettes:").unwrap().1
        ))
    };
    taken(kinds(1_000, 3));
    refused(kinds(751, 4), &["these names would make 3004 worksheets", "up to 3000"]);
    taken(kinds(2, 40));
    refused(kinds(2, 41), &["too many kinds of canvas", "up to 40"]);
}

#[test]
fn colours_in_a_layer_up_to_40() {
    let colours = |count: usize| {
        let shares =
            many(count, |at| format!("c{at}: {}, ", if at == 0 { "the rest" } else { "1 %" }));
        let paints = many(count, |at| format!("  c{at}: {{swatch: \"#102030\"}}\n"));
        let text = SMALL.replace("{blue: 40 %, white: the rest}", &format!("{{{shares}}}"));
        read_text(&format!("{text}{paints}"))
    };
    taken(colours(40));
    refused(colours(41), &["too many colours in one layer", "up to 40"]);
}

#[test]
fn lists_of_a_lesson_have_an_end() {
    let shops = |count: usize| {
        let shop = |at| {
            format!(
                "  Shop {at} (invented):\n    currency: USD\n    packs: [{{item: blue acrylic, size: 8 fl oz, price: 1}}]\n"
            )
        };
        read_text(&format!("{SMALL}shops:\n{}", many(count, shop)))
    };
    taken(shops(12));
    refused(shops(13), &["12"]);
    let sizes = |count: usize| {
        let size = |at| format!("    - {{width: {} in, height: 10 in}}\n", at + 1);
        read_text(&format!("{SMALL}sizes:\n  us:\n{}", many(count, size)))
    };
    taken(sizes(40));
    refused(sizes(41), &["40"]);
    let steps = |count: usize| {
        let steps = many(count, |at| format!("    step {at}: 1 min\n"));
        read_text(&format!("{SMALL}timetable:\n  start: 9:00\n  steps:\n{steps}"))
    };
    taken(steps(40));
    refused(steps(41), &["40"]);
    taken(read_text(&format!("{SMALL}exercises: 12\n")));
    refused(read_text(&format!("{SMALL}exercises: 13\n")), &["1 to 12"]);
}

#[test]
fn sizes_from_a_tile_to_a_wall() {
    for (inside, outside) in [("10 mm", "9 mm"), ("5 m", "5001 mm"), ("5 m", "1e300 m")] {
        let sized = |width: &str| {
            read_text(
                &SMALL
                    .replace("width: 10 in", &format!("width: {width}"))
                    .replace("depth: 1/2 in", "depth: 0"),
            )
        };
        taken(sized(inside));
        assert!(sized(outside).is_err(), "{outside}");
    }
    let digits = format!("{} in", "9".repeat(100_000));
    let said = small_with("10 in", &digits).unwrap_err().to_string();
    assert!(said.len() < 5_000, "nobody reads {} letters", said.len());
}

/// An order of so many pages, laid out.
fn pages(count: usize) -> page::Pages {
    let text = format!("a\n\n{}", "```page-break\n```\n\na\n\n".repeat(count - 1));
    let own = BTreeMap::from([("order.md".to_owned(), text)]);
    let templates = Templates::new(Language::English, &own).unwrap();
    let plan = plan(read_text(SMALL).unwrap()).unwrap();
    let document = Desk::new(&plan, &templates).unwrap().write(Sheet::Order).unwrap();
    page::lay_out(&document, &Faces::new())
}

#[test]
fn pages_of_a_handout_up_to_ten_thousand() {
    let most = page::MOST_PAGES;
    assert_eq!(pages(most).pages.len(), most);
    let more = pages(most + 500);
    assert_eq!(more.pages.len(), most + 1, "cut off");
    assert_eq!(pdf::write(&more, &Faces::new()), Err(PdfError::TooManyPages));
    assert!(PdfError::TooManyPages.to_string().contains("more than 10000 pages"));
}

const COLUMNS: &str = "lesson,date,student,canvas,piece,colour,before,after,scale\n";

/// A table of the small lesson, in which student 1 has so many sets of canvases.
fn table(rows: &str) -> Result<usize, Faults> {
    let lesson = SMALL.replace("    palette: plain", "    palette: plain\n    each: 100");
    let lesson = lesson.replace("students: 2", "students: 50");
    let load = |path: &Path| match path.to_str() {
        Some("cups.csv") => Ok(format!("{COLUMNS}{rows}").into_bytes()),
        Some("small.yaml") => Ok(lesson.clone().into_bytes()),
        _ => Err(Unread::NotFound),
    };
    let weighings = read_weighings_with(&[PathBuf::from("cups.csv")], &load)?;
    Ok(weighings.classes.iter().map(|class| class.cups.len()).sum())
}

#[test]
fn a_table_of_the_largest_class_is_read() {
    let row = |at: usize| {
        let (student, piece) = (at / 200 + 1, at / 2 % 100 + 1);
        let colour = if at.is_multiple_of(2) { "blue" } else { "white" };
        format!("small.yaml,2026-04-11,{student},square,{piece},{colour},50,5,1 g\n")
    };
    assert_eq!(table(&many(10_000, row)).unwrap_or_else(|faults| panic!("{faults}")), 10_000);
    let said = table(&many(60_000, row)).unwrap_err().to_string();
    assert!(said.contains("these tables have too many rows"), "{said}");
    let large = table(&"#".repeat(8 * 1024 * 1024)).unwrap_err();
    let is_large = |problem: &puddlebook::lesson::Problem| {
        matches!(problem.kind, ProblemKind::WeighingsUnread { why: Unread::TooLarge, .. })
    };
    assert!(large.problems().iter().any(is_large), "{large}");
}
