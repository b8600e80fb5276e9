//! Jeffreys, Proc. Camb. Phil. Soc. 26, 204 (1930).

use super::super::studio::assert_near;
use super::{DENSITY, GRAVITY, fluid};
use proptest::prelude::*;
use puddlebook::plan::flow::{Tilt, TiltedFilm};
use puddlebook::quantity::units::{degrees, in_mm, mm, seconds};

fn film(viscosity: f64, tilt: f64, start_mm: f64) -> TiltedFilm {
    let tilt = Tilt::new(degrees(tilt)).unwrap();
    TiltedFilm { fluid: fluid(viscosity), tilt, start: mm(start_mm) }
}

#[test]
fn a_tilt_is_more_than_level_and_at_most_upright() {
    for wrong in [0.0, -10.0, 90.1, 180.0, f64::NAN] {
        assert!(Tilt::new(degrees(wrong)).is_none(), "{wrong}");
    }
    assert!(Tilt::new(degrees(90.0)).is_some());
    // sin 30° = 1/2.
    let rise = Tilt::by_half_the_board().rise(mm(200.0));
    assert_near(in_mm(rise), 100.0, 1e-9);
    assert_eq!(Tilt::new(degrees(30.0)), Some(Tilt::by_half_the_board()));
}

/// 1 mm of 1200 kg/m³ and 1 Pa s: tilt, seconds, distance from the upper rim and x* in mm, film
/// there in mm; computed from the paper's formula with Python.
#[test]
fn the_film_is_that_of_the_paper() {
    for (tilt, time, from_top, front, expected) in [
        (90.0, 60.0, 100.0, 706.1, 0.3763),
        (90.0, 10.0, 50.0, 117.7, 0.6518),
        (5.0, 600.0, 100.0, 615.4, 0.4031),
    ] {
        let film = film(1.0, tilt, 1.0);
        let time = seconds(time);
        assert_near(in_mm(film.left(mm(from_top), time)), expected, 5e-5);
        assert_near(in_mm(film.thinned_to(time)), front, 0.05);
    }
    // The mean over the upper 0.10 m of the first: two thirds, 0.2509 mm.
    let mean = film(1.0, 90.0, 1.0).mean(mm(100.0), seconds(60.0));
    assert_near(in_mm(mean), 0.2509, 5e-5);
}

#[test]
fn below_the_front_the_film_is_as_it_was() {
    let film = film(1.0, 90.0, 1.0);
    // x* is 117.7 mm after 10 s.
    assert_eq!(in_mm(film.left(mm(118.0), seconds(10.0))), 1.0);
    assert!(in_mm(film.left(mm(117.0), seconds(10.0))) < 1.0);
    for time in [0.0, -3.0] {
        assert_eq!(in_mm(film.left(mm(0.0), seconds(time))), 1.0);
        assert_eq!(in_mm(film.mean(mm(200.0), seconds(time))), 1.0);
    }
    assert_eq!(in_mm(film.mean(mm(0.0), seconds(10.0))), 0.0);
}

/// In the end four times the time leaves half, whatever the start.
#[test]
fn long_after_the_start_the_film_falls_with_the_root_of_time() {
    for start in [1.0, 3.0] {
        let film = film(1.0, 30.0, start);
        let mean = |time: f64| in_mm(film.mean(mm(200.0), seconds(time)));
        let end = (0.2 / (DENSITY * GRAVITY * 0.5 * 1000.0_f64)).sqrt() * 2.0 / 3.0 * 1000.0;
        assert_near(mean(1000.0), end, 1e-9);
        assert_near(mean(4000.0) / mean(1000.0), 0.5, 1e-9);
    }
}

/// dh/dt + d/dx(rho g sin(a) h³ / (3 mu)) = 0 by finite volumes: paint moves down only, so what
/// leaves a cell is given by the film in it (upwind), and nothing comes in at the upper rim.
/// The films of the cells in mm.
fn integrated(
    viscosity: f64,
    tilt: f64,
    (start_mm, board_mm, time): (f64, f64, f64),
    cells: usize,
) -> Vec<f64> {
    let pull = DENSITY * GRAVITY * tilt.to_radians().sin() / (3.0 * viscosity);
    let (start, width) = (start_mm / 1000.0, board_mm / 1000.0 / cells as f64);
    // No wave crosses more than half a cell in a step.
    let steps = (time * 3.0 * pull * start * start / (0.5 * width)).ceil();
    let step = time / steps;
    let mut films = vec![start; cells];
    for _ in 0..steps as usize {
        let mut coming = 0.0;
        for film in &mut films {
            let going = pull * film.powi(3);
            *film += step / width * (coming - going);
            coming = going;
        }
    }
    films.into_iter().map(|film| film * 1000.0).collect()
}

#[test]
fn the_formula_is_what_the_equation_integrates_to() {
    for (viscosity, tilt, case) in [
        (1.0, 90.0, (1.0, 100.0, 10.0)),
        (1.0, 30.0, (1.5, 200.0, 60.0)),
        (3.0, 30.0, (1.5, 200.0, 20.0)),
        (0.3, 5.0, (1.5, 200.0, 60.0)),
    ] {
        const CELLS: usize = 800;
        let (start, board, time) = case;
        let film = film(viscosity, tilt, start);
        let mean = in_mm(film.mean(mm(board), seconds(time)));
        let off =
            |films: &[f64]| (films.iter().sum::<f64>() / films.len() as f64 / mean - 1.0).abs();
        let coarse = off(&integrated(viscosity, tilt, case, CELLS / 2));
        let films = integrated(viscosity, tilt, case, CELLS);
        // Of first order: with cells half as wide it is off by about half as much.
        assert!(
            off(&films) < 5e-3 && off(&films) < 0.65 * coarse + 1e-6,
            "{} {coarse}",
            off(&films)
        );
        // Upwind cells blur the corner at the front and the steep beginning; away from both
        // they lie on the curve.
        let front = in_mm(film.thinned_to(seconds(time)));
        for part in [0.25, 0.5, 0.8, 0.95] {
            let at = board * part;
            if (at - front).abs() < 0.1 * front {
                continue;
            }
            let cell = films[(part * CELLS as f64) as usize];
            assert_near(in_mm(film.left(mm(at), seconds(time))) / cell, 1.0, 1e-2);
        }
    }
}

/// The mean is the film summed over the board, by the midpoint rule.
#[test]
fn the_mean_is_that_of_the_film() {
    for time in [1.0, 12.0, 30.0, 300.0] {
        let film = film(1.0, 30.0, 1.5);
        let parts = 20_000;
        let at = |part: i32| mm(200.0) * (f64::from(part) + 0.5) / f64::from(parts);
        let sum: f64 = (0..parts).map(|part| in_mm(film.left(at(part), seconds(time)))).sum();
        let mean = in_mm(film.mean(mm(200.0), seconds(time)));
        assert_near(mean, sum / f64::from(parts), 1e-5);
    }
}

proptest! {
    #[test]
    fn thinner_paint_steeper_boards_and_more_time_leave_less(
        viscosity in 0.05..10.0_f64, tilt in 1.0..44.0_f64,
        start in 0.1..5.0_f64, time in 0.5..600.0_f64, more in 1.05..2.0_f64,
    ) {
        let mean = |viscosity, tilt, time| {
            in_mm(film(viscosity, tilt, start).mean(mm(200.0), seconds(time)))
        };
        let left = mean(viscosity, tilt, time);
        prop_assert!(left > 0.0 && left < start);
        prop_assert!(mean(viscosity / more, tilt, time) < left);
        prop_assert!(mean(viscosity, tilt * more, time) < left);
        prop_assert!(mean(viscosity, tilt, time * more) < left);
    }

    /// What has left the board is what has flowed over its lower rim: the film there, cubed, in
    /// the equation's flow, summed over the time with the midpoint rule.
    #[test]
    fn no_paint_is_lost(viscosity in 0.2..5.0_f64, tilt in 5.0..90.0_f64, time in 5.0..120.0_f64) {
        let board = 150.0;
        let film = film(viscosity, tilt, 1.5);
        let pull = DENSITY * GRAVITY * tilt.to_radians().sin() / (3.0 * viscosity);
        let parts = 4_000;
        let step = time / f64::from(parts);
        let over_rim: f64 = (0..parts)
            .map(|part| {
                let at = seconds((f64::from(part) + 0.5) * step);
                pull * (in_mm(film.left(mm(board), at)) / 1000.0).powi(3) * step
            })
            .sum();
        let gone = (1.5 - in_mm(film.mean(mm(board), seconds(time)))) * board * 1e-6;
        prop_assert!((over_rim - gone).abs() < 2e-3 * gone, "{over_rim} went, {gone} is missing");
    }
}
