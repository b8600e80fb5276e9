//! The handouts of the demo lessons, made once and read back once for all tests.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use puddlebook::handout::{Desk, Document, Sheet, Templates, course_order, measured};
use puddlebook::ink::Faces;
use puddlebook::lesson::{self, Edition, Language, Lesson, Paper, read_weighings};
use puddlebook::page::{Pages, lay_out};
use puddlebook::pdf::write;
use puddlebook::plan;

use crate::lesson_tools::files_in;
use crate::pdf_file::ReadFile;

/// A handout: what it was to say, and what a reader program makes of its file.
pub struct Handout {
    pub name: String,
    pub document: Document,
    pub file: ReadFile,
}

impl Handout {
    /// The document of a handout, laid out and written.
    pub fn bytes(document: &Document, faces: &Faces) -> Vec<u8> {
        Self::bytes_with(document, faces, |_| ())
    }

    /// The same with something changed on its pages before they are written.
    pub fn bytes_with(
        document: &Document,
        faces: &Faces,
        change: impl FnOnce(&mut Pages),
    ) -> Vec<u8> {
        let mut pages = lay_out(document, faces);
        change(&mut pages);
        write(&pages, faces).unwrap()
    }
}

/// Both papers and both editions are among them.
const PRINTS: [(Paper, Edition); 2] =
    [(Paper::A4, Edition::Standard), (Paper::Letter, Edition::LargePrint)];

/// Every handout of every demo lesson, the order of several together and the page of what
/// weighing taught, in each print.
pub fn all() -> &'static [Handout] {
    static ALL: OnceLock<Vec<Handout>> = OnceLock::new();
    ALL.get_or_init(|| {
        let faces = Faces::new();
        let documents = PRINTS.into_iter().flat_map(|(paper, edition)| documents(paper, edition));
        documents
            .map(|(name, document)| {
                let file = ReadFile::new(&Handout::bytes(&document, &faces));
                Handout { name, document, file }
            })
            .collect()
    })
}

fn documents(paper: Paper, edition: Edition) -> Vec<(String, Document)> {
    let words = |language| Templates::new(language, &BTreeMap::new()).unwrap();
    let templates = words(Language::English);
    let mut documents = Vec::new();
    let mut lessons: Vec<Lesson> = Vec::new();
    for file in files_in("lessons", "yaml") {
        let mut lesson = lesson::read(&file).unwrap_or_else(|faults| panic!("{faults}"));
        (lesson.print.paper, lesson.print.edition) = (paper, edition);
        lessons.push(lesson.clone());
        let plan = plan::plan(lesson).unwrap();
        let templates = words(plan.lesson.print.language);
        let desk = Desk::new(&plan, &templates).unwrap();
        let lesson = file.file_stem().unwrap().to_string_lossy();
        for sheet in Sheet::ALL {
            documents.push((format!("{lesson}/{}", sheet.word()), desk.write(sheet).unwrap()));
        }
    }
    let print = lessons[0].print;
    lessons.retain(|lesson| lesson.print.currency == print.currency);
    let course = plan::course(lessons, &[]).unwrap();
    documents.push(("order".to_owned(), course_order(&course, &templates).unwrap().unwrap()));
    let mut weighings = files_in("lessons/weighed", "yaml");
    weighings.extend(files_in("lessons/weighed", "csv"));
    let weighings = read_weighings(&weighings).unwrap_or_else(|faults| panic!("{faults}"));
    let learned = plan::learn::learn(&weighings.classes).unwrap();
    documents.push(("measured".to_owned(), measured(&learned, print, &templates).unwrap()));
    let named = |(name, document)| (format!("{name} on {paper:?}"), document);
    documents.into_iter().map(named).collect()
}

/// One of them.
pub fn named(name: &str) -> &'static Handout {
    all().iter().find(|handout| handout.name == name).unwrap_or_else(|| panic!("no {name}"))
}
