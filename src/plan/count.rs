//! Whole counts out of computed numbers, without a silent wrap or cut.

/// A number that is already whole as a count; `None` when it does not fit.
pub(super) fn whole(number: f64) -> Option<u32> {
    // The bounds make the cast exact.
    (number >= 0.0 && number <= f64::from(u32::MAX) && number.fract() == 0.0)
        .then_some(number as u32)
}

/// The product of counts; `None` when it does not fit.
pub(super) fn product(counts: impl IntoIterator<Item = u32>) -> Option<u32> {
    counts.into_iter().try_fold(1_u32, u32::checked_mul)
}
