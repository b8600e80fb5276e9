//! The weighings of classes: cups before and after pouring.
//!
//! In: files of weighings, in YAML (one class) or as a table in CSV (any number of them), and
//! the lessons that they name. Out: [`Weighings`], in which every cup belongs to a canvas, a
//! layer and a colour of its lesson; or [`Faults`].
//!
//! A table grows to the same nodes as a YAML file (`table`), so that one reading (`raw`), one
//! check of rows (`row`) and of what rows say together (`together`) serves both.

mod formula;
pub(super) mod raw;
mod row;
mod table;
mod together;

use super::decode::Cursor;
use super::desk::Desk;
use super::faults::Faults;
use super::grow;
use super::load::{Load, Read, read_among};
use super::model::{Canvas, Lesson, WeighedClass};
use super::problem::{Problem, ProblemKind};
use super::source::{Place, Sources, from_disk, shown, to_text};
use super::tree::{Log, NodeId, Tree};
use super::unseen::Unseen;
use crate::quantity::Date;
pub use formula::harmless;
use row::Row;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
pub use table::COLUMNS;

/// Classes whose cups were weighed.
#[derive(Debug, Clone)]
pub struct Weighings {
    /// By date; never empty. The cups of one lesson on one day are one class,
    /// whatever files they stand in.
    pub classes: Vec<WeighedClass>,
    sources: Sources,
    /// Where each row is, and the keys above it.
    paths: Vec<(Place, Vec<String>)>,
}

impl Weighings {
    /// What is found out about rows later on, told at their places.
    pub fn faults(&self, found: Vec<(Place, ProblemKind)>) -> Faults {
        let problems = found.into_iter().map(|(place, kind)| {
            let path = self.paths.iter().find(|(row, _)| *row == place);
            let path = path.map(|(_, path)| path.clone()).unwrap_or_default();
            Problem { place: Some(place), path, kind, also: None }
        });
        Faults::new(problems.collect(), self.sources.clone())
    }
}

/// Reads weighings and the lessons that they name from the disk.
///
/// # Errors
/// Every problem of all files, at once.
pub fn read_weighings(paths: &[PathBuf]) -> Result<Weighings, Faults> {
    read_weighings_with(paths, &from_disk)
}

/// Reads weighings with files that come from `load`.
///
/// # Errors
/// Every problem of all files, at once.
pub fn read_weighings_with(paths: &[PathBuf], load: Load<'_>) -> Result<Weighings, Faults> {
    let mut reading = Reading {
        load,
        sources: Sources::default(),
        tree: Tree::default(),
        log: Log::default(),
        lessons: Vec::new(),
    };
    let classes = reading.classes(paths);
    let (sources, log) = (reading.sources, reading.log);
    let (classes, paths) = classes.unwrap_or_default();
    if classes.is_empty() && log.is_empty() {
        log.at(None, ProblemKind::Unexplained);
    }
    let problems = log.into_problems();
    match problems.is_empty() {
        true => Ok(Weighings { classes, sources, paths }),
        false => Err(Faults::new(problems, sources)),
    }
}

/// A lesson that was given.
struct Given {
    lesson: Arc<Lesson>,
    canvases: Vec<Arc<Canvas>>,
}

struct Reading<'a> {
    load: Load<'a>,
    sources: Sources,
    tree: Tree,
    log: Log,
    /// By path; `None` when it is wrong, which has been told.
    lessons: Vec<(PathBuf, Option<Given>)>,
}

/// The cups of one class as they stand in one file.
struct Written {
    node: NodeId,
    raw: raw::Class,
    /// Place in `Reading::lessons`.
    lesson: Option<usize>,
}

type Found = (Vec<WeighedClass>, Vec<(Place, Vec<String>)>);

impl Reading<'_> {
    fn classes(&mut self, paths: &[PathBuf]) -> Option<Found> {
        let mut known = Vec::new();
        let mut written = Vec::new();
        for path in paths {
            let plain = straight(path);
            if known.contains(&plain) {
                continue;
            }
            known.push(plain);
            for node in self.grow(path) {
                let cursor = Cursor { tree: &self.tree, log: &self.log, id: node };
                let Ok(raw) = raw::Class::deserialize(cursor) else { continue };
                let folder = path.parent().unwrap_or(Path::new(""));
                let lesson = self.lesson(node, &raw, folder);
                written.push(Written { node, raw, lesson });
            }
        }
        let unseen = Unseen::nothing();
        let desk = Desk { tree: &self.tree, log: &self.log, unseen: &unseen };
        let mut rows: Vec<(usize, Row)> = Vec::new();
        for class in &written {
            let given = class.lesson.and_then(|at| Some((at, self.lessons.get(at)?.1.as_ref()?)));
            let found = row::rows(desk, class.node, &class.raw, given.map(|(_, given)| given));
            rows.extend(given.into_iter().flat_map(|(at, _)| {
                let rows = found.iter().cloned();
                rows.map(move |row| (at, row)).collect::<Vec<_>>()
            }));
        }
        rows.sort_by_key(|(_, row)| (row.cup.place.file, row.cup.place.span.start));
        together::check(desk, &rows);
        let paths = rows.iter().map(|(_, row)| (row.cup.place.clone(), desk.tree.path(row.node)));
        let paths = paths.collect();
        let mut classes: Vec<WeighedClass> = Vec::new();
        let mut known: BTreeMap<(usize, Option<Date>), usize> = BTreeMap::new();
        for (at, row) in rows {
            let next = classes.len();
            match classes.get_mut(*known.entry((at, row.date)).or_insert(next)) {
                Some(class) => class.cups.push(row.cup),
                None => {
                    let lesson = Arc::clone(&self.lessons.get(at)?.1.as_ref()?.lesson);
                    classes.push(WeighedClass { lesson, date: row.date, cups: vec![row.cup] });
                }
            }
        }
        // Stable, so that classes without a date stay where they were put.
        classes.sort_by_key(|class| class.date);
        Some((classes, paths))
    }

    /// The roots of the classes of a file.
    fn grow(&mut self, path: &Path) -> Vec<NodeId> {
        let name = shown(path);
        let text = match (self.load)(path).and_then(|bytes| to_text(path, bytes)) {
            Ok(text) => text,
            Err(why) => {
                self.log.at(None, ProblemKind::WeighingsUnread { name, why });
                return Vec::new();
            }
        };
        let file = self.sources.add(name, text);
        let text = self.sources.text(file);
        let is_table = path.extension().is_some_and(|end| end.eq_ignore_ascii_case("csv"));
        if is_table {
            return table::grow(&mut self.tree, &self.log, file, text);
        }
        let log = Log::default();
        let root = grow::grow(&mut self.tree, &log, file, text);
        for problem in log.into_problems() {
            let kind = match problem.kind {
                ProblemKind::NotALesson => ProblemKind::NoWeighings,
                ProblemKind::SeveralDocuments => ProblemKind::SeveralClasses,
                kind => kind,
            };
            self.log.add(Problem { kind, ..problem });
        }
        let has = |root, key| self.tree.under(root, key).is_some();
        match root {
            Some(root) if has(root, "title") && !has(root, "cups") => {
                let place = self.tree.under(root, "title").and_then(|at| self.tree.key_place(at));
                self.log.at(place, ProblemKind::ALesson);
                Vec::new()
            }
            root => root.into_iter().collect(),
        }
    }

    /// The lesson of a class, read once however many classes name it.
    fn lesson(&mut self, root: NodeId, raw: &raw::Class, folder: &Path) -> Option<usize> {
        let unseen = Unseen::nothing();
        let desk = Desk { tree: &self.tree, log: &self.log, unseen: &unseen };
        let written = row::say(desk, root, "lesson", &raw.lesson)?;
        let named = desk.read(written)?;
        // As people write it on Windows, too.
        let path = straight(&folder.join(named.replace('\\', "/")));
        let known = self.lessons.iter().position(|(known, _)| *known == path);
        if known.is_some() || self.log.is_full() {
            return known;
        }
        let given = match (self.load)(&path).and_then(|bytes| to_text(&path, bytes)) {
            Err(why) => {
                let name = shown(&path);
                desk.fault(written.node, ProblemKind::LessonUnread { name, why });
                None
            }
            Ok(_) => match read_among(&mut self.sources, &path, self.load) {
                Ok(Read { lesson, .. }) => {
                    let canvases = lesson.canvases.iter().cloned().map(Arc::new).collect();
                    Some(Given { lesson: Arc::new(lesson), canvases })
                }
                Err(problems) => {
                    problems.into_iter().for_each(|problem| self.log.add(problem));
                    None
                }
            },
        };
        self.lessons.push((path, given));
        Some(self.lessons.len() - 1)
    }
}

/// A path without detours: `weighed/../my-class.yaml` is `my-class.yaml`.
fn straight(path: &Path) -> PathBuf {
    let mut plain = PathBuf::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir
                if matches!(plain.components().next_back(), Some(Component::Normal(_))) =>
            {
                plain.pop();
            }
            other => plain.push(other),
        }
    }
    plain
}
