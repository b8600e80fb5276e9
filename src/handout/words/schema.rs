//! What may stand in a `words.yaml`, as a JSON Schema for editors.

use super::Words;
use schemars::generate::SchemaSettings;
use serde_json::Value;

/// The JSON Schema (draft 7) of a dictionary: any part of it may be left out, and the words that
/// `built_in` (a whole dictionary) has instead stand beside each key.
pub(in crate::handout) fn schema(built_in: &Value) -> Value {
    let settings = SchemaSettings::draft07().with(|settings| settings.inline_subschemas = true);
    let mut schema = settings.into_generator().into_root_schema_for::<Words>().to_value();
    if let Value::Object(schema) = &mut schema {
        schema.insert("title".to_owned(), "Words of puddlebook’s handouts".into());
        let said = "The words between numbers. A file of your own may hold single entries; names \
                    in braces are filled in.";
        schema.insert("description".to_owned(), said.into());
    }
    beside(&mut schema, Some(built_in));
    schema
}

/// Nothing is required; what holds without an entry is its default.
fn beside(schema: &mut Value, built_in: Option<&Value>) {
    let Value::Object(inner) = schema else { return };
    inner.remove("required");
    if let Some(Value::String(said)) = inner.get_mut("description")
        && said.starts_with("`{")
    {
        *said = format!("Filled in: {said}");
    }
    match inner.get_mut("properties") {
        Some(Value::Object(keys)) => {
            for (key, below) in keys {
                beside(below, built_in.and_then(|words| words.get(key)));
            }
        }
        _ => {
            if let Some(words) = built_in {
                inner.insert("default".to_owned(), words.clone());
            }
        }
    }
}
