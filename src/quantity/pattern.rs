//! How quantities are written, as regular expressions in the dialect of JSON Schema: what
//! [`super::read`] reads fits them. Editors check a file with them while it is typed.

use super::misread::Dimension;
use super::number::VULGAR;
use super::unit::UNITS;

/// `12`, `2.5`, `3/4`, `1 1/2`, `1½`: a whole text, with space around it.
pub fn number() -> String {
    whole(&numeral())
}

/// A number and a unit of one of these dimensions, or a zero alone: a whole text.
pub fn measured(wanted: &[Dimension]) -> String {
    whole(&format!("{}|{ZERO}", with_unit(wanted)))
}

/// `1 h 30 min`: one or two lengths of time, or a zero alone: a whole text.
pub fn lasting() -> String {
    let time = format!("(?:{}|{ZERO})", with_unit(&[Dimension::Time]));
    whole(&format!("{time}(?:\\s*{time})?"))
}

/// A number and a unit, without what is around it.
pub fn with_unit(wanted: &[Dimension]) -> String {
    let is_volume = wanted.contains(&Dimension::Volume);
    let units = UNITS.iter().filter(|unit| wanted.contains(&unit.dimension));
    // A plain "oz" may be either, and is refused where it could be a volume.
    let units = units.filter(|unit| !(is_volume && unit.spellings.contains(&"oz")));
    let spellings: Vec<String> =
        units.flat_map(|unit| unit.spellings.iter().map(|spelling| any_case(spelling))).collect();
    format!("{}\\s*(?:{})", numeral(), spellings.join("|"))
}

/// A number without what is around it.
pub fn numeral() -> String {
    let vulgar: String = VULGAR.iter().map(|(sign, ..)| *sign).collect();
    let mixed = format!("\\s*[{vulgar}]|(?:\\s+|-)[0-9]+[/⁄][0-9]+");
    format!("(?:[{vulgar}]|[0-9]+[/⁄][0-9]+|[0-9]*\\.[0-9]+|[0-9]+(?:{mixed})?)")
}

/// Nothing is nothing in every unit.
const ZERO: &str = "(?:0*\\.0+|0+(?:(?:\\s+|-)0+)?[/⁄][0-9]+|0+)";

/// An expression that has to fit all of a text.
fn whole(inner: &str) -> String {
    format!("^\\s*(?:{inner})\\s*$")
}

/// A spelling in capitals or not, with any space where it has one: the dialect has no flag for
/// either.
fn any_case(spelling: &str) -> String {
    let mut pattern = String::new();
    for c in spelling.chars() {
        match c {
            ' ' => pattern.push_str("\\s+"),
            '.' => pattern.push_str("\\."),
            '/' | '%' => pattern.push(c),
            c if c.is_alphabetic() => {
                pattern.extend(['[', c.to_ascii_lowercase(), c.to_ascii_uppercase(), ']']);
            }
            c => pattern.push(c),
        }
    }
    pattern
}
