//! The files as one tree of nodes that know where they stand: in: YAML text; out:
//! nodes with file, span and path. Knows nothing of lessons.

use super::problem::{Form, Problem, ProblemKind};
use super::source::{FileId, Place};
use std::cell::RefCell;

use super::limits;

/// Which node of the tree.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NodeId(pub(super) usize);

/// All nodes of a run.
#[derive(Debug, Default)]
pub(super) struct Tree {
    pub(super) nodes: Vec<Node>,
}

/// A value of a file.
#[derive(Debug, Clone)]
pub(super) struct Node {
    pub(super) place: Place,
    pub(super) parent: Option<NodeId>,
    pub(super) stands: Stands,
    pub(super) content: Content,
}

/// How a node hangs on its parent.
#[derive(Debug, Clone)]
pub(super) enum Stands {
    Root,
    UnderKey {
        key: String,
        place: Place,
    },
    /// Counted from 0.
    InList(usize),
}

/// What a node holds.
#[derive(Debug, Clone)]
pub(super) enum Content {
    Text {
        text: String,
        /// Where the text starts in the file, if it stands there letter by letter.
        verbatim: Option<usize>,
        /// Nothing is written.
        empty: bool,
    },
    List(Vec<NodeId>),
    Mapping(Vec<NodeId>),
    /// Something that cannot be used; the log says why.
    Refused,
}

impl Content {
    /// `None` for what cannot be used.
    pub(super) fn form(&self) -> Option<Form> {
        match self {
            Self::Text { .. } => Some(Form::Text),
            Self::List(_) => Some(Form::List),
            Self::Mapping(_) => Some(Form::Mapping),
            Self::Refused => None,
        }
    }
}

impl Tree {
    /// No further node has room.
    pub(super) fn is_full(&self) -> bool {
        self.nodes.len() >= limits::VALUES
    }

    /// No further row of a table has room.
    pub(super) fn is_full_of_rows(&self) -> bool {
        self.nodes.len() >= limits::TABLE_VALUES
    }

    pub(super) fn get(&self, id: NodeId) -> Option<&Node> {
        self.nodes.get(id.0)
    }

    /// The values of a list or mapping.
    pub(super) fn children(&self, id: NodeId) -> &[NodeId] {
        match self.get(id).map(|node| &node.content) {
            Some(Content::List(items) | Content::Mapping(items)) => items,
            _ => &[],
        }
    }

    /// The text of a node, nothing for a list or mapping.
    pub(super) fn text(&self, id: NodeId) -> &str {
        match self.get(id).map(|node| &node.content) {
            Some(Content::Text { text, .. }) => text,
            _ => "",
        }
    }

    /// The key under which a node stands.
    pub(super) fn key(&self, id: NodeId) -> Option<&str> {
        match self.get(id).map(|node| &node.stands) {
            Some(Stands::UnderKey { key, .. }) => Some(key),
            _ => None,
        }
    }

    /// The key of a node, or of the list that it stands in.
    pub(super) fn nearest_key(&self, id: NodeId) -> &str {
        let parent = || self.get(id).and_then(|node| self.key(node.parent?));
        self.key(id).or_else(parent).unwrap_or_default()
    }

    /// The value under a key of a mapping.
    pub(super) fn under(&self, id: NodeId, key: &str) -> Option<NodeId> {
        self.children(id).iter().copied().find(|child| self.key(*child) == Some(key))
    }

    pub(super) fn form(&self, id: NodeId) -> Option<Form> {
        self.get(id)?.content.form()
    }

    pub(super) fn is_mapping(&self, id: NodeId) -> bool {
        self.form(id) == Some(Form::Mapping)
    }

    /// Nothing is written there.
    pub(super) fn is_empty(&self, id: NodeId) -> bool {
        let content = self.get(id).map(|node| &node.content);
        matches!(content, Some(Content::Text { empty: true, .. }))
    }

    /// The file in which a node stands.
    pub(super) fn file(&self, id: NodeId) -> Option<FileId> {
        self.get(id).map(|node| node.place.file)
    }

    /// Where to point to for the value of a node: the value itself when it is one
    /// text, otherwise the key above it.
    pub(super) fn place(&self, id: NodeId) -> Option<Place> {
        let node = self.get(id)?;
        match (&node.content, &node.stands) {
            (Content::Text { empty: false, .. }, _) => Some(node.place.clone()),
            (_, Stands::UnderKey { place, .. }) => Some(place.clone()),
            _ => Some(node.place.clone()),
        }
    }

    /// Where the key of a node stands.
    pub(super) fn key_place(&self, id: NodeId) -> Option<Place> {
        match &self.get(id)?.stands {
            Stands::UnderKey { place, .. } => Some(place.clone()),
            _ => self.place(id),
        }
    }

    /// A stretch of the text of a node, in its file.
    pub(super) fn inside(&self, id: NodeId, span: &std::ops::Range<usize>) -> Option<Place> {
        let node = self.get(id)?;
        match node.content {
            Content::Text { verbatim: Some(start), .. } => {
                let span = start + span.start..start + span.end;
                Some(Place { file: node.place.file, span })
            }
            _ => self.place(id),
        }
    }

    /// Keys from the root down, cut where they are too long.
    pub(super) fn path(&self, id: NodeId) -> Vec<String> {
        let mut path = Vec::new();
        let mut next = self.get(id);
        while let Some(node) = next {
            match &node.stands {
                Stands::UnderKey { key, .. } => {
                    path.push(key.chars().take(limits::NAME_LETTERS).collect());
                }
                Stands::InList(index) => path.push(in_list(*index)),
                Stands::Root => {}
            }
            next = node.parent.and_then(|parent| self.get(parent));
        }
        path.reverse();
        path
    }
}

/// How an entry of a list is called, counted from 0.
pub(super) fn in_list(index: usize) -> String {
    format!("no. {}", index + 1)
}

/// The problems found so far; the first [`limits::PROBLEMS`] are kept.
#[derive(Debug, Default)]
pub(super) struct Log(RefCell<Vec<Problem>>);

impl Log {
    /// No further problem would be kept.
    pub(super) fn is_full(&self) -> bool {
        self.0.borrow().len() >= limits::PROBLEMS
    }

    pub(super) fn is_empty(&self) -> bool {
        self.0.borrow().is_empty()
    }

    /// Whether a problem of this sort is known.
    pub(super) fn any(&self, wanted: impl Fn(&Problem) -> bool) -> bool {
        self.0.borrow().iter().any(wanted)
    }

    /// Keeps a problem, unless it is known or there are enough.
    pub(super) fn add(&self, problem: Problem) {
        let mut problems = self.0.borrow_mut();
        if problems.len() < limits::PROBLEMS && !problems.contains(&problem) {
            problems.push(problem);
        }
    }

    /// A problem at a place that has no path.
    pub(super) fn at(&self, place: Option<Place>, kind: ProblemKind) {
        self.add(Problem { place, path: Vec::new(), kind, also: None });
    }

    pub(super) fn into_problems(self) -> Vec<Problem> {
        self.0.into_inner()
    }
}
