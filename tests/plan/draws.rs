//! Chance that can be repeated.

use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use std::f64::consts::TAU;

/// Standard normal draws by Box and Muller (1958), which has nothing in common with the
/// quantile that is checked.
pub struct Draws {
    random: TestRng,
    second: Option<f64>,
}

impl Draws {
    pub fn new(seed: u8) -> Self {
        Self { random: TestRng::from_seed(RngAlgorithm::ChaCha, &[seed; 32]), second: None }
    }

    pub fn next(&mut self) -> f64 {
        if let Some(second) = self.second.take() {
            return second;
        }
        // In (0, 1]: its logarithm is finite.
        let mut uniform = || ((self.random.next_u64() >> 11) + 1) as f64 / (1_u64 << 53) as f64;
        let (radius, angle) = ((-2.0 * uniform().ln()).sqrt(), TAU * uniform());
        self.second = Some(radius * angle.sin());
        radius * angle.cos()
    }
}
