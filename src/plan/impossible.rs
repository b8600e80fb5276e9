//! Why a lesson cannot be planned, as data and in words.

use crate::lesson::{Amount, Language};
use crate::quantity::Currency;
use std::error::Error;
use std::fmt::{self, Display, Formatter};

/// What stands in the way of a plan. A lesson in the range of real classes meets none of
/// these, but a checked file can still hold them.
#[derive(Debug, Clone, PartialEq)]
pub enum Impossible {
    /// A count that no class, cupboard or shop could reach.
    TooMany { what: Counted },
    /// The drops of a mix alone would fill the cup.
    MoreDropsThanMix { mix: String },
    /// Stock or a pack in a kind of amount that its item is not counted in, such as
    /// pieces of a paint or millilitres of gloves.
    CannotCompare { item: String, amount: Amount },
    /// The shops that sell an item take no order as small as this one; this is the first.
    LeastOrderOutOfReach { item: String, shop: String },
    /// The lessons of a course buy in different currencies.
    TwoCurrencies { first: Currency, other: Currency },
    /// The lessons of a course are written in different languages, and so name what they share
    /// differently.
    TwoLanguages { first: Language, other: Language },
    /// The timetable reaches midnight with this step.
    PastMidnight { step: String },
}

/// What was counted when a count ran over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Counted {
    Sets,
    Cups,
    Drops { mix: String },
    Pieces { item: String },
    Packs { item: String },
}

impl Display for Impossible {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooMany { what } => write!(f, "there are too many {what} to plan for"),
            Self::PastMidnight { step } => {
                write!(f, "the timetable runs up to midnight or past it with \"{step}\"")
            }
            Self::MoreDropsThanMix { mix } => write!(
                f,
                "the drops of the mix \"{mix}\" alone would fill the cup; they are too many or \
                 counted for too little paint"
            ),
            Self::CannotCompare { item, amount } => {
                let (given, wanted) = match amount {
                    Amount::Pieces(_) => ("in pieces", "by volume or weight"),
                    Amount::Volume(_) => ("by volume", "in pieces"),
                    Amount::Mass(_) => ("by weight", "in pieces"),
                };
                write!(f, "\"{item}\" is given {given}, but it is needed {wanted}")
            }
            Self::LeastOrderOutOfReach { item, shop } => write!(
                f,
                "\"{item}\" cannot be bought: \"{shop}\" takes no order as small as what this \
                 needs; add another shop that sells it, or put it under \"bought elsewhere\""
            ),
            Self::TwoLanguages { first, other } => write!(
                f,
                "one lesson is written in \"{}\", another in \"{}\"; order them apart",
                first.tag(),
                other.tag()
            ),
            Self::TwoCurrencies { first, other } => write!(
                f,
                "one lesson buys in {}, another in {}; order them apart",
                first.code(),
                other.code()
            ),
        }
    }
}

impl Display for Counted {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Self::Sets => write!(f, "students, demonstrations and spares"),
            Self::Cups => write!(f, "cups of paint"),
            Self::Drops { mix } => write!(f, "drops in the mix \"{mix}\""),
            Self::Pieces { item } => write!(f, "pieces of \"{item}\""),
            Self::Packs { item } => write!(f, "packs of \"{item}\""),
        }
    }
}

impl Error for Impossible {}
