//! Ranges in which an answer is plausible, to be printed beside a blank.

/// Round figures from which ranges are made, of any size.
const ROUND: [f64; 8] = [1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0];

/// The answer lies this far inside of the range at least, so that the range does not give it
/// away (judgement, no source).
const INSIDE: f64 = 1.25;

/// Two round figures around a positive answer: a slip of the decimal point or of the unit falls
/// outside. `None` for an answer that is not positive.
pub fn plausible(answer: f64) -> Option<(f64, f64)> {
    if answer <= 0.0 {
        return None;
    }
    let (low, high) = (answer / INSIDE, answer * INSIDE);
    let size = 10_f64.powi(low.log10().floor() as i32);
    // From one size below to one above: the first round figure is too small, the last too large.
    let figures = [size / 10.0, size, size * 10.0];
    let round = || figures.into_iter().flat_map(|size| ROUND.map(|figure| figure * size));
    let below = round().rfind(|figure| *figure <= low * ROUNDING)?;
    let above = round().find(|figure| *figure >= high / ROUNDING)?;
    Some((below, above))
}

/// Binary arithmetic may miss a round figure by so much.
const ROUNDING: f64 = 1.0 + 1e-9;
