use super::studio::{assert_near, lesson, one_film, planned};
use puddlebook::lesson::Shape;
use puddlebook::plan::{Plan, rule_film, rule_of_thumb};
use puddlebook::quantity::units::{in_ml, in_mm, in_us_fl_oz, inch, mm};
use puddlebook::quantity::{Length, Spread, Volume};

/// US gallon (NIST SP 811, 2008, App. B.8).
const GALLON_ML: f64 = 3_785.411_784;
/// An inch is 25.4 mm (same place), so a mil is 25.4 µm.
const MIL_MM: f64 = 0.0254;

fn flat(width: Length, height: Length, film: Length) -> Plan {
    let mut lesson = lesson();
    lesson.canvases[0].shape = Shape::Rectangle { width, height };
    lesson.canvases[0].depth = mm(0.0);
    lesson.canvases[0].technique = one_film("flat", film);
    planned(lesson)
}

fn layer_paint(plan: &Plan) -> Volume {
    plan.canvases[0].layers[0].paint.typical()
}

/// The coatings trade prints 1604 ft² for a gallon at one mil: 231 in³ / 0.001 in / 144.
#[test]
fn a_gallon_covers_1604_square_feet_at_one_mil() {
    let paint = layer_paint(&flat(inch(12.0), inch(12.0), mm(MIL_MM)));
    assert_near(GALLON_ML / in_ml(paint), 231.0 / 0.001 / 144.0, 1e-6);
    assert_eq!((GALLON_ML / in_ml(paint)).round(), 1604.0);
}

/// Wet film of 10 mil: 160.417 ft² a gallon (coating manufacturers' tables).
#[test]
fn a_gallon_covers_160_square_feet_at_ten_mil() {
    let paint = layer_paint(&flat(inch(12.0), inch(12.0), mm(10.0 * MIL_MM)));
    assert_near(GALLON_ML / in_ml(paint), 160.417, 5e-4);
}

/// A litre at a micrometre covers 1000 m², so at a millimetre one.
#[test]
fn a_litre_covers_a_square_metre_at_one_millimetre() {
    let paint = layer_paint(&flat(mm(1000.0), mm(1000.0), mm(1.0)));
    assert_near(in_ml(paint), 1000.0, 1e-9);
}

/// Common practice, no source: a fluid ounce for 25 in². The film: 1.8335625 mm, computed
/// from the exact units of NIST SP 811.
#[test]
fn the_rule_of_thumb_is_a_film_of_1_8336_millimetres() {
    let (area, paint) = rule_of_thumb();
    assert_near(in_mm(rule_film()), 1.833_562_5, 5e-8);
    assert_near((paint / area / rule_film()).value, 1.0, 1e-12);
}

/// Common practice, no source: 120 in² take 4.8, about 5, fl oz.
#[test]
fn ten_by_ten_takes_nearly_five_fluid_ounces() {
    let plan = planned(lesson());
    assert_near(in_us_fl_oz(layer_paint(&plan)), 4.8, 1e-9);
}

#[test]
fn low_typical_and_high_scale_alike() {
    let paint = planned(lesson()).canvases[0].layers[0].paint;
    assert_near((paint.low() / paint.typical()).value, 0.8, 1e-12);
    assert_near((paint.high() / paint.typical()).value, 1.2, 1e-12);
    assert!(Spread::new(paint.low(), paint.typical(), paint.high()).is_some());
}
