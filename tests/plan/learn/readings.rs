//! What a scale can tell, against the guide to the expression of uncertainty.

use crate::plan::studio::assert_near;
use puddlebook::plan::learn::reading::{combined, difference, reading_uncertainty};
use puddlebook::quantity::units::{gram, in_gram};

/// JCGM 100:2008, F.2.2.1: a resolution of dx makes a standard uncertainty of 0.29 dx (square
/// of dx over 12). Text from memory.
#[test]
fn a_reading_is_unsure_by_0_29_of_its_step() {
    let u = in_gram(reading_uncertainty(gram(1.0)));
    assert_eq!(format!("{u:.2}"), "0.29");
    assert_near(u * u, 1.0 / 12.0, 1e-15);
    assert_near(in_gram(reading_uncertainty(gram(5.0))), 5.0 * u, 1e-15);
}

/// Two readings are independent: the root of 2 times as much.
#[test]
fn a_difference_is_unsure_by_the_root_of_two_readings() {
    let difference = difference(gram(91.0), gram(45.0), gram(1.0));
    assert_near(in_gram(difference.uncertainty), (1.0_f64 / 6.0).sqrt(), 1e-15);
}

/// Common practice, no source.
#[test]
fn a_cup_of_91_grams_before_and_45_after_used_46() {
    let limits = difference(gram(91.0), gram(45.0), gram(1.0)).limits;
    let found = [limits.low(), limits.typical(), limits.high()].map(in_gram);
    for (found, wanted) in found.into_iter().zip([45.0, 46.0, 47.0]) {
        assert_near(found, wanted, 1e-12);
    }
}

/// Common practice, no source: a scale of 1 g cannot tell 1 g from 3 g.
#[test]
fn two_grams_on_a_one_gram_scale_may_be_one_to_three() {
    let limits = difference(gram(35.0), gram(33.0), gram(1.0)).limits;
    assert_near(in_gram(limits.low()), 1.0, 1e-12);
    assert_near(in_gram(limits.high()), 3.0, 1e-12);
    // The other way round: whatever of 1 to 3 g is shown, 2 g may be true.
    for shown in [1.0, 2.0, 3.0] {
        let limits = difference(gram(30.0 + shown), gram(30.0), gram(1.0)).limits;
        assert!(in_gram(limits.low()) <= 2.0 + 1e-12 && in_gram(limits.high()) >= 2.0 - 1e-12);
    }
}

#[test]
fn nobody_used_less_than_nothing() {
    let limits = difference(gram(30.0), gram(30.0), gram(1.0)).limits;
    let found = [limits.low(), limits.typical(), limits.high()].map(in_gram);
    assert_eq!(found[..2], [0.0, 0.0]);
    assert_near(found[2], 1.0, 1e-12);
}

/// JCGM 100:2008, example H.1 (calibration of an end gauge), H.1.3: the comparator's parts of
/// 5.8, 3.9 and 6.7 nm make 9.7 nm; with the standard's 25 nm, 50.000623 mm x 0.1 K against
/// the rectangular 1e-6 / K, and 50.000623 mm x 11.5e-6 / K against the rectangular 0.05 K,
/// the length is unsure by 32 nm. The inputs were looked up in a published copy of the
/// example, the results printed in the guide (2.9, 16.6, 32 nm) are from memory.
#[test]
fn the_end_gauge_of_the_guide_is_unsure_by_32_nanometres() {
    let comparator = combined([(1.0, 5.8), (1.0, 3.9), (1.0, 6.7)]);
    assert_near(comparator, 9.7, 0.05);
    let length_nm = 50.000_623e6;
    // The guide rounds both to two digits before it goes on.
    let (expansion, temperature) = (0.58e-6, 0.029);
    assert_near(1e-6 / 3.0_f64.sqrt(), expansion, 0.005e-6);
    assert_near(0.05 / 3.0_f64.sqrt(), temperature, 0.0005);
    let (by_expansion, by_temperature) = (length_nm * -0.1, length_nm * 11.5e-6);
    assert_near(combined([(by_expansion, expansion)]), 2.9, 0.05);
    assert_near(combined([(by_temperature, temperature)]), 16.6, 0.1);
    let all = combined([
        (1.0, 25.0),
        (1.0, comparator),
        (by_expansion, expansion),
        (by_temperature, temperature),
    ]);
    assert_near(all, 32.0, 0.5);
}
