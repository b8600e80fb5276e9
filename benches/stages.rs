//! The whole `make` of a demo lesson in process, and each stage of it.
//!
//! `cargo bench` prints the times; look at ratios of one run, machines differ.

#![allow(clippy::panic)]

use divan::{Bencher, black_box};
use puddlebook::handout::{Desk, Document, Sheet, Templates};
use puddlebook::ink::Faces;
use puddlebook::lesson::{self, Language, Lesson};
use puddlebook::page::{self, Pages};
use puddlebook::{pdf, plan};
use std::collections::BTreeMap;
use std::path::Path;

fn main() {
    divan::main();
}

const LESSON: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/lessons/boathouse-evening.yaml");

fn lesson() -> Lesson {
    lesson::read(Path::new(LESSON)).unwrap_or_else(|faults| panic!("{faults}"))
}

fn templates() -> Templates {
    Templates::new(Language::English, &BTreeMap::new()).unwrap_or_else(|fault| panic!("{fault:?}"))
}

fn documents(lesson: Lesson, templates: &Templates) -> Vec<Document> {
    let plan = plan::plan(lesson).unwrap_or_else(|reason| panic!("{reason}"));
    let desk = Desk::new(&plan, templates).unwrap_or_else(|fault| panic!("{fault:?}"));
    Sheet::ALL
        .into_iter()
        .map(|sheet| desk.write(sheet).unwrap_or_else(|fault| panic!("{fault:?}")))
        .collect()
}

fn laid_out(documents: &[Document], faces: &Faces) -> Vec<Pages> {
    documents.iter().map(|document| page::lay_out(document, faces)).collect()
}

/// From the file to all PDFs in memory, nothing warm.
#[divan::bench]
fn whole_make() -> usize {
    let faces = Faces::new();
    let documents = documents(lesson(), &templates());
    laid_out(&documents, &faces)
        .iter()
        .map(|pages| pdf::write(pages, &faces).map_or(0, |bytes| bytes.len()))
        .sum()
}

#[divan::bench]
fn read_lesson() -> Lesson {
    lesson()
}

#[divan::bench]
fn read_templates() -> Templates {
    templates()
}

#[divan::bench]
fn work_out(bencher: Bencher) {
    bencher.with_inputs(lesson).bench_values(|lesson| plan::plan(lesson).is_ok());
}

#[divan::bench]
fn write_up(bencher: Bencher) {
    let templates = templates();
    bencher.with_inputs(lesson).bench_values(|lesson| documents(lesson, &templates));
}

/// With the words shaped before and without.
#[divan::bench]
fn lay_out_cold(bencher: Bencher) {
    let documents = documents(lesson(), &templates());
    bencher.bench(|| laid_out(&documents, &Faces::new()));
}

#[divan::bench]
fn lay_out_warm(bencher: Bencher) {
    let documents = documents(lesson(), &templates());
    let faces = Faces::new();
    laid_out(&documents, &faces);
    bencher.bench(|| laid_out(black_box(&documents), &faces));
}

#[divan::bench]
fn write_pdf(bencher: Bencher) {
    let faces = Faces::new();
    let pages = laid_out(&documents(lesson(), &templates()), &faces);
    bencher
        .bench(|| pages.iter().map(|pages| pdf::write(pages, &faces).is_ok()).collect::<Vec<_>>());
}

/// Cost must grow with the pages: the guide once, twice, four and eight times over.
#[divan::bench(args = [1, 2, 4, 8])]
fn guide_times(bencher: Bencher, times: usize) {
    let faces = Faces::new();
    let mut guide = documents(lesson(), &templates()).pop().unwrap_or_else(|| panic!("no guide"));
    guide.blocks = std::iter::repeat_n(guide.blocks, times).flatten().collect();
    bencher.bench(|| {
        let pages = page::lay_out(&guide, &faces);
        pdf::write(&pages, &faces).map_or(0, |bytes| bytes.len())
    });
}
