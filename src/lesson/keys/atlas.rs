//! All keys of a kind of file with their places, read off the schema.

use super::super::schema::{self, FileKind, properties};
use serde_json::Value;

/// A step from the top of a file down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Step {
    Key(String),
    /// A name of one's own.
    Name,
    /// A place in a list.
    Item,
}

impl Step {
    /// How a path shows it.
    pub(super) fn shown(&self) -> Option<String> {
        match self {
            Self::Key(key) => Some(key.clone()),
            Self::Name => Some("NAME".to_owned()),
            Self::Item => None,
        }
    }
}

/// A key and what the schema says of it.
#[derive(Debug, Clone)]
pub(super) struct Known {
    pub(super) path: Vec<Step>,
    pub(super) schema: Value,
}

impl Known {
    /// The key itself.
    pub(super) fn name(&self) -> Option<&str> {
        match self.path.last() {
            Some(Step::Key(key)) => Some(key),
            _ => None,
        }
    }

    pub(super) fn meaning(&self) -> &str {
        self.schema.get("description").and_then(Value::as_str).unwrap_or_default()
    }

    /// How far its value may go, in whichever form it has.
    pub(super) fn limits(&self) -> Option<String> {
        let choices = self.schema.get("anyOf").and_then(Value::as_array).into_iter().flatten();
        let mut all = [&self.schema].into_iter().chain(choices);
        all.find_map(|schema| schema.get("limits")?.as_str()).map(str::to_owned)
    }

    pub(super) fn is_needed(&self) -> bool {
        self.schema.get("needed").is_some()
    }

    /// Whether it stands in a section of one of these keys.
    pub(super) fn is_in(&self, sections: &[&str]) -> bool {
        matches!(self.path.first(), Some(Step::Key(key)) if sections.contains(&key.as_str()))
    }

    /// Whether it is one of the next keys below another one.
    pub(super) fn is_below(&self, other: &Self) -> bool {
        let rest = self.path.strip_prefix(other.path.as_slice());
        rest.is_some_and(|rest| {
            rest.iter().filter(|step| matches!(step, Step::Key(_))).count() == 1
        })
    }
}

/// Every key of a kind of file.
pub(super) fn of(kind: FileKind) -> Vec<Known> {
    let mut all = Vec::new();
    walk(&schema::bare(kind), &mut Vec::new(), &mut all);
    all
}

fn walk(schema: &Value, path: &mut Vec<Step>, all: &mut Vec<Known>) {
    let mut down = |step: Step, below: &Value, is_key: bool, all: &mut Vec<Known>| {
        path.push(step);
        if is_key {
            all.push(Known { path: path.clone(), schema: below.clone() });
        }
        walk(below, path, all);
        path.pop();
    };
    for (key, below) in properties(schema).into_iter().flatten() {
        down(Step::Key(key.clone()), below, true, all);
    }
    if let Some(below) = schema.get("additionalProperties").filter(|below| below.is_object()) {
        down(Step::Name, below, false, all);
    }
    if let Some(below) = schema.get("items") {
        down(Step::Item, below, false, all);
    }
    for choice in choices(schema) {
        walk(choice, path, all);
    }
}

fn choices(schema: &Value) -> impl Iterator<Item = &Value> {
    schema.get("anyOf").and_then(Value::as_array).into_iter().flatten()
}

/// The forms that a value may have, in words.
pub(super) fn forms(schema: &Value) -> Vec<String> {
    let inner = |schema: &Value| forms(schema).join(", or ");
    let several: Vec<String> = choices(schema).flat_map(forms).collect();
    if !several.is_empty() {
        return several;
    }
    let form = if let Some(title) = schema.get("title").and_then(Value::as_str) {
        title.to_owned()
    } else if schema.get("oneOf").is_some() {
        "one of the words below".to_owned()
    } else if let Some(word) = schema.get("const").and_then(Value::as_str) {
        format!("the word \"{word}\"")
    } else if properties(schema).is_some() {
        "the keys below".to_owned()
    } else if let Some(below) = schema.get("additionalProperties") {
        format!("names, each with {}", inner(below))
    } else if let Some(below) = schema.get("items") {
        format!("a list, each of its parts {}", inner(below))
    } else {
        return Vec::new();
    };
    vec![form]
}

/// The words to choose from, with what each means.
pub(super) fn words(schema: &Value) -> Vec<(String, String)> {
    let one_of = schema.get("oneOf").and_then(Value::as_array).into_iter().flatten();
    let named = one_of.filter_map(|word| {
        let said = word.get("description").and_then(Value::as_str).unwrap_or_default();
        Some((word.get("const")?.as_str()?.to_owned(), said.to_owned()))
    });
    let mut words: Vec<_> = named.collect();
    if let Some(below) = schema.get("items") {
        words.extend(self::words(below));
    }
    words.extend(choices(schema).flat_map(self::words));
    words
}
