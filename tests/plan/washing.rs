//! Water for washing up, and the paint that is left.

use super::generated::lessons;
use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Lesson, Life, Per};
use puddlebook::plan::WashingPlan;
use puddlebook::quantity::units::{in_ml, ml};

fn washing(lesson: Lesson) -> WashingPlan {
    planned(lesson).room.washing
}

fn eight_at_trays() -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    lesson.supplies = vec![
        supply("drip tray", 1.0, Per::Canvas, Life::Washable),
        supply("colour cups", 1.0, Per::ColourCup, Life::UsedUp),
        supply("apron", 1.0, Per::Student, Life::Washable),
    ];
    lesson.washing.each_piece =
        vec![("drip tray".into(), ml(250.0)), ("colour cups".into(), ml(100.0))];
    lesson
}

#[test]
fn what_comes_back_is_washed_and_what_is_used_up_is_not() {
    let plan = washing(eight_at_trays());
    // Three colours are three batches of 1 L; 8 trays of 250 mL; cups are used up, and nobody
    // says that aprons need water here: 3 + 2 = 5 L, one bucket of 8 L.
    assert_eq!(plan.batches, 3);
    let washed: Vec<_> =
        plan.washed.iter().map(|w| (w.item.as_str(), w.pieces, in_ml(w.water).round())).collect();
    assert_eq!(washed, [("drip tray", 8, 2000.0)]);
    assert_near(in_ml(plan.jug_water), 3000.0, 1e-9);
    assert_near(in_ml(plan.water), 5000.0, 1e-9);
    assert_eq!(plan.buckets, 1);
    // 8 x 3 cups that each keep 3 mL.
    assert_eq!(plan.cups, 24);
    assert_near(in_ml(plan.left_in_cups), 72.0, 1e-9);

    let mut kept = eight_at_trays();
    kept.supplies[1].life = Life::Washable;
    // 24 cups of 100 mL more: 7.4 L.
    assert_near(in_ml(washing(kept.clone()).water), 7400.0, 1e-9);
    kept.washing.bucket = ml(3700.0);
    assert_eq!(washing(kept.clone()).buckets, 2, "two full buckets are two");
    kept.washing.bucket = ml(3600.0);
    assert_eq!(washing(kept).buckets, 3);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn water_adds_up_and_fills_its_buckets(lesson in lessons(), each in 0.0..500.0_f64) {
        let mut lesson = lesson;
        lesson.washing.each_piece = vec![("push pins".into(), ml(each))];
        let cup_loss = in_ml(lesson.mixing.cup_loss);
        let plan = planned(lesson);
        let washing = &plan.room.washing;
        let pins = plan.supplies.iter().find(|need| need.item == "push pins").unwrap().pieces;
        let water = f64::from(pins) * each + f64::from(washing.batches) * 1000.0;
        assert_near(in_ml(washing.water), water, 1e-6 * water.max(1.0));
        let held = f64::from(washing.buckets) * 8000.0;
        prop_assert!(held >= water - 1e-3 && held - 8000.0 <= water);
        let left = f64::from(washing.cups) * cup_loss;
        assert_near(in_ml(washing.left_in_cups), left, 1e-6 * left.max(1.0));
        let jugs: f64 = plan.leftovers.iter().map(|left| in_ml(left.volume)).sum();
        assert_near(in_ml(washing.left_in_jugs), jugs, 1e-9);
    }
}
