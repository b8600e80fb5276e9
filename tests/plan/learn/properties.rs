//! What holds for any weighings.

use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Lesson, WeighedClass};
use puddlebook::plan::learn::{Learned, LearnedFilm};
use puddlebook::quantity::units::{gram, in_mm, mm};
use std::sync::Arc;

/// Grams on plain canvases, by class, in two or more classes.
fn grams() -> impl Strategy<Value = Vec<Vec<f64>>> {
    prop::collection::vec(prop::collection::vec(20.0..200.0_f64, 1..6), 1..6)
}

fn weighed(grams: &[Vec<f64>]) -> Vec<WeighedClass> {
    let lesson: Arc<Lesson> = Arc::new(plain(mm(1.5)));
    grams.iter().map(|grams| class(&lesson, grams)).collect()
}

fn only(learned: &Learned) -> &LearnedFilm {
    &learned.films[0]
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(other.abs()).max(1e-3)
}

/// Holds what is learned against what is learned from the same cups and classes in another
/// order.
fn order_changes_nothing(grams: &[Vec<f64>], seed: u64) -> Result<(), TestCaseError> {
    let classes = weighed(grams);
    let mut shuffled = classes.clone();
    let turn = |len: usize| usize::try_from(seed % len as u64).unwrap();
    for class in &mut shuffled {
        let by = turn(class.cups.len());
        class.cups.rotate_left(by);
        class.cups.reverse();
    }
    let by = turn(shuffled.len());
    shuffled.rotate_left(by);
    let (one, other) = (learned(&classes), learned(&shuffled));
    prop_assert_eq!(one.films.len(), other.films.len());
    prop_assert_eq!(one.spread.method, other.spread.method);
    prop_assert!((one.spread.student.value() - other.spread.student.value()).abs() < 1e-6);
    let (one, other) = (only(&one), only(&other));
    prop_assert_eq!((one.cups, one.classes), (other.cups, other.classes));
    for of in [
        (|film| in_mm(film.mean.value)) as fn(&LearnedFilm) -> f64,
        |film| in_mm(film.mean.low),
        |film| in_mm(film.mean.high),
        |film| in_mm(film.from_scale),
        |film| in_mm(film.film.typical()),
        |film| film.own_weight,
    ] {
        prop_assert!(near(of(one), of(other)), "{} {}", of(one), of(other));
    }
    Ok(())
}

/// Two cups of a class so alike that the likelihood rises to the end.
#[test]
fn classes_that_explain_all_are_told_in_any_order() {
    let grams = [vec![197.8071674409255, 197.84721109396867], vec![20.0], vec![98.8981999883796]];
    for seed in 0..12 {
        order_changes_nothing(&grams, seed).unwrap();
    }
    order_changes_nothing(&grams, 4_813_113_469_384_276_795).unwrap();
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn the_order_of_cups_and_classes_changes_nothing(grams in grams(), seed in any::<u64>()) {
        order_changes_nothing(&grams, seed)?;
    }

    #[test]
    fn so_many_times_the_grams_are_so_many_times_the_film(grams in grams(), times in 0.2..5.0_f64) {
        let mut classes = weighed(&grams);
        let one = learned(&classes);
        for cup in classes.iter_mut().flat_map(|class| &mut class.cups) {
            cup.before = cup.after + (cup.before - cup.after) * times;
            cup.step *= times;
        }
        let other = learned(&classes);
        prop_assert!((one.spread.class.value() - other.spread.class.value()).abs() < 1e-5);
        prop_assert!((one.spread.student.value() - other.spread.student.value()).abs() < 1e-6);
        let (one, other) = (only(&one), only(&other));
        for of in [
            (|film| in_mm(film.mean.value)) as fn(&LearnedFilm) -> f64,
            |film| in_mm(film.mean.low),
            |film| in_mm(film.mean.high),
            |film| in_mm(film.from_scale),
        ] {
            prop_assert!(near(of(one) * times, of(other)), "{} {}", of(one), of(other));
        }
        prop_assert!(near(one.own_weight, other.own_weight));
    }

    #[test]
    fn one_s_own_weight_is_a_share_and_grows_with_classes(grams in grams(), step in 0.0..5.0_f64) {
        let mut classes = weighed(&grams);
        for cup in classes.iter_mut().flat_map(|class| &mut class.cups) {
            cup.step = gram(step);
        }
        let mut before = 0.0;
        // The same evenings again and again.
        let once = classes.clone();
        for _ in 0..4 {
            let own = only(&learned(&classes)).own_weight;
            prop_assert!((0.0..=1.0).contains(&own));
            prop_assert!(own > before, "{own} after {before}");
            before = own;
            classes.extend(once.iter().cloned());
        }
    }

    #[test]
    fn intervals_hold_their_mean_and_films_are_in_order(grams in grams()) {
        let learned = learned(&weighed(&grams));
        let film = only(&learned);
        prop_assert!(film.mean.low <= film.mean.value && film.mean.value <= film.mean.high);
        prop_assert!(film.film.low() <= film.film.typical());
        let (one, other) = (film.mean.value, film.before.typical());
        let within = film.film.typical() >= one.min(other) * (1.0 - 1e-12)
            && film.film.typical() <= one.max(other) * (1.0 + 1e-12);
        prop_assert!(within);
    }
}
