//! Emslie, Bonner and Peck, J. Appl. Phys. 29, 858 (1958).

use super::super::studio::assert_near;
use super::{DENSITY, fluid};
use proptest::prelude::*;
use puddlebook::plan::flow::SpunFilm;
use puddlebook::quantity::units::{in_mm, in_seconds, mm, seconds, turns_a_minute};
use std::f64::consts::TAU;

fn film(viscosity: f64, turns: f64, start_mm: f64) -> SpunFilm {
    SpunFilm { fluid: fluid(viscosity), speed: turns_a_minute(turns), start: mm(start_mm) }
}

fn left_mm(film: &SpunFilm, time: f64) -> f64 {
    in_mm(film.left(seconds(time)))
}

/// 1 mm of 1200 kg/m³ and 1 Pa s, spun for 10 s: computed from the paper's formula with Python
/// and confirmed there by integrating its equation.
#[test]
fn the_film_is_that_of_the_paper() {
    for (turns, expected) in [(30.0, 0.9293), (60.0, 0.7829), (120.0, 0.5325)] {
        assert_near(left_mm(&film(1.0, turns, 1.0), 10.0), expected, 5e-5);
    }
}

#[test]
fn without_a_turn_or_before_the_start_nothing_changes() {
    assert_eq!(left_mm(&film(0.3, 0.0, 1.7), 600.0), 1.7);
    assert_eq!(left_mm(&film(0.3, 90.0, 1.7), 0.0), 1.7);
    assert_eq!(left_mm(&film(0.3, 90.0, 1.7), -5.0), 1.7);
}

#[test]
fn without_a_turn_the_film_never_thins() {
    let still = film(1.0, 0.0, 1.5);
    assert_eq!(in_seconds(still.time_to(mm(1.0))), f64::INFINITY);
    assert_eq!(in_seconds(still.time_to(mm(1.5))), 0.0);
}

/// In the end h = sqrt(3 mu / (4 rho w² t)): four times the time leaves half, whatever the start.
#[test]
fn long_after_the_start_the_film_falls_with_the_root_of_time() {
    let speed = 60.0 * TAU / 60.0;
    for start in [1.0, 3.0] {
        let film = film(1.0, 60.0, start);
        let long = 1e6;
        let end = (3.0 / (4.0 * DENSITY * speed * speed * long)).sqrt() * 1000.0;
        assert_near(left_mm(&film, long) / end, 1.0, 1e-3);
        assert_near(left_mm(&film, 4.0 * long) / left_mm(&film, long), 0.5, 1e-3);
    }
}

/// dh/dt = -2 rho w² h³ / (3 mu), integrated by the classical Runge-Kutta method of fourth order.
fn integrated(viscosity: f64, turns: f64, start_mm: f64, time: f64) -> f64 {
    const STEPS: u32 = 2_000;
    let speed = turns * TAU / 60.0;
    let rate = |h: f64| -2.0 * DENSITY * speed * speed * h.powi(3) / (3.0 * viscosity);
    let step = time / f64::from(STEPS);
    let film = (0..STEPS).fold(start_mm / 1000.0, |h, _| {
        let one = rate(h);
        let two = rate(h + step / 2.0 * one);
        let three = rate(h + step / 2.0 * two);
        let four = rate(h + step * three);
        h + step / 6.0 * (one + 2.0 * two + 2.0 * three + four)
    });
    film * 1000.0
}

#[test]
fn the_formula_is_what_the_equation_integrates_to() {
    for (viscosity, turns, start, time) in [
        (1.0, 60.0, 1.0, 10.0),
        (0.3, 60.0, 1.5, 30.0),
        (3.0, 120.0, 2.0, 45.0),
        (0.1, 20.0, 0.5, 300.0),
    ] {
        let formula = left_mm(&film(viscosity, turns, start), time);
        assert_near(formula / integrated(viscosity, turns, start, time), 1.0, 1e-7);
    }
}

proptest! {
    #[test]
    fn thinner_paint_faster_turns_and_more_time_leave_less(
        viscosity in 0.05..10.0_f64, turns in 5.0..200.0_f64,
        start in 0.1..5.0_f64, time in 0.5..600.0_f64, more in 1.05..5.0_f64,
    ) {
        let left = left_mm(&film(viscosity, turns, start), time);
        prop_assert!(left > 0.0 && left < start);
        prop_assert!(left_mm(&film(viscosity / more, turns, start), time) < left);
        prop_assert!(left_mm(&film(viscosity, turns * more, start), time) < left);
        prop_assert!(left_mm(&film(viscosity, turns, start), time * more) < left);
        prop_assert!(left_mm(&film(viscosity, turns, start * more), time) > left);
    }

    #[test]
    fn a_film_leads_back_to_the_time(
        viscosity in 0.05..10.0_f64, turns in 5.0..200.0_f64, time in 0.5..600.0_f64,
    ) {
        let film = film(viscosity, turns, 1.5);
        let back = in_seconds(film.time_to(film.left(seconds(time))));
        prop_assert!((back / time - 1.0).abs() < 1e-6);
        prop_assert_eq!(in_seconds(film.time_to(mm(1.5))), 0.0);
    }

    /// Spinning for a while and then for another is spinning for both.
    #[test]
    fn a_pause_changes_nothing(viscosity in 0.05..10.0_f64, first in 0.0..60.0_f64, then in 0.0..60.0_f64) {
        let whole = film(viscosity, 60.0, 1.5);
        let after = SpunFilm { start: whole.left(seconds(first)), ..whole };
        let (at_once, in_two) = (left_mm(&whole, first + then), left_mm(&after, then));
        prop_assert!((at_once - in_two).abs() < 1e-9);
    }
}
