use super::studio::*;
use puddlebook::lesson::{
    Caution, Colour, Drops, Finish, Lesson, MaterialKind, Mix, Practice, Sign, Technique, When,
};
use puddlebook::plan::practices;
use puddlebook::quantity::units::ml;
use std::sync::Arc;

fn note(name: &str, when: When) -> Caution {
    Caution {
        name: name.into(),
        sign: Sign::Harm,
        heading: name.into(),
        reason: "Invented.".into(),
        source: "invented".into(),
        when,
    }
}

/// One note of each kind, worst first.
fn with_notes() -> Lesson {
    let mut lesson = lesson();
    lesson.cautions = vec![
        note("flame", When::Doing(vec![Practice::Torch, Practice::HeatGun])),
        note("cobalt", When::Pigments(vec!["cadmium".into(), "cobalt".into()])),
        note("children", When::YoungerThan(16)),
        note("slippery", When::Doing(vec![Practice::Silicone])),
        note("dryer", When::Doing(vec![Practice::HairDryer])),
        note("resin", When::Doing(vec![Practice::Resin])),
        note("labels", When::Always),
    ];
    lesson
}

fn chosen(lesson: Lesson) -> Vec<String> {
    planned(lesson).cautions.into_iter().map(|caution| caution.name).collect()
}

#[test]
fn a_quiet_lesson_of_adults_gets_what_always_applies() {
    assert_eq!(chosen(with_notes()), ["labels"]);
}

#[test]
fn by_what_the_lesson_says_it_does() {
    let mut lesson = with_notes();
    lesson.practices = vec![Practice::HeatGun];
    assert_eq!(chosen(lesson), ["flame", "labels"]);
}

#[test]
fn by_what_the_technique_brings() {
    let mut lesson = with_notes();
    let blown = Technique { practices: vec![Practice::HairDryer], ..(*straight_pour()).clone() };
    lesson.canvases[0].technique = Arc::new(blown);
    assert_eq!(chosen(lesson), ["dryer", "labels"]);
}

#[test]
fn by_what_goes_into_the_cups() {
    let mut lesson = with_notes();
    let drops = vec![Drops { material: silicone_oil(), count: 1.0, per: ml(50.0) }];
    lesson.canvases[0].layers[0].mix = Arc::new(Mix { drops, ..(*medium()).clone() });
    assert_eq!(practices(&lesson), [Practice::Silicone]);
    assert_eq!(chosen(lesson), ["slippery", "labels"]);
}

#[test]
fn by_what_the_finish_is() {
    let mut lesson = with_notes();
    let resin = material("Two-part Resin", MaterialKind::Varnish, 1.1);
    lesson.canvases[0].finishes =
        vec![Arc::new(Finish { material: resin, ..(*varnish()).clone() })];
    assert_eq!(chosen(lesson), ["resin", "labels"]);
}

#[test]
fn by_the_youngest() {
    let mut lesson = with_notes();
    lesson.class.youngest_age = Some(15);
    assert_eq!(chosen(lesson.clone()), ["children", "labels"]);
    lesson.class.youngest_age = Some(16);
    assert_eq!(chosen(lesson), ["labels"]);
}

#[test]
fn by_the_pigments_that_are_poured() {
    let mut lesson = with_notes();
    let blue = Colour { pigments: vec!["Cobalt".into()], ..(*colour("harbour blue")).clone() };
    lesson.canvases[0].layers[0].colours[0].0 = Arc::new(blue);
    assert_eq!(chosen(lesson), ["cobalt", "labels"]);
}
