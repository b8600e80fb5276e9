use std::ops::Add;

/// A low, a typical and a high value of one quantity, in that order of size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread<T> {
    low: T,
    typical: T,
    high: T,
}

impl<T: PartialOrd + Copy> Spread<T> {
    /// `None` unless low <= typical <= high.
    pub fn new(low: T, typical: T, high: T) -> Option<Self> {
        (low <= typical && typical <= high).then_some(Self { low, typical, high })
    }

    /// Three times the same value.
    pub fn exactly(value: T) -> Self {
        Self { low: value, typical: value, high: value }
    }

    /// The value of a careful hand.
    pub fn low(&self) -> T {
        self.low
    }

    /// The value to plan with.
    pub fn typical(&self) -> T {
        self.typical
    }

    /// The value of a generous hand.
    pub fn high(&self) -> T {
        self.high
    }

    /// Each value put through `f`, which must not turn more into less.
    pub fn map_rising<U>(&self, f: impl Fn(T) -> U) -> Spread<U> {
        Spread { low: f(self.low), typical: f(self.typical), high: f(self.high) }
    }
}

/// Low to low, typical to typical, high to high: hands that differ alike everywhere.
impl<T: Add<Output = T>> Add for Spread<T> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            low: self.low + other.low,
            typical: self.typical + other.typical,
            high: self.high + other.high,
        }
    }
}
