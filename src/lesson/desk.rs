//! The tools of checking: read a text, hold it against its bounds. Each tool logs what
//! it refuses and gives `None`; who calls goes on with the rest.

use super::field::{Field, Written};
use super::legible::{Days, Legible, Minutes, Percentage};
use super::problem::{Problem, ProblemKind};
use super::source::Place;
use super::tree::{Log, NodeId, Tree};
use super::unseen::Unseen;
use crate::quantity::{Area, Length, Mass, MassDensity, Money, Volume};
use rust_decimal::prelude::ToPrimitive;

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

    /// The lower end.
    pub(super) fn low(&self) -> f64 {
        self.low
    }

    /// The upper end.
    pub(super) fn high(&self) -> f64 {
        self.high
    }

    /// How people say it.
    pub(super) fn words(&self) -> &'static str {
        self.words
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
    /// What nobody could look into.
    pub(super) unseen: &'t Unseen,
}

impl Desk<'_> {
    /// Whether more may be said of what this node belongs to, where nobody could look.
    pub(super) fn may_say_more(&self, node: NodeId) -> bool {
        let path = self.tree.path(node);
        path.first().is_some_and(|section| self.unseen.hides(section))
            || path.get(1).is_some_and(|name| self.unseen.holds(name))
    }

    /// Whether a key of this node was told to be a slip of the finger for `key`.
    pub(super) fn is_misspelt(&self, parent: NodeId, key: &str) -> bool {
        let path = self.tree.path(parent);
        self.log.any(|problem| match &problem.kind {
            ProblemKind::UnknownKey { nearest, .. } => {
                nearest.as_deref() == Some(key)
                    && problem.path.split_last().is_some_and(|(_, above)| *above == path)
            }
            _ => false,
        })
    }

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
        // A slip of the finger is told once: as the key that is not known.
        if self.may_say_more(parent) || self.is_misspelt(parent, key) {
            return;
        }
        let mut path = self.tree.path(parent);
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
