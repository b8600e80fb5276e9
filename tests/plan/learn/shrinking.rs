//! One's own mean and the film before, worked by hand.

use crate::plan::studio::assert_near;
use puddlebook::plan::learn::mean::{Classes, Varies};
use puddlebook::plan::learn::shrink::{prior_deviation, relative_variance, shrink};
use puddlebook::quantity::Spread;

const PLANNED: Varies = Varies { class: 0.08, student: 0.15 };

fn classes(all: &[&[f64]]) -> Classes {
    let values = all.iter().enumerate();
    Classes::new(values.flat_map(|(at, values)| values.iter().map(move |one| (at, *one)))).unwrap()
}

/// Eight of ten lie within 1.2816 standard deviations (NIST/SEMATECH e-Handbook, 1.3.6.7.1: 0.39973
/// of the area from 0 to 1.28).
#[test]
fn low_to_high_is_the_range_of_eight_hands_in_ten() {
    let wide = Spread::new(1.0 / 1.5, 1.0, 1.5).unwrap();
    assert_near(prior_deviation(wide), 1.5_f64.ln() / 1.28, 2e-3);
    // Never surer than to a tenth.
    assert_eq!(prior_deviation(Spread::exactly(1.0)), 0.10);
    assert_eq!(prior_deviation(Spread::new(0.97, 1.0, 1.02).unwrap()), 0.10);
}

/// Equal variances meet half way, on the logarithm: the geometric mean.
#[test]
fn equally_sure_meet_in_the_middle() {
    let shrunk = shrink(Spread::exactly(2.0), 0.5, 0.01).unwrap();
    assert_near(shrunk.own_weight, 0.5, 1e-12);
    assert_near(shrunk.typical, 1.0, 1e-12);
    // Four times as sure: four fifths.
    let shrunk = shrink(Spread::exactly(1.0), 2.0, 0.0025).unwrap();
    assert_near(shrunk.own_weight, 0.8, 1e-12);
    assert_near(shrunk.typical, 2.0_f64.powf(0.8), 1e-12);
    let shrunk = shrink(Spread::exactly(1.0), 2.0, 0.0).unwrap();
    assert_eq!(shrunk.own_weight, 1.0);
}

#[test]
fn nothing_used_teaches_no_film() {
    assert_eq!(shrink(Spread::exactly(1.0), 0.0, 0.01), None);
}

/// The dyestuff batches of Davies and Goldsmith are shrunk by class variance over class
/// variance plus error over five: 1764.05 / (1764.05 + 2451.25 / 5) = 0.782527 (as lme4 prints).
/// The same rule, with the logarithms' variances in these figures' place.
#[test]
fn the_weight_is_that_of_a_random_effect() {
    let deviation = 0.2_f64;
    let before =
        Spread::new((-1.281_551_565_5 * deviation).exp(), 1.0, (1.281_551_565_5 * deviation).exp());
    let data = deviation.powi(2) * (2_451.25 / 5.0) / 1_764.05;
    let shrunk = shrink(before.unwrap(), 1.2, data).unwrap();
    assert_near(shrunk.own_weight, 0.782_527, 5e-7);
}

/// One canvas: 0.08^2 + 0.15^2. One class of four that agree: the hands' variance is four parts
/// planned and three parts nothing.
#[test]
fn variances_of_few_canvases_lean_on_what_is_planned() {
    let one = relative_variance(&classes(&[&[1.3]]), PLANNED, 0.0);
    assert_near(one, 0.0064 + 0.0225, 1e-12);
    let four = relative_variance(&classes(&[&[1.3; 4]]), PLANNED, 0.0);
    assert_near(four, 0.0064 + 0.0225 * 4.0 / 7.0 / 4.0, 1e-12);
    // Two classes that agree: the class means' variance is four parts planned in five.
    let two = relative_variance(&classes(&[&[1.3; 4], &[1.3; 4]]), PLANNED, 0.0);
    assert_near(two, (0.0064 + 0.0225 * 4.0 / 10.0 / 4.0) * 4.0 / 5.0 / 2.0, 1e-12);
}

#[test]
fn many_classes_rest_on_themselves() {
    let values: Vec<f64> = (0..400).map(|at| if at % 2 == 0 { 0.9 } else { 1.1 }).collect();
    let all: Vec<&[f64]> = values.chunks(1).collect();
    let found = relative_variance(&classes(&all), PLANNED, 0.0);
    assert_near(found * 400.0, 0.01, 3e-4);
    // And no surer than the scale.
    assert_near(relative_variance(&classes(&all), PLANNED, 0.02), 0.0004, 1e-12);
}
