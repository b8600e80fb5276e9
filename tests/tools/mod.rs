//! Tools to print and use, read back from the shapes on the pages.

mod cutting;
mod labels;
mod nomogram;
mod spread;
mod table;
mod true_size;

use puddlebook::handout::{Block, Desk, Document, Inline, Picture, Sheet, Templates};
use puddlebook::ink::{Faces, PathSegment, Point, Shape, Stroke};
use puddlebook::lesson::{self, Edition, Paper};
use puddlebook::page::{Page, Pages, Role, TagKind, lay_out};
use puddlebook::plan::{self, Plan};
use puddlebook::quantity::UnitSystem;
use std::collections::BTreeMap;
use std::path::Path;

/// Points in a millimetre (ISO 32000-1, Table 30: a unit is 1/72 in).
const MM: f32 = 72.0 / 25.4;

pub const DEMOS: [&str; 4] =
    ["boathouse-evening", "boathouse-autumn", "kiln-yard-rounds", "youth-hexagons"];

fn planned(file: &str, units: UnitSystem, paper: Paper, edition: Edition) -> Plan {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("lessons/{file}.yaml"));
    let mut lesson = lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"));
    (lesson.print.units, lesson.print.paper, lesson.print.edition) = (units, paper, edition);
    plan::plan(lesson).unwrap()
}

fn written(plan: &Plan, sheet: Sheet) -> Document {
    let templates = Templates::new(plan.lesson.print.language, &BTreeMap::new()).unwrap();
    Desk::new(plan, &templates).unwrap().write(sheet).unwrap()
}

/// Tools or cards of a lesson on every paper, in every edition and both systems of units.
fn everywhere(file: &str, sheet: Sheet) -> Vec<(Plan, Document, Pages)> {
    let faces = Faces::new();
    let mut all = Vec::new();
    for units in [UnitSystem::Us, UnitSystem::Metric] {
        for paper in [Paper::A4, Paper::Letter] {
            for edition in [Edition::Standard, Edition::LargePrint] {
                let plan = planned(file, units, paper, edition);
                let document = written(&plan, sheet);
                let pages = lay_out(&document, &faces);
                all.push((plan, document, pages));
            }
        }
    }
    all
}

fn pictures(document: &Document) -> Vec<&Picture> {
    let figures = document.blocks.iter().filter_map(|block| match block {
        Block::Figure { picture, .. } => Some(picture),
        _ => None,
    });
    figures.collect()
}

fn words(inlines: &[Inline]) -> String {
    let text = |inline: &Inline| match inline {
        Inline::Text(text) => text.clone(),
        Inline::Emphasis(inner) | Inline::Strong(inner) => words(inner),
        _ => String::new(),
    };
    inlines.iter().map(text).collect()
}

/// The shapes of the figures of a page whose alternative text begins so.
fn figures<'p>(pages: &'p Pages, page: &'p Page, alt: &str) -> Vec<&'p Shape> {
    let of_it = |role: Role| match role {
        Role::Content(tag) => {
            let tag = &pages.tags[tag.0];
            tag.kind == TagKind::Figure && tag.alt.as_ref().unwrap().starts_with(alt)
        }
        _ => false,
    };
    let marks = page.marks.iter().filter(|mark| of_it(mark.role));
    marks.map(|mark| &mark.shape).collect()
}

/// The one page that has such a figure, with its shapes.
fn page_of<'p>(pages: &'p Pages, alt: &str) -> (usize, Vec<&'p Shape>) {
    let found = pages.pages.iter().map(|page| figures(pages, page, alt)).enumerate();
    let found: Vec<_> = found.filter(|(_, shapes)| !shapes.is_empty()).collect();
    let [(page, shapes)] = &found[..] else { panic!("{alt}: on {} pages", found.len()) };
    (*page, shapes.clone())
}

/// Straight lines with their strokes.
fn lines(shapes: &[&Shape]) -> Vec<(Point, Point, Stroke)> {
    let straight = |shape: &&Shape| match shape {
        Shape::Path { segments, fill: None, stroke: Some(stroke) } => match segments[..] {
            [PathSegment::Move(from), PathSegment::Line(to)] => Some((from, to, *stroke)),
            _ => None,
        },
        _ => None,
    };
    shapes.iter().filter_map(straight).collect()
}
