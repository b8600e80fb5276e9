//! The two variances against published analyses.

use crate::plan::studio::assert_near;
use puddlebook::plan::learn::Method;
use puddlebook::plan::learn::effects::{Observation, anova, one_way, reml};

/// Yield of dyestuff in grams of standard colour, five samples of each of six batches: Davies
/// and Goldsmith, Statistical Methods in Research and Production, 4th ed. 1972, §6.4; also Box
/// and Tiao 1973, §5.1.2.
const DYESTUFF: [[f64; 5]; 6] = [
    [1545.0, 1440.0, 1440.0, 1520.0, 1580.0],
    [1540.0, 1555.0, 1490.0, 1560.0, 1495.0],
    [1595.0, 1550.0, 1605.0, 1510.0, 1560.0],
    [1445.0, 1440.0, 1595.0, 1465.0, 1545.0],
    [1595.0, 1630.0, 1515.0, 1635.0, 1625.0],
    [1520.0, 1455.0, 1450.0, 1480.0, 1445.0],
];

/// Invented data of Box and Tiao 1973, §5.1.2, whose batches differ less than chance alone would
/// have them; values as published with the R package lme4 (set Dyestuff2).
const DYESTUFF_2: [[f64; 5]; 6] = [
    [7.298, 3.846, 2.434, 9.566, 7.99],
    [5.22, 6.556, 0.608, 11.788, -0.892],
    [0.11, 10.386, 13.434, 5.51, 8.166],
    [2.212, 4.852, 7.092, 9.288, 4.98],
    [0.282, 9.014, 4.458, 9.446, 7.198],
    [1.722, 4.782, 8.106, 0.758, 3.758],
];

/// NIST StRD, analysis of variance, set SiRstv (resistivity of silicon, 5 instruments x 5).
const SIRSTV: [[f64; 5]; 5] = [
    [196.3052, 196.124, 196.189, 196.2569, 196.3403],
    [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
    [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
    [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
    [196.2119, 196.1051, 196.185, 196.0052, 196.209],
];

fn groups<const N: usize>(data: &[[f64; N]]) -> Vec<Vec<f64>> {
    data.iter().map(|group| group.to_vec()).collect()
}

fn observations<const N: usize>(data: &[[f64; N]]) -> Vec<Observation> {
    let of_class = |(class, group): (usize, &[f64; N])| {
        group.map(|value| Observation { class, cell: 0, value })
    };
    data.iter().enumerate().flat_map(of_class).collect()
}

#[test]
fn dyestuff_by_analysis_of_variance() {
    let table = anova(&groups(&DYESTUFF)).unwrap();
    assert_eq!((table.df_between, table.df_within), (5.0, 24.0));
    assert_near(table.mean, 1527.5, 1e-9);
    assert_near(table.ss_between, 56_357.5, 1e-6);
    assert_near(table.ss_within, 58_830.0, 1e-6);
    assert_near(table.ms_between, 11_271.5, 1e-6);
    assert_near(table.ms_within, 2_451.25, 1e-6);
    assert_near(table.raw_class, 1_764.05, 1e-6);
    let found = one_way(&observations(&DYESTUFF)).unwrap();
    assert_eq!(found.method, Method::Anova);
    assert_eq!(found.raw_class, Some(found.class));
    assert_near(found.class / (found.class + found.error), 0.418_487, 5e-7);
}

/// REML of the same data as printed by lme4: 1764.05, 2451.25, criterion 319.6543.
#[test]
fn dyestuff_by_restricted_likelihood_is_the_same() {
    let fit = reml(&observations(&DYESTUFF)).unwrap();
    assert_near(fit.class, 1_764.05, 0.005);
    assert_near(fit.error, 2_451.25, 0.005);
    assert_near(fit.means[0], 1527.5, 1e-9);
    assert_near(fit.criterion, 319.6543, 5e-5);
}

/// Raw -1.32191; the restricted likelihood puts all into the rest: 13.80631.
#[test]
fn batches_that_differ_less_than_chance_have_no_variance() {
    let found = one_way(&observations(&DYESTUFF_2)).unwrap();
    assert_eq!(found.class, 0.0);
    assert_near(found.raw_class.unwrap(), -1.321_91, 5e-6);
    assert_near(found.error, 14.945_89, 5e-6);
    let fit = reml(&observations(&DYESTUFF_2)).unwrap();
    assert_eq!(fit.class, 0.0);
    assert_near(fit.error, 13.806_31, 5e-6);
    assert_near(fit.means[0], 5.6656, 5e-5);
}

/// Certified to 15 digits; values near 196 that differ in the second decimal.
#[test]
fn silicon_resistivity_as_certified() {
    let table = anova(&groups(&SIRSTV)).unwrap();
    assert_near(table.ss_between, 5.114_626_16e-2, 1e-10);
    assert_near(table.ss_within, 2.166_365_60e-1, 1e-10);
    assert_near(table.ms_between / table.ms_within, 1.180_462_374_402_55, 1e-8);
    assert_near(table.ms_within.sqrt(), 0.104_076_068_334_656, 1e-10);
    let (closed, fit) = (one_way(&observations(&SIRSTV)).unwrap(), reml(&observations(&SIRSTV)));
    let fit = fit.unwrap();
    assert_near(fit.class / closed.class, 1.0, 1e-5);
    assert_near(fit.error / closed.error, 1.0, 1e-6);
}

#[test]
fn too_little_to_tell_classes_from_hands() {
    let of = |values: &[(usize, usize, f64)]| {
        let all = values.iter();
        let all = all.map(|(class, cell, value)| Observation {
            class: *class,
            cell: *cell,
            value: *value,
        });
        one_way(&all.collect::<Vec<_>>())
    };
    assert_eq!(of(&[]), None);
    // One class.
    assert_eq!(of(&[(0, 0, 1.0), (0, 0, 1.1), (0, 0, 0.9)]), None);
    // One canvas in each.
    assert_eq!(of(&[(0, 0, 1.0), (1, 0, 1.1), (2, 0, 0.9)]), None);
    // Each class in a cell of its own.
    let apart = [(0, 0, 1.0), (0, 0, 1.1), (1, 1, 0.9), (1, 1, 1.2)];
    assert_eq!(of(&apart), None);
    // A third class that shares a cell with each of them ties all together.
    let tied = [&apart[..], &[(2, 0, 1.2), (2, 1, 1.3)]].concat();
    assert!(of(&tied).is_some());
    // All alike: nothing scatters, which no scale believes.
    assert_eq!(of(&[(0, 0, 1.1), (0, 0, 1.1), (1, 0, 1.1), (1, 0, 1.1)]), None);
    assert_eq!(of(&[(0, 0, 1.1), (0, 0, 1.1), (0, 0, 1.1), (1, 0, 1.1), (1, 0, 1.1)]), None);
}

/// A scatter of nothing within classes is a coarse scale and no steady hand.
#[test]
fn classes_that_scatter_only_between_them_tell_nothing() {
    let of = |values: &[(usize, f64)]| {
        let all = values.iter();
        let all = all.map(|(class, value)| Observation { class: *class, cell: 0, value: *value });
        one_way(&all.collect::<Vec<_>>())
    };
    assert_eq!(of(&[(0, 1.0), (0, 1.0), (1, 2.0), (1, 2.0), (2, 4.0), (2, 4.0)]), None);
    assert_eq!(of(&[(0, 1.0), (0, 1.0), (1, 2.0), (1, 2.0), (1, 2.0), (2, 4.0)]), None);
}

/// Nearly all of the scatter lies between classes, means 1, 2 and 4: their variance of 7/3.
#[test]
fn steady_hands_in_unlike_classes_are_nearly_all_class() {
    let values = [(0, 1.0), (0, 1.01), (1, 2.0), (1, 2.01), (1, 1.99), (2, 4.0)];
    let values = values.map(|(class, value)| Observation { class, cell: 0, value });
    let found = one_way(&values).unwrap();
    assert_near(found.class, 7.0 / 3.0, 0.02);
    // Squares 0.5 and 2 of a ten-thousandth over three degrees of freedom.
    assert_near(found.error, 2.5e-4 / 3.0, 1e-7);
}
