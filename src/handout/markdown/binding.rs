//! Numbers and their units stay on one line.
//!
//! Amounts from the plan arrive bound. In what people write, a plain space stands between
//! a number and its unit; here it becomes a narrow no-break space, as in computed amounts.
//! A sign of arithmetic stays with the number behind it, so that sums break before it. A
//! count stays with what it counts: `20 × trays`, `3 days`, `29 CFR`; the number of an item
//! in running text, `(2)`, with its first word; and that of a standard with its letters.

/// Unit symbols of templates; those of two words are listed with a plain space.
const UNITS: [&str; 20] = [
    "fl oz", "in²", "ft²", "cm²", "cm³", "m²", "in", "ft", "mm", "cm", "mil", "mL", "L", "g", "kg",
    "oz", "lb", "ppm", "%", "°C",
];
const SIGNS: [char; 7] = ['×', '÷', '=', '+', '−', '±', '≈'];
const THIN: char = '\u{202F}';
const NBSP: char = '\u{00A0}';
/// Longer words than this are left to go to the next line without their number, as lines
/// would end too raggedly.
const LONGEST_COUNTED: usize = 10;

/// The text with the spaces of its amounts bound.
pub(super) fn bound(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let mut rest = text;
    while let Some(at) = rest.find(' ') {
        let (before, after) = (&rest[..at], &rest[at + 1..]);
        out.push_str(before);
        let last = out.chars().next_back();
        match unit_at(after) {
            Some(unit) if last.is_some_and(is_of_number) => {
                out.push(THIN);
                out.extend(unit.chars().map(|sign| if sign == ' ' { NBSP } else { sign }));
                rest = &after[unit.len()..];
            }
            _ => {
                let is_sum = last.is_some_and(|last| SIGNS.contains(&last))
                    && after.starts_with(|next| next == '(' || is_of_number(next));
                let is_count = ends_in_count(&out) && is_counted(after);
                let opens = ends_in_item_number(&out)
                    || ends_in_letters(&out) && after.starts_with(is_of_number);
                out.push(if is_sum || is_count || opens { NBSP } else { ' ' });
                rest = after;
            }
        }
    }
    out.push_str(rest);
    out
}

/// Whether a text ends in a number by itself, or in one with the sign for so many of a thing.
fn ends_in_count(text: &str) -> bool {
    let text = text.strip_suffix(['\u{A0}', '×']).map_or(text, |text| text.trim_end_matches(NBSP));
    let word = text.rsplit([' ', NBSP, '(']).next().unwrap_or_default();
    word.starts_with(is_of_number)
        && word.ends_with(is_of_number)
        && word.chars().all(|sign| is_of_number(sign) || ".,–:".contains(sign))
}

/// Whether a text ends in the number of an item, such as `(2)`.
fn ends_in_item_number(text: &str) -> bool {
    let word = text.rsplit([' ', NBSP]).next().unwrap_or_default();
    let number = word.strip_prefix('(').and_then(|word| word.strip_suffix(')'));
    number.is_some_and(|number| !number.is_empty() && number.chars().all(|c| c.is_ascii_digit()))
}

/// Whether a text ends in the letters of a standard or a code of law, such as `EN`.
fn ends_in_letters(text: &str) -> bool {
    let word = text.rsplit([' ', NBSP]).next().unwrap_or_default();
    word.len() > 1 && word.chars().all(|sign| sign.is_ascii_uppercase())
}

/// Whether a text begins with the sign for so many of a thing, or with a word that is short
/// enough to stay with its number.
fn is_counted(text: &str) -> bool {
    let word = text.split(' ').next().unwrap_or_default();
    word == "×" || word.starts_with(char::is_alphabetic) && word.chars().count() <= LONGEST_COUNTED
}

/// Digits, and fractions of one sign such as ½.
fn is_of_number(sign: char) -> bool {
    sign.is_numeric()
}

/// The unit that a text begins with, as a word of its own.
fn unit_at(text: &str) -> Option<&'static str> {
    UNITS.into_iter().find(|unit| {
        text.strip_prefix(unit)
            .is_some_and(|rest| !rest.starts_with(|next: char| next.is_alphanumeric()))
    })
}

/// The text with a unit of one letter at its end, as in the heading of a column, bound to
/// the word before: it looks lost on a line.
pub(super) fn unit_at_end(text: &str) -> String {
    match text.rsplit_once(", ") {
        Some((before, unit)) if unit.chars().count() == 1 && UNITS.contains(&unit) => {
            format!("{before},{NBSP}{unit}")
        }
        _ => text.to_owned(),
    }
}

/// The text behind a blank: a unit stays with it.
pub(super) fn behind_blank(text: &str) -> String {
    match text.strip_prefix(' ') {
        Some(rest) if unit_at(rest).is_some() => format!("{THIN}{rest}"),
        _ => text.to_owned(),
    }
}

/// The text before a blank: a sign of arithmetic stays with it.
pub(super) fn before_blank(text: &str) -> String {
    match text.strip_suffix(' ') {
        Some(rest) if rest.ends_with(SIGNS) => format!("{rest}{NBSP}"),
        _ => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{before_blank, behind_blank, bound, unit_at_end};

    #[test]
    fn a_unit_at_the_end_stays_with_the_word_before() {
        assert_eq!(unit_at_end("Until the scale shows, g"), "Until the scale shows,\u{A0}g");
        assert_eq!(unit_at_end("Face, cm²"), "Face, cm²", "columns may be narrow");
        assert_eq!(unit_at_end("cup, ginger"), "cup, ginger");
    }

    #[test]
    fn a_blank_keeps_its_unit_and_the_sign_before_it() {
        assert_eq!(behind_blank(" fl oz of it"), "\u{202F}fl oz of it");
        assert_eq!(behind_blank(" inches"), " inches");
        assert_eq!(before_blank("in × depth = "), "in × depth =\u{A0}");
        assert_eq!(before_blank("depth "), "depth ");
    }

    #[test]
    fn a_unit_stays_with_its_number() {
        assert_eq!(
            bound("is 120 in². Pour 5 fl oz"),
            "is 120\u{202F}in². Pour 5\u{202F}fl\u{A0}oz"
        );
        assert_eq!(bound("1½ in deep"), "1½\u{202F}in deep");
        assert_eq!(bound("4 Grams"), "4\u{A0}Grams", "a word, not a unit");
    }

    #[test]
    fn a_sign_stays_with_the_number_behind_it() {
        assert_eq!(bound("125 − 110 = 15 g"), "125 −\u{A0}110 =\u{A0}15\u{202F}g");
        assert_eq!(bound("Used = before"), "Used = before");
    }

    #[test]
    fn a_number_stays_with_the_item_or_standard_it_names() {
        assert_eq!(bound("stay. (2) Any of (a) these"), "stay. (2)\u{A0}Any of (a) these");
        assert_eq!(bound("by EN 71-7 and A 4"), "by EN\u{A0}71-7 and A 4");
    }

    #[test]
    fn a_count_stays_with_what_it_counts() {
        assert_eq!(bound("14 × drip tray: 3.5 L"), "14\u{A0}×\u{A0}drip tray: 3.5\u{202F}L");
        assert_eq!(bound("in 2 buckets of it"), "in 2\u{A0}buckets of it");
        assert_eq!(bound("see 29 CFR 1910.1200"), "see 29\u{A0}CFR\u{A0}1910.1200");
        assert_eq!(
            bound("until 3 May 2026, at 18:30 sharp"),
            "until 3\u{A0}May 2026, at 18:30\u{A0}sharp"
        );
        assert_eq!(
            bound("D-4236 conforms; 12 demonstrations"),
            "D-4236 conforms; 12 demonstrations"
        );
        assert_eq!(bound("10 × 10 in square"), "10\u{A0}×\u{A0}10\u{202F}in square");
    }
}
