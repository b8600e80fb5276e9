use super::studio::*;
use puddlebook::lesson::{Amount, Lesson, Life, Per};
use puddlebook::quantity::Money;
use puddlebook::quantity::units::ml;
use puddlebook::quantity::{Currency, Decimal};

/// Ten students with two gloves each; everything that is mixed is in stock and not on the
/// price list.
fn gloves(stock: u32, life: Life) -> Lesson {
    let mut lesson = lesson();
    lesson.class.students = students(10);
    lesson.supplies = vec![supply("gloves", 2.0, Per::Student, life)];
    lesson.stock = vec![stocked("gloves", Amount::Pieces(stock))];
    lesson.shops = shop(vec![
        pack("gloves", Amount::Pieces(6), 200),
        pack("gloves", Amount::Pieces(50), 1000),
    ]);
    lesson
}

/// Fourteen to buy: three packs of six for 6.00, which leave four; 14/18 of 6.00 are 4.67.
/// Six from stock at the best price of the list, 10.00 for 50, are 1.20.
#[test]
fn what_is_used_is_the_bought_part_and_the_stock_at_list_price() {
    let cost = planned(gloves(6, Life::UsedUp)).cost;
    assert_eq!(cost.order, money(600));
    assert_eq!(cost.per_student, money(60));
    assert_eq!(cost.used, money(467 + 120));
}

#[test]
fn stock_alone_costs_at_the_till_nothing() {
    let cost = planned(gloves(20, Life::UsedUp)).cost;
    assert_eq!((cost.order, cost.used), (money(0), money(400)));
}

#[test]
fn washable_things_are_paid_and_not_used_up() {
    let cost = planned(gloves(6, Life::Washable)).cost;
    assert_eq!((cost.order, cost.used), (money(600), money(0)));
}

#[test]
fn the_smallest_coin_is_that_of_the_currency() {
    let mut lesson = gloves(6, Life::UsedUp);
    lesson.print.currency = Currency::JPY;
    // 4.67 and 1.20 in whole coins.
    assert_eq!(planned(lesson).cost.used, Money::new(Decimal::new(6, 0)));
}

#[test]
fn what_has_no_price_is_named() {
    let mut lesson = gloves(0, Life::UsedUp);
    // Enough in the cupboard, but on no list: still without a price.
    lesson.stock.push(stocked("pouring medium", Amount::Volume(ml(10_000.0))));
    let unpriced = planned(lesson).cost.unpriced;
    assert_eq!(
        unpriced,
        ["harbour blue acrylic", "sand acrylic", "white acrylic", "pouring medium"]
    );
}
