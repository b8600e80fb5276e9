//! Nodes to serde types. The types say which keys there are and of which form; what
//! does not fit goes to the log, all of it, and the rest is read on.

use super::field;
use super::limits;
use super::problem::{Form, Problem, ProblemKind};
use super::tree::{Content, Log, NodeId, Tree};
use crate::quantity::nearest::nearest;
use serde::de::value::StrDeserializer;
use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, IntoDeserializer, MapAccess, SeqAccess,
    VariantAccess, Visitor,
};
use std::collections::BTreeSet;
use std::fmt;

/// A node on its way to a type.
#[derive(Clone, Copy)]
pub(super) struct Cursor<'t> {
    pub(super) tree: &'t Tree,
    pub(super) log: &'t Log,
    pub(super) id: NodeId,
}

/// What does not fit; already in the log.
#[derive(Debug)]
pub(super) struct Refused(String);

impl fmt::Display for Refused {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.0)
    }
}

impl std::error::Error for Refused {}

impl de::Error for Refused {
    fn custom<T: fmt::Display>(message: T) -> Self {
        Self(message.to_string())
    }
}

impl<'t> Cursor<'t> {
    fn content(&self) -> Option<&'t Content> {
        self.tree.get(self.id).map(|node| &node.content)
    }

    fn at(&self, id: NodeId) -> Self {
        Self { id, ..*self }
    }

    /// Logs a problem of this node.
    fn refuse(&self, kind: ProblemKind) -> Refused {
        let (place, path) = (self.tree.place(self.id), self.tree.path(self.id));
        self.log.add(Problem { place, path, kind, also: None });
        Refused("not as wanted".to_owned())
    }

    fn wrong_form(&self, wanted: &[Form], keys: &'static [&'static str]) -> Refused {
        let key = self.tree.nearest_key(self.id).to_owned();
        if self.tree.is_empty(self.id) {
            return self.refuse(ProblemKind::Empty { key, keys });
        }
        let Some(found) = self.tree.form(self.id) else {
            return Refused("told already".to_owned());
        };
        self.refuse(ProblemKind::WrongForm { key, wanted: wanted.to_vec(), found, keys })
    }

    fn text(&self) -> Result<&'t str, Refused> {
        match self.content() {
            Some(Content::Text { text, empty: false, .. }) => Ok(text),
            _ => Err(self.wrong_form(&[Form::Text], &[])),
        }
    }

    fn list(&self) -> Result<Cursors<'t>, Refused> {
        match self.content() {
            Some(Content::List(items)) => Ok(Cursors::over(*self, items.clone())),
            _ => Err(self.wrong_form(&[Form::List], &[])),
        }
    }

    fn mapping(&self, keys: &'static [&'static str]) -> Result<Cursors<'t>, Refused> {
        match self.content() {
            Some(Content::Mapping(items)) => Ok(Cursors::over(*self, items.clone())),
            _ => Err(self.wrong_form(&[Form::Mapping], keys)),
        }
    }

    /// Whether a key is among those of a type; logs it when not.
    fn knows(&self, child: NodeId, known: &'static [&'static str]) -> bool {
        let key = self.tree.key(child).unwrap_or_default();
        if known.contains(&key) {
            return true;
        }
        let told = key.chars().count() > limits::NAME_LETTERS || self.tree.form(child).is_none();
        if !told && !self.log.is_full() {
            let nearest = nearest(key, known.iter().copied());
            unknown_key(self.tree, self.log, child, (nearest, known));
        }
        false
    }

    /// The variant of a choice between forms that fits this node.
    fn form(&self, wanted: &'static [&'static str]) -> Result<&'static str, Refused> {
        let forms = [(field::TEXT, Form::Text), (field::LIST, Form::List)];
        let forms = forms.into_iter().chain([(field::MAPPING, Form::Mapping)]);
        let forms: Vec<_> = forms.filter(|(name, _)| wanted.contains(name)).collect();
        let found = self.tree.form(self.id);
        let fits = forms.iter().find(|(_, form)| Some(*form) == found);
        let fits = fits.filter(|_| !self.tree.is_empty(self.id));
        fits.map(|(name, _)| *name).ok_or_else(|| {
            self.wrong_form(&forms.iter().map(|(_, form)| *form).collect::<Vec<_>>(), &[])
        })
    }
}

impl<'de> Deserializer<'de> for Cursor<'_> {
    type Error = Refused;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        match self.content() {
            Some(Content::List(_)) => visitor.visit_seq(self.list()?),
            Some(Content::Mapping(_)) => visitor.visit_map(self.mapping(&[])?),
            _ => visitor.visit_str(self.text()?),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        if self.tree.is_empty(self.id) { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        visitor.visit_seq(self.list()?)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        visitor.visit_map(self.mapping(&[])?)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refused> {
        let mut entries = self.mapping(fields)?;
        // Of a key that stands there twice the first counts; the second is in the log.
        let mut seen = BTreeSet::new();
        entries
            .ids
            .retain(|child| seen.insert(self.tree.key(*child)) && self.knows(*child, fields));
        visitor.visit_map(entries)
    }

    /// The types of [`field`] ask for the node beside the value.
    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        _length: usize,
        visitor: V,
    ) -> Result<V::Value, Refused> {
        if name == field::WRITTEN {
            self.text()?;
        }
        visitor.visit_seq(WithNode { cursor: self, given: 0 })
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refused> {
        if name == field::BY_FORM {
            let variant = self.form(variants)?;
            return visitor.visit_enum(Choice { cursor: self, variant });
        }
        let word = self.text()?;
        let Some(variant) = variants.iter().find(|variant| **variant == word) else {
            let nearest = nearest(word, variants.iter().copied()).map(str::to_owned);
            let (word, known) = (word.to_owned(), variants);
            return Err(self.refuse(ProblemKind::UnknownWord { word, nearest, known }));
        };
        visitor.visit_enum(Choice { cursor: self, variant })
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        visitor.visit_unit()
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf
        unit unit_struct newtype_struct tuple identifier
    }
}

/// Logs a key that is not among the known ones, with the nearest of them.
pub(super) fn unknown_key(
    tree: &Tree,
    log: &Log,
    child: NodeId,
    (nearest, known): (Option<&str>, &'static [&'static str]),
) {
    let (key, nearest) =
        (tree.key(child).unwrap_or_default().to_owned(), nearest.map(str::to_owned));
    let kind = ProblemKind::UnknownKey { key, nearest, known };
    let (place, path) = (tree.key_place(child), tree.path(child));
    log.add(Problem { place, path, kind, also: None });
}

/// The values of a list or mapping, one after the other.
struct Cursors<'t> {
    parent: Cursor<'t>,
    ids: Vec<NodeId>,
    next: usize,
}

impl<'t> Cursors<'t> {
    fn over(parent: Cursor<'t>, ids: Vec<NodeId>) -> Self {
        Self { parent, ids, next: 0 }
    }

    fn advance(&mut self) -> Option<Cursor<'t>> {
        let id = self.ids.get(self.next).copied()?;
        self.next += 1;
        Some(self.parent.at(id))
    }
}

impl<'de> SeqAccess<'de> for Cursors<'_> {
    type Error = Refused;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Refused> {
        self.advance().map(|cursor| seed.deserialize(cursor)).transpose()
    }
}

impl<'de> MapAccess<'de> for Cursors<'_> {
    type Error = Refused;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Refused> {
        let Some(id) = self.ids.get(self.next) else { return Ok(None) };
        let key: StrDeserializer<'_, Refused> =
            self.parent.tree.key(*id).unwrap_or_default().into_deserializer();
        seed.deserialize(key).map(Some)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Refused> {
        let cursor = self.advance().ok_or_else(|| Refused("no value".to_owned()))?;
        seed.deserialize(cursor)
    }
}

/// The number of a node, then the node.
struct WithNode<'t> {
    cursor: Cursor<'t>,
    given: usize,
}

impl<'de> SeqAccess<'de> for WithNode<'_> {
    type Error = Refused;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Refused> {
        self.given += 1;
        match self.given {
            1 => seed.deserialize(self.cursor.id.0.into_deserializer()).map(Some),
            2 => seed.deserialize(self.cursor).map(Some),
            _ => Ok(None),
        }
    }
}

/// A word of a choice, or a choice by form with what it holds.
struct Choice<'t> {
    cursor: Cursor<'t>,
    variant: &'static str,
}

impl<'de, 't> EnumAccess<'de> for Choice<'t> {
    type Error = Refused;
    type Variant = Cursor<'t>;

    fn variant_seed<V: DeserializeSeed<'de>>(
        self,
        seed: V,
    ) -> Result<(V::Value, Cursor<'t>), Refused> {
        let name: StrDeserializer<'_, Refused> = self.variant.into_deserializer();
        Ok((seed.deserialize(name)?, self.cursor))
    }
}

impl<'de> VariantAccess<'de> for Cursor<'_> {
    type Error = Refused;

    fn unit_variant(self) -> Result<(), Refused> {
        Ok(())
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Refused> {
        seed.deserialize(self)
    }

    fn tuple_variant<V: Visitor<'de>>(
        self,
        _length: usize,
        visitor: V,
    ) -> Result<V::Value, Refused> {
        self.deserialize_any(visitor)
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refused> {
        self.deserialize_struct("", fields, visitor)
    }
}
