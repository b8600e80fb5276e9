use super::studio::*;
use crate::lesson_tools::in_project;
use puddlebook::lesson::{Amount, Jar, Lesson, read};
use puddlebook::plan::{Batch, Plan};
use puddlebook::quantity::Date;
use puddlebook::quantity::units::{g_per_ml, gram, in_g_per_ml, in_ml, ml};

fn day(month: i8, day: i8) -> Date {
    Date::new(2026, month, day).unwrap()
}

fn on_the_20th_of_march() -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    lesson.heading.date = Some(day(3, 20));
    lesson
}

fn jar(colour: &str, mix: &str, amount: Amount, mixed: Date) -> Jar {
    Jar { colour: colour.into(), mix: mix.into(), amount, mixed, keeps: None }
}

fn batch<'a>(plan: &'a Plan, colour: &str) -> &'a Batch {
    plan.mixing.iter().find(|batch| batch.colour.name == colour).unwrap()
}

#[test]
fn a_jar_of_the_same_colour_and_mix_is_taken_off_what_is_mixed() {
    let mut lesson = on_the_20th_of_march();
    let before = planned(lesson.clone());
    lesson.jars = vec![jar("white", "medium", Amount::Volume(ml(100.0)), day(3, 1))];
    let after = planned(lesson);
    let (old, new) = (batch(&before, "white"), batch(&after, "white"));
    assert_near(in_ml(new.from_jars), 100.0, 1e-9);
    assert!(new.volume < old.volume);
    assert!(new.volume + new.from_jars >= new.need());
    // The step is a quarter of a fluid ounce.
    assert!(in_ml(old.volume - new.volume) > 100.0 - 7.4);
    assert_same(batch(&after, "sand").volume, batch(&before, "sand").volume);
}

#[test]
fn jars_are_weighed_by_the_density_of_their_mix() {
    let mut lesson = on_the_20th_of_march();
    lesson.jars = vec![jar("white", "medium", Amount::Mass(gram(100.0)), day(3, 1))];
    let plan = planned(lesson);
    let white = batch(&plan, "white");
    assert_near(in_ml(white.from_jars) * in_g_per_ml(white.density), 100.0, 1e-6);
    assert!(white.density > g_per_ml(1.0));
}

/// Mixed paint keeps for 21 days here: from 26 February it is past on 20 March (2026 is no leap
/// year), from 27 February not yet; another mix or colour is no help.
#[test]
fn old_jars_and_other_mixes_do_not_count() {
    let mut lesson = on_the_20th_of_march();
    let amount = Amount::Volume(ml(50.0));
    lesson.jars =
        vec![jar("white", "medium", amount, day(2, 26)), jar("white", "thin", amount, day(3, 19))];
    assert_near(in_ml(batch(&planned(lesson.clone()), "white").from_jars), 0.0, 1e-12);
    lesson.jars.push(jar("white", "medium", amount, day(2, 27)));
    assert_near(in_ml(batch(&planned(lesson), "white").from_jars), 50.0, 1e-9);
}

/// A jar may keep less long than other mixes: two days from the 17th are over on the 20th. What
/// is poured together keeps as long as the part that keeps least.
#[test]
fn a_jar_may_have_a_life_of_its_own() {
    let mut lesson = on_the_20th_of_march();
    let amount = Amount::Volume(ml(50.0));
    let lasting = |days| Jar { keeps: Some(days), ..jar("white", "medium", amount, day(3, 17)) };
    lesson.jars = vec![lasting(2)];
    assert_near(in_ml(batch(&planned(lesson.clone()), "white").from_jars), 0.0, 1e-12);
    lesson.jars = vec![jar("white", "medium", amount, day(3, 10)), lasting(9)];
    let plan = planned(lesson);
    assert_near(in_ml(batch(&plan, "white").from_jars), 100.0, 1e-9);
    let left = plan.leftovers.iter().find(|left| left.colour.name == "white").unwrap();
    assert_eq!((left.mixed, left.last_day), (Some(day(3, 10)), Some(day(3, 26))));
}

#[test]
fn a_full_jar_leaves_nothing_to_mix() {
    let mut lesson = on_the_20th_of_march();
    lesson.jars = vec![jar("white", "medium", Amount::Volume(ml(5000.0)), day(3, 19))];
    let plan = planned(lesson);
    let white = batch(&plan, "white");
    assert_eq!((in_ml(white.volume), white.ingredients.len()), (0.0, 0));
    assert_same(white.from_jars, white.need().max(white.from_jars));
    assert!(plan.materials.iter().all(|need| need.material.name != "white acrylic"));
    // The rest of the jar is left, and is as old as the jar.
    let left = plan.leftovers.iter().find(|left| left.colour.name == "white").unwrap();
    assert_near(in_ml(left.volume), 5000.0 - in_ml(white.fills), 1e-6);
    assert_eq!((left.mixed, left.last_day), (Some(day(3, 19)), Some(day(4, 9))));
}

#[test]
fn what_is_left_is_what_is_mixed_less_what_fills_the_cups() {
    let mut lesson = on_the_20th_of_march();
    lesson.reserve = reserve((19, 20), 8, 15);
    let plan = planned(lesson);
    assert_eq!(plan.leftovers.len(), plan.mixing.len());
    for (left, batch) in plan.leftovers.iter().zip(&plan.mixing) {
        assert!(batch.fills >= batch.expected);
        assert_same(left.volume, batch.volume - batch.fills);
        assert_eq!(left.last_day, Some(day(4, 10)));
        // One cup of this canvas takes batch.volume of its cup plan.
        let cup = &plan.canvases[0].layers[0].cups;
        let cup = cup.iter().find(|cup| cup.colour.name == left.colour.name).unwrap();
        let whole = (left.volume / cup.batch.volume).value.floor();
        let covers = left.covers(&plan);
        assert_eq!(covers.iter().map(|cover| f64::from(cover.cups)).sum::<f64>(), whole);
    }
}

/// Where a canvas has several layers, a colour may be in two of them, with cups of two sizes.
#[test]
fn what_is_left_names_the_layer_where_there_are_several() {
    let lesson = read(&in_project("lessons/kiln-yard-rounds.yaml")).unwrap();
    let plan = planned(lesson);
    let covers: Vec<_> = plan.leftovers.iter().flat_map(|left| left.covers(&plan)).collect();
    assert!(covers.iter().any(|cover| cover.layer.is_some()));
    for cover in covers {
        let canvas = plan.canvases.iter().find(|canvas| canvas.name == cover.canvas).unwrap();
        let names = || canvas.layers.iter().map(|layer| &layer.name);
        match &cover.layer {
            Some(layer) => assert!(canvas.layers.len() > 1 && names().any(|name| name == layer)),
            None => assert_eq!(canvas.layers.len(), 1),
        }
    }
}
