use super::Words;
use crate::quantity::{Decimal, Dimension, MisreadKind};

/// The words for a quantity that cannot be read.
pub(super) fn of(kind: &MisreadKind) -> Words {
    match kind {
        MisreadKind::Empty { wanted } => {
            Words::new("nothing is written here", "empty").right(for_example(*wanted))
        }
        MisreadKind::NotANumber { wanted } => {
            let wrong = format!("this should be {}", name(*wanted));
            Words::new(wrong, "not understood").right(for_example(*wanted))
        }
        MisreadKind::DecimalComma { corrected } => {
            Words::new("decimals are written with a point here", "a comma")
                .right(format!("write {corrected}"))
        }
        MisreadKind::ThousandsComma { thousands, decimal } => {
            Words::new("a comma in a number can be read in two ways", "a comma").right(format!(
                "write {thousands} if it is thousands, {decimal} if it is a decimal"
            ))
        }
        MisreadKind::MissingUnit { number, wanted } => {
            let wrong = format!("the unit is missing: this should be {}", name(*wanted));
            let words = Words::new(wrong, "of what?");
            match wanted {
                Dimension::Amount => words.right(format!(
                    "for example {number} fl oz, {number} mL, {number} g or {number} pieces"
                )),
                Dimension::Volume => {
                    words.right(format!("for example {number} mL or {number} fl oz"))
                }
                Dimension::Mass => words.right(format!("for example {number} g")),
                Dimension::Length => words.right(format!("for example {number} in or {number} cm")),
                Dimension::Share => words.right(format!("for example {} %", percent(number))),
                Dimension::Days => words.right(format!("for example {number} days")),
                Dimension::Area => words.right(format!("for example {number} m² or {number} ft²")),
                Dimension::Time => words.right(format!("for example {number} min")),
                Dimension::Density => words.right(format!("for example {number} g/mL")),
                _ => words.right(for_example(*wanted)),
            }
        }
        MisreadKind::UnknownUnit { unit, nearest, wanted } => {
            let words =
                Words::new(format!("\"{unit}\" is no unit that is known here"), "not known");
            match nearest {
                Some(nearest) => words.right(format!("did you mean \"{nearest}\"?")),
                None => {
                    words.right(format!("units of {}: {}", plain_name(*wanted), units(*wanted)))
                }
            }
        }
        MisreadKind::BareOunce { number } => {
            Words::new("an ounce may be fluid or weight", "which one?")
                .right(format!("write {number} fl oz for a fluid ounce, a volume (29.57 mL)"))
                .right(format!("write {number} oz weight for an ounce on the scale (28.35 g)"))
        }
        MisreadKind::WrongDimension { unit, found, wanted } => {
            let wrong = format!("this should be {}, not {}", name(*wanted), name(*found));
            let mark = format!("\"{unit}\" is a unit of {}", plain_name(*found));
            Words::new(wrong, mark).right(for_example(*wanted))
        }
        MisreadKind::UnitNotWanted { unit, number } => {
            Words::new("this should be a number alone", format!("\"{unit}\" does not belong here"))
                .right(format!("write {number}"))
        }
        MisreadKind::Negative => {
            Words::new("this cannot be less than zero", "below zero").right("take the minus away")
        }
        MisreadKind::ZeroDenominator => Words::new("nothing can be divided by zero", "no number"),
        MisreadKind::TooLarge => Words::new("this number is too large", "too large"),
        MisreadKind::NotWhole => {
            Words::new("this should be a whole number", "a part").right("for example 2")
        }
        MisreadKind::NotExact => Words::new("this has no exact decimal", "not exact")
            .right("round it, and write \"the rest\" for one colour"),
        MisreadKind::MoreThanWhole => {
            Words::new("this is more than the whole", "too much").right("up to 100 %")
        }
    }
}

/// A fraction of one is most likely meant as one: `0.4` as 40 %.
fn percent(number: &str) -> String {
    match number.parse::<Decimal>() {
        Ok(value) if value <= Decimal::ONE => {
            (value * Decimal::ONE_HUNDRED).normalize().to_string()
        }
        _ => number.to_owned(),
    }
}

fn name(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "a length",
        Dimension::Volume => "a volume",
        Dimension::Mass => "a weight",
        Dimension::Density => "a density",
        Dimension::Area => "an area",
        Dimension::Time => "a length of time",
        Dimension::Share => "a share in percent",
        Dimension::Days => "a number of days",
        Dimension::Pieces => "a number of pieces",
        Dimension::Amount => "an amount",
        Dimension::Number => "a number",
        Dimension::Money => "an amount of money",
    }
}

fn plain_name(dimension: Dimension) -> &'static str {
    name(dimension).trim_start_matches("a ").trim_start_matches("an ")
}

fn for_example(dimension: Dimension) -> String {
    let examples = match dimension {
        Dimension::Length => "12 in, 3/4 in, 1 1/2 in or 30 cm",
        Dimension::Volume => "8 fl oz, 1 qt or 250 mL",
        Dimension::Mass => "40 g, 1 kg or 2 lb",
        Dimension::Density => "1.2 g/mL",
        Dimension::Area => "3 m² or 30 ft²",
        Dimension::Time => "15 min, 1 h or 1 h 30 min",
        Dimension::Share => "40 %, or \"the rest\" for one colour",
        Dimension::Days => "14 days or 2 weeks",
        Dimension::Pieces => "100 pieces",
        Dimension::Number => "2, 0.5 or 1/2",
        Dimension::Amount => "8 fl oz, 250 mL, 1 kg or 100 pieces",
        Dimension::Money => "6.49, without a sign of the currency",
    };
    format!("for example {examples}")
}

fn units(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "mm, cm, m, in, ft",
        Dimension::Volume => "mL, L, fl oz, cup, pt, qt, gal, imperial fl oz, imperial gal",
        Dimension::Mass => "g, kg, oz, lb",
        Dimension::Density => "g/mL, kg/L, g/fl oz",
        Dimension::Area => "m², cm², ft², in²",
        Dimension::Time => "min, h",
        Dimension::Share => "%",
        Dimension::Days => "days, weeks",
        Dimension::Pieces => "pieces",
        Dimension::Amount => "fl oz, qt, gal, mL, L, g, kg, lb, pieces",
        Dimension::Number | Dimension::Money => "none",
    }
}
