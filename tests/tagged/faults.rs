//! Every check refuses a handout with a fault put into its file, or into its pages before they
//! are written.

use lopdf::{Object, dictionary};
use puddlebook::handout::{Block, PictureKind};
use puddlebook::ink::{Faces, Shape};
use puddlebook::page::{Mark, Pages, Role, TagId};

use super::broken::Broken;
use super::handouts::{Handout, all, named};
use super::{Check, about, artifacts, figures, glyphs, marked, order, paper, tables};
use crate::pdf_file::ReadFile;

/// Puts a fault somewhere; the check that has to find it; words of what that says.
type Fault<Where> = (fn(&mut Where), Check, &'static str);

const WIDTHS: Check = |handout| glyphs::widths(&handout.file);
const TEXTS: Check = |handout| glyphs::texts(&handout.file);
const DRAWING: Check = |handout| marked::drawing(&handout.file);
const PARENTS: Check = |handout| marked::parents(&handout.file);

/// Two pages with tables, a chart and boxes to tick; and the one with notes, links and contents.
const ORDER: &str = "boathouse-evening/order on A4";
const GUIDE: &str = "boathouse-evening/guide on A4";

fn refuse(good: &Handout, bytes: &[u8], check: Check, says: &str) {
    assert_eq!(check(good), Ok(()));
    let (name, document) = (good.name.clone(), good.document.clone());
    let bad = Handout { name, document, file: ReadFile::new(bytes) };
    let fault = check(&bad).expect_err(says);
    assert!(fault.contains(says), "{fault:?} does not say {says:?}");
}

fn in_file(name: &str, faults: &[Fault<Broken>]) {
    let good = named(name);
    let bytes = Handout::bytes(&good.document, &Faces::new());
    for (put, check, says) in faults {
        let mut broken = Broken::open(&bytes);
        put(&mut broken);
        refuse(good, &broken.bytes(), *check, says);
    }
}

fn on_pages(name: &str, faults: &[Fault<Pages>]) {
    let (good, faces) = (named(name), Faces::new());
    for (put, check, says) in faults {
        refuse(good, &Handout::bytes_with(&good.document, &faces, put), *check, says);
    }
}

fn array(object: &mut Object) -> &mut Vec<Object> {
    object.as_array_mut().unwrap()
}

#[test]
fn a_wrong_width_or_text_of_a_glyph_is_found() {
    in_file(
        ORDER,
        &[
            (|file| array(&mut file.widths()[1])[0] = 17.into(), WIDTHS, "wide, not 17"),
            (|file| _ = array(file.widths().last_mut().unwrap()).pop(), WIDTHS, "has no width"),
            (Broken::forget_text, TEXTS, "glyph 1 of"),
        ],
    );
}

#[test]
fn a_parent_tree_that_leads_elsewhere_is_found() {
    in_file(
        ORDER,
        &[
            (|file| array(&mut file.parents()[1]).swap(0, 1), PARENTS, "hangs from"),
            (|file| array(&mut file.parents()[1])[2] = Object::Null, PARENTS, "not from None"),
            (|file| _ = array(&mut file.parents()[1]).pop(), PARENTS, "the parent tree has"),
            (|file| file.parents().swap(1, 3), PARENTS, "the parent tree has"),
            (|file| file.parents().truncate(2), PARENTS, "the parent tree has no"),
            (|file| file.page(1).set("StructParents", 0), PARENTS, "the parent tree has"),
            (|file| _ = file.element("H1").remove(b"K"), PARENTS, "hangs from None"),
            (|file| file.element("H2").set("K", 0), PARENTS, "hangs from two elements"),
            (|file| file.element("Form").set("S", "P"), PARENTS, "hangs from P"),
            (
                |file| {
                    let table = file.element("Table").get(b"P").unwrap().clone();
                    file.element("TR").set("P", table);
                },
                PARENTS,
                "says that it hangs from another element",
            ),
        ],
    );
    // Links come after the pages.
    let swapped: fn(&mut Broken) = |file| {
        let parents = file.parents();
        let (first, last) =
            (parents.iter().position(|it| it.as_reference().is_ok()), parents.len());
        parents.swap(first.unwrap(), last - 1);
    };
    in_file(GUIDE, &[(swapped, PARENTS, "a link or field of page")]);
}

#[test]
fn marks_that_are_missing_or_doubled_are_found() {
    let twice: fn(&mut Broken) = |file| {
        file.drawing(|operations| {
            let marks = operations.iter_mut().filter(|it| it.operator == "BDC");
            let numbered = marks.filter_map(|it| it.operands[1].as_dict_mut().ok());
            numbered.filter(|it| it.has(b"MCID")).take(2).for_each(|it| it.set("MCID", 0));
        });
    };
    // The mark of decoration goes, with the end of it.
    let bare: fn(&mut Broken) = |file| {
        file.drawing(|operations| {
            let from = operations.iter().position(|it| it.operator == "BMC").unwrap();
            let length = operations[from..].iter().position(|it| it.operator == "EMC").unwrap();
            operations.remove(from + length);
            operations.remove(from);
        });
    };
    in_file(
        ORDER,
        &[
            (twice, PARENTS, "draws [0, 0, 2"),
            (bare, DRAWING, "outside of marked content"),
            (|file| file.element("Figure").set("S", "P"), DRAWING, "has lines in it"),
            (|file| file.element("H1").set("S", "H2"), DRAWING, "H1 on page"),
        ],
    );
}

#[test]
fn broken_tables_are_found() {
    in_file(
        ORDER,
        &[
            (|file| _ = file.kids("TR", 3).pop(), tables::cells, "has the row"),
            (|file| file.kids("TR", 3).swap(0, 1), tables::cells, "has the row"),
            (|file| _ = file.kids("Table", 4).pop(), tables::cells, "rows of"),
            (|file| file.element("TR").set("S", "P"), tables::cells, "no part of a table"),
            (Broken::split_table, tables::cells, "tables of"),
            (|file| _ = file.element("TH").remove(b"A"), tables::headings, "nothing"),
            (|file| file.element("TH").set("S", "TD"), tables::headings, "the first row heads"),
            (
                |file| {
                    let scope = dictionary! { "O" => "Table", "Scope" => "Column" };
                    file.elements("TH").for_each(|head| head.set("A", scope.clone()));
                },
                tables::headings,
                "cells that head",
            ),
        ],
    );
}

#[test]
fn figures_without_their_words_are_found() {
    let drawn: fn(&mut Broken) = |file| _ = file.element("Figure").remove(b"K");
    let vague: fn(&mut Broken) = |file| *longest_alt(file) = b"A chart.".to_vec();
    in_file(
        ORDER,
        &[
            (|file| _ = file.element("Figure").remove(b"Alt"), figures::described, "without words"),
            (drawn, figures::described, "nothing is drawn"),
            (|file| _ = file.field().remove(b"TU"), figures::described, "field without words"),
            (vague, figures::described, "the figures are"),
            (vague, figures::numbers_written, "of the label"),
        ],
    );
}

/// The words of the chart.
fn longest_alt(file: &mut Broken) -> &mut Vec<u8> {
    let alts = file.elements("Figure").filter_map(|figure| match figure.get_mut(b"Alt") {
        Ok(Object::String(words, _)) => Some(words),
        _ => None,
    });
    alts.max_by_key(|words| words.len()).unwrap()
}

#[test]
fn data_that_the_words_of_a_chart_lack_is_found() {
    let mut charts = 0;
    for good in all().iter().filter(|handout| handout.name.ends_with("A4")) {
        for at in 0..good.document.blocks.len() {
            let mut document = good.document.clone();
            let Block::Figure { picture, .. } = &mut document.blocks[at] else { continue };
            if matches!(picture.kind, PictureKind::Unfolded(_)) {
                continue;
            }
            // Every number is another, and as long; sketches have words.
            let sketched = matches!(picture.kind, PictureKind::Sketch(_));
            let other = |c: char| match c.to_digit(10) {
                _ if sketched => {
                    if c == 'e' {
                        'o'
                    } else {
                        c
                    }
                }
                Some(digit) => char::from(b'9' - digit as u8),
                None => c,
            };
            picture.alt = picture.alt.chars().map(other).collect();
            assert!(figures::data(&document).is_err(), "{}: {}", good.name, document.title);
            charts += 1;
        }
    }
    assert!(charts >= 12, "{charts} charts");
}

#[test]
fn words_lost_or_out_of_order_are_found() {
    in_file(
        ORDER,
        &[
            (|file| file.kids("Document", 9).swap(3, 4), order::words, "instead of"),
            (|file| file.kids("Document", 9).swap(3, 4), order::stream, "is drawn before"),
            (|file| _ = file.kids("Document", 9).pop(), order::words, "pieces are heard"),
            (
                |file| {
                    file.drawing(|operations| {
                        let shows = |operator: &str| ["TJ", "Tj", "'", "\""].contains(&operator);
                        let at = operations.iter().rposition(|it| shows(&it.operator));
                        operations.remove(at.unwrap());
                    });
                },
                artifacts::furniture,
                "the numbers of page 0",
            ),
        ],
    );
}

/// Marks of text that is heard on the first page.
fn heard(pages: &mut Pages) -> Vec<&mut Mark> {
    let marks = pages.pages[0].marks.iter_mut();
    marks.filter(|it| matches!((&it.shape, it.role), (Shape::Text(_), Role::Content(_)))).collect()
}

fn exchange(pages: &mut Pages, one: usize, other: usize) {
    let mut heard = heard(pages);
    let place = |mark: &Mark| match &mark.shape {
        Shape::Text(run) => run.origin,
        Shape::Path { .. } => panic!("no text"),
    };
    let places = [place(heard[one]), place(heard[other])];
    for (at, place) in [(other, places[0]), (one, places[1])] {
        if let Shape::Text(run) = &mut heard[at].shape {
            run.origin = place;
        }
    }
}

#[test]
fn what_stands_elsewhere_on_paper_is_found() {
    let glued: fn(&mut Pages) = |pages| {
        for mark in heard(pages) {
            if let Shape::Text(run) = &mut mark.shape {
                let text = run.text.clone();
                let spaces = run.glyphs.iter_mut().filter(|it| it.slice(&text) == Some(" "));
                spaces.for_each(|space| space.advance = 0.0);
            }
        }
    };
    on_pages(
        ORDER,
        &[
            (|pages| exchange(pages, 0, 1), paper::order, "is heard later"),
            (|pages| exchange(pages, 20, 21), paper::order, "is heard later"),
            (glued, paper::gaps, "is heard as"),
        ],
    );
}

#[test]
fn furniture_that_is_heard_and_words_that_are_not_are_found() {
    on_pages(
        ORDER,
        &[
            (|pages| heard(pages)[2].role = Role::Artifact, artifacts::known, "is not heard"),
            (
                |pages| {
                    let marks = pages.pages[1].marks.iter_mut();
                    marks.for_each(|mark| mark.role = Role::Content(TagId(1)));
                },
                artifacts::furniture,
                "the numbers of page 1",
            ),
            (|pages| _ = pages.pages[1].marks.remove(0), artifacts::furniture, "has no header"),
        ],
    );
}

#[test]
fn files_that_do_not_say_what_they_are_are_found() {
    let says = about::says_what_it_is;
    in_file(
        ORDER,
        &[
            (|file| _ = file.catalog().remove(b"Lang"), says, "language"),
            (|file| _ = file.catalog().remove(b"ViewerPreferences"), says, "ViewerPreferences"),
            (|file| _ = file.catalog().remove(b"MarkInfo"), says, "MarkInfo"),
            (|file| _ = file.page(1).remove(b"Tabs"), says, "tab order"),
            (|file| file.metadata("pdfuaid:part", "pdfuaid:amd"), says, "pdfuaid"),
            (|file| file.metadata("x-default\">", "x-default\">A "), says, "x-default"),
        ],
    );
}
