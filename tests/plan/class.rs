use super::studio::*;
use puddlebook::lesson::{CanvasLayer, Life, Per, Students};
use puddlebook::plan::{Counted, Impossible, Plan, plan};
use puddlebook::quantity::units::{in_g_per_ml, in_gram, in_ml};

fn pieces(plan: &Plan, item: &str) -> u32 {
    plan.supplies.iter().find(|need| need.item == item).unwrap().pieces
}

#[test]
fn sets_are_students_demonstrations_and_spares() {
    let mut lesson = lesson();
    lesson.class.students = Students::Named(vec!["Ada".into(), "Bo".into(), "Cy".into()]);
    lesson.class.demonstrations = 1;
    lesson.class.spares = 2;
    let plan = planned(lesson);
    assert_eq!(plan.heads.sets(), 6);
    assert_eq!(plan.heads.tables, 1);
    // 4.8 fl oz and three cups that each keep 3 mL, six times.
    let one = in_ml(plan.student_paint.typical());
    assert_near(one, 4.8 * 29.573_529_562_5 + 9.0, 1e-9);
    assert_near(in_ml(plan.class_paint.typical()), 6.0 * one, 1e-9);
}

#[test]
fn one_batch_for_a_colour_and_mix_over_all_canvases() {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    let mut second = lesson.canvases[0].clone();
    second.name = "little".into();
    second.each = some(2);
    let mut third = lesson.canvases[0].clone();
    third.name = "thin".into();
    third.layers = vec![CanvasLayer { mix: thin(), colours: shoreline() }];
    lesson.canvases.extend([second, third]);
    let plan = planned(lesson);
    let batches: Vec<_> = plan
        .mixing
        .iter()
        .map(|batch| (batch.colour.name.as_str(), batch.mix.name.as_str(), batch.cups))
        .collect();
    assert_eq!(
        batches,
        [
            ("harbour blue", "medium", 24),
            ("sand", "medium", 24),
            ("white", "medium", 24),
            ("harbour blue", "thin", 8),
            ("sand", "thin", 8),
            ("white", "thin", 8),
        ]
    );
    // 24 cups of 40 % of 4.8 fl oz and 3 mL.
    let expected = 24.0 * (0.4 * 4.8 * 29.573_529_562_5 + 3.0);
    assert_near(in_ml(plan.mixing[0].expected), expected, 1e-6);
    // Every cup is filled to the next gram, and the batch fills them all.
    let grams = (expected / 24.0 * in_g_per_ml(plan.mixing[0].density)).ceil();
    assert_near(in_gram(plan.canvases[0].layers[0].cups[0].fill), grams, 1e-9);
    assert!(plan.mixing[0].mass >= plan.canvases[0].layers[0].cups[0].fill * 24.0);
}

#[test]
fn finishes_take_their_coats_on_every_canvas() {
    let mut lesson = lesson();
    lesson.class.students = students(5);
    lesson.canvases[0].finishes = vec![varnish()];
    let plan = planned(lesson);
    // 120 in² are 774.192 cm²; two coats of 0.1 mm are 15.48384 mL.
    assert_near(in_ml(plan.canvases[0].finishes[0].paint.typical()), 15.48384, 1e-9);
    assert_eq!(plan.finishing.len(), 1);
    assert_near(in_ml(plan.finishing[0].volume), 5.0 * 15.48384, 1e-9);
    let varnish = plan.order.lines.iter().find(|line| line.item == "gloss varnish");
    assert!(varnish.is_some());
}

#[test]
fn supplies_follow_their_rules_and_round_up() {
    let mut lesson = lesson();
    lesson.class.students = students(9);
    lesson.class.demonstrations = 1;
    lesson.canvases[0].each = some(2);
    lesson.supplies = vec![
        supply("gloves", 1.0, Per::Student, Life::UsedUp),
        supply("push pins", 4.0, Per::Canvas, Life::Washable),
        supply("stir sticks", 1.0, Per::ColourCup, Life::UsedUp),
        supply("drop cloths", 1.0, Per::Table, Life::Washable),
        supply("bucket", 1.0, Per::Class, Life::Washable),
        supply("palette knives", 0.5, Per::Student, Life::Washable),
        supply("towels", 0.1, Per::Canvas, Life::UsedUp),
        supply("tape", 0.3, Per::Table, Life::Washable),
        supply("tape", 0.5, Per::Class, Life::UsedUp),
    ];
    let plan = planned(lesson);
    assert_eq!(pieces(&plan, "gloves"), 9);
    assert_eq!(pieces(&plan, "push pins"), 4 * 20);
    assert_eq!(pieces(&plan, "stir sticks"), 3 * 20);
    assert_eq!(pieces(&plan, "drop cloths"), 3);
    assert_eq!(pieces(&plan, "bucket"), 1);
    assert_eq!(pieces(&plan, "palette knives"), 5);
    // Twenty tenths are two, not three.
    assert_eq!(pieces(&plan, "towels"), 2);
    // 0.9 + 0.5 = 1.4 rounds up once, and what one rule uses up is used up.
    assert_eq!(pieces(&plan, "tape"), 2);
    let tape = plan.supplies.iter().find(|need| need.item == "tape").unwrap();
    assert_eq!(tape.life, Life::UsedUp);
}

#[test]
fn counts_that_run_over_are_refused() {
    let mut crowd = lesson();
    crowd.class.students = students(u32::MAX);
    crowd.class.spares = 1;
    let refused = plan(crowd).unwrap_err();
    assert_eq!(refused, Impossible::TooMany { what: Counted::Sets });
    assert_eq!(
        refused.to_string(),
        "there are too many students, demonstrations and spares to plan for"
    );

    let mut cups = lesson();
    cups.class.students = students(100_000);
    cups.canvases[0].each = some(100_000);
    assert_eq!(plan(cups).unwrap_err(), Impossible::TooMany { what: Counted::Cups });

    let mut gloves = lesson();
    gloves.supplies = vec![supply("gloves", 1e12, Per::Class, Life::UsedUp)];
    let item = "gloves".to_owned();
    assert_eq!(plan(gloves).unwrap_err(), Impossible::TooMany { what: Counted::Pieces { item } });
}
