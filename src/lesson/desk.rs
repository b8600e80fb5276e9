//! The tools of checking: read a text, hold it against its bounds, look up a name.
//! Each tool logs what it refuses and gives `None`; who calls goes on with the rest.

use super::field::{Entry, Field, Written};
use super::legible::{Days, Legible, Minutes, Percentage};
use super::problem::{Problem, ProblemKind, Sort};
use super::source::Place;
use super::tree::{Log, NodeId, Tree};
use crate::quantity::nearest::nearest;
use crate::quantity::{Area, Length, Mass, MassDensity, Money, Volume};
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;

/// An allowed range in base units, both ends included, and how people say it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    low: f64,
    high: f64,
    words: &'static str,
}

impl Bounds {
    pub(super) const fn new(low: f64, high: f64, words: &'static str) -> Self {
        Self { low, high, words }
    }

    /// The upper end.
    pub(super) fn high(&self) -> f64 {
        self.high
    }

    /// What is wrong with a value, if anything. A billionth over the end is rounding.
    fn refuse(&self, value: f64) -> Option<ProblemKind> {
        let slack = 1e-9;
        if value >= self.low * (1.0 - slack) && value <= self.high * (1.0 + slack) {
            None
        } else if value == 0.0 {
            Some(ProblemKind::Zero { allowed: self.words })
        } else {
            Some(ProblemKind::OutOfRange { allowed: self.words })
        }
    }
}

/// A value that has a size.
pub(super) trait Sizeable {
    /// In SI base units, or the plain number.
    fn size(&self) -> f64;
}

macro_rules! sizeable {
    ($($kind:ty: $size:expr),* $(,)?) => {
        $(impl Sizeable for $kind {
            fn size(&self) -> f64 {
                let size: fn(&$kind) -> f64 = $size;
                size(self)
            }
        })*
    };
}

sizeable! {
    Length: |length| length.value,
    Volume: |volume| volume.value,
    Mass: |mass| mass.value,
    MassDensity: |density| density.value,
    Money: |money| money.amount().to_f64().unwrap_or(f64::INFINITY),
    Percentage: |percent| percent.0.to_f64().unwrap_or(f64::INFINITY),
    Area: |area| area.value,
    Days: |days| f64::from(days.0),
    Minutes: |minutes| f64::from(minutes.0),
    u32: |count| f64::from(*count),
    f64: |number| *number,
}

/// Where checking is done.
#[derive(Clone, Copy)]
pub(super) struct Desk<'t> {
    pub(super) tree: &'t Tree,
    pub(super) log: &'t Log,
}

impl Desk<'_> {
    /// A problem of the value of a node.
    pub(super) fn fault(&self, node: NodeId, kind: ProblemKind) {
        self.fault_at(self.tree.place(node), node, kind, None);
    }

    /// A problem of the name under which a node stands; `also` is a node whose name
    /// belongs to it.
    pub(super) fn fault_of_name(&self, node: NodeId, kind: ProblemKind, also: Option<NodeId>) {
        let also = also.and_then(|also| self.tree.key_place(also));
        self.fault_at(self.tree.key_place(node), node, kind, also);
    }

    /// A problem of the value of a node, with another value that belongs to it.
    pub(super) fn fault_with(&self, node: NodeId, kind: ProblemKind, also: NodeId) {
        self.fault_at(self.tree.place(node), node, kind, self.tree.place(also));
    }

    fn fault_at(&self, place: Option<Place>, node: NodeId, kind: ProblemKind, also: Option<Place>) {
        self.log.add(Problem { place, path: self.tree.path(node), kind, also });
    }

    /// A value that must be there.
    pub(super) fn need<'a, T>(
        &self,
        parent: NodeId,
        key: &'static str,
        field: &'a Field<T>,
    ) -> Option<&'a T> {
        match field {
            Field::Present(value) => Some(value),
            Field::Broken => None,
            Field::Absent => {
                self.missing(parent, key);
                None
            }
        }
    }

    fn missing(&self, parent: NodeId, key: &'static str) {
        if let Some(empty) = self.tree.under(parent, key) {
            let kind = ProblemKind::Empty { key: key.to_owned(), keys: &[] };
            self.fault_at(self.tree.key_place(empty), empty, kind, None);
            return;
        }
        let mut path = self.tree.path(parent);
        // A slip of the finger is told once: as the key that is not known.
        let misspelt = self.log.any(|problem| match &problem.kind {
            ProblemKind::UnknownKey { nearest, .. } => {
                nearest.as_deref() == Some(key)
                    && problem.path.split_last().is_some_and(|(_, above)| *above == path)
            }
            _ => false,
        });
        if misspelt {
            return;
        }
        let part = path.last().cloned();
        path.push(key.to_owned());
        let kind = ProblemKind::Missing { key, part };
        self.log.add(Problem { place: self.tree.place(parent), path, kind, also: None });
    }

    /// What a text says.
    pub(super) fn read<T: Legible>(&self, written: &Written<T>) -> Option<T> {
        match T::read(&written.text) {
            Ok(value) => Some(value),
            Err((span, kind)) => {
                let place = self.tree.inside(written.node, &span);
                self.fault_at(place, written.node, kind, None);
                None
            }
        }
    }

    /// What a text says, inside the bounds.
    pub(super) fn bounded<T: Legible + Sizeable>(
        &self,
        written: &Written<T>,
        bounds: &Bounds,
    ) -> Option<T> {
        let value = self.read(written)?;
        self.holds(written.node, &value, bounds).then_some(value)
    }

    /// Whether a value lies inside the bounds.
    pub(super) fn holds(&self, node: NodeId, value: &impl Sizeable, bounds: &Bounds) -> bool {
        let refused = bounds.refuse(value.size());
        let holds = refused.is_none();
        if let Some(kind) = refused {
            self.fault(node, kind);
        }
        holds
    }

    /// A size that must be there, inside the bounds.
    pub(super) fn need_bounded<T: Legible + Sizeable>(
        &self,
        parent: NodeId,
        key: &'static str,
        field: &Field<Written<T>>,
        bounds: &Bounds,
    ) -> Option<T> {
        self.bounded(self.need(parent, key, field)?, bounds)
    }

    /// A size inside the bounds, or what is used when none is written.
    pub(super) fn bounded_or<T: Legible + Sizeable>(
        &self,
        field: &Field<Written<T>>,
        bounds: &Bounds,
        default: T,
    ) -> Option<T> {
        match field {
            Field::Absent => Some(default),
            Field::Broken => None,
            Field::Present(written) => self.bounded(written, bounds),
        }
    }

    /// A value that may be missing: `Some(None)` when it is, `None` when it is wrong.
    pub(super) fn optional<T: Legible>(&self, field: &Field<Written<T>>) -> Option<Option<T>> {
        match field {
            Field::Absent => Some(None),
            Field::Broken => None,
            Field::Present(written) => self.read(written).map(Some),
        }
    }

    /// A text that must be there.
    pub(super) fn need_text(
        &self,
        parent: NodeId,
        key: &'static str,
        field: &Field<Written<String>>,
    ) -> Option<String> {
        self.read(self.need(parent, key, field)?)
    }
}

/// A word of a file that needs no reading.
pub(super) fn word_or<T: Copy>(field: &Field<T>, default: T) -> Option<T> {
    match field {
        Field::Absent => Some(default),
        Field::Broken => None,
        Field::Present(word) => Some(*word),
    }
}

/// Named things, in the order of the file; those that are broken are known by name,
/// so that no one is told that they are missing.
pub(super) struct Catalogue<T> {
    sort: Sort,
    entries: Vec<(String, NodeId, Option<T>)>,
    index: BTreeMap<String, usize>,
}

impl<T: Clone> Catalogue<T> {
    pub(super) fn new(sort: Sort) -> Self {
        Self { sort, entries: Vec::new(), index: BTreeMap::new() }
    }

    /// A catalogue of all entries of a section.
    pub(super) fn of<R>(
        sort: Sort,
        field: &Field<super::field::Entries<R>>,
        mut check: impl FnMut(&Entry<R>, &R) -> Option<T>,
    ) -> Self {
        let mut catalogue = Self::new(sort);
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
        self.index.entry(name.clone()).or_insert(self.entries.len());
        self.entries.push((name, node, value));
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
        if !desk.log.is_full() {
            let nearest = nearest(name, self.names()).map(str::to_owned);
            let known = self.names().map(str::to_owned).collect();
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
