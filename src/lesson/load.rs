use super::check;
use super::decode::Cursor;
use super::defaults;
use super::desk::Desk;
use super::faults::Faults;
use super::field::{Items, Written};
use super::grow::grow;
use super::limits;
use super::model::Lesson;
use super::problem::{Problem, ProblemKind};
use super::raw;
use super::source::{Place, Sources, Unread, from_disk, to_text};
use super::tree::{Log, NodeId, Tree};
use serde::Deserialize;
use std::path::Path;

/// Reads a lesson and the data files that it names from the disk.
///
/// # Errors
/// Every problem of all its files, at once.
pub fn read(path: &Path) -> Result<Lesson, Faults> {
    read_with(path, &from_disk)
}

/// Reads a lesson with files that come from `load`, which gets the path of the lesson
/// and, for data files, their paths joined to its folder.
///
/// # Errors
/// Every problem of all its files, at once.
pub fn read_with(
    path: &Path,
    load: &dyn Fn(&Path) -> Result<Vec<u8>, Unread>,
) -> Result<Lesson, Faults> {
    let mut reading =
        Reading { load, sources: Sources::default(), tree: Tree::default(), log: Log::default() };
    let lesson = reading.lesson(path);
    let (sources, log) = (reading.sources, reading.log);
    if lesson.is_none() && log.is_empty() {
        log.at(None, ProblemKind::Unexplained);
    }
    let problems = log.into_problems();
    match lesson {
        Some(lesson) if problems.is_empty() => Ok(lesson),
        _ => Err(Faults::new(problems, sources)),
    }
}

struct Reading<'a> {
    load: &'a dyn Fn(&Path) -> Result<Vec<u8>, Unread>,
    sources: Sources,
    tree: Tree,
    log: Log,
}

impl Reading<'_> {
    fn lesson(&mut self, path: &Path) -> Option<Lesson> {
        let text = match (self.load)(path).and_then(to_text) {
            Ok(text) => text,
            Err(why) => {
                let name = path.display().to_string();
                self.log.at(None, ProblemKind::Unread { name, why });
                return None;
            }
        };
        let root = self.grow(path.display().to_string(), text);
        let used = root.map(|root| self.used(root, path)).unwrap_or_default();
        let (root, used) = (root?, used.into_iter().collect::<Option<Vec<_>>>()?);
        for data in &used {
            self.refuse_lesson_keys(*data);
        }
        let merged = self.merged(root, &used)?;
        let cursor = Cursor { tree: &self.tree, log: &self.log, id: merged };
        let raw = raw::Lesson::deserialize(cursor).ok()?;
        check::lesson(Desk { tree: &self.tree, log: &self.log }, merged, &raw)
    }

    fn grow(&mut self, name: String, text: String) -> Option<NodeId> {
        let file = self.sources.add(name, text);
        grow(&mut self.tree, &self.log, file, self.sources.text(file))
    }

    /// Defaults, then data files in their order, then the lesson.
    fn merged(&mut self, lesson: NodeId, used: &[NodeId]) -> Option<NodeId> {
        let mut merged = None;
        for (name, text) in defaults::FILES {
            let root = self.grow(name.to_owned(), text.to_owned())?;
            match merged {
                None => merged = Some(root),
                Some(base) => self.tree.lay_over(base, root),
            }
        }
        let merged = merged?;
        for over in used.iter().chain([&lesson]) {
            self.tree.lay_over(merged, *over);
        }
        Some(merged)
    }

    /// The roots of the data files; `None` for one that cannot be used.
    fn used(&mut self, root: NodeId, path: &Path) -> Vec<Option<NodeId>> {
        let Some(list) = self.tree.under(root, "use").filter(|list| !self.tree.is_empty(*list))
        else {
            return Vec::new();
        };
        let cursor = Cursor { tree: &self.tree, log: &self.log, id: list };
        let Ok(items) = Items::<Written<String>>::deserialize(cursor) else {
            return vec![None];
        };
        if items.0.len() > limits::USED_FILES {
            self.fault(list, ProblemKind::TooManyFiles);
            return vec![None];
        }
        let folder = path.parent().unwrap_or(Path::new(""));
        let mut names: Vec<&str> = Vec::new();
        let mut roots = Vec::new();
        for item in &items.0 {
            let Some(written) = &item.value else {
                roots.push(None);
                continue;
            };
            let name = written.text.trim();
            if names.contains(&name) {
                self.fault(item.node, ProblemKind::FileTwice { name: name.to_owned() });
                continue;
            }
            names.push(name);
            let path = folder.join(name);
            match (self.load)(&path).and_then(to_text) {
                Ok(text) => roots.push(self.grow(path.display().to_string(), text)),
                Err(why) => {
                    let name = path.display().to_string();
                    self.fault(item.node, ProblemKind::Unread { name, why });
                    roots.push(None);
                }
            }
        }
        roots
    }

    /// A data file holds data, not a lesson.
    fn refuse_lesson_keys(&self, root: NodeId) {
        for child in self.tree.children(root) {
            let key = self.tree.key(*child).unwrap_or_default();
            if raw::LESSON_KEYS.contains(&key) {
                let kind = ProblemKind::LessonKeyInData { key: key.to_owned() };
                self.problem(self.tree.key_place(*child), *child, kind);
            }
        }
    }

    fn fault(&self, node: NodeId, kind: ProblemKind) {
        self.problem(self.tree.place(node), node, kind);
    }

    fn problem(&self, place: Option<Place>, node: NodeId, kind: ProblemKind) {
        self.log.add(Problem { place, path: self.tree.path(node), kind, also: None });
    }
}
