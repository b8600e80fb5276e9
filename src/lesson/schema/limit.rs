//! How far a value may go, and which keys go together.

use super::super::desk::Bounds;
use super::super::model::Concern;
use schemars::Schema;
use serde_json::{Value, json};

/// A value inside bounds. Editors hold a plain number against them; of a number with a unit they
/// can only tell.
pub(in crate::lesson) fn within(bounds: Bounds) -> impl FnMut(&mut Schema) {
    move |schema: &mut Schema| {
        schema.insert("limits".to_owned(), bounds.words().into());
        let is_number = |kind: &Value| kind == "integer" || kind == "number";
        let types = schema.get("type").and_then(Value::as_array);
        let plain = types.is_some_and(|types| types.iter().any(is_number));
        // A number with a unit is plain only when it is zero.
        if plain && schema.get("maximum").is_none() {
            schema.insert("minimum".to_owned(), plainest(bounds.low()));
            schema.insert("maximum".to_owned(), plainest(bounds.high()));
        }
    }
}

/// A whole number without a point.
fn plainest(value: f64) -> Value {
    if value.fract() == 0.0 { json!(value as i64) } else { json!(value) }
}

/// The sizes that each shape of canvas has, and those that it cannot have.
pub(in crate::lesson) fn sizes_by_shape(schema: &mut Schema) {
    const SIZES: [&str; 7] =
        ["width", "height", "diameter", "sides", "side", "across flats", "across corners"];
    let rule = |shape: &str, needed: &[&str], others: &[&str]| {
        let refused = SIZES.iter().filter(|key| !needed.contains(key) && !others.contains(key));
        let refused: serde_json::Map<String, Value> =
            refused.map(|key| ((*key).to_owned(), false.into())).collect();
        json!({
            "if": {"properties": {"shape": {"const": shape}}, "required": ["shape"]},
            "then": {"required": needed, "properties": refused},
        })
    };
    let rules = [
        rule("rectangle", &["width", "height"], &[]),
        rule("oval", &["width", "height"], &[]),
        rule("round", &["diameter"], &[]),
        rule("polygon", &["sides"], &["side", "across flats", "across corners"]),
    ];
    schema.insert("allOf".to_owned(), json!(rules));
}

/// The names under which a lesson accepts what a colleague would say.
pub(in crate::lesson) fn named_concerns(schema: &mut Schema) {
    let names: Vec<&str> = Concern::ALL.into_iter().map(Concern::word).collect();
    schema.insert("propertyNames".to_owned(), json!({"enum": names}));
}

/// Exactly one of the keys.
pub(in crate::lesson) fn one_key(schema: &mut Schema) {
    // A key with nothing after it counts as none for the program, but not for an editor.
    schema.insert("minProperties".to_owned(), 1.into());
}
