//! Named things, and how a name is looked up.

use super::desk::Desk;
use super::field::{Entries, Entry, Field, Written};
use super::problem::{ProblemKind, Sort};
use super::tree::NodeId;
use crate::quantity::nearest::{MOST_KNOWN, nearest};
use std::collections::BTreeMap;

/// Named things, in the order of the file; those that are broken are known by name,
/// so that no one is told that they are missing.
pub(super) struct Catalogue<T> {
    sort: Sort,
    reach: Reach,
    entries: Vec<(String, NodeId, Option<T>)>,
    index: BTreeMap<String, usize>,
}

/// Whether a catalogue names all there is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Reach {
    All,
    /// There may be more where nobody could look.
    Part,
}

impl Reach {
    /// How far the section of a key reaches; one that is broken may name anything.
    pub(super) fn of<R>(desk: Desk<'_>, key: &str, field: &Field<R>) -> Self {
        if matches!(field, Field::Broken) || desk.unseen.hides(key) {
            Self::Part
        } else {
            Self::All
        }
    }

    /// Both together.
    pub(super) fn and(self, other: Self) -> Self {
        if self == Self::All { other } else { self }
    }
}

impl<T: Clone> Catalogue<T> {
    pub(super) fn new(sort: Sort, reach: Reach) -> Self {
        Self { sort, reach, entries: Vec::new(), index: BTreeMap::new() }
    }

    /// A catalogue of all entries of the section of this key.
    pub(super) fn of<R>(
        desk: Desk<'_>,
        sort: Sort,
        (key, field): (&str, &Field<Entries<R>>),
        mut check: impl FnMut(&Entry<R>, &R) -> Option<T>,
    ) -> Self {
        let mut catalogue = Self::new(sort, Reach::of(desk, key, field));
        if let Field::Present(entries) = field {
            for entry in &entries.0 {
                let value = entry.value.as_ref().and_then(|raw| check(entry, raw));
                catalogue.add(entry.name.clone(), entry.node, value);
            }
        }
        catalogue
    }

    /// Adds a thing; the first of a name stays.
    pub(super) fn add(&mut self, name: String, node: NodeId, value: Option<T>) {
        if !self.index.contains_key(&name) {
            self.index.insert(name.clone(), self.entries.len());
            self.entries.push((name, node, value));
        }
    }

    pub(super) fn reach(&self) -> Reach {
        self.reach
    }

    /// The node and the value of a name.
    pub(super) fn get(&self, name: &str) -> Option<(NodeId, Option<&T>)> {
        let (_, node, value) = self.entries.get(*self.index.get(name)?)?;
        Some((*node, value.as_ref()))
    }

    /// The thing that a text names.
    pub(super) fn find(&self, desk: Desk<'_>, written: &Written<String>) -> Option<T> {
        self.look_up(desk, &written.text, |kind| desk.fault(written.node, kind))
    }

    /// The thing that the key of an entry names.
    pub(super) fn find_key<R>(&self, desk: Desk<'_>, entry: &Entry<R>) -> Option<T> {
        self.look_up(desk, &entry.name, |kind| desk.fault_of_name(entry.node, kind, None))
    }

    fn look_up(&self, desk: Desk<'_>, name: &str, refuse: impl Fn(ProblemKind)) -> Option<T> {
        if let Some((_, value)) = self.get(name) {
            return value.cloned();
        }
        if self.reach == Reach::All && !desk.unseen.holds(name) && !desk.log.is_full() {
            let nearest = nearest(name, self.names()).map(str::to_owned);
            let known = self.names().take(MOST_KNOWN).map(str::to_owned).collect();
            let (sort, name) = (self.sort, name.to_owned());
            refuse(ProblemKind::UnknownName { sort, name, nearest, known });
        }
        None
    }

    /// Names, nodes and values, in the order of the file.
    pub(super) fn entries(&self) -> impl Iterator<Item = (&str, NodeId, Option<&T>)> {
        self.entries.iter().map(|(name, node, value)| (name.as_str(), *node, value.as_ref()))
    }

    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.entries.iter().map(|(name, ..)| name.as_str())
    }

    /// The things that are right.
    pub(super) fn values(&self) -> impl Iterator<Item = &T> {
        self.entries.iter().filter_map(|(.., value)| value.as_ref())
    }
}
