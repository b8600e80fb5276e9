//! What a single text can be read as. A reading that fails says which bytes of the
//! text are to blame.

use super::limits;
use super::model::{Amount, Rgb};
use super::problem::ProblemKind;
use crate::quantity::nearest::nearest;
use crate::quantity::read::{self, Measured};
use crate::quantity::{
    Area, Currency, Date, Decimal, Length, Mass, MassDensity, Misread, MisreadKind, Money, Share,
    Time, Volume,
};
use std::ops::Range;

/// Why a text could not be read: where in it, and what is wrong.
pub(super) type Blame = (Range<usize>, ProblemKind);

/// Something that one text says.
pub(super) trait Legible: Sized {
    fn read(text: &str) -> Result<Self, Blame>;
}

/// Reads quantities of a type by the function for it.
macro_rules! legible_by {
    ($($kind:ty: $read:path),* $(,)?) => {
        $(impl Legible for $kind {
            fn read(text: &str) -> Result<Self, Blame> {
                $read(text).map_err(blame)
            }
        })*
    };
}

legible_by! {
    Length: read::length,
    Area: read::area,
    Volume: read::volume,
    Mass: read::mass,
    MassDensity: read::density,
    Money: read::money,
    Share: read::share,
    u32: read::count,
    f64: read::number,
}

pub(super) fn blame(misread: Misread) -> Blame {
    (misread.span, ProblemKind::Misread(misread.kind))
}

/// A number of days.
#[derive(Debug, Clone, Copy)]
pub(super) struct Days(pub(super) u32);

impl Legible for Days {
    fn read(text: &str) -> Result<Self, Blame> {
        read::days(text).map(Self).map_err(blame)
    }
}

/// Whole minutes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Minutes(pub(super) u32);

impl Legible for Minutes {
    fn read(text: &str) -> Result<Self, Blame> {
        if read::time_of_day(text).is_some() {
            return Err((0..text.len(), ProblemKind::TimeOfDay));
        }
        read::minutes(text).map(Self).map_err(blame)
    }
}

impl Legible for Time {
    fn read(text: &str) -> Result<Self, Blame> {
        read::time_of_day(text).ok_or((0..text.len(), ProblemKind::NotATime))
    }
}

impl Legible for Amount {
    fn read(text: &str) -> Result<Self, Blame> {
        Ok(match read::amount(text).map_err(blame)? {
            Measured::Volume(volume) => Self::Volume(volume),
            Measured::Mass(mass) => Self::Mass(mass),
            Measured::Pieces(pieces) => Self::Pieces(pieces),
        })
    }
}

/// A share of a layer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Portion {
    Share(Share),
    /// What the other colours leave.
    TheRest,
}

impl Legible for Portion {
    fn read(text: &str) -> Result<Self, Blame> {
        match text.trim() {
            "the rest" | "rest" => Ok(Self::TheRest),
            _ => read::share(text).map(Self::Share).map_err(blame),
        }
    }
}

/// A number of percent that is no share of a whole.
#[derive(Debug, Clone, Copy)]
pub(super) struct Percentage(pub(super) Decimal);

impl Legible for Percentage {
    fn read(text: &str) -> Result<Self, Blame> {
        read::percent(text).map(Self).map_err(|misread| match misread.kind {
            MisreadKind::Empty { .. }
            | MisreadKind::NotANumber { .. }
            | MisreadKind::WrongDimension { .. } => (misread.span, ProblemKind::NotAPercentage),
            _ => blame(misread),
        })
    }
}

/// `3 per 100 mL`.
#[derive(Debug, Clone, Copy)]
pub(super) struct DropRate {
    pub(super) count: f64,
    pub(super) per: Volume,
}

impl Legible for DropRate {
    fn read(text: &str) -> Result<Self, Blame> {
        let (count, per) =
            text.split_once(" per ").ok_or((0..text.len(), ProblemKind::NotADropRate))?;
        let offset = count.len() + " per ".len();
        let count = count.trim_end().trim_end_matches(" drops").trim_end_matches(" drop");
        let count = read::number(count).map_err(blame)?;
        let per = read::volume(per).map_err(|misread| {
            let (span, kind) = blame(misread);
            (span.start + offset..span.end + offset, kind)
        })?;
        Ok(Self { count, per })
    }
}

/// A colour of the screen, `#1F5A7A`.
#[derive(Debug, Clone, Copy)]
pub(super) struct Swatch(pub(super) Rgb);

impl Legible for Swatch {
    fn read(text: &str) -> Result<Self, Blame> {
        let digits = text.trim().strip_prefix('#').filter(|digits| digits.len() == 6);
        let digits = digits.filter(|digits| digits.bytes().all(|byte| byte.is_ascii_hexdigit()));
        let value = digits.and_then(|digits| u32::from_str_radix(digits, 16).ok());
        let [_, red, green, blue] =
            value.ok_or((0..text.len(), ProblemKind::NotASwatch))?.to_be_bytes();
        Ok(Self(Rgb(red, green, blue)))
    }
}

impl Legible for Date {
    fn read(text: &str) -> Result<Self, Blame> {
        let shape = text.len() == 10 && text.bytes().filter(|byte| *byte == b'-').count() == 2;
        let date = shape.then(|| text.parse().ok()).flatten();
        date.ok_or((0..text.len(), ProblemKind::NotADate))
    }
}

impl Legible for Currency {
    fn read(text: &str) -> Result<Self, Blame> {
        let spendable = |currency: &Self| currency.exponent().is_some();
        Self::from_code(text).filter(spendable).ok_or_else(|| {
            let all = (1..1_000).filter_map(Self::from_numeric).filter(spendable);
            let nearest = nearest(text, all.map(|currency| currency.code())).map(str::to_owned);
            (0..text.len(), ProblemKind::NotACurrency { nearest })
        })
    }
}

impl Legible for String {
    fn read(text: &str) -> Result<Self, Blame> {
        let whole = 0..text.len();
        if let Some((at, found)) = text.char_indices().find(|(_, c)| c.is_control() && *c != '\n') {
            return Err((at..at + found.len_utf8(), ProblemKind::ControlCharacter));
        }
        if text.chars().count() > limits::TEXT_LETTERS {
            return Err((whole, ProblemKind::TextTooLong));
        }
        // A folded text is one line to us.
        let line = text.split_whitespace().collect::<Vec<_>>().join(" ");
        if line.is_empty() { Err((whole, ProblemKind::BlankText)) } else { Ok(line) }
    }
}
