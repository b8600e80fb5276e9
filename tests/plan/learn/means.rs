//! Means and their intervals, worked by hand.

use crate::plan::studio::assert_near;
use puddlebook::plan::learn::Estimate;
use puddlebook::plan::learn::mean::{Classes, Varies, estimate};

const PLANNED: Varies = Varies { class: 0.08, student: 0.15 };

fn of(classes: &[&[f64]], from_scale: f64) -> Estimate<f64> {
    let values = classes.iter().enumerate();
    let values = values.flat_map(|(class, values)| values.iter().map(move |one| (class, *one)));
    estimate(&Classes::new(values).unwrap(), PLANNED, from_scale)
}

#[track_caller]
fn assert_interval(found: Estimate<f64>, value: f64, half: f64) {
    assert_near(found.value, value, 1e-12);
    assert_near(found.high - found.value, half, 1e-3 * half);
    assert_near(found.value - found.low, half.min(value), 1e-3 * half);
}

/// Class means 1.2, 1.3 and 1.4, one canvas each: standard error 0.1 / sqrt 3, and 4.303 is the
/// two-sided 5 % point of t with 2 degrees of freedom (NIST/SEMATECH e-Handbook, 1.3.6.7.2;
/// this and the other t from memory).
#[test]
fn several_classes_by_the_scatter_of_their_means() {
    assert_interval(of(&[&[1.2], &[1.3], &[1.4]], 0.0), 1.3, 4.303 * 0.1 / 3.0_f64.sqrt());
    // The canvases of a class are averaged first, however many they are.
    let unlike = of(&[&[1.1, 1.3], &[1.3], &[1.4, 1.4, 1.4]], 0.0);
    assert_interval(unlike, 1.3, 4.303 * 0.1 / 3.0_f64.sqrt());
}

/// Two classes with the same mean: what is known is the scatter within. Squares 4 x 0.01 over 2
/// degrees of freedom, half of it left in each mean, over two classes; t 4.303.
#[test]
fn classes_that_agree_by_chance_are_as_unsure_as_their_canvases() {
    let half = 4.303 * (0.02_f64 * 0.5 / 2.0).sqrt();
    assert_interval(of(&[&[1.2, 1.4], &[1.2, 1.4]], 0.0), 1.3, half);
}

/// One class: the class part as planned, 1.960 x 8 % of the true mean; the hands' part 3.182 (t,
/// 3 degrees of freedom) x standard error of 0.9, 0.9, 1.1, 1.1. At either end the mean found is
/// as far away as both allow.
#[test]
fn one_class_is_as_unsure_as_the_lesson_plans() {
    let hands = 3.182 * (0.04_f64 / 3.0 / 4.0).sqrt();
    let found = of(&[&[0.9, 0.9, 1.1, 1.1]], 0.0);
    for end in [found.low, found.high] {
        assert_near((end - 1.0).abs(), (1.96 * 0.08 * end).hypot(hands), 1e-4);
    }
    assert!(found.low < found.value && found.value < found.high);
}

/// 1.960 x the root of 8 % and 15 % squared is a third: the truth lies between three quarters
/// and one and a half of what was found.
#[test]
fn one_canvas_is_as_unsure_as_the_lesson_plans_in_both_parts() {
    let found = of(&[&[2.0]], 0.0);
    assert_near(found.low, 2.0 / (1.0 + 1.96 * 0.17), 1e-4);
    assert_near(found.high, 2.0 / (1.0 - 1.96 * 0.17), 1e-4);
}

/// A lesson that plans with anything gets an interval that ends all the same.
#[test]
fn an_interval_ends() {
    let values = Classes::new([(0, 1.0)]).unwrap();
    let found = estimate(&values, Varies { class: 1.0, student: 1.0 }, 0.0);
    assert!(found.high.is_finite() && found.high > 5.0);
}

/// All readings alike on a coarse scale.
#[test]
fn no_interval_is_narrower_than_the_scale_makes_it() {
    assert_interval(of(&[&[1.0, 1.0], &[1.0, 1.0]], 0.05), 1.0, 1.96 * 0.05);
    // A scatter that is wider holds that of the scale already.
    assert_interval(of(&[&[1.2], &[1.3], &[1.4]], 0.01), 1.3, 4.303 * 0.1 / 3.0_f64.sqrt());
}

#[test]
fn no_film_is_thinner_than_nothing() {
    let wide = of(&[&[0.5], &[1.5]], 0.0);
    assert_eq!(wide.low, 0.0);
    // 12.706: t with one degree of freedom.
    assert_near(wide.high, 1.0 + 12.706 * 0.5, 1e-3);
}
