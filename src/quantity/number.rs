use super::misread::{Dimension, Misread, MisreadKind};
use rust_decimal::Decimal;

/// A number as people write it: `12`, `2.5`, `3/4`, `1 1/2`, `1½`. Never negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    /// The part before a fraction, exact and as the nearest binary number.
    decimal: Decimal,
    float: f64,
    numerator: u32,
    /// Not zero.
    denominator: u32,
}

impl Number {
    /// The nearest binary number: one rounding, at the end.
    pub(super) fn as_f64(self) -> f64 {
        let denominator = f64::from(self.denominator);
        self.float.mul_add(denominator, f64::from(self.numerator)) / denominator
    }

    /// The value as a decimal, `None` where no decimal is exact (a third).
    pub(super) fn exact(self) -> Option<Decimal> {
        let denominator = Decimal::from(self.denominator);
        let fraction = Decimal::from(self.numerator).checked_div(denominator)?;
        let whole = fraction.checked_mul(denominator)? == Decimal::from(self.numerator);
        whole.then(|| self.decimal.checked_add(fraction)).flatten()
    }
}

/// Fractions that are one character.
pub(super) const VULGAR: [(char, u32, u32); 15] = [
    ('½', 1, 2),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

/// Reads the number at the start of `text`; gives it and where it ends. `wanted`
/// only goes into the error.
pub(super) fn take(text: &str, wanted: Dimension) -> Result<(Number, usize), Misread> {
    let mut scan = Scan { text, at: 0 };
    scan.space();
    let start = scan.at;
    if scan.rest().is_empty() {
        return Err(Misread::new(0..text.len(), MisreadKind::Empty { wanted }));
    }
    let negative = scan.one_of(&['-', '\u{2212}', '\u{2013}']);
    scan.space();
    let number = scan.number().map_err(|kind| {
        let end = if scan.at > start { scan.at } else { text.trim_end().len() };
        let kind = kind.unwrap_or(MisreadKind::NotANumber { wanted });
        Misread::new(start..end, kind)
    })?;
    if negative {
        return Err(Misread::new(start..scan.at, MisreadKind::Negative));
    }
    Ok((number, scan.at))
}

/// A text and how far it has been read.
struct Scan<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Scan<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn space(&mut self) -> bool {
        let trimmed = self.rest().trim_start();
        let moved = self.rest().len() - trimmed.len();
        self.at += moved;
        moved > 0
    }

    fn one_of(&mut self, wanted: &[char]) -> bool {
        match self.rest().chars().next() {
            Some(found) if wanted.contains(&found) => {
                self.at += found.len_utf8();
                true
            }
            _ => false,
        }
    }

    fn digits(&mut self) -> &'a str {
        let rest = self.rest();
        let end = rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len());
        self.at += end;
        rest.get(..end).unwrap_or_default()
    }

    /// `Err(None)` when nothing here is a number.
    fn number(&mut self) -> Result<Number, Option<MisreadKind>> {
        if let Some((numerator, denominator)) = self.vulgar() {
            return Ok(Number { decimal: Decimal::ZERO, float: 0.0, numerator, denominator });
        }
        let start = self.at;
        let whole = self.digits();
        if !whole.is_empty() && self.one_of(&['/', '\u{2044}']) {
            let (numerator, denominator) = self.over(whole)?;
            return Ok(Number { decimal: Decimal::ZERO, float: 0.0, numerator, denominator });
        }
        if !whole.is_empty() && self.rest().starts_with(',') {
            return Err(self.comma(start));
        }
        let point = self.one_of(&['.']);
        let decimals = if point { self.digits() } else { "" };
        if (point && decimals.is_empty()) || (whole.is_empty() && decimals.is_empty()) {
            self.at = start;
            return Err(None);
        }
        if point && self.rest().starts_with([',', '.']) {
            return Err(None);
        }
        let written = self.text.get(start..self.at).unwrap_or_default();
        let (decimal, float) = exact_and_float(written).ok_or(Some(MisreadKind::TooLarge))?;
        let (numerator, denominator) = if point { (0, 1) } else { self.mixed()?.unwrap_or((0, 1)) };
        Ok(Number { decimal, float, numerator, denominator })
    }

    /// The fraction of a mixed number, if one follows: ` 1/2`, `-1/2`, `½`, ` ½`.
    fn mixed(&mut self) -> Result<Option<(u32, u32)>, Option<MisreadKind>> {
        let start = self.at;
        let apart = self.space();
        if let Some(fraction) = self.vulgar() {
            return Ok(Some(fraction));
        }
        if apart || self.one_of(&['-']) {
            let numerator = self.digits();
            if !numerator.is_empty() && self.one_of(&['/', '\u{2044}']) {
                return self.over(numerator).map(Some);
            }
        }
        self.at = start;
        Ok(None)
    }

    fn vulgar(&mut self) -> Option<(u32, u32)> {
        let found = self.rest().chars().next()?;
        let (sign, numerator, denominator) = VULGAR.iter().find(|(sign, ..)| *sign == found)?;
        self.at += sign.len_utf8();
        Some((*numerator, *denominator))
    }

    fn over(&mut self, numerator: &str) -> Result<(u32, u32), Option<MisreadKind>> {
        let denominator = self.digits();
        if denominator.is_empty() {
            return Err(None);
        }
        let numerator = numerator.parse().map_err(|_| Some(MisreadKind::TooLarge))?;
        match denominator.parse() {
            Ok(0) => Err(Some(MisreadKind::ZeroDenominator)),
            Ok(denominator) => Ok((numerator, denominator)),
            Err(_) => Err(Some(MisreadKind::TooLarge)),
        }
    }

    /// A comma after digits: says how the whole text is written rightly.
    fn comma(&mut self, start: usize) -> Option<MisreadKind> {
        let comma = self.at;
        self.at += 1;
        let after = self.digits();
        if after.is_empty() {
            self.at = start;
            return None;
        }
        let with = |between: &str| {
            let (head, tail) = (self.text.get(start..comma), self.text.get(comma + 1..));
            format!("{}{between}{}", head.unwrap_or_default(), tail.unwrap_or_default().trim_end())
        };
        Some(if after.len() == 3 {
            MisreadKind::ThousandsComma { thousands: with(""), decimal: with(".") }
        } else {
            MisreadKind::DecimalComma { corrected: with(".") }
        })
    }
}

/// Digits with at most one point; `None` when they are too many to be kept exactly.
fn exact_and_float(written: &str) -> Option<(Decimal, f64)> {
    let decimal = Decimal::from_str_exact(written).ok()?;
    let float: f64 = written.parse().ok()?;
    float.is_finite().then_some((decimal, float))
}
