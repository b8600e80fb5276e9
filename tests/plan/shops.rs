use super::studio::*;
use puddlebook::lesson::{Amount, Lesson, Life, Per, Shop};
use puddlebook::plan::{Impossible, OrderLine, Plan, Purchase, plan};
use puddlebook::quantity::Money;

/// Eight students who need two gloves and one apron each, and no paint that has a price.
fn gloves_and_aprons(shops: Vec<Shop>) -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(8);
    lesson.supplies = vec![
        supply("gloves", 2.0, Per::Student, Life::UsedUp),
        supply("aprons", 1.0, Per::Student, Life::Washable),
    ];
    lesson.shops = shops;
    lesson
}

fn named(name: &str, delivery: i64, free_from: Option<i64>, packs: &[(&str, u32, i64)]) -> Shop {
    let packs = packs.iter().map(|(item, size, cents)| pack(item, Amount::Pieces(*size), *cents));
    Shop {
        name: name.into(),
        delivery: money(delivery),
        free_from: free_from.map(money),
        least_order: None,
        packs: packs.collect(),
    }
}

fn line<'a>(plan: &'a Plan, item: &str) -> &'a OrderLine {
    plan.order.lines.iter().find(|line| line.item == item).unwrap()
}

fn bought_at(plan: &Plan, item: &str) -> Vec<(usize, u32)> {
    let Purchase::Packs { packs, .. } = &line(plan, item).purchase else { return vec![] };
    packs.iter().map(|pack| (pack.shop, pack.count)).collect()
}

/// By hand: gloves 16 at 0.40 are 6.40 or 2 x 10 at 2.90; aprons 8 at 4.00 or 3.00.
/// Cheapest goods are 5.80 at A and 24.00 at B; each delivery of 5.00 is worth more than
/// what splitting saves: A alone 5.80 + 32.00 + 5.00 = 42.80, B alone 6.40 + 24.00 + 5.00 =
/// 35.40, both 2.90 + 2.40 + 24.00 + 10.00 = 39.30.
#[test]
fn a_second_delivery_must_be_worth_it() {
    let shops = vec![
        named("A", 500, None, &[("gloves", 10, 290), ("aprons", 1, 400)]),
        named("B", 500, None, &[("gloves", 1, 40), ("aprons", 1, 300)]),
    ];
    let plan = planned(gloves_and_aprons(shops));
    assert_eq!(plan.order.total, money(3540));
    assert_eq!(bought_at(&plan, "gloves"), [(1, 16)]);
    assert_eq!(bought_at(&plan, "aprons"), [(1, 8)]);
    let bills: Vec<_> = plan.order.bills.iter().map(|bill| (bill.shop, bill.total())).collect();
    assert_eq!(bills, [(1, money(3540))]);
    let singly: Vec<_> = plan.order.singly.iter().map(|single| single.total).collect();
    assert_eq!(singly, [Some(money(4280)), Some(money(3540))]);
}

#[test]
fn without_charges_each_item_comes_from_where_it_is_cheapest() {
    let shops = vec![
        named("A", 0, None, &[("gloves", 10, 290), ("aprons", 1, 400)]),
        named("B", 0, None, &[("gloves", 1, 40), ("aprons", 1, 300)]),
    ];
    let plan = planned(gloves_and_aprons(shops));
    // Ten gloves at A and six single ones at B are 5.30; two tens would be 5.80.
    assert_eq!(plan.order.total, money(530 + 2400));
    assert_eq!(bought_at(&plan, "gloves"), [(0, 1), (1, 6)]);
    assert_eq!(bought_at(&plan, "aprons"), [(1, 8)]);
    assert_eq!(plan.order.bills.len(), 2);
}

/// 8 aprons at 3.00 and 16 gloves at 0.40 are 30.40; one glove pair more costs 0.40 and is
/// not worth a free delivery of 0.30, but is worth one of 5.00 from 30.50.
#[test]
fn a_little_more_is_bought_where_it_makes_delivery_free() {
    let shop =
        |charge| vec![named("B", charge, Some(3050), &[("gloves", 1, 40), ("aprons", 1, 300)])];
    let plan = planned(gloves_and_aprons(shop(500)));
    assert_eq!(plan.order.total, money(3080));
    assert_eq!(plan.order.bills[0].delivery, Money::ZERO);
    assert_eq!(plan.order.bills[0].delivery_saved, money(500));
    let plan = planned(gloves_and_aprons(shop(30)));
    assert_eq!(plan.order.total, money(3070));
    assert_eq!(plan.order.bills[0].delivery, money(30));
}

#[test]
fn an_order_that_no_shop_takes_is_blamed_on_its_item() {
    let mut shop = named("B", 0, None, &[("gloves", 1, 0)]);
    shop.least_order = Some(money(100));
    let refused = plan(gloves_and_aprons(vec![shop])).unwrap_err();
    assert_eq!(
        refused,
        Impossible::LeastOrderOutOfReach { item: "gloves".into(), shop: "B".into() }
    );
}

#[test]
fn what_is_bought_elsewhere_has_no_price_here() {
    let shops = vec![named("A", 0, None, &[("gloves", 10, 290), ("aprons", 1, 400)])];
    let mut lesson = gloves_and_aprons(shops);
    lesson.elsewhere = vec!["aprons".into()];
    let plan = planned(lesson);
    assert!(matches!(line(&plan, "aprons").purchase, Purchase::Elsewhere));
    assert_eq!(plan.order.total, money(580));
}

/// 40 students instead of 8: 80 gloves in tens are 23.20, and from 5 packs on 2.50 each 20.00.
#[test]
fn a_price_for_many_is_taken_when_many_are_needed() {
    let mut shop =
        named("A", 0, None, &[("gloves", 10, 290), ("gloves", 10, 250), ("aprons", 1, 400)]);
    shop.packs[1].from = some(5);
    let mut lesson = gloves_and_aprons(vec![shop]);
    assert_eq!(planned(lesson.clone()).order.total, money(580 + 3200));
    lesson.class.students = students(40);
    assert_eq!(planned(lesson).order.total, money(8 * 250 + 40 * 400));
}
