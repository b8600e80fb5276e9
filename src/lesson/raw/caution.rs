//! Safety notes, and when they are printed.

use super::super::field::{At, Field, Items, Written};
use super::super::limits;
use super::super::model::{Practice, Sign};
use super::super::schema::{one_key, within};
use schemars::JsonSchema;
use serde::Deserialize;

/// A safety note.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::lesson) struct Caution {
    /// The drawn sign beside it.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) sign: Field<Sign>,
    /// What to do, in a few words.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) heading: Field<Written<String>>,
    /// Why, in a sentence or two.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) reason: Field<Written<String>>,
    /// Where it comes from.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) source: Field<Written<String>>,
    /// When it is printed: "always", or for one of doing, younger than, pigments.
    #[schemars(extend("needed" = "once"))]
    pub(in crate::lesson) when: Field<At<When>>,
}

/// When a safety note is printed.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename = "puddlebook: by form")]
#[schemars(rename = "When", untagged)]
pub(in crate::lesson) enum When {
    #[serde(rename = "text")]
    Word(Always),
    #[serde(rename = "mapping")]
    Rule(Occasion),
}

/// The one word for it.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(in crate::lesson) enum Always {
    /// In every lesson.
    Always,
}

/// Exactly one of these.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(transform = one_key)]
pub(in crate::lesson) struct Occasion {
    /// Where one of these is done.
    pub(in crate::lesson) doing: Field<Items<Practice>>,
    /// Where the youngest student is younger than this.
    #[serde(rename = "younger than")]
    #[schemars(transform = within(limits::AGE))]
    pub(in crate::lesson) younger_than: Field<Written<u32>>,
    /// Where a paint has one of these pigments on its label.
    pub(in crate::lesson) pigments: Field<Items<Written<String>>>,
}
