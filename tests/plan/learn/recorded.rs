//! Unbalanced classes in one, two and three cells against recorded fits of two other routes
//! (tests/reference/random_effects.py: statsmodels MixedLM, and SciPy on whole matrices).

use crate::plan::studio::assert_near;
use puddlebook::plan::learn::Method;
use puddlebook::plan::learn::effects::{Observation, one_way, reml};
use serde::Deserialize;

#[derive(Deserialize)]
struct Record {
    sets: Vec<Set>,
}

#[derive(Deserialize)]
struct Set {
    seed: u32,
    classes: Vec<usize>,
    cells: Vec<usize>,
    values: Vec<f64>,
    boundary: bool,
    statsmodels: Fit,
    direct: Fit,
}

#[derive(Deserialize)]
struct Fit {
    class: f64,
    error: f64,
    #[serde(default)]
    means: Vec<f64>,
    criterion: f64,
}

fn sets() -> Vec<Set> {
    let text = include_str!("../../reference/random_effects.json");
    serde_json::from_str::<Record>(text).unwrap().sets
}

fn observations(set: &Set) -> Vec<Observation> {
    let tags = set.classes.iter().zip(&set.cells).zip(&set.values);
    tags.map(|((class, cell), value)| Observation { class: *class, cell: *cell, value: *value })
        .collect()
}

#[test]
fn variances_and_means_are_those_of_two_other_routes() {
    let sets = sets();
    for set in &sets {
        let fit = reml(&observations(set)).unwrap();
        for other in [&set.statsmodels, &set.direct] {
            // In units of the error: what a search by function values can tell.
            let near = 1e-6 * other.error;
            assert_near(fit.error, other.error, near);
            assert_near(fit.class, other.class, near.max(1e-6 * other.class));
            assert_near(fit.criterion, other.criterion, 1e-7);
            for (mean, other) in fit.means.iter().zip(&other.means) {
                assert_near(*mean, *other, 1e-6);
            }
        }
        assert_eq!(set.boundary, fit.class == 0.0, "seed {}", set.seed);
        assert_eq!(fit.means.len(), set.statsmodels.means.len());
        assert_eq!(one_way(&observations(set)).unwrap().method, Method::Reml);
    }
    // The record holds what it is there for.
    assert!(sets.iter().any(|set| set.boundary));
    assert!(sets.iter().any(|set| !set.boundary && set.cells.contains(&1)));
    assert!(sets.iter().any(|set| !set.boundary && !set.cells.contains(&1)));
}
