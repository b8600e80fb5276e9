//! How a single value is written: for each thing that a text may say, a schema with a title for
//! people and a pattern for editors.

use super::super::legible::{Days, DropRate, Minutes, Percentage, Portion, Swatch};
use super::super::limits;
use super::super::model::{Amount, ServiceLevel};
use crate::quantity::pattern::{lasting, measured, number, numeral, with_unit};
use crate::quantity::{
    Area, Currency, Date, Dimension, Length, Mass, MassDensity, Money, Share, Time, Volume,
};
use schemars::{Schema, json_schema};

/// Something that one text says, and how it is written.
pub(in crate::lesson) trait Formed {
    /// The schema of the text. YAML may have made a number of it.
    fn schema() -> Schema;
}

macro_rules! formed {
    ($($kind:ty => $schema:expr),* $(,)?) => {
        $(impl Formed for $kind {
            fn schema() -> Schema {
                $schema
            }
        })*
    };
}

formed! {
    String => text(),
    u32 => counted("a whole number"),
    f64 => json_schema!({
        "title": "a number, such as 2, 0.5 or 1/2",
        "type": ["number", "string"],
        "pattern": number(),
    }),
    Money => json_schema!({
        "title": "a sum of money without a sign, such as 6.49",
        "type": ["number", "string"],
        "minimum": 0,
        "pattern": number(),
    }),
    Length => quantity("a length with its unit, such as 10 in, 1 1/2 in or 30 cm", &[Dimension::Length]),
    Area => quantity("an area with its unit, such as 3 m² or 30 ft²", &[Dimension::Area]),
    Volume => quantity("a volume with its unit, such as 8 fl oz or 250 mL", &[Dimension::Volume]),
    Mass => quantity("a weight with its unit, such as 40 g or 8 oz", &[Dimension::Mass]),
    MassDensity => quantity("a density, such as 1.2 g/mL", &[Dimension::Density]),
    Days => quantity("a number of days, such as 14 days or 2 weeks", &[Dimension::Days]),
    Percentage => quantity("a percentage, such as 15 %", &[Dimension::Share]),
    Share => quantity("a share, such as 40 %", &[Dimension::Share]),
    Amount => quantity(
        "an amount with its unit, such as 8 fl oz, 500 g or 100 pieces",
        &[Dimension::Volume, Dimension::Mass, Dimension::Pieces],
    ),
    Minutes => zero_or("a length of time, such as 15 min or 1 h 30 min", &lasting()),
    Portion => written(
        "a share, such as 40 %, or: the rest",
        &format!("^\\s*(?:(?:the )?rest|{})\\s*$", with_unit(&[Dimension::Share])),
    ),
    ServiceLevel => written(
        "so many classes out of so many, or a percentage",
        &format!("\\bof\\b|^\\s*{}\\s*$", with_unit(&[Dimension::Share])),
    ),
    DropRate => written(
        "so many drops to a volume, such as 3 per 100 mL",
        &format!("^\\s*{}(?: drops?)*\\s* per \\s*{}\\s*$", numeral(), with_unit(&[Dimension::Volume])),
    ),
    Date => written("a day, year-month-day, such as 2026-03-14", "^[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])$"),
    Time => written(
        "a time of the day, such as 18:30 or 6:30 pm",
        TIME,
    ),
    Swatch => written(
        "a colour of the screen in quotes, such as \"#1F5A7A\"",
        "^\\s*#[0-9A-Fa-f]{6}\\s*$",
    ),
    Currency => json_schema!({
        "title": "a currency in three letters (ISO 4217), such as USD or EUR",
        "type": "string",
        "enum": currencies(),
    }),
}

/// `18:30`, or a time of half a day.
const TIME: &str = "^\\s*(?:(?:[01]?[0-9]|2[0-3]):[0-5][0-9]|(?:0?[1-9]|1[0-2])(?::[0-5][0-9])?\\s*\
                    (?:[aApP][mM]|[aApP]\\.[mM]\\.))\\s*$";

/// Any text; YAML may have made a number or a yes of it.
fn text() -> Schema {
    json_schema!({
        "title": "text",
        "type": ["string", "number", "boolean"],
        // A byte-order mark is white space to editors, and a letter like any other here.
        "pattern": "[\\S\\uFEFF]",
        "maxLength": limits::TEXT_LETTERS,
    })
}

fn counted(title: &str) -> Schema {
    json_schema!({
        "title": title,
        "type": ["integer", "string"],
        "pattern": number(),
    })
}

/// A number with a unit, which only a zero may lack.
fn quantity(title: &str, wanted: &[Dimension]) -> Schema {
    zero_or(title, &measured(wanted))
}

fn zero_or(title: &str, pattern: &str) -> Schema {
    json_schema!({
        "title": title,
        "type": ["string", "integer"],
        "minimum": 0,
        "maximum": 0,
        "pattern": pattern,
        "patternErrorMessage": format!("This should be {title}."),
    })
}

fn written(title: &str, pattern: &str) -> Schema {
    json_schema!({
        "title": title,
        "type": "string",
        "pattern": pattern,
        "patternErrorMessage": format!("This should be {title}."),
    })
}

/// The codes of all currencies that can be spent.
fn currencies() -> Vec<&'static str> {
    let all = (1..1_000).filter_map(Currency::from_numeric);
    let mut codes: Vec<_> =
        all.filter(|known| known.exponent().is_some()).map(|known| known.code()).collect();
    codes.sort_unstable();
    codes.dedup();
    codes
}
