//! How canvases vary, relative to the mean of their cell.

use super::studio::*;
use crate::plan::studio::*;
use puddlebook::plan::learn::{Method, SpreadPart};
use puddlebook::quantity::units::mm;
use std::sync::Arc;

#[track_caller]
fn weighed(part: SpreadPart) -> f64 {
    let SpreadPart::Weighed(value) = part else { panic!("{part:?} is not weighed") };
    value
}

/// The dyestuff batches (Davies and Goldsmith 1972) poured as paint, a gram for each: the roots
/// of 1764.05 and 2451.25 over the mean of 1527.5.
#[test]
fn dyestuff_as_paint() {
    let batches = [
        [1545.0, 1440.0, 1440.0, 1520.0, 1580.0],
        [1540.0, 1555.0, 1490.0, 1560.0, 1495.0],
        [1595.0, 1550.0, 1605.0, 1510.0, 1560.0],
        [1445.0, 1440.0, 1595.0, 1465.0, 1545.0],
        [1595.0, 1630.0, 1515.0, 1635.0, 1625.0],
        [1520.0, 1455.0, 1450.0, 1480.0, 1445.0],
    ];
    let lesson = Arc::new(plain(mm(20.0)));
    let mut classes: Vec<_> = batches.iter().map(|batch| class(&lesson, batch)).collect();
    let spread = learned(&classes).spread;
    assert_eq!((spread.method, spread.canvases, spread.classes), (Method::Anova, 30, 6));
    assert_near(weighed(spread.class), 1_764.05_f64.sqrt() / 1527.5, 1e-9);
    assert_near(weighed(spread.student), 2_451.25_f64.sqrt() / 1527.5, 1e-9);
    // Put together with the planned 8 % and 15 %, which count as 4 degrees of freedom, beside
    // the 5 and 24 of these data.
    let square = 1527.5_f64.powi(2);
    let class = ((4.0 * 0.08_f64.powi(2) + 5.0 * 1_764.05 / square) / 9.0).sqrt();
    let student = ((4.0 * 0.15_f64.powi(2) + 24.0 * 2_451.25 / square) / 28.0).sqrt();
    assert_near(spread.from_now_on.class, class, 1e-9);
    assert_near(spread.from_now_on.student, student, 1e-9);
    // Without one canvas it is no longer balanced.
    classes[0].cups.pop();
    let spread = learned(&classes).spread;
    assert_eq!((spread.method, spread.raw_class), (Method::Reml, None));
    assert_near(weighed(spread.student), 2_451.25_f64.sqrt() / 1527.5, 2e-3);
}

/// Classes that are more alike than their canvases: zero, and the raw figure for the note.
/// By hand: means 1.00 and 1.02 of 1.2, 0.8 and 1.22, 0.82; ms within 0.08, between 0.0004.
#[test]
fn classes_that_do_not_differ_show_nothing() {
    let lesson = Arc::new(plain(mm(1.0)));
    let grams = |films: [f64; 2]| films.map(|film| film * GRAMS_A_MM);
    let classes = [class(&lesson, &grams([1.2, 0.8])), class(&lesson, &grams([1.22, 0.82]))];
    let spread = learned(&classes).spread;
    assert_eq!(spread.class, SpreadPart::NothingSeen);
    assert_eq!(spread.class.value(), 0.0);
    // Two classes that agree do not make the reserve forget that classes differ.
    assert_near(spread.from_now_on.class, 0.08 * (4.0_f64 / 5.0).sqrt(), 1e-12);
    assert_near(spread.raw_class.unwrap(), (0.0004 - 0.08) / 2.0 / 1.01_f64.powi(2), 1e-9);
    assert_near(weighed(spread.student), 0.08_f64.sqrt() / 1.01, 1e-9);
}

/// A film twice as thick in another technique is another cell and no spread.
#[test]
fn techniques_are_compared_with_themselves() {
    let thick = Arc::new(plain(mm(2.0)));
    let mut other = plain(mm(4.0));
    other.canvases[0].technique = one_film("another pour", mm(4.0));
    let other = Arc::new(other);
    let evening = |factor: f64| {
        let mut one = class(&thick, &[100.0, 110.0, 90.0].map(|grams| grams * factor));
        one.cups.extend(class(&other, &[200.0, 180.0, 220.0].map(|grams| grams * factor)).cups);
        one
    };
    let spread = learned(&[evening(1.0), evening(1.1), evening(0.9)]).spread;
    assert_eq!((spread.method, spread.canvases), (Method::Reml, 18));
    assert_near(weighed(spread.student), 0.09, 0.02);
    assert_near(weighed(spread.class), 0.1, 0.03);
}

#[test]
fn one_canvas_a_class_is_too_few() {
    let lesson = Arc::new(plain(mm(1.0)));
    let classes = [60.0, 70.0, 65.0].map(|grams| class(&lesson, &[grams]));
    let spread = learned(&classes).spread;
    assert_eq!(spread.class, SpreadPart::TooFew(0.08));
    assert_eq!(spread.student, SpreadPart::TooFew(0.15));
    assert_eq!((spread.method, spread.classes), (Method::None, 3));
}
