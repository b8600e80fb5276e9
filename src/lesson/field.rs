//! The parts that raw types are made of. None of them fails for what a file says:
//! what does not fit is in the log, and the value is marked broken, so that one
//! reading finds every problem.

use super::tree::NodeId;
use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use std::fmt;
use std::marker::PhantomData;

/// Names by which [`super::decode`] knows what a type asks for.
pub(super) const WRITTEN: &str = "puddlebook: a text and its node";
const AT: &str = "puddlebook: a value and its node";
/// An enum of this name chooses its variant by the form of the value.
pub(super) const BY_FORM: &str = "puddlebook: by form";
pub(super) const TEXT: &str = "text";
pub(super) const LIST: &str = "list";
pub(super) const MAPPING: &str = "mapping";

/// A value under a key that may be missing.
#[derive(Debug)]
pub(super) enum Field<T> {
    /// The key is not there, or nothing stands after it.
    Absent,
    /// What stands there is no `T`; the log says why.
    Broken,
    Present(T),
}

/// A value and the node it came from.
#[derive(Debug)]
pub(super) struct At<T> {
    pub(super) node: NodeId,
    pub(super) value: T,
}

/// A text that is to be read as a `T`.
#[derive(Debug)]
pub(super) struct Written<T> {
    pub(super) node: NodeId,
    pub(super) text: String,
    as_a: PhantomData<T>,
}

/// A mapping whose keys are names, in the order of the file.
#[derive(Debug)]
pub(super) struct Entries<T>(pub(super) Vec<Entry<T>>);

/// A list; an item is `None` when it is broken.
#[derive(Debug)]
pub(super) struct Items<T>(pub(super) Vec<At<Option<T>>>);

/// A name and what stands under it.
#[derive(Debug)]
pub(super) struct Entry<T> {
    pub(super) name: String,
    pub(super) node: NodeId,
    /// `None` when it is broken.
    pub(super) value: Option<T>,
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Field<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_option(FieldVisitor(PhantomData))
    }
}

struct FieldVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for FieldVisitor<T> {
    type Value = Field<T>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a value")
    }

    fn visit_none<E: Error>(self) -> Result<Field<T>, E> {
        Ok(Field::Absent)
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Field<T>, D::Error> {
        Ok(T::deserialize(deserializer).map_or(Field::Broken, Field::Present))
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for At<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (node, value) = deserializer.deserialize_tuple_struct(AT, 2, Pair(PhantomData))?;
        Ok(Self { node, value })
    }
}

impl<'de, T> Deserialize<'de> for Written<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (node, text) = deserializer.deserialize_tuple_struct(WRITTEN, 2, Pair(PhantomData))?;
        Ok(Self { node, text, as_a: PhantomData })
    }
}

/// The number of a node, then a value.
struct Pair<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Pair<T> {
    type Value = (NodeId, T);

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a node and its value")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut pair: A) -> Result<(NodeId, T), A::Error> {
        let node = pair.next_element()?.ok_or_else(|| A::Error::invalid_length(0, &self))?;
        let value = pair.next_element()?.ok_or_else(|| A::Error::invalid_length(1, &self))?;
        Ok((NodeId(node), value))
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Entries<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(EntriesVisitor(PhantomData))
    }
}

struct EntriesVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for EntriesVisitor<T> {
    type Value = Entries<T>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("names with their values")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Entries<T>, A::Error> {
        let mut entries = Vec::new();
        while let Some((name, At { node, value })) = map.next_entry::<String, At<Tried<T>>>()? {
            entries.push(Entry { name, node, value: value.0 });
        }
        Ok(Entries(entries))
    }
}

/// A value, or nothing where it does not fit. Unlike [`Field`], nothing written is a
/// problem: a name must say something.
struct Tried<T>(Option<T>);

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Tried<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(Self(T::deserialize(deserializer).ok()))
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Items<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let items: Vec<At<Tried<T>>> = Vec::deserialize(deserializer)?;
        let items = items.into_iter().map(|At { node, value }| At { node, value: value.0 });
        Ok(Self(items.collect()))
    }
}
