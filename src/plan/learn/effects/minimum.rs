//! The lowest point of a function on a stretch.

/// So many points are looked at before the best of them is closed in on: a function with a
/// second dip narrower than that may hide it.
const POINTS: u32 = 64;
/// Each round of the golden section leaves 0.618 of the stretch: 80 leave 1e-17 of it, less
/// than a float can tell.
const ROUNDS: u32 = 80;

/// Where `f` is lowest on `low..=high`, both ends among the places.
///
/// A grid brackets the lowest dip; the golden section closes in on it (Kiefer, Proc. Amer.
/// Math. Soc. 4, 502, 1953). An end wins where it is as low as anything inside. A value that
/// is no number counts as high.
pub(super) fn lowest(f: impl Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    let f = |x: f64| {
        let y = f(x);
        if y.is_nan() { f64::INFINITY } else { y }
    };
    let width = (high - low) / f64::from(POINTS);
    let place = |at: u32| low + width * f64::from(at);
    let best = (0..=POINTS)
        .map(|at| (at, f(place(at))))
        .fold((0, f64::INFINITY), |best, next| if next.1 < best.1 { next } else { best })
        .0;
    let (left, right) = (place(best.saturating_sub(1)), place(best.saturating_add(1)).min(high));
    let inside = golden(f, left, right);
    [low, high].into_iter().fold(inside, |best, end| if f(end) <= f(best) { end } else { best })
}

fn golden(f: impl Fn(f64) -> f64, mut left: f64, mut right: f64) -> f64 {
    let part = (5.0_f64.sqrt() - 1.0) / 2.0;
    let inner =
        |left: f64, right: f64| (right - part * (right - left), left + part * (right - left));
    let (mut one, mut two) = inner(left, right);
    let (mut at_one, mut at_two) = (f(one), f(two));
    for _ in 0..ROUNDS {
        if at_one <= at_two {
            (right, two, at_two) = (two, one, at_one);
            one = inner(left, right).0;
            at_one = f(one);
        } else {
            (left, one, at_one) = (one, two, at_two);
            two = inner(left, right).1;
            at_two = f(two);
        }
    }
    if at_one <= at_two { one } else { two }
}
