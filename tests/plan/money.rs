//! Where the money goes, and what a student would have to pay.

use super::generated::lessons;
use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::*;
use puddlebook::plan::{Fees, Plan, fees};
use puddlebook::quantity::units::{inch, ml, us_fl_oz};
use puddlebook::quantity::{Coin, Currency, Decimal, Money};
use std::num::NonZeroU32;

fn charge(what: &str, cents: i64) -> Charge {
    Charge { what: what.into(), amount: money(cents) }
}

/// 4.8 fl oz on the canvas, as 40, 25 and 35 %: 1.92, 1.2 and 1.68, in steps of a quarter
/// 2, 1 1/4 and 1 3/4 fl oz. The mix is 4/9 paint, 4/9 medium and 1/9 water, so that much of
/// each: 8/9, 5/9 and 7/9 fl oz of paint, and of medium as much again.
fn shared(medium_cents: i64) -> Plan {
    let mut lesson = lesson();
    lesson.mixing.cup_loss = ml(0.0);
    let eight = Amount::Volume(us_fl_oz(8.0));
    lesson.supplies = vec![supply("gloves", 2.0, Per::Student, Life::UsedUp)];
    lesson.shops = shop(vec![
        pack("harbour blue acrylic", eight, 1800),
        pack("sand acrylic", eight, 1800),
        pack("white acrylic", eight, 1800),
        pack("pouring medium", eight, medium_cents),
        pack("gloves", Amount::Pieces(10), 300),
    ]);
    planned(lesson)
}

/// At 18.00 for 8 fl oz a ninth of a fluid ounce costs 0.25. The medium, 20/9 fl oz, is 5.00
/// and goes out as 8 : 5 : 7. Two of ten gloves are 0.60. Water from the tap costs nothing.
#[test]
fn colours_take_their_paint_and_their_part_of_the_medium() {
    let plan = shared(1800);
    let split = &plan.cost.split;
    let colours: Vec<_> = split.colours().iter().map(|it| (it.paint, it.added)).collect();
    assert_eq!(
        colours,
        [(money(200), money(200)), (money(125), money(125)), (money(175), money(175))]
    );
    assert_eq!(split.canvases[0].total(), money(1000));
    assert_eq!(split.canvases[0].layers[0].total(), money(1000));
    assert_eq!(split.supplies, money(60));
    assert_eq!((split.total(), plan.cost.used), (money(1060), money(1060)));
    assert_eq!((split.canvases[0].per_canvas, split.per_student), (money(1000), money(1060)));
}

/// At 0.25 for 8 fl oz, 20/9 fl oz of medium are 6.94 cents: 7. By 8 : 5 : 7 that is 2.8, 1.75
/// and 2.45 cents; the two that rounding down leaves go to .8 and .75.
#[test]
fn no_coin_is_lost_between_the_colours() {
    let added: Vec<Money> =
        shared(25).cost.split.colours().iter().map(|colour| colour.added).collect();
    assert_eq!(added, [money(3), money(2), money(2)]);
}

/// Two kinds of canvas of one palette: 10 x 10 in with its edge is 120 in2, 5 x 10 in without
/// one 50 in2. Each student paints one of the first and two of the second, so what a colour
/// costs goes out as 120 : 100.
#[test]
fn canvases_share_a_batch_by_what_they_are_expected_to_take() {
    let mut lesson = lesson();
    lesson.mixing.cup_loss = ml(0.0);
    let mut small = lesson.canvases[0].clone();
    small.name = "small".into();
    small.shape = Shape::Rectangle { width: inch(5.0), height: inch(10.0) };
    (small.edge, small.each) = (Edge::Bare, some(2));
    lesson.canvases.push(small);
    lesson.class.students = students(3);
    lesson.shops = shop(vec![pack("pouring medium", Amount::Volume(us_fl_oz(8.0)), 2200)]);
    let split = planned(lesson).cost.split;
    let [large, small] = split.canvases.as_slice() else { panic!("two kinds") };
    assert_eq!((large.count, small.count), (3, 6));
    for (large, small) in large.layers[0].cups.iter().zip(&small.layers[0].cups) {
        assert_eq!((large.paint, small.paint), (Money::ZERO, Money::ZERO), "no price");
        // A coin is all that rounding may shift.
        let off = large.added * 100 - small.added * 120;
        assert!(off <= money(220) && Money::ZERO - off <= money(220), "{off:?}");
    }
}

/// Varnish is bought for finishes alone, 250 mL at 12.90.
#[test]
fn finishes_stand_apart_from_paint() {
    let mut lesson = lesson();
    lesson.canvases[0].finishes = vec![varnish()];
    lesson.shops = shop(vec![pack("gloss varnish", Amount::Volume(ml(250.0)), 1290)]);
    let plan = planned(lesson);
    let canvas = &plan.cost.split.canvases[0];
    // 120 in2 = 774.192 cm2, twice 0.1 mm: 15.48 mL of 250 mL, 0.7989.
    assert_eq!(canvas.finishes, [money(80)]);
    assert_eq!((canvas.total(), plan.cost.used), (money(80), money(80)));
    assert_eq!(plan.cost.split.finishes(), money(80));
}

/// Paint that was mixed before was paid for before.
#[test]
fn what_comes_out_of_jars_costs_nothing() {
    let mut lesson = lesson();
    lesson.heading.date = Some("2026-03-14".parse().unwrap());
    let jar = |colour: &str| Jar {
        colour: colour.into(),
        mix: "medium".into(),
        amount: Amount::Volume(ml(2_000.0)),
        mixed: "2026-03-10".parse().unwrap(),
        keeps: None,
    };
    lesson.jars = vec![jar("harbour blue"), jar("sand"), jar("white")];
    lesson.shops = shop(vec![pack("pouring medium", Amount::Volume(ml(250.0)), 900)]);
    assert_eq!(planned(lesson).cost.split.total(), Money::ZERO);
}

/// Two gloves a student, six in a pack for 6.00; the paint is brought along. Room and teacher
/// are 210.00, printing and tea 2.30 a student.
fn evening(students_who_come: u32) -> Lesson {
    let mut lesson = gloves_alone(2.0, 6, money(600));
    lesson.class.students = students(students_who_come);
    lesson.charges = Charges {
        fixed: vec![charge("room", 6000), charge("teacher", 15000)],
        each: vec![charge("printing", 80), charge("tea", 150)],
        fee: Some(money(3000)),
        budget: None,
    };
    lesson
}

fn gloves_alone(each: f64, in_pack: u32, price: Money) -> Lesson {
    let mut lesson = lesson();
    lesson.supplies = vec![supply("gloves", each, Per::Student, Life::UsedUp)];
    let pack = Pack { price, ..pack("gloves", Amount::Pieces(in_pack), 0) };
    lesson.shops = shop(vec![pack]);
    lesson
}

fn fee_of(fees: &Fees, students: u32) -> Money {
    fees.classes.iter().find(|class| class.students == students).unwrap().fee
}

/// Four students: eight gloves, two packs, 12.00. 12 + 210 + 4 x 2.30 = 231.20, a quarter of
/// it is 57.80; four times 30.00 are 120.00.
#[test]
fn a_class_is_set_against_its_fee() {
    let balance = planned(evening(4)).cost.balance;
    assert_eq!(
        (balance.bought, balance.fixed, balance.each),
        (money(1200), money(21000), money(230))
    );
    assert_eq!((balance.total, balance.per_student), (money(23120), money(5780)));
    assert_eq!(balance.pays_for_itself, money(5780));
    let takings = balance.takings.unwrap();
    assert_eq!((takings.income, takings.surplus), (money(12000), money(-11120)));
}

/// 7 students: 14 gloves, 3 packs: 18 + 210 + 16.10 = 244.10, a seventh is 34.8714...
/// 8: 18 + 210 + 18.40 = 246.40, an eighth is 30.80. 9: 248.70, a ninth is 27.633...
#[test]
fn fees_are_rounded_up_and_the_one_asked_pays_from_nine() {
    let plan = planned(evening(4));
    let fees = fees(&plan);
    assert_eq!(fees.classes.len(), 12, "at least twelve");
    assert_eq!(fee_of(&fees, 4), plan.cost.balance.pays_for_itself);
    assert_eq!([7, 8, 9].map(|n| fee_of(&fees, n)), [money(3488), money(3080), money(2764)]);
    assert_eq!((fees.pays_from(), fees.fails_again()), (Some(9), vec![]));
}

/// One glove each, four in a pack for 8.00: 8.00, 4.00, 2.67, 2.00; 16/5 = 3.20, 2.67, 2.29,
/// 2.00; 24/9 = 2.67, 2.40, 2.19, 2.00.
#[test]
fn a_new_pack_makes_a_step_up() {
    let mut lesson = gloves_alone(1.0, 4, money(800));
    lesson.charges.fee = Some(money(240));
    let fees = fees(&planned(lesson));
    let found: Vec<Money> = fees.classes.iter().map(|class| class.fee).collect();
    let by_hand = [800, 400, 267, 200, 320, 267, 229, 200, 267, 240, 219, 200].map(money);
    assert_eq!(found, by_hand);
    assert_eq!((fees.pays_from(), fees.fails_again()), (Some(4), vec![5, 6, 9]));
}

/// 800 yen shared by three are 266.67: 267. Eight dinars are 2.6667: 2.667.
#[test]
fn fees_are_in_the_coins_of_the_currency() {
    let fee = |currency, price| {
        let mut lesson = gloves_alone(1.0, 4, price);
        lesson.print.currency = currency;
        fee_of(&fees(&planned(lesson)), 3)
    };
    assert_eq!(
        fee(Currency::JPY, Money::new(Decimal::new(800, 0))),
        Money::new(Decimal::new(267, 0))
    );
    assert_eq!(
        fee(Currency::KWD, Money::new(Decimal::new(8, 0))),
        Money::new(Decimal::new(2667, 3))
    );
}

/// 3 of 4 gloves for 10: 7.5 yen are 8, 7.5 dinars are 7.500. A sum over canvases in yen still
/// adds up although no colour is worth a whole coin more or less.
#[test]
fn what_is_used_is_split_in_the_coins_of_the_currency() {
    for (currency, used) in
        [(Currency::JPY, Decimal::new(8, 0)), (Currency::KWD, Decimal::new(75, 1))]
    {
        let mut lesson = gloves_alone(3.0, 4, Money::new(Decimal::TEN));
        lesson.print.currency = currency;
        lesson.shops[0].packs.push(Pack {
            price: Money::new(Decimal::new(7, 0)),
            ..pack("pouring medium", Amount::Volume(us_fl_oz(8.0)), 0)
        });
        let cost = planned(lesson).cost;
        assert_eq!(cost.split.supplies, Money::new(used));
        assert_eq!(cost.split.total(), cost.used);
        let coins = u32::from(currency.exponent().unwrap());
        for colour in cost.split.colours() {
            assert!(colour.added.amount().normalize().scale() <= coins);
        }
    }
}

#[test]
fn students_with_names_are_counted_for_other_classes() {
    let mut named = evening(3);
    named.class.students = Students::Named(vec!["Ana".into(), "Bo".into(), "Cem".into()]);
    let (named, counted) = (fees(&planned(named)), fees(&planned(evening(3))));
    assert_eq!(named.classes, counted.classes);
}

#[test]
fn classes_are_looked_at_up_to_sixty_and_the_own_one_always() {
    let last = |students| fees(&planned(evening(students))).classes.last().unwrap().students;
    assert_eq!([1, 6, 7, 30, 31, 60, 100].map(last), [12, 12, 14, 60, 60, 60, 100]);
}

#[test]
fn without_shops_only_charges_count() {
    let mut lesson = evening(4);
    lesson.shops.clear();
    let plan = planned(lesson);
    // 210 + 9.20.
    assert_eq!((plan.cost.balance.total, plan.cost.used), (money(21920), Money::ZERO));
    assert_eq!(fee_of(&fees(&plan), 1), money(21230));
}

/// One jar of varnish is 19.00, and nobody delivers for less than 20.00: two, for 38.00, until
/// another student needs gloves as well, when 19.00 and 1.00 will do. So more students may be
/// cheaper, where a shop has a sum to reach.
#[test]
fn a_sum_to_reach_can_make_a_larger_class_cheaper() {
    let mut lesson = gloves_alone(1.0, 10, money(100));
    lesson.canvases[0].finishes = vec![varnish()];
    lesson.shops[0].packs.push(pack("gloss varnish", Amount::Volume(ml(1_000.0)), 1900));
    lesson.shops[0].least_order = Some(money(2000));
    lesson.stock = vec![stocked("gloves", Amount::Pieces(1))];
    let bought: Vec<Money> =
        fees(&planned(lesson)).classes.iter().map(|class| class.bought).collect();
    assert_eq!(bought[..2], [money(3800), money(2000)]);
}

fn with_charges() -> impl Strategy<Value = Lesson> {
    let currencies = prop::sample::select(vec![Currency::USD, Currency::JPY, Currency::KWD]);
    (lessons(), 0_i64..50_000, 0_i64..2_000, 100_i64..9_000, currencies).prop_map(
        |(mut lesson, fixed, each, fee, currency)| {
            lesson.print.currency = currency;
            lesson.charges = Charges {
                fixed: vec![charge("room", fixed)],
                each: vec![charge("tea", each)],
                fee: Some(money(fee)),
                budget: None,
            };
            lesson
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn canvases_layers_and_colours_add_up_to_what_is_used(lesson in with_charges()) {
        let plan = planned(lesson);
        let split = &plan.cost.split;
        prop_assert_eq!(split.total(), plan.cost.used);
        let colours: Money = split.colours().iter().map(|colour| colour.total()).sum();
        prop_assert_eq!(colours + split.finishes() + split.supplies, plan.cost.used);
        let layers = split.canvases.iter().flat_map(|canvas| &canvas.layers);
        let layers: Money = layers.map(|layer| layer.total()).sum();
        prop_assert_eq!(layers, colours);
        let coins = Coin::of(plan.lesson.print.currency).decimals();
        for colour in split.canvases.iter().flat_map(|it| &it.layers).flat_map(|it| &it.cups) {
            for part in [colour.paint, colour.added] {
                prop_assert!(part >= Money::ZERO);
                prop_assert!(part.amount().normalize().scale() <= coins);
            }
        }
    }

    /// No shop here has a sum to reach, so more students never cost less in all; and the fee
    /// rises only where one more costs more than the fee.
    #[test]
    fn fees_fall_unless_one_more_student_costs_more_than_the_fee(lesson in with_charges()) {
        let plan = planned(lesson);
        let coin = Money::new(Decimal::new(1, Coin::of(plan.lesson.print.currency).decimals()));
        let fees = fees(&plan);
        prop_assert_eq!(fees.classes.first().map(|class| class.students), Some(1));
        for class in &fees.classes {
            prop_assert!(class.fee * class.students >= class.total);
            prop_assert!((class.fee - coin) * class.students < class.total);
            prop_assert_eq!(class.within, None);
        }
        for pair in fees.classes.windows(2) {
            let [few, more] = pair else { unreachable!() };
            prop_assert!(more.bought >= few.bought);
            if more.students == few.students + 1 && more.total - few.total <= few.fee {
                prop_assert!(more.fee <= few.fee);
            }
        }
        let own = fees.classes.iter().find(|class| class.students == plan.heads.students).unwrap();
        prop_assert_eq!(own.total, plan.cost.balance.total);
        prop_assert_eq!(own.fee, plan.cost.balance.pays_for_itself);
        if let Some(from) = fees.pays_from() {
            prop_assert!(fee_of(&fees, from) <= plan.lesson.charges.fee.unwrap());
        }
    }

    /// What is worked out for another class is what a lesson for that many would buy.
    #[test]
    fn another_class_buys_what_its_own_lesson_would(lesson in lessons(), students in 1_u32..13) {
        let fees = fees(&planned(lesson.clone()));
        let mut other = lesson;
        other.class.students = Students::Count(NonZeroU32::new(students).unwrap());
        let class = fees.classes.iter().find(|class| class.students == students).unwrap();
        prop_assert_eq!(class.bought, planned(other).order.total);
    }
}
