use rust_decimal::Decimal;

/// A part of a whole, from 0 to 1, kept as the decimal that was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Share(Decimal);

impl Share {
    /// No part at all.
    pub const NOTHING: Self = Self(Decimal::ZERO);
    /// The whole.
    pub const WHOLE: Self = Self(Decimal::ONE);

    /// From a fraction of one; `None` outside 0 to 1.
    pub fn new(fraction: Decimal) -> Option<Self> {
        (fraction >= Decimal::ZERO && fraction <= Decimal::ONE).then_some(Self(fraction))
    }

    /// As a fraction of one, exact.
    pub fn fraction(self) -> Decimal {
        self.0
    }

    /// As a fraction of one, for physical arithmetic.
    pub fn as_f64(self) -> f64 {
        use rust_decimal::prelude::ToPrimitive;
        self.0.to_f64().unwrap_or_default()
    }

    /// In percent, exact: `0.25` gives `25`.
    pub fn percent(self) -> Decimal {
        (self.0 * Decimal::ONE_HUNDRED).normalize()
    }
}
