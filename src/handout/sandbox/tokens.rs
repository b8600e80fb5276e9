//! The words and signs in a tag.

use std::ops::Range;

/// A word or sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Token<'t> {
    /// A name with what follows it after dots: `canvas`, `order.lines`, `in`.
    Name(&'t str),
    Number,
    /// What stands between quotation marks.
    Text(&'t str),
    /// `==`, `|`, `(` and the like; whatever else stands there, too.
    Sign(&'t str),
}

/// The tokens of `text` between the bytes `inner`, with their places in the text.
pub(super) fn tokens(text: &str, inner: Range<usize>) -> Vec<(Token<'_>, Range<usize>)> {
    let mut found = Vec::new();
    let mut at = inner.start;
    while let Some(rest) = text.get(at..inner.end).filter(|rest| !rest.is_empty()) {
        let first = rest.chars().next().unwrap_or_default();
        let (token, length) = match first {
            c if super::tags::SPACE.contains(&c) => {
                at += 1;
                continue;
            }
            '"' | '\'' | '`' => {
                let body = rest.get(1..).unwrap_or_default();
                let end = body.find(first).unwrap_or(body.len());
                (Token::Text(body.get(..end).unwrap_or_default()), (end + 2).min(rest.len()))
            }
            c if c.is_ascii_digit() => {
                let length = length(rest, |c| c.is_ascii_digit() || c == '.');
                (Token::Number, length)
            }
            c if c.is_ascii_alphabetic() || c == '_' => {
                let length = length(rest, |c| c.is_ascii_alphanumeric() || matches!(c, '_' | '.'));
                (Token::Name(rest.get(..length).unwrap_or_default()), length)
            }
            c => {
                let two = ["==", "!=", "<=", ">=", "::"];
                let length =
                    if two.iter().any(|two| rest.starts_with(two)) { 2 } else { c.len_utf8() };
                (Token::Sign(rest.get(..length).unwrap_or_default()), length)
            }
        };
        found.push((token, at..at + length));
        at += length;
    }
    found
}

fn length(text: &str, of: impl Fn(char) -> bool) -> usize {
    text.find(|c| !of(c)).unwrap_or(text.len())
}
