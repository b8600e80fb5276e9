//! Huppert, J. Fluid Mech. 121, 43 (1982).

use super::super::studio::assert_near;
use super::{DENSITY, GRAVITY, density, fluid};
use proptest::prelude::*;
use puddlebook::plan::flow::{Blob, fluid_that_reaches, volume_that_reaches};
use puddlebook::quantity::units::{in_ml, in_mm, in_pascal_second, ml, mm, seconds};
use std::f64::consts::{PI, TAU};

fn blob(viscosity: f64, volume_ml: f64) -> Blob {
    Blob { fluid: fluid(viscosity), volume: ml(volume_ml) }
}

/// 1200 kg/m³ and 1 Pa s: mL, seconds, radius and depth in the middle in mm; computed from the
/// paper's formula with Python (its constant is 0.894 in the paper, 0.893914 to more digits).
#[test]
fn the_spread_is_that_of_the_paper() {
    for (volume, time, radius, middle) in
        [(100.0, 60.0, 132.67, 2.411), (100.0, 600.0, 176.91, 1.356), (30.0, 60.0, 84.47, 1.785)]
    {
        let (blob, time) = (blob(1.0, volume), seconds(time));
        assert_near(in_mm(blob.radius(time)), radius, 5e-3);
        assert_near(in_mm(blob.depth(mm(0.0), time)), middle, 5e-4);
    }
}

#[test]
fn ten_times_the_time_is_a_third_more_radius() {
    let blob = blob(1.0, 100.0);
    let ratio = blob.radius(seconds(600.0)) / blob.radius(seconds(60.0));
    // The eighth root of ten.
    assert_near(ratio.value, 1.333_521_432, 1e-9);
    assert_eq!(in_mm(blob.radius(seconds(0.0))), 0.0);
    assert_eq!(in_mm(blob.radius(seconds(-1.0))), 0.0);
    assert_eq!(in_mm(blob.depth(blob.radius(seconds(60.0)), seconds(60.0))), 0.0);
}

/// dh/dt = g / (3 nu) (1/r) d/dr(r h³ dh/dr) by finite volumes in rings. It begins as a blob of
/// the paper's shape a while after pouring, and is asked for the radius that holds nearly all of
/// it later.
fn integrated(viscosity: f64, volume_ml: f64, from: f64, until: f64) -> (f64, f64) {
    const RINGS: usize = 150;
    let blob = blob(viscosity, volume_ml);
    let width = 1.15 * in_mm(blob.radius(seconds(until))) / 1000.0 / RINGS as f64;
    let spread = GRAVITY * DENSITY / (3.0 * viscosity);
    let middle = |ring: usize| (ring as f64 + 0.5) * width;
    let depth = |ring| in_mm(blob.depth(mm(middle(ring) * 1000.0), seconds(from))) / 1000.0;
    let mut depths: Vec<f64> = (0..RINGS).map(depth).collect();
    let mut time = from;
    while time < until {
        let deepest = depths.iter().copied().fold(0.0, f64::max);
        let step = (0.2 * width * width / (spread * deepest.powi(3))).min(until - time);
        let flows: Vec<f64> = (1..RINGS)
            .map(|ring| {
                let (inner, outer) = (depths[ring - 1], depths[ring]);
                let cubed = (inner.powi(3) + outer.powi(3)) / 2.0;
                let slope = (outer - inner) / width;
                -TAU * ring as f64 * width * spread * cubed * slope
            })
            .collect();
        for (ring, depth) in depths.iter_mut().enumerate() {
            let coming = if ring == 0 { 0.0 } else { flows[ring - 1] };
            let going = flows.get(ring).copied().unwrap_or(0.0);
            *depth += step * (coming - going) / (TAU * middle(ring) * width);
        }
        time += step;
    }
    let held = |ring: usize| TAU * middle(ring) * width * depths[ring];
    let all: f64 = (0..RINGS).map(held).sum();
    let mut sum = 0.0;
    let rim = (0..RINGS).find(|ring| {
        sum += held(*ring);
        sum > 0.9999 * all
    });
    (depths[0] * 1000.0, (rim.unwrap() + 1) as f64 * width * 1000.0)
}

#[test]
fn the_formula_is_what_the_equation_integrates_to() {
    for (viscosity, volume) in [(1.0, 100.0), (0.3, 30.0)] {
        let (middle, rim) = integrated(viscosity, volume, 5.0, 60.0);
        let blob = blob(viscosity, volume);
        assert_near(middle / in_mm(blob.depth(mm(0.0), seconds(60.0))), 1.0, 1e-2);
        assert_near(rim / in_mm(blob.radius(seconds(60.0))), 1.0, 2e-2);
    }
}

proptest! {
    /// The depth summed over rings is what was poured.
    #[test]
    fn no_paint_is_lost(viscosity in 0.05..10.0_f64, volume in 1.0..500.0_f64, time in 1.0..3600.0_f64) {
        let (blob, time) = (blob(viscosity, volume), seconds(time));
        let radius = in_mm(blob.radius(time));
        let rings = 4_000;
        let sum: f64 = (0..rings)
            .map(|ring| {
                let r = (f64::from(ring) + 0.5) / f64::from(rings) * radius;
                TAU * r * in_mm(blob.depth(mm(r), time)) * radius / f64::from(rings) / 1000.0
            })
            .sum();
        prop_assert!((sum - volume).abs() < 1e-3 * volume, "{sum} mL of {volume} mL");
    }

    #[test]
    fn thinner_paint_more_paint_and_more_time_go_further(
        viscosity in 0.05..10.0_f64, volume in 1.0..500.0_f64,
        time in 1.0..3600.0_f64, more in 1.05..5.0_f64,
    ) {
        let radius = |viscosity, volume, time| in_mm(blob(viscosity, volume).radius(seconds(time)));
        let here = radius(viscosity, volume, time);
        prop_assert!(radius(viscosity / more, volume, time) > here);
        prop_assert!(radius(viscosity, volume * more, time) > here);
        prop_assert!(radius(viscosity, volume, time * more) > here);
    }

    /// A ring that is read leads back to the stiffness and to the volume.
    #[test]
    fn a_radius_leads_back(viscosity in 0.05..10.0_f64, volume in 1.0..500.0_f64, time in 1.0..3600.0_f64) {
        let (blob, time) = (blob(viscosity, volume), seconds(time));
        let radius = blob.radius(time);
        let found = fluid_that_reaches(radius, time, ml(volume), density()).unwrap();
        prop_assert!((in_pascal_second(found.viscosity()) / viscosity - 1.0).abs() < 1e-9);
        let needed = volume_that_reaches(radius, time, blob.fluid);
        prop_assert!((in_ml(needed) / volume - 1.0).abs() < 1e-9);
    }
}

#[test]
fn what_has_not_spread_says_nothing_of_its_stiffness() {
    let asked = |radius, time| fluid_that_reaches(mm(radius), seconds(time), ml(30.0), density());
    assert!(asked(0.0, 60.0).is_none());
    assert!(asked(80.0, 0.0).is_none());
    assert!(asked(80.0, 60.0).is_some());
}

/// The same circle in the same time takes paint by the cube root of the stiffness.
#[test]
fn eight_times_as_stiff_takes_twice_the_paint() {
    let needed = |viscosity| volume_that_reaches(mm(100.0), seconds(60.0), fluid(viscosity));
    assert_near((needed(0.8) / needed(0.1)).value, 2.0, 1e-9);
    // pi R² times a mean depth: half the radius of 100 mL takes less than 100 mL.
    let held = in_ml(needed(1.0));
    assert_near(
        in_mm(blob(1.0, held).depth(mm(0.0), seconds(60.0))),
        4.0 * held / (3.0 * PI * 1e4) * 1000.0,
        1e-9,
    );
}
