//! What may stand in a file, as a JSON Schema for editors: made from the types that read it.
//!
//! The raw types say which keys there are and what they mean, [`form`] how a single value is
//! written, [`wrap`] what the parts of [`super::field`] add, [`limit`] how far a value may go.
//! [`finish`] makes of it what an editor reads; [`super::keys`] explains it to people.

mod finish;
mod form;
mod limit;
mod wrap;

pub(super) use limit::{named_concerns, one_key, sizes_by_shape, within};

use super::model::Language;
use super::{defaults, raw, weighings};
use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde_json::{Map, Value};

/// Kinds of file that a teacher writes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileKind {
    /// One class, from its title to its canvases.
    Lesson,
    /// What several lessons share; also `films.yaml`, which is learned.
    Data,
    /// The cups of one class, weighed.
    Weighings,
}

impl FileKind {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::Lesson, Self::Data, Self::Weighings];
}

/// The JSON Schema (draft 7) of a kind of file. What the program reads fits it; what does not
/// fit, the program refuses as well.
pub fn schema(kind: FileKind) -> Value {
    let mut schema = bare(kind);
    finish::with_examples(&mut schema, kind);
    finish::for_editors(&mut schema);
    schema
}

/// As [`schema`], with the notes that `explain` needs: `needed`, `limits`.
pub(super) fn bare(kind: FileKind) -> Value {
    let mut schema = match kind {
        FileKind::Lesson => of::<raw::Lesson>(),
        FileKind::Data => data_of(of::<raw::Lesson>()),
        FileKind::Weighings => of::<weighings::raw::Class>(),
    };
    let title = match kind {
        FileKind::Lesson => "A lesson of puddlebook",
        FileKind::Data => "A data file of puddlebook",
        FileKind::Weighings => "Weighings for puddlebook",
    };
    if let Value::Object(schema) = &mut schema {
        schema.insert("title".to_owned(), title.into());
    }
    if kind != FileKind::Weighings {
        for (_, text) in defaults::files(Some(Language::English)) {
            with_defaults(&mut schema, &serde_yaml::from_str(text).unwrap_or_default());
        }
    }
    schema
}

/// Puts the values of a file that comes with the program beside their keys; what has names of
/// its own is no default of a key.
fn with_defaults(schema: &mut Value, file: &Value) {
    let Some(Value::Object(keys)) = schema.get_mut("properties") else { return };
    for (key, below) in keys {
        match file.get(key) {
            Some(value @ (Value::String(_) | Value::Number(_))) => {
                if let Value::Object(below) = below {
                    below.insert("default".to_owned(), value.clone());
                }
            }
            Some(inner) => with_defaults(below, inner),
            None => {}
        }
    }
}

/// Everything in its place, so that any editor can follow: no references.
fn of<T: JsonSchema>() -> Value {
    let settings = SchemaSettings::draft07().with(|settings| settings.inline_subschemas = true);
    settings.into_generator().into_root_schema_for::<T>().to_value()
}

/// The part of a lesson that may stand in a data file.
fn data_of(mut lesson: Value) -> Value {
    if let Value::Object(schema) = &mut lesson {
        let said = "What several lessons share: colours, price lists, stock, techniques and the \
                    like. Lessons name it under \"use\".";
        schema.insert("description".to_owned(), said.into());
        if let Some(Value::Object(keys)) = schema.get_mut("properties") {
            keys.retain(|key, _| raw::DATA_KEYS.contains(&key.as_str()));
        }
    }
    lesson
}

/// The properties of a schema of a mapping with keys of its own.
pub(super) fn properties(schema: &Value) -> Option<&Map<String, Value>> {
    schema.get("properties").and_then(Value::as_object)
}
