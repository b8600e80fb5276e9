//! What a teacher shows, and that nobody orders by it.

use super::super::studio::assert_near;
use puddlebook::lesson::Consistency;
use puddlebook::plan::flow::{Blob, Demonstration, Fluid};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::{
    in_g_per_ml, in_gram, in_ml, in_mm, in_seconds, in_turns_a_minute,
};
use std::f64::consts::TAU;
use std::fs;
use std::path::Path;

const METRIC: UnitSystem = UnitSystem::Metric;

#[test]
fn thinner_paint_leaves_less_and_goes_further() {
    for units in [UnitSystem::Us, METRIC] {
        let show = Demonstration::of(units);
        let films = |film: fn(&Demonstration, Consistency) -> _| {
            Consistency::ALL.map(|consistency| film(&show, consistency))
        };
        for films in [films(Demonstration::spun_film), films(Demonstration::tilted_film)] {
            assert!(films[0] < films[1] && films[1] < films[2] && films[2] < show.start);
        }
        let paint = Consistency::ALL.map(|consistency| show.spread_paint(consistency));
        assert!(paint[0] < paint[1] && paint[1] < paint[2]);
    }
}

/// The formulas written out in plain numbers, away from the engine.
#[test]
fn the_figures_of_the_chapter_are_those_of_the_formulas() {
    let show = Demonstration::of(METRIC);
    assert_near(in_turns_a_minute(show.speed), 60.0, 1e-9);
    for (consistency, mu) in Consistency::ALL.into_iter().zip([0.3, 1.0, 3.0]) {
        assert_near(in_g_per_ml(Fluid::standing_for(consistency).density()), 1.15, 1e-9);
        let (rho, h0) = (1150.0, 1.5e-3_f64);
        let thinning = 4.0 * rho * TAU * TAU * h0 * h0 / (3.0 * mu);
        let spun = 1.5 / (1.0 + thinning * 30.0).sqrt();
        assert_near(in_mm(show.spun_film(consistency)), spun, 1e-9);
        let front = rho * 9.80665 * 0.5 * h0 * h0 * 60.0 / mu;
        let tilted = (0.2 / front).sqrt() * 1.5 * 2.0 / 3.0;
        assert_near(in_mm(show.tilted_film(consistency)), tilted, 1e-9);
        let (paint, weight) = show.on_board(show.spun_film(consistency), consistency);
        assert_near(in_ml(paint), 20.0 * 20.0 * spun / 10.0, 1e-9);
        assert_near(in_gram(weight), 40.0 * spun * 1.15, 1e-9);
    }
}

/// The formula of spun films asks for rho w h² / mu far below 1, that of blobs for a radius far
/// larger than the depth and than the capillary length, about 2 mm.
#[test]
fn the_figures_lie_where_the_formulas_hold() {
    for units in [UnitSystem::Us, METRIC] {
        let show = Demonstration::of(units);
        for consistency in Consistency::ALL {
            let fluid = Fluid::standing_for(consistency);
            let (rho, mu) = (fluid.density().value, fluid.viscosity().value);
            assert!(rho * show.speed.value * show.start.value.powi(2) / mu < 0.1);
            let blob = Blob { fluid, volume: show.spread_paint(consistency) };
            let radius = in_mm(blob.radius(show.spread_for));
            assert_near(radius, in_mm(show.board) / 2.0, 1e-6);
            let middle = in_mm(blob.depth(show.board * 0.0, show.spread_for));
            assert!(radius > 30.0 * middle && radius > 40.0 * 2.0, "{radius} and {middle}");
        }
    }
}

#[test]
fn curves_go_from_the_start_to_the_end() {
    let show = Demonstration::of(METRIC);
    for consistency in Consistency::ALL {
        for (curve, end, time) in [
            (show.spun_curve(consistency), show.spun_film(consistency), 30.0),
            (show.tilted_curve(consistency), show.tilted_film(consistency), 60.0),
        ] {
            assert_eq!(curve.first().map(|(_, film)| *film), Some(show.start));
            let (last, film) = *curve.last().unwrap();
            assert_near(in_seconds(last), time, 1e-9);
            assert_eq!(film, end);
            assert!(curve.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1));
        }
    }
}

/// Film physics explains and compares; amounts come from weighed and stated films.
#[test]
fn no_plan_rests_on_the_physics_of_films() {
    let engine = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/plan");
    let mut folders = vec![engine.clone()];
    let mut looked_at = 0;
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path == engine.join("flow") {
                continue;
            } else if path.is_dir() {
                folders.push(path);
            } else {
                let text = fs::read_to_string(&path).unwrap();
                looked_at += 1;
                assert!(!text.contains("flow::"), "{} uses it", path.display());
            }
        }
    }
    assert!(looked_at > 30);
}
