use super::studio::*;
use puddlebook::lesson::{Amount, Lesson, Life, Per, ServiceLevel};
use puddlebook::plan::{Course, Impossible, Plan, course, plan};
use puddlebook::quantity::units::{in_ml, ml};
use puddlebook::quantity::{Currency, Date, Money};

fn evening(day: i8) -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    lesson.heading.title = format!("evening of the {day}th");
    lesson.heading.date = Some(Date::new(2026, 3, day).unwrap());
    lesson.reserve = reserve((19, 20), 8, 15);
    lesson.supplies = vec![
        supply("gloves", 1.0, Per::Student, Life::UsedUp),
        supply("aprons", 1.0, Per::Student, Life::Washable),
    ];
    lesson.shops = shop(vec![
        pack("gloves", Amount::Pieces(20), 499),
        pack("aprons", Amount::Pieces(1), 400),
        pack("white acrylic", Amount::Volume(ml(237.0)), 649),
        pack("sand acrylic", Amount::Volume(ml(237.0)), 649),
        pack("harbour blue acrylic", Amount::Volume(ml(237.0)), 649),
        pack("pouring medium", Amount::Volume(ml(237.0)), 529),
    ]);
    lesson
}

fn ordered(lessons: Vec<Lesson>, deliveries: &[Date]) -> Course {
    course(lessons, deliveries).unwrap()
}

#[test]
fn one_lesson_is_the_case_of_one() {
    let alone = plan(evening(6)).unwrap();
    let course = ordered(vec![evening(6)], &[]);
    assert_eq!(course.lessons.len(), 1);
    assert_eq!((course.deliveries.len(), course.total()), (1, alone.order.total));
    assert_eq!(course.lesson_by_lesson, alone.order.total);
}

#[test]
fn lessons_are_put_in_order_by_their_dates() {
    let course = ordered(vec![evening(20), evening(6), evening(13)], &[]);
    let titles: Vec<_> =
        course.lessons.iter().map(|plan| plan.lesson.heading.title.as_str()).collect();
    assert_eq!(titles, ["evening of the 6th", "evening of the 13th", "evening of the 20th"]);
}

fn mixed(plan: &Plan) -> f64 {
    in_ml(plan.to_mix())
}

#[test]
fn what_one_lesson_leaves_goes_into_the_next() {
    let course = ordered(vec![evening(6), evening(13)], &[]);
    let [first, second] = &course.lessons[..] else { panic!("not two") };
    assert!(mixed(second) < mixed(first));
    for (left, batch) in first.leftovers.iter().zip(&second.mixing) {
        assert_same(batch.from_jars, left.volume);
    }
    // Five weeks later it is past.
    let mut late = evening(6);
    late.heading.date = Some(Date::new(2026, 4, 10).unwrap());
    let course = ordered(vec![evening(6), late], &[]);
    assert!(course.lessons[1].mixing.iter().all(|batch| batch.from_jars == ml(0.0)));
}

#[test]
fn aprons_serve_every_lesson_and_gloves_one() {
    let course = ordered(vec![evening(6), evening(13), evening(20)], &[]);
    let order = &course.deliveries[0].order;
    let needed = |item: &str| order.lines.iter().find(|line| line.item == item).unwrap().needed;
    assert_eq!(needed("aprons"), Amount::Pieces(8));
    assert_eq!(needed("gloves"), Amount::Pieces(24));
    let gloves = order.lines.iter().find(|line| line.item == "gloves").unwrap();
    assert_eq!(gloves.by_lesson, vec![Amount::Pieces(8); 3]);
}

/// Rounding up to packs once is never dearer than for each lesson by itself.
#[test]
fn buying_once_is_never_dearer() {
    let course = ordered(vec![evening(6), evening(13), evening(20)], &[]);
    assert!(course.total() <= course.lesson_by_lesson);
}

#[test]
fn each_delivery_supplies_the_lessons_until_the_next() {
    let days = [5, 18].map(|day| Date::new(2026, 3, day).unwrap());
    let course = ordered(vec![evening(6), evening(13), evening(20)], &days);
    let groups: Vec<_> =
        course.deliveries.iter().map(|delivery| (delivery.day, delivery.lessons.clone())).collect();
    assert_eq!(groups, [(Some(days[0]), 0..2), (Some(days[1]), 2..3)]);
    // Aprons were bought the first time, and half a box of gloves is left: 16 of 20.
    let second = &course.deliveries[1].order;
    let line = |item: &str| second.lines.iter().find(|line| line.item == item).unwrap();
    assert_eq!(line("aprons").in_stock, Amount::Pieces(8));
    assert_eq!(line("gloves").in_stock, Amount::Pieces(4));
    assert_eq!(line("gloves").to_buy, Amount::Pieces(4));
    let total: Money = course.deliveries.iter().map(|delivery| delivery.order.total).sum();
    assert_eq!(course.total(), total);
}

#[test]
fn lessons_in_two_currencies_are_ordered_apart() {
    let mut other = evening(13);
    other.print.currency = Currency::EUR;
    let refused = course(vec![evening(6), other], &[]).unwrap_err();
    assert_eq!(refused, Impossible::TwoCurrencies { first: Currency::USD, other: Currency::EUR });
}

#[test]
fn the_level_is_that_of_each_lesson() {
    let mut sure = evening(13);
    sure.reserve.level = ServiceLevel::new(999, 1000).unwrap();
    let course = ordered(vec![evening(6), sure], &[]);
    assert!(course.lessons[1].reserve.by_colour > course.lessons[0].reserve.by_colour);
}
