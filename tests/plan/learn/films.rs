//! What to plan with from now on.

use super::studio::*;
use crate::plan::studio::*;
use puddlebook::lesson::{Consistency, Lesson, Technique, WeighedFilm};
use puddlebook::plan::learn::SpreadPart;
use puddlebook::quantity::units::{in_mm, mm};
use puddlebook::quantity::{Length, Spread};
use std::sync::Arc;

/// Two classes of three; film 1.30 mm in one, 1.38 mm in the other.
fn two_classes(lesson: Lesson) -> [puddlebook::lesson::WeighedClass; 2] {
    let lesson = Arc::new(lesson);
    let grams = |films: [f64; 3]| films.map(|film| film * GRAMS_A_MM);
    [class(&lesson, &grams([1.2, 1.3, 1.4])), class(&lesson, &grams([1.26, 1.37, 1.51]))]
}

/// Between one's own mean and the film before, nearer to the surer.
#[test]
fn the_new_film_lies_between_the_mean_and_the_film_before() {
    let learned = learned(&two_classes(plain(mm(1.6))));
    let film = &learned.films[0];
    assert_near(in_mm(film.mean.value), 1.34, 1e-9);
    let by_hand = film.own_weight * 1.34_f64.ln() + (1.0 - film.own_weight) * 1.6_f64.ln();
    assert_near(in_mm(film.film.typical()).ln(), by_hand, 1e-9);
    assert!((0.5..0.95).contains(&film.own_weight), "{}", film.own_weight);
    assert_eq!(film.before.typical(), mm(1.6));
}

/// Low and high hold 8 of 10 canvases as they vary now: 1.2816 standard deviations.
#[test]
fn low_and_high_hold_eight_canvases_in_ten() {
    let learned = learned(&two_classes(plain(mm(1.6))));
    let (film, spread) = (learned.films[0].film, learned.spread);
    let deviation = spread.from_now_on.class.hypot(spread.from_now_on.student);
    assert!(deviation > 0.05);
    let factor = |one: Length, other: Length| (one / other).value.ln();
    assert_near(factor(film.high(), film.typical()), 1.281_55 * deviation, 1e-5);
    assert_near(factor(film.typical(), film.low()), 1.281_55 * deviation, 1e-5);
}

/// What has been learned once is not taken for what was known before.
#[test]
fn learning_again_starts_from_the_film_that_was_replaced() {
    let once = learned(&two_classes(plain(mm(1.6))));
    let mut lesson = plain(mm(1.6));
    lesson.canvases[0].technique = learned_technique(&lesson, &once.films[0].film);
    let twice = learned(&two_classes(lesson));
    assert_eq!(twice.films[0].before, once.films[0].before);
    assert_eq!(twice.films[0].film, once.films[0].film);
    assert_eq!(twice.films[0].own_weight, once.films[0].own_weight);
}

fn learned_technique(lesson: &Lesson, film: &Spread<Length>) -> Arc<Technique> {
    let mut technique = (*lesson.canvases[0].technique).clone();
    let layer = &mut technique.layers[0];
    let weighed = WeighedFilm {
        cups: 6,
        canvases: 6,
        classes: 2,
        mean: mm(1.34),
        instead_of: layer.films.medium,
        own_weight: percent(80),
    };
    layer.films.medium = *film;
    layer.weighed.push((Consistency::Medium, weighed));
    Arc::new(technique)
}

/// One film for each consistency, from rows that were poured otherwise than planned.
#[test]
fn each_consistency_has_its_film() {
    let lesson = Arc::new(plain(mm(1.6)));
    let mut weighed = class(&lesson, &[60.0, 80.0, 100.0]);
    let mut mix = (*weighed.cups[1].mix).clone();
    mix.consistency = Consistency::Thin;
    weighed.cups[1].mix = Arc::new(mix);
    let learned = learned(&[weighed]);
    let found: Vec<_> =
        learned.films.iter().map(|film| (film.consistency, film.canvases.len())).collect();
    assert_eq!(found, [(Consistency::Medium, 2), (Consistency::Thin, 1)]);
}

/// One evening: the lesson's 8 % and 15 % stay.
#[test]
fn one_class_leaves_the_spreads_and_moves_the_film() {
    let learned = learned(&two_classes(plain(mm(1.6)))[..1]);
    assert_eq!(learned.spread.class, SpreadPart::TooFew(0.08));
    assert_eq!(learned.spread.student, SpreadPart::TooFew(0.15));
    assert!(learned.films[0].film.typical() < mm(1.6));
    assert!(learned.films[0].film.typical() > mm(1.3));
}

/// Nobody used anything: that is no film.
#[test]
fn empty_canvases_leave_the_film_as_it_was() {
    let lesson = Arc::new(plain(mm(1.6)));
    let learned = learned(&[class(&lesson, &[0.0, 0.0]), class(&lesson, &[0.0, 0.0])]);
    let film = &learned.films[0];
    assert_eq!((film.film, film.own_weight), (film.before, 0.0));
    assert_eq!(learned.spread.class, SpreadPart::TooFew(0.08));
}

#[test]
fn no_classes_teach_nothing() {
    let learned = learned(&[]);
    assert!(learned.films.is_empty() && learned.classes.is_empty());
}
