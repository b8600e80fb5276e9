use super::check;
use super::decode::Cursor;
use super::defaults;
use super::desk::Desk;
use super::faults::Faults;
use super::field::{Items, Written};
use super::grow::grow;
use super::limits;
use super::model::{Language, Lesson};
use super::origins::Origins;
use super::problem::{Problem, ProblemKind};
use super::raw;
use super::source::{FileId, Sources, Unread, from_disk, shown, to_text};
use super::survey::survey;
use super::tree::{Log, NodeId, Tree};
use super::unseen::{DataFiles, Unseen};
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
pub fn read_with(path: &Path, load: Load<'_>) -> Result<Lesson, Faults> {
    let mut sources = Sources::default();
    match read_among(&mut sources, path, load) {
        Ok(Read { mut lesson, tree, root, own }) => {
            lesson.origins = Origins::new(sources, (tree, root), own);
            Ok(lesson)
        }
        Err(problems) => Err(Faults::new(problems, sources)),
    }
}

/// A lesson, and what it was read from.
pub(super) struct Read {
    pub(super) lesson: Lesson,
    tree: Tree,
    /// Of all files laid over each other.
    root: NodeId,
    /// The lesson and its data files.
    own: Vec<FileId>,
}

/// Reads a lesson whose files are added to those of a longer run.
pub(super) fn read_among(
    sources: &mut Sources,
    path: &Path,
    load: Load<'_>,
) -> Result<Read, Vec<Problem>> {
    let mut reading = Reading {
        load,
        sources,
        tree: Tree::default(),
        log: Log::default(),
        unseen: Unseen::nothing(),
        own: Vec::new(),
    };
    let lesson = reading.lesson(path);
    let Reading { tree, log, own, .. } = reading;
    if lesson.is_none() && log.is_empty() {
        log.at(None, ProblemKind::Unexplained);
    }
    let problems = log.into_problems();
    match lesson {
        Some((lesson, root)) if problems.is_empty() => Ok(Read { lesson, tree, root, own }),
        _ => Err(problems),
    }
}

/// Where files come from: the bytes at a path.
pub(super) type Load<'a> = &'a dyn Fn(&Path) -> Result<Vec<u8>, Unread>;

struct Reading<'a> {
    load: Load<'a>,
    sources: &'a mut Sources,
    tree: Tree,
    log: Log,
    unseen: Unseen,
    /// The files that somebody wrote, unlike those that are built in.
    own: Vec<FileId>,
}

impl Reading<'_> {
    fn lesson(&mut self, path: &Path) -> Option<(Lesson, NodeId)> {
        let text = match (self.load)(path).and_then(|bytes| to_text(path, bytes)) {
            Ok(text) => text,
            Err(why) => {
                let name = shown(path);
                self.log.at(None, ProblemKind::Unread { name, why });
                return None;
            }
        };
        let root = self.grow_own(shown(path), text)?;
        self.survey(root, raw::KEYS.as_slice());
        let used = self.used(root, path);
        for data in &used {
            self.survey(*data, raw::DATA_KEYS);
        }
        let merged = self.merged(root, &used)?;
        let cursor = Cursor { tree: &self.tree, log: &self.log, id: merged };
        let raw = raw::Lesson::deserialize(cursor).ok()?;
        let desk = Desk { tree: &self.tree, log: &self.log, unseen: &self.unseen };
        Some((check::lesson(desk, merged, &raw)?, merged))
    }

    fn survey(&mut self, root: NodeId, may_hold: &[&str]) {
        survey(&mut self.tree, &self.log, &mut self.unseen, (root, may_hold));
    }

    fn grow(&mut self, name: String, text: String) -> Option<NodeId> {
        let file = self.sources.add(name, text);
        grow(&mut self.tree, &self.log, file, self.sources.text(file))
    }

    /// The lesson or one of its data files.
    fn grow_own(&mut self, name: String, text: String) -> Option<NodeId> {
        let root = self.grow(name, text)?;
        self.own.extend(self.tree.file(root));
        Some(root)
    }

    /// The language that a lesson names. A word that nobody knows is told with the others,
    /// when the checked keys are read.
    fn language(&self, lesson: NodeId) -> Option<Language> {
        match self.tree.under(lesson, "language").filter(|node| !self.tree.is_empty(*node)) {
            Some(node) => {
                let named = self.tree.text(node).trim();
                Language::ALL.into_iter().find(|language| language.tag() == named)
            }
            None => Some(Language::English),
        }
    }

    /// Defaults, then data files in their order, then the lesson.
    fn merged(&mut self, lesson: NodeId, used: &[NodeId]) -> Option<NodeId> {
        if self.tree.is_full() {
            return None;
        }
        let mut merged = None;
        for (name, text) in defaults::files(self.language(lesson)) {
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

    /// The roots of the data files. One that cannot be used is told, and what it may
    /// say counts as unseen.
    fn used(&mut self, root: NodeId, path: &Path) -> Vec<NodeId> {
        let Some(list) = self.tree.under(root, "use").filter(|list| !self.tree.is_empty(*list))
        else {
            return Vec::new();
        };
        let cursor = Cursor { tree: &self.tree, log: &self.log, id: list };
        let Ok(Items(items)) = Items::<Written<String>>::deserialize(cursor) else {
            self.unseen.files = DataFiles::Lost;
            return Vec::new();
        };
        let written: Vec<_> = items.iter().filter_map(|item| item.value.as_ref()).collect();
        let too_many = items.len() > limits::USED_FILES;
        if too_many {
            self.fault(list, ProblemKind::TooManyFiles);
        }
        let folder = path.parent().unwrap_or(Path::new(""));
        let mut names: Vec<String> = Vec::new();
        let mut roots = Vec::new();
        for written in written.iter().take(limits::USED_FILES) {
            // As people write it on Windows, too.
            let name = written.text.trim().replace('\\', "/");
            if names.contains(&name) {
                self.fault(written.node, ProblemKind::FileTwice { name });
                continue;
            }
            let data = folder.join(&name);
            if data == path {
                self.fault(written.node, ProblemKind::UsesItself);
                continue;
            }
            roots.push(self.data(written.node, &data));
            names.push(name);
        }
        if too_many || written.len() < items.len() || roots.contains(&None) {
            self.unseen.files = DataFiles::Lost;
        }
        roots.into_iter().flatten().collect()
    }

    /// The root of the data file that a node names.
    fn data(&mut self, named: NodeId, path: &Path) -> Option<NodeId> {
        let name = shown(path);
        match (self.load)(path).and_then(|bytes| to_text(path, bytes)) {
            Ok(text) => self.grow_own(name, text),
            Err(why) => {
                self.fault(named, ProblemKind::Unread { name, why });
                None
            }
        }
    }

    fn fault(&self, node: NodeId, kind: ProblemKind) {
        let (place, path) = (self.tree.place(node), self.tree.path(node));
        self.log.add(Problem { place, path, kind, also: None });
    }
}
