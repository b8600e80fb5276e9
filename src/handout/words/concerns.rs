use schemars::JsonSchema;
use serde::Deserialize;

/// What a good colleague would say, a sentence each, for the lesson sheet.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ConcernWords {
    pub no_reserve: String,
    pub coarse_scale: String,
    pub drying_room: String,
    pub crowded_tables: String,
    pub early_finish: String,
    pub over_booking: String,
    pub late_delivery: String,
    pub over_budget: String,
    pub fee_too_low: String,
    pub no_price: String,
    pub heat_with_children: String,
    pub additives_with_children: String,
    pub flame_and_alcohol: String,
    pub colour_caution: String,
    pub old_jar: String,
    pub unused: String,
}
