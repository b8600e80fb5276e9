use super::studio::*;
use puddlebook::lesson::{Amount, Lesson, Life, Per};
use puddlebook::plan::{Impossible, OrderLine, Plan, Purchase, plan};
use puddlebook::quantity::units::{gram, in_ml, ml, us_fl_oz};

fn line<'a>(plan: &'a Plan, item: &str) -> &'a OrderLine {
    plan.order.lines.iter().find(|line| line.item == item).unwrap()
}

#[track_caller]
fn millilitres(amount: Amount) -> f64 {
    match amount {
        Amount::Volume(volume) => in_ml(volume),
        other => panic!("not a volume: {other:?}"),
    }
}

/// Eight students with gloves.
fn class_of_eight() -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    lesson.supplies = vec![supply("gloves", 1.0, Per::Student, Life::UsedUp)];
    lesson
}

#[test]
fn materials_come_first_and_then_supplies() {
    let mut lesson = class_of_eight();
    lesson.canvases[0].finishes = vec![varnish()];
    let plan = planned(lesson);
    let items: Vec<_> = plan.order.lines.iter().map(|line| line.item.as_str()).collect();
    assert_eq!(
        items,
        [
            "harbour blue acrylic",
            "sand acrylic",
            "white acrylic",
            "pouring medium",
            "water",
            "gloss varnish",
            "gloves"
        ]
    );
}

#[test]
fn without_a_shop_there_are_amounts_and_no_prices() {
    let plan = planned(class_of_eight());
    assert!(matches!(line(&plan, "sand acrylic").purchase, Purchase::NoPrice));
    assert!(matches!(line(&plan, "water").purchase, Purchase::Nothing));
    assert_eq!(
        plan.cost.unpriced,
        ["harbour blue acrylic", "sand acrylic", "white acrylic", "pouring medium", "gloves"]
    );
    assert_eq!(plan.order.total, money(0));
}

#[test]
fn what_is_needed_is_what_the_batches_hold() {
    let plan = planned(class_of_eight());
    let in_batches: f64 = plan
        .mixing
        .iter()
        .flat_map(|batch| &batch.ingredients)
        .filter(|poured| poured.material.name == "pouring medium")
        .map(|poured| in_ml(poured.volume))
        .sum();
    assert_near(millilitres(line(&plan, "pouring medium").needed), in_batches, 1e-9);
}

#[test]
fn stock_is_taken_off_whatever_it_is_measured_in() {
    let mut lesson = class_of_eight();
    lesson.stock = vec![
        stocked("pouring medium", Amount::Volume(us_fl_oz(4.0))),
        // 105 g at 1.05 g/mL are 100 mL.
        stocked("pouring medium", Amount::Mass(gram(105.0))),
        stocked("gloves", Amount::Pieces(3)),
    ];
    let plan = planned(lesson);
    let medium = line(&plan, "pouring medium");
    let in_stock = 4.0 * 29.573_529_562_5 + 100.0;
    assert_near(millilitres(medium.in_stock), in_stock, 1e-9);
    assert_near(millilitres(medium.to_buy), millilitres(medium.needed) - in_stock, 1e-9);
    assert_eq!(line(&plan, "gloves").to_buy, Amount::Pieces(5));
}

#[test]
fn enough_in_stock_buys_nothing() {
    let mut lesson = class_of_eight();
    lesson.stock = vec![stocked("gloves", Amount::Pieces(30))];
    lesson.shops = shop(vec![pack("gloves", Amount::Pieces(50), 899)]);
    let plan = planned(lesson);
    let gloves = line(&plan, "gloves");
    assert_eq!(gloves.to_buy, Amount::Pieces(0));
    assert!(matches!(gloves.purchase, Purchase::Nothing));
}

#[test]
fn stock_of_exactly_the_need_is_enough() {
    let mut lesson = class_of_eight();
    let needed = line(&planned(lesson.clone()), "sand acrylic").needed;
    let Amount::Volume(volume) = needed else { panic!("not a volume") };
    lesson.stock =
        vec![stocked("sand acrylic", Amount::Mass(volume * colour("sand").paint.density))];
    assert!(matches!(line(&planned(lesson), "sand acrylic").purchase, Purchase::Nothing));
}

#[test]
fn water_is_bought_only_where_it_is_sold() {
    let mut lesson = class_of_eight();
    lesson.shops = shop(vec![pack("water", Amount::Volume(ml(1000.0)), 120)]);
    assert!(matches!(line(&planned(lesson), "water").purchase, Purchase::Packs { .. }));
}

#[test]
fn packs_and_left_over_of_a_line() {
    let mut lesson = class_of_eight();
    lesson.shops = shop(vec![
        pack("gloves", Amount::Pieces(5), 150),
        pack("gloves", Amount::Pieces(1), 40),
        pack("drop cloth", Amount::Pieces(1), 40),
    ]);
    let plan = planned(lesson);
    let Purchase::Packs { packs, cost, left_over } = &line(&plan, "gloves").purchase else {
        panic!("nothing bought");
    };
    // 5 + 1 + 1 + 1 cost 2.70, 5 + 5 cost 3.00.
    let packs: Vec<_> = packs.iter().map(|pack| (pack.size, pack.price, pack.count)).collect();
    assert_eq!(packs, [(Amount::Pieces(5), money(150), 1), (Amount::Pieces(1), money(40), 3)]);
    assert_eq!((*cost, *left_over), (money(270), Amount::Pieces(0)));
    assert_eq!(plan.order.total, money(270));
}

#[test]
fn amounts_that_cannot_be_compared_are_refused() {
    let mut stock = class_of_eight();
    stock.stock = vec![stocked("sand acrylic", Amount::Pieces(2))];
    let refused = plan(stock).unwrap_err();
    assert_eq!(
        refused,
        Impossible::CannotCompare { item: "sand acrylic".into(), amount: Amount::Pieces(2) }
    );
    assert_eq!(
        refused.to_string(),
        "\"sand acrylic\" is given in pieces, but it is needed by volume or weight"
    );

    let mut packs = class_of_eight();
    packs.shops = shop(vec![pack("gloves", Amount::Volume(ml(100.0)), 100)]);
    assert_eq!(
        plan(packs).unwrap_err().to_string(),
        "\"gloves\" is given by volume, but it is needed in pieces"
    );
}
