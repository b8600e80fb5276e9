//! What is kept on top of what is expected, against tables, closed forms and simulated classes.

use super::draws::Draws;
use super::generated::lessons;
use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Amount, CanvasLayer, Lesson, ServiceLevel, Technique};
use puddlebook::plan::{Batch, Plan};
use puddlebook::quantity::units::{gram, in_ml, ml, mm};
use puddlebook::quantity::{Share, Spread, Volume};
use std::f64::consts::TAU;
use std::sync::Arc;

fn deviations(classes: u32, out_of: u32) -> f64 {
    let mut lesson = lesson();
    lesson.reserve.level = ServiceLevel::new(classes, out_of).unwrap();
    planned(lesson).reserve.deviations
}

/// Area under the normal curve from 0 to z, in units of 1e-5: NIST/SEMATECH e-Handbook of
/// Statistical Methods, 1.3.6.7.1 (table of the standard normal distribution); the values
/// are from memory. Half a unit of the last digit is what the table leaves open.
#[test]
fn deviations_are_those_of_the_published_table() {
    let table = [
        (0.01, 399),
        (0.25, 9_871),
        (0.67, 24_857),
        (0.84, 29_955),
        (1.00, 34_134),
        (1.28, 39_973),
        (1.50, 43_319),
        (1.64, 44_950),
        (1.65, 45_053),
        (1.96, 47_500),
        (2.33, 49_010),
        (2.58, 49_506),
        (3.00, 49_865),
        (3.09, 49_900),
    ];
    for (z, area) in table {
        let density = (-z * z / 2.0_f64).exp() / TAU.sqrt();
        assert_near(deviations(50_000 + area, 100_000), z, 0.5e-5 / density);
    }
    assert_eq!(deviations(1, 2), 0.0);
    // Two ways to write a level are one level.
    assert_eq!(deviations(19, 20), deviations(95, 100));
}

/// The 95 % quantile to more digits, from memory.
const Z_95: f64 = 1.644_854;

/// Four students, no cup loss; harbour blue takes 40 % of 4.8 fl oz.
fn four_students() -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(4);
    lesson.reserve = reserve((19, 20), 10, 20);
    lesson
}

/// Of one colour in one canvas.
const HARBOUR_BLUE_ML: f64 = 0.4 * 4.8 * 29.573_529_562_5;

/// Closed form for one kind of canvas: n x sqrt(class^2 + students^2 / n).
#[test]
fn one_kind_of_canvas_by_its_closed_form() {
    let plan = planned(four_students());
    let deviation = 4.0 * HARBOUR_BLUE_ML * (0.01_f64 + 0.04 / 4.0).sqrt();
    assert_near(in_ml(plan.mixing[0].reserve), Z_95 * deviation, 1e-5 * deviation);
    assert_near(in_ml(plan.mixing[0].expected), 4.0 * (HARBOUR_BLUE_ML + 3.0), 1e-9);
    // One kind: all colours vary alike, and there is nothing to gain from one paint for all.
    assert_same(plan.reserve.as_one, plan.reserve.by_colour);
}

/// Demonstrations and spares are poured like any other set.
#[test]
fn demonstrations_and_spares_vary_too() {
    let mut lesson = four_students();
    lesson.class.students = students(2);
    (lesson.class.demonstrations, lesson.class.spares) = (1, 1);
    assert_same(planned(lesson).mixing[0].reserve, planned(four_students()).mixing[0].reserve);
}

/// Sums of independent normals: variances add up. Two small canvases each besides the square,
/// of a quarter of its film.
#[test]
fn kinds_of_canvas_add_up_their_variances() {
    let mut lesson = four_students();
    let mut small = lesson.canvases[0].clone();
    small.name = "small".into();
    small.each = some(2);
    small.technique = one_film("thin pour", rule() * 0.25);
    lesson.canvases.push(small);
    let plan = planned(lesson);
    let (large, small) = (HARBOUR_BLUE_ML, HARBOUR_BLUE_ML / 4.0);
    let mean = 4.0 * large + 8.0 * small;
    let variance =
        (0.1 * mean).powi(2) + 0.2_f64.powi(2) * (4.0 * large.powi(2) + 8.0 * small.powi(2));
    assert_near(in_ml(plan.mixing[0].reserve), Z_95 * variance.sqrt(), 1e-5 * mean);
}

/// The layers of one canvas are poured by one hand: twice the same colour in one canvas
/// varies like one pour of both, not like two canvases.
#[test]
fn layers_of_one_canvas_vary_together() {
    let whole = planned(four_students());
    let mut lesson = four_students();
    lesson.canvases[0].technique = two_layers(rule() * 0.5, rule() * 0.5);
    let layer = lesson.canvases[0].layers[0].clone();
    lesson.canvases[0].layers.push(layer);
    let halves = planned(lesson);
    assert_eq!(halves.mixing.len(), whole.mixing.len());
    for (whole, halves) in whole.mixing.iter().zip(&halves.mixing) {
        assert_same(whole.reserve, halves.reserve);
    }
}

#[test]
fn finishes_keep_a_reserve_and_coats_of_one_material_vary_together() {
    let mut lesson = four_students();
    lesson.canvases[0].finishes = vec![varnish(), varnish()];
    let plan = planned(lesson);
    // 774.192 cm² in four coats of 0.1 mm.
    let one = 4.0 * 7.74192;
    let deviation = 4.0 * one * 0.02_f64.sqrt();
    assert_near(in_ml(plan.finishing[0].expected), 4.0 * one, 1e-9);
    assert_near(in_ml(plan.finishing[0].reserve), Z_95 * deviation, 1e-5 * deviation);
    let line = plan.order.lines.iter().find(|line| line.item == "gloss varnish").unwrap();
    assert_eq!(line.needed, Amount::Volume(plan.finishing[0].volume));
    assert_eq!(line.reserve, Amount::Volume(plan.finishing[0].reserve));
}

#[test]
fn every_second_class_needs_no_reserve() {
    let mut lesson = four_students();
    lesson.reserve = no_reserve();
    let plan = planned(lesson);
    assert!(plan.mixing.iter().all(|batch| batch.reserve == ml(0.0)));
    assert_eq!((plan.reserve.by_colour, plan.reserve.as_one), (ml(0.0), ml(0.0)));
}

/// A habit of 15 % is a class whose films and cups all take 15 % more.
#[test]
fn a_habit_buys_as_if_everything_took_so_much_more() {
    let mut lesson = four_students();
    // Cups that are filled to the gram would not all take 15 % more.
    lesson.mixing.scale_step = gram(0.0);
    lesson.canvases[0].finishes = vec![varnish()];
    lesson.shops = shop(vec![
        pack("harbour blue acrylic", Amount::Volume(ml(60.0)), 449),
        pack("sand acrylic", Amount::Volume(ml(60.0)), 339),
        pack("white acrylic", Amount::Volume(ml(60.0)), 319),
        pack("pouring medium", Amount::Volume(ml(100.0)), 529),
        pack("gloss varnish", Amount::Volume(ml(20.0)), 299),
    ]);
    let habit = planned(lesson.clone()).reserve.habit;
    assert_eq!(habit.extra, percent(15));
    lesson.reserve = no_reserve();
    lesson.mixing.cup_loss *= 1.15;
    lesson.canvases[0].technique = one_film("generous pour", rule() * 1.15);
    let mut generous = (*varnish()).clone();
    let film = generous.film.typical() * 1.15;
    generous.film = Spread::exactly(film);
    lesson.canvases[0].finishes = vec![Arc::new(generous)];
    let plan = planned(lesson);
    assert_eq!(habit.total, plan.order.total);
    assert_same(habit.to_mix(), plan.to_mix());
    for (habit, batch) in habit.mixing.iter().zip(&plan.mixing) {
        assert_same(*habit, batch.volume);
    }
    assert_same(habit.finishing[0], plan.finishing[0].volume);
}

fn two_layers(
    base: puddlebook::quantity::Length,
    colour: puddlebook::quantity::Length,
) -> Arc<Technique> {
    let layers = vec![layer("base", base), layer("colour", colour)];
    Arc::new(Technique { name: "two layers".into(), layers, ..(*straight_pour()).clone() })
}

/// Four sets of a square in three colours and two panels in two layers, which share a colour
/// with each other and one with the square; students vary much.
fn a_mixed_class(level: (u32, u32)) -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(3);
    lesson.class.demonstrations = 1;
    lesson.reserve = reserve(level, 4, 25);
    let mut panel = lesson.canvases[0].clone();
    panel.name = "panel".into();
    panel.each = some(2);
    panel.technique = two_layers(mm(0.9), mm(1.1));
    panel.layers = vec![
        CanvasLayer { mix: medium(), colours: vec![(colour("white"), percent(100))] },
        CanvasLayer {
            mix: medium(),
            colours: vec![(colour("slate"), percent(30)), (colour("white"), percent(70))],
        },
    ];
    lesson.canvases.push(panel);
    lesson
}

const CLASSES: u32 = 20_000;

/// What each batch loses to a simulated class, millilitres.
fn one_class(plan: &Plan, draws: &mut Draws) -> Vec<f64> {
    let class = plan.reserve.rule.class_varies.as_f64() * draws.next();
    let mut used = vec![0.0; plan.mixing.len()];
    for (canvas, kind) in plan.canvases.iter().zip(&plan.lesson.canvases) {
        for _ in 0..plan.heads.sets() * kind.each.get() {
            let student = plan.reserve.rule.students_vary.as_f64() * draws.next();
            for cup in canvas.layers.iter().flat_map(|layer| &layer.cups) {
                let of_cup = |batch: &Batch| {
                    batch.colour.name == cup.colour.name && batch.mix.name == cup.batch.mix.name
                };
                let at = plan.mixing.iter().position(of_cup).unwrap();
                used[at] +=
                    in_ml(cup.paint) * (1.0 + class + student) + in_ml(plan.lesson.mixing.cup_loss);
            }
        }
    }
    used
}

/// Four standard errors of a share of so many classes: a right engine fails once in sixteen
/// thousand seeds, and the seed is fixed.
fn bound(level: f64) -> f64 {
    4.0 * (level * (1.0 - level) / f64::from(CLASSES)).sqrt()
}

#[test]
fn simulated_classes_have_enough_as_often_as_asked() {
    for (seed, level) in [(1, (1, 2)), (2, (4, 5)), (3, (19, 20)), (4, (99, 100))] {
        let plan = planned(a_mixed_class(level));
        let wanted = plan.reserve.rule.level.as_f64();
        let mut draws = Draws::new(seed);
        let mut enough = vec![0_u32; plan.mixing.len()];
        let mut enough_as_one = 0_u32;
        for _ in 0..CLASSES {
            let used = one_class(&plan, &mut draws);
            for ((enough, used), batch) in enough.iter_mut().zip(&used).zip(&plan.mixing) {
                *enough += u32::from(*used <= in_ml(batch.need()));
            }
            let as_one = plan.reserve.expected + plan.reserve.as_one;
            enough_as_one += u32::from(used.iter().sum::<f64>() <= in_ml(as_one));
        }
        for enough in enough.into_iter().chain([enough_as_one]) {
            assert_near(f64::from(enough) / f64::from(CLASSES), wanted, bound(wanted));
        }
    }
}

/// The simulation would notice an engine that forgot a part or took layers for canvases: the
/// reserve of each mistake moves the share of classes with enough white by more than the bound.
#[test]
fn the_simulation_tells_right_from_nearly_right() {
    let right = planned(a_mixed_class((19, 20)));
    let white = right.mixing.iter().position(|batch| batch.colour.name == "white").unwrap();
    let with = |change: &dyn Fn(&mut Lesson)| {
        let mut lesson = a_mixed_class((19, 20));
        change(&mut lesson);
        planned(lesson).mixing.remove(white)
    };
    let mistakes = [
        with(&|lesson| lesson.reserve.class_varies = Share::NOTHING),
        with(&|lesson| lesson.reserve.students_vary = Share::NOTHING),
        with(&layers_for_canvases),
    ];
    let mut draws = Draws::new(5);
    let used: Vec<f64> = (0..CLASSES).map(|_| one_class(&right, &mut draws)[white]).collect();
    let off = |batch: &Batch| {
        assert_same(batch.expected, right.mixing[white].expected);
        let enough = used.iter().filter(|used| **used <= in_ml(batch.need())).count();
        (enough as f64 / f64::from(CLASSES) - 0.95).abs()
    };
    assert!(off(&right.mixing[white]) <= bound(0.95));
    for mistake in &mistakes {
        assert!(off(mistake) > 2.0 * bound(0.95), "{}", off(mistake));
    }
}

/// Each layer of the panel as a canvas of its own.
fn layers_for_canvases(lesson: &mut Lesson) {
    let panel = lesson.canvases.pop().unwrap();
    for (layer, technique) in panel.layers.iter().zip(&panel.technique.layers) {
        let mut one = panel.clone();
        one.technique = one_film(&technique.name, technique.films.medium.typical());
        one.layers = vec![layer.clone()];
        lesson.canvases.push(one);
    }
}

fn with_level(lesson: &Lesson, level: (u32, u32)) -> Plan {
    let mut lesson = lesson.clone();
    lesson.reserve.level = ServiceLevel::new(level.0, level.1).unwrap();
    planned(lesson)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_reserve_is_never_negative_and_always_mixed(lesson in lessons()) {
        let plan = planned(lesson);
        let nothing = Volume::default();
        for batch in &plan.mixing {
            prop_assert!(batch.reserve >= nothing);
            prop_assert!(batch.volume >= batch.expected + batch.reserve);
        }
        for need in &plan.finishing {
            prop_assert!(need.reserve >= nothing && need.volume >= need.expected);
        }
        assert_same(plan.reserve.by_colour, plan.mixing.iter().map(|batch| batch.reserve).sum());
        // One paint for all would never take more than the colours take apart.
        prop_assert!(plan.reserve.as_one <= plan.reserve.by_colour * (1.0 + 1e-12));
        // The materials hold the reserve of everything that is mixed and varnished.
        let in_order: f64 = plan.order.lines.iter().filter_map(|line| match line.reserve {
            Amount::Volume(volume) => Some(in_ml(volume)),
            _ => None,
        }).sum();
        let varnish: Volume = plan.finishing.iter().map(|need| need.reserve).sum();
        let all = in_ml(plan.reserve.by_colour + varnish);
        assert_near(in_order, all, 1e-9 * all);
    }

    #[test]
    fn a_higher_level_never_keeps_or_pays_less(lesson in lessons()) {
        let plans = [(1, 2), (3, 4), (19, 20), (999, 1000)].map(|level| with_level(&lesson, level));
        for pair in plans.windows(2) {
            for (low, high) in pair[0].mixing.iter().zip(&pair[1].mixing) {
                prop_assert!(high.reserve >= low.reserve);
                prop_assert_eq!(high.expected, low.expected);
            }
            prop_assert!(pair[1].order.total >= pair[0].order.total);
            // A habit does not argue.
            prop_assert_eq!(pair[1].reserve.habit.total, pair[0].reserve.habit.total);
        }
    }

    /// The reserve grows with the class, and its part of what is poured shrinks towards what
    /// the class varies by: sqrt(c^2 + s^2 / n) - c is at most s^2 / (2 c n).
    #[test]
    fn a_large_class_keeps_more_and_a_smaller_part(lesson in lessons(), class in 1_i64..30) {
        let mut lesson = lesson;
        lesson.reserve.level = ServiceLevel::new(19, 20).unwrap();
        lesson.reserve.class_varies = percent(class);
        lesson.mixing.cup_loss = ml(0.0);
        let plans = [1, 4, 16, 64].map(|count| {
            lesson.class.students = students(count);
            planned(lesson.clone())
        });
        let floor = plans[0].reserve.deviations * lesson.reserve.class_varies.as_f64();
        for pair in plans.windows(2) {
            for (few, many) in pair[0].mixing.iter().zip(&pair[1].mixing) {
                prop_assert!(many.reserve >= few.reserve);
                let part = |batch: &Batch| (batch.reserve / batch.expected).value;
                prop_assert!(part(many) <= part(few) * (1.0 + 1e-12));
                prop_assert!(part(many) >= floor * (1.0 - 1e-12));
            }
        }
        let last = &plans[3];
        let students = last.reserve.rule.students_vary.as_f64();
        let class = last.reserve.rule.class_varies.as_f64();
        let above = students.powi(2) / (2.0 * class * f64::from(last.heads.sets()));
        for batch in &last.mixing {
            let part = (batch.reserve / batch.expected).value;
            prop_assert!(part <= floor + last.reserve.deviations * above + 1e-12);
        }
    }

    #[test]
    fn levels_outside_a_half_and_nearly_always_do_not_exist(classes in 0_u32..3000, out_of in 0_u32..2000) {
        let level = ServiceLevel::new(classes, out_of);
        let share = f64::from(classes) / f64::from(out_of);
        prop_assert_eq!(level.is_some(), (0.5..=0.999).contains(&share));
        prop_assert_eq!(level.map(ServiceLevel::as_f64), level.map(|_| share));
    }
}
