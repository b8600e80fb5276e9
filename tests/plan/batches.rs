use super::studio::*;
use puddlebook::lesson::{CanvasLayer, Consistency, Drops, Ingredient, Lesson, Mix, Part, PartsBy};
use puddlebook::plan::{Batch, Impossible, plan};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::{g_per_ml, gram, in_g_per_ml, in_gram, in_ml, ml, mm, us_fl_oz};
use std::sync::Arc;

/// One colour, metric, exactly `need` millilitres of paint, nothing left in the cup, and a
/// scale that shows every digit.
fn one_cup(need: f64, mix: Mix) -> Lesson {
    let mut lesson = lesson();
    lesson.print.units = UnitSystem::Metric;
    lesson.mixing.cup_loss = ml(0.0);
    lesson.mixing.scale_step = gram(0.0);
    let canvas = &mut lesson.canvases[0];
    canvas.shape = puddlebook::lesson::Shape::Rectangle { width: mm(100.0), height: mm(100.0) };
    canvas.depth = mm(0.0);
    canvas.technique = one_film("flat", mm(need / 10.0));
    canvas.layers =
        vec![CanvasLayer { mix: Arc::new(mix), colours: vec![(colour("white"), percent(100))] }];
    lesson
}

fn batch(need: f64, mix: Mix) -> Batch {
    planned(one_cup(need, mix)).mixing.remove(0)
}

fn volumes(batch: &Batch) -> Vec<f64> {
    batch.ingredients.iter().map(|poured| in_ml(poured.volume)).collect()
}

fn masses(batch: &Batch) -> Vec<f64> {
    batch.ingredients.iter().map(|poured| in_gram(poured.mass)).collect()
}

fn readings(batch: &Batch) -> Vec<f64> {
    batch.ingredients.iter().map(|poured| in_gram(poured.reading)).collect()
}

#[track_caller]
fn assert_all_near(values: &[f64], expected: &[f64]) {
    assert_eq!(values.len(), expected.len(), "{values:?}");
    for (value, expected) in values.iter().zip(expected) {
        assert_near(*value, *expected, 1e-9);
    }
}

/// By hand: 100 mL in parts 1 : 1 : 1/2 are 40, 40 and 20 mL; at 1.2, 1.05 and 0.998 g/mL
/// 48, 42 and 19.96 g, together 109.96 g.
#[test]
fn parts_by_volume() {
    let batch = batch(100.0, mix("thin", Consistency::Thin, PartsBy::Volume, 0.5));
    assert_all_near(&volumes(&batch), &[40.0, 40.0, 20.0]);
    assert_all_near(&masses(&batch), &[48.0, 42.0, 19.96]);
    assert_near(in_g_per_ml(batch.density), 1.0996, 1e-12);
    assert_all_near(&readings(&batch), &[48.0, 90.0, 109.96]);
}

/// By hand: 1 : 1 : 1/2 by weight take 1/1.2 + 1/1.05 + 0.5/0.998 = 2.286717 parts of room;
/// a batch of 100 mL holds 43.7308 g of paint.
#[test]
fn parts_by_weight() {
    let batch = batch(100.0, mix("thin", Consistency::Thin, PartsBy::Weight, 0.5));
    let room = 1.0 / 1.2 + 1.0 / 1.05 + 0.5 / 0.998;
    assert_all_near(&masses(&batch), &[100.0 / room, 100.0 / room, 50.0 / room]);
    assert_near(masses(&batch)[0], 43.7308, 5e-5);
    assert_near(volumes(&batch).iter().sum::<f64>(), 100.0, 1e-9);
}

/// Ideal mixing: equal volumes mix to the mean density, equal weights to the harmonic mean.
#[test]
fn densities_mix_ideally() {
    let halves = |by| Mix {
        parts: vec![
            Part { what: Ingredient::ThePaint, parts: 1.0 },
            Part { what: Ingredient::Other(water()), parts: 1.0 },
        ],
        ..mix("half", Consistency::Thin, by, 1.0)
    };
    let by_volume = batch(50.0, halves(PartsBy::Volume)).density;
    assert_near(in_g_per_ml(by_volume), (1.2 + 0.998) / 2.0, 1e-12);
    let by_weight = batch(50.0, halves(PartsBy::Weight)).density;
    assert_near(in_g_per_ml(by_weight), 2.0 / (1.0 / 1.2 + 1.0 / 0.998), 1e-12);
}

#[test]
fn a_batch_rounds_up_to_the_step_of_the_units() {
    let thin = || mix("thin", Consistency::Thin, PartsBy::Volume, 0.5);
    assert_near(in_ml(batch(100.1, thin()).volume), 105.0, 1e-9);
    assert_near(in_ml(batch(105.0, thin()).volume), 105.0, 1e-9);
    let mut us = one_cup(100.1, thin());
    us.print.units = UnitSystem::Us;
    let batch = planned(us).mixing.remove(0);
    // 100.1 mL are 3.385 fl oz.
    assert_near((batch.volume / us_fl_oz(3.5)).value, 1.0, 1e-12);
    assert_near(in_ml(batch.need()), 100.1, 1e-9);
}

#[test]
fn drops_are_counted_and_take_their_room_in_the_batch() {
    let mut with_drops = mix("thin", Consistency::Thin, PartsBy::Volume, 0.5);
    with_drops.drops = vec![Drops { material: silicone_oil(), count: 3.0, per: ml(100.0) }];
    let batch = batch(250.0, with_drops);
    // 3 for 100 mL are 7.5 for 250 mL; half a drop is a drop.
    assert_eq!(batch.ingredients[3].drops, Some(8));
    assert_near(in_ml(batch.ingredients[3].volume), 0.4, 1e-12);
    assert_near(in_ml(batch.volume), 250.0, 1e-9);
    assert_near(volumes(&batch).iter().sum::<f64>(), 250.0, 1e-9);
    assert_eq!(batch.ingredients[0].drops, None);
}

#[test]
fn a_little_batch_still_gets_its_drop() {
    let mut with_drops = mix("thin", Consistency::Thin, PartsBy::Volume, 0.5);
    with_drops.drops = vec![Drops { material: silicone_oil(), count: 1.0, per: ml(100.0) }];
    assert_eq!(batch(10.0, with_drops).ingredients[3].drops, Some(1));
}

#[test]
fn a_mix_of_nothing_but_drops_is_refused() {
    let mut with_drops = mix("oily", Consistency::Thin, PartsBy::Volume, 0.5);
    with_drops.drops = vec![Drops { material: silicone_oil(), count: 25.0, per: ml(1.0) }];
    let refused = plan(one_cup(100.0, with_drops)).unwrap_err();
    assert_eq!(refused, Impossible::MoreDropsThanMix { mix: "oily".into() });
    assert_eq!(
        refused.to_string(),
        "the drops of the mix \"oily\" alone would fill the cup; they are too many or counted \
         for too little paint"
    );
}

/// Three thirds of 100 g on a scale of whole grams: 33.3 each, and one of them gets 34.
#[test]
fn readings_end_at_the_mass_of_the_batch() {
    let thirds = Mix {
        parts: vec![
            Part { what: Ingredient::ThePaint, parts: 1.0 },
            Part { what: Ingredient::Other(material_of_1_2("one")), parts: 1.0 },
            Part { what: Ingredient::Other(material_of_1_2("two")), parts: 1.0 },
        ],
        ..mix("thirds", Consistency::Thin, PartsBy::Volume, 1.0)
    };
    // 85 mL at 1.2 g/mL are 102 g: three times 34.
    let mut grams = one_cup(85.0, thirds.clone());
    grams.mixing.scale_step = gram(1.0);
    assert_all_near(&readings(&planned(grams).mixing[0]), &[34.0, 68.0, 102.0]);
    // A cup of 96 g is filled to 100, which is 83.3 mL; the pot of 85 mL weighs 102 g.
    // They show as 100, twenty steps of 5; 34 g are 6.8 steps each: 7, 7 and 6.
    let mut coarse = one_cup(80.0, thirds);
    coarse.mixing.scale_step = gram(5.0);
    let batch = planned(coarse).mixing.remove(0);
    assert_all_near(&readings(&batch), &[35.0, 70.0, 100.0]);
}

fn material_of_1_2(name: &str) -> Arc<puddlebook::lesson::Material> {
    Arc::new(puddlebook::lesson::Material {
        density: g_per_ml(1.2),
        ..(*material(name, puddlebook::lesson::MaterialKind::Medium, 1.0)).clone()
    })
}

/// Common practice, no source: 28 g is about an ounce of weight (28.35 exactly, NIST SP 811),
/// and a fluid ounce of a water-thin mix weighs nearer to 30: 29.5735 mL at 1.0 to 1.1 g/mL.
#[test]
fn a_fluid_ounce_is_not_an_ounce_on_the_scale() {
    let thin = batch(100.0, mix("thin", Consistency::Thin, PartsBy::Volume, 0.5));
    let ounce = in_gram(us_fl_oz(1.0) * thin.density);
    assert_near(ounce, 29.573_529_562_5 * 1.0996, 1e-9);
    assert!(ounce > 28.349_523_125 * 1.1);
    let of_water = in_gram(us_fl_oz(1.0) * g_per_ml(0.998));
    assert!((of_water - 30.0).abs() < (of_water - 28.35).abs());
}
