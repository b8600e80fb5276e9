//! Ounces typed as grams.

use super::studio::*;
use puddlebook::lesson::{Trust, WeighedClass};
use puddlebook::plan::learn::{Doubt, DoubtKind, learn};
use puddlebook::quantity::units::{OUNCE_KG, gram, in_gram, ml, mm};
use std::sync::Arc;

/// The lesson fills the cups with 64.516 mL of 1 g/mL, to the gram: 65 g.
fn doubts(before: &[f64]) -> Vec<Doubt> {
    let weighed = plainly(before);
    learn(&[weighed]).err().unwrap_or_default()
}

fn plainly(before: &[f64]) -> WeighedClass {
    let lesson = Arc::new(plain(mm(1.0)));
    let mut weighed = class(&lesson, before);
    for (cup, before) in weighed.cups.iter_mut().zip(before) {
        (cup.before, cup.after) = (gram(*before), gram(before / 2.0));
        cup.trust = Trust::Plain;
    }
    weighed
}

const OUNCE: f64 = OUNCE_KG * 1000.0;

#[test]
fn ounces_typed_as_grams_are_pointed_out_at_their_row() {
    let found = doubts(&[65.0, 65.0 / OUNCE, 71.0, 65.0 * OUNCE]);
    let places: Vec<usize> = found.iter().map(|doubt| doubt.place.span.start).collect();
    assert_eq!(places, [1, 3]);
    let DoubtKind::TooLight { weighed, planned } = found[0].kind else { panic!("{found:?}") };
    assert_eq!(in_gram(planned).round(), 65.0);
    assert_eq!(in_gram(weighed * OUNCE).round(), 65.0);
    assert!(matches!(found[1].kind, DoubtKind::TooHeavy { .. }));
}

/// From 20 to 40 times off, either way.
#[test]
fn what_is_far_off_but_not_by_28_is_a_small_or_a_large_cup() {
    assert!(doubts(&[65.0 / 19.0, 65.0 * 19.0, 65.0 / 41.0, 65.0 * 41.0, 0.0]).is_empty());
    assert_eq!(doubts(&[65.0 / 21.0, 65.0 * 21.0, 65.0 / 39.0, 65.0 * 39.0]).len(), 4);
}

#[test]
fn a_row_that_was_checked_is_believed() {
    let mut weighed = plainly(&[65.0 / OUNCE, 65.0]);
    assert_eq!(learn(&[weighed.clone()]).unwrap_err().len(), 1);
    weighed.cups[0].trust = Trust::Checked;
    assert_eq!(learn(&[weighed]).unwrap().films[0].canvases.len(), 2);
}

/// The cup loss is filled in as well.
#[test]
fn planned_is_what_the_plan_fills_in() {
    let mut lesson = plain(mm(1.0));
    lesson.mixing.cup_loss = ml(10.0);
    let mut weighed = class(&Arc::new(lesson), &[1.0]);
    weighed.cups[0].before = gram(75.0 / OUNCE);
    weighed.cups[0].after = gram(0.0);
    weighed.cups[0].trust = Trust::Plain;
    let doubts = learn(&[weighed]).unwrap_err();
    let DoubtKind::TooLight { planned, .. } = doubts[0].kind else { panic!("{doubts:?}") };
    assert_eq!(in_gram(planned).round(), 75.0);
}
