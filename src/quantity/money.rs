use rust_decimal::Decimal;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Sub};

/// An amount in the one currency of a lesson, as an exact decimal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Money(Decimal);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(Decimal::ZERO);

    /// An amount in major units (`4.99`).
    pub fn new(amount: Decimal) -> Self {
        Self(amount)
    }

    /// In major units, exact.
    pub fn amount(self) -> Decimal {
        self.0
    }

    /// The amount shared by `heads`; `None` when there is nobody.
    pub fn per_head(self, heads: u32) -> Option<Self> {
        self.0.checked_div(Decimal::from(heads)).map(Self)
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl AddAssign for Money {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Mul<u32> for Money {
    type Output = Self;
    fn mul(self, times: u32) -> Self {
        Self(self.0.saturating_mul(Decimal::from(times)))
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        amounts.fold(Self::ZERO, Add::add)
    }
}
