//! What the parts that raw types are made of add to a schema.

use super::super::field::{At, Entries, Field, Items, Written};
use super::super::limits;
use super::form::Formed;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};
use std::borrow::Cow;

/// A name is only asked for where there are references, and there are none.
const NAME: &str = "value";

impl<T: Formed> JsonSchema for Written<T> {
    fn schema_name() -> Cow<'static, str> {
        NAME.into()
    }

    fn schema_id() -> Cow<'static, str> {
        std::any::type_name::<Self>().into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        T::schema()
    }
}

impl<T: JsonSchema> JsonSchema for At<T> {
    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn schema_id() -> Cow<'static, str> {
        std::any::type_name::<Self>().into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        generator.subschema_for::<T>()
    }
}

impl<T: JsonSchema> JsonSchema for Field<T> {
    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn schema_id() -> Cow<'static, str> {
        std::any::type_name::<Self>().into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut schema = generator.subschema_for::<T>();
        or_nothing(&mut schema);
        schema
    }
}

impl<T: JsonSchema> JsonSchema for Entries<T> {
    fn schema_name() -> Cow<'static, str> {
        NAME.into()
    }

    fn schema_id() -> Cow<'static, str> {
        std::any::type_name::<Self>().into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "object",
            "additionalProperties": generator.subschema_for::<T>(),
            "propertyNames": {"maxLength": limits::NAME_LETTERS},
        })
    }
}

impl<T: JsonSchema> JsonSchema for Items<T> {
    fn schema_name() -> Cow<'static, str> {
        NAME.into()
    }

    fn schema_id() -> Cow<'static, str> {
        std::any::type_name::<Self>().into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({"type": "array", "items": generator.subschema_for::<T>()})
    }
}

/// A key with nothing after it is as good as none.
fn or_nothing(schema: &mut Schema) {
    for choice in ["anyOf", "oneOf"] {
        if let Some(Value::Array(choices)) = schema.get_mut(choice) {
            choices.push(json!({"type": "null"}));
            return;
        }
    }
    if let Some(Value::Array(words)) = schema.get_mut("enum") {
        words.push(Value::Null);
    }
    match schema.get_mut("type") {
        Some(Value::Array(types)) => types.push("null".into()),
        Some(one) => *one = json!([one.clone(), "null"]),
        None => {}
    }
}

/// The opposite of [`or_nothing`].
pub(super) fn not_nothing(schema: &mut Value) {
    for choice in ["anyOf", "oneOf", "enum", "type"] {
        if let Some(Value::Array(choices)) = schema.get_mut(choice) {
            choices.retain(|choice| {
                !choice.is_null() && choice != "null" && *choice != json!({"type": "null"})
            });
        }
    }
}
