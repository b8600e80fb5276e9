/// A figure with at most two decimals, exact: the figures that are put into an exercise and
/// that come out of it. What has more decimals is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Hundredths(i64);

impl Hundredths {
    pub(super) const ZERO: Self = Self(0);

    /// So many hundredths.
    pub(super) const fn new(hundredths: i64) -> Self {
        Self(hundredths)
    }

    pub(super) const fn whole(number: i64) -> Self {
        Self(number * 100)
    }

    pub(super) fn times(self, other: Self) -> Option<Self> {
        exact(self.0.checked_mul(other.0)?, 100)
    }

    pub(super) fn over(self, other: Self) -> Option<Self> {
        exact(self.0.checked_mul(100)?, other.0)
    }

    pub(super) fn plus(self, other: Self) -> Option<Self> {
        self.0.checked_add(other.0).map(Self)
    }

    /// The whole number that is not smaller.
    pub(super) fn rounded_up(self) -> Self {
        Self(self.0.saturating_add(99).div_euclid(100).saturating_mul(100))
    }

    /// Whether no more than so many decimals are needed to write it.
    pub fn has_at_most(self, decimals: u32) -> bool {
        let finest = 10_i64.pow(2_u32.saturating_sub(decimals));
        self.0 % finest == 0
    }

    /// As a number for people to be shown.
    pub fn value(self) -> f64 {
        self.0 as f64 / 100.0
    }
}

/// The quotient, if nothing is left over.
fn exact(dividend: i64, divisor: i64) -> Option<Hundredths> {
    let left = dividend.checked_rem(divisor)?;
    (left == 0).then(|| Hundredths(dividend / divisor))
}
