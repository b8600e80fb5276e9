//! Parts in whole numbers that add up.

/// Whole numbers near `exact` that add up to its rounded sum: all are rounded down, then
/// those with the largest remainders get one more (the earlier one of equals).
pub fn whole_parts(exact: &[f64]) -> Vec<f64> {
    let total = exact.iter().sum::<f64>().round();
    let mut whole: Vec<f64> = exact.iter().map(|value| value.floor()).collect();
    let missing = (total - whole.iter().sum::<f64>()).max(0.0);
    let mut by_remainder: Vec<(usize, f64)> =
        exact.iter().map(|value| value - value.floor()).enumerate().collect();
    by_remainder.sort_by(|(_, one), (_, other)| other.total_cmp(one));
    let lucky = by_remainder
        .iter()
        .map(|(at, _)| *at)
        .zip(1..)
        .take_while(|(_, nth)| f64::from(*nth) <= missing);
    for (at, _) in lucky {
        if let Some(value) = whole.get_mut(at) {
            *value += 1.0;
        }
    }
    whole
}
