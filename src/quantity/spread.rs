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
}
