use crate::handout::DecimalMark;
use crate::page::inline::{Paragraph, text_of, width_until};

/// Width in points of what stands before the decimal mark of the first number of a
/// cell, or before the end of a number without one. None where there is no number.
pub(super) fn before_mark(paragraph: &Paragraph<'_>, decimal: DecimalMark) -> Option<f32> {
    let at = mark(&text_of(paragraph), decimal)?;
    Some(width_until(paragraph, at))
}

/// Byte offset of the decimal mark of the first number in a text, or of that
/// number's end.
fn mark(text: &str, decimal: DecimalMark) -> Option<usize> {
    let start = text.find(|c: char| c.is_ascii_digit() || is_fraction(c))?;
    let mut digits = text.get(start..)?.char_indices().peekable();
    while let Some((at, c)) = digits.next() {
        let next_is_digit = digits.peek().is_some_and(|(_, next)| next.is_ascii_digit());
        let grouping = c != decimal.sign()
            && matches!(c, ',' | '.' | '\u{202F}' | '\u{2009}' | '\u{A0}' | '\u{2019}');
        if !(c.is_ascii_digit() || grouping && next_is_digit) {
            return Some(start + at);
        }
    }
    Some(text.len())
}

fn is_fraction(c: char) -> bool {
    matches!(c, '¼' | '½' | '¾' | '⅓' | '⅔' | '⅛' | '⅜' | '⅝' | '⅞')
}

#[cfg(test)]
mod tests {
    use super::{DecimalMark, mark};

    #[test]
    fn the_mark_is_where_the_whole_part_ends() {
        for (text, before) in [
            ("12.5", "12"),
            ("$1,234.50", "$1,234"),
            ("7", "7"),
            ("3½", "3"),
            ("½", ""),
            ("about 40 g", "about 40"),
            ("1\u{202F}234.5", "1\u{202F}234"),
            ("4.8–5.2", "4"),
            ("0.25", "0"),
        ] {
            assert_eq!(
                mark(text, DecimalMark::Point).and_then(|at| text.get(..at)),
                Some(before),
                "{text}"
            );
        }
        assert_eq!(mark("none", DecimalMark::Point), None);
    }

    #[test]
    fn a_comma_may_be_the_mark_and_a_point_a_group() {
        for (text, before) in
            [("12,5", "12"), ("1.234,50 €", "1.234"), ("0,25", "0"), ("4,8–5,2", "4")]
        {
            let at = mark(text, DecimalMark::Comma);
            assert_eq!(at.and_then(|at| text.get(..at)), Some(before), "{text}");
        }
    }
}
