//! How a language writes numbers and money. Units keep their symbols: those of the SI are the
//! same in every language (SI Brochure, 9th edition, 5.2), and CLDR has `in`, `ft²`, `fl oz` and
//! `gal` for Spanish too (Unicode CLDR, `es`, short units).

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Inside an amount that is kept on one line.
const NBSP: char = '\u{00A0}';

/// What parts whole from tenths. The SI allows either, as the language has it (SI Brochure,
/// 5.4.4).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum DecimalMark {
    #[default]
    Point,
    Comma,
}

impl DecimalMark {
    /// As it is written.
    pub fn sign(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }

    /// A number that was written with a point.
    pub fn put(self, number: String) -> String {
        match self {
            Self::Point => number,
            Self::Comma => number.replace('.', ","),
        }
    }
}

/// Where the sign of a currency stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum CurrencySign {
    /// `$6.49`, and `PLN 6.49` where the sign is letters.
    #[default]
    Before,
    /// `6,49 €`, as Spanish has it (Unicode CLDR, `es`: `#,##0.00 ¤`).
    After,
}

impl CurrencySign {
    /// A price: number and sign, or the code of a currency without one.
    pub(super) fn put(self, number: &str, sign: &str, code: &str) -> String {
        let is_word = sign.is_empty() || sign.chars().any(char::is_alphanumeric);
        let sign = if is_word { code } else { sign };
        match self {
            Self::Before if is_word => format!("{sign}{NBSP}{number}"),
            Self::Before => format!("{sign}{number}"),
            Self::After => format!("{number}{NBSP}{sign}"),
        }
    }
}

/// Numbers and money of a language. The default is that of English and of the terminal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Notation {
    pub decimal: DecimalMark,
    pub currency: CurrencySign,
}
