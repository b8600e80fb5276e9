//! The shared vocabulary of the house: measured quantities, money, shares, how
//! they are read from what people write and how they are shown to people.
//!
//! In: text. Out: quantities; and from quantities, text again. This room knows
//! nothing of lessons, paint or paper. Amounts are kept at full precision and
//! rounded in one place only, [`show`].

mod apportion;
mod coin;
mod misread;
mod money;
pub mod nearest;
mod notation;
mod number;
pub mod pattern;
pub mod read;
mod share;
pub mod show;
mod spread;
mod time;
mod unit;
pub mod units;

pub use apportion::whole_parts;
pub use coin::Coin;
pub use iso_currency::Currency;
pub use jiff::civil::{Date, Time};
pub use misread::{Dimension, Misread, MisreadKind};
pub use money::Money;
pub use notation::{CurrencySign, DecimalMark, Notation};
pub use rust_decimal::Decimal;
pub use share::Share;
pub use spread::Spread;
pub use uom::si::f64::{
    Acceleration, Angle, AngularVelocity, Area, DynamicViscosity, Frequency, Length, Mass,
    MassDensity, Time as Duration, Velocity, Volume,
};

/// Which family of units comes first on the paper; the other follows in brackets
/// where a student may need it.
#[derive(
    Debug,
    Clone,
    Copy,
    PartialEq,
    Eq,
    Hash,
    schemars::JsonSchema,
    serde::Serialize,
    serde::Deserialize,
)]
#[serde(rename_all = "lowercase")]
pub enum UnitSystem {
    /// Inches, US fluid ounces; grams on the scale all the same.
    Us,
    /// Centimetres, millilitres, grams.
    Metric,
}
