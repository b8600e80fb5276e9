//! From what the types say to what an editor reads.

use super::super::keys::Examples;
use super::wrap::not_nothing;
use super::{FileKind, properties};
use serde_json::{Map, Value, json};

/// Longest example that an editor shows beside a key, in letters of JSON.
const SHORT: usize = 90;
/// Most examples of one key.
const FEW: usize = 3;

/// Puts the examples of the lesson by example, and what comes with the program, beside the keys.
pub(super) fn with_examples(schema: &mut Value, kind: FileKind) {
    let examples = Examples::of(kind);
    beside(schema, &[&examples.value]);
}

/// Examples of a part of the schema, taken from parts of a file that stand there.
fn beside(schema: &mut Value, parts: &[&Value]) {
    let mut short: Vec<Value> = Vec::new();
    for part in parts {
        let is_short = part.to_string().chars().count() <= SHORT;
        if is_short && !short.contains(part) && short.len() < FEW {
            short.push((*part).clone());
        }
    }
    if let Value::Object(inner) = &mut *schema
        && inner.contains_key("description")
        && !inner.contains_key("examples")
        && !short.is_empty()
    {
        inner.insert("examples".to_owned(), Value::Array(short));
    }
    if let Some(Value::Object(keys)) = schema.get_mut("properties") {
        for (key, below) in keys {
            let parts: Vec<&Value> = parts.iter().filter_map(|part| part.get(key)).collect();
            beside(below, &parts);
        }
    }
    if let Some(below) = schema.get_mut("additionalProperties") {
        let all = parts.iter().filter_map(|part| part.as_object());
        beside(below, &all.flat_map(Map::values).collect::<Vec<_>>());
    }
    if let Some(below) = schema.get_mut("items") {
        let all = parts.iter().filter_map(|part| part.as_array());
        beside(below, &all.flatten().collect::<Vec<_>>());
    }
    if let Some(Value::Array(choices)) = schema.get_mut("anyOf") {
        choices.iter_mut().for_each(|choice| beside(choice, parts));
    }
}

/// Keys that must be there and no others; limits in words; without the notes for `explain`.
pub(super) fn for_editors(schema: &mut Value) {
    let needed: Vec<Value> = properties(schema)
        .into_iter()
        .flatten()
        .filter(|(_, below)| below.get("needed").is_some_and(|needed| needed == "always"))
        .map(|(key, _)| key.as_str().into())
        .collect();
    if let Value::Object(inner) = &mut *schema {
        if inner.contains_key("properties") {
            inner.insert("additionalProperties".to_owned(), false.into());
            inner.remove("required");
            if !needed.is_empty() {
                inner.insert("required".to_owned(), json!(needed));
            }
        }
        inner.remove("needed");
        if let Some(Value::String(limits)) = inner.remove("limits") {
            let said = inner.get("description").and_then(Value::as_str).unwrap_or_default();
            let said = format!("{said} Allowed: {limits}.").trim_start().to_owned();
            inner.insert("description".to_owned(), said.into());
        }
    }
    if let Some(Value::Object(keys)) = schema.get_mut("properties") {
        for (key, below) in keys {
            if needed.iter().any(|needed| needed == key) {
                not_nothing(below);
            }
            for_editors(below);
        }
    }
    for inner in ["additionalProperties", "items"] {
        if let Some(below) = schema.get_mut(inner) {
            for_editors(below);
        }
    }
    for choice in ["anyOf", "oneOf"] {
        if let Some(Value::Array(choices)) = schema.get_mut(choice) {
            choices.iter_mut().for_each(for_editors);
        }
    }
}
