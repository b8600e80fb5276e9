//! The order, the supplies and what it all costs.

use super::reasons;
use crate::handout::words::{Words, fill};
use crate::lesson::{Amount, Life, MaterialKind};
use crate::plan::{Order, OrderItem, OrderLine, PackCount, Plan, Purchase, ShopBill};
use crate::quantity::Money;
use crate::quantity::show::{Show, by_size};
use crate::quantity::units::in_gram;
use serde::Serialize;

/// What to buy.
#[derive(Debug, Clone, Serialize)]
pub struct OrderText {
    /// The shops where something is bought.
    pub shops: Vec<ShopText>,
    pub lines: Vec<OrderLineText>,
    /// Empty without a shop.
    pub total: String,
    /// Why it is bought like this, a sentence each.
    pub reasons: Vec<String>,
    /// Items that are bought by other ways.
    pub elsewhere: Vec<String>,
    /// Items that no shop sells.
    pub unsold: Vec<String>,
}

/// One shop.
#[derive(Debug, Clone, Serialize)]
pub struct ShopText {
    pub name: String,
    pub goods: String,
    /// Empty when nothing is charged.
    pub delivery: String,
    pub total: String,
    pub lines: Vec<ShopLineText>,
}

/// What is bought of one item in one shop.
#[derive(Debug, Clone, Serialize)]
pub struct ShopLineText {
    pub item: String,
    /// `material` or `supply`.
    pub kind: &'static str,
    pub packs: String,
    pub cost: String,
}

/// One line of it. Amounts are figures in `unit`; what is nothing is empty.
#[derive(Debug, Clone, Serialize)]
pub struct OrderLineText {
    pub item: String,
    /// `material` or `supply`.
    pub kind: &'static str,
    /// Whether it comes from the tap.
    pub tap: bool,
    pub unit: String,
    pub needed: String,
    pub in_stock: String,
    pub to_buy: String,
    /// What of the stock is needed.
    pub take: String,
    pub packs: String,
    pub cost: String,
    pub left_over: String,
}

/// A supply for the class.
#[derive(Debug, Clone, Serialize)]
pub struct SupplyText {
    pub item: String,
    pub pieces: String,
    /// What becomes of it.
    pub life: String,
}

/// What the class costs.
#[derive(Debug, Clone, Serialize)]
pub struct CostText {
    pub order: String,
    pub used: String,
    pub per_student: String,
    pub unpriced: Vec<String>,
}

pub(super) fn order(plan: &Plan, words: &Words, show: &Show) -> OrderText {
    let order = &plan.order;
    let named = |met: fn(&Purchase) -> bool| {
        let lines = order.lines.iter().filter(|line| met(&line.purchase));
        lines.map(|line| line.item.clone()).collect()
    };
    OrderText {
        shops: order.bills.iter().map(|bill| shop(bill, order, words, show)).collect(),
        lines: order.lines.iter().map(|line| line_text(line, words, show)).collect(),
        total: priced(plan, order.total, show),
        reasons: reasons::reasons(order, words, show),
        elsewhere: named(|purchase| matches!(purchase, Purchase::Elsewhere)),
        unsold: named(|purchase| matches!(purchase, Purchase::NoPrice)),
    }
}

fn shop(bill: &ShopBill, order: &Order, words: &Words, show: &Show) -> ShopText {
    let lines = order.lines.iter().filter_map(|line| {
        let Purchase::Packs { packs, .. } = &line.purchase else { return None };
        let packs: Vec<&PackCount> = packs.iter().filter(|pack| pack.shop == bill.shop).collect();
        let cost = packs.iter().map(|pack| pack.price * pack.count).sum();
        (!packs.is_empty()).then(|| ShopLineText {
            item: line.item.clone(),
            kind: kind(&line.what),
            packs: packs_text(packs, words, show),
            cost: show.money(cost),
        })
    });
    ShopText {
        name: bill.name.clone(),
        goods: show.money(bill.goods),
        delivery: if bill.delivery > Money::ZERO {
            show.money(bill.delivery)
        } else {
            String::new()
        },
        total: show.money(bill.total()),
        lines: lines.collect(),
    }
}

fn kind(what: &OrderItem) -> &'static str {
    match what {
        OrderItem::Material(_) => "material",
        OrderItem::Supply(_) => "supply",
    }
}

fn packs_text<'a>(
    packs: impl IntoIterator<Item = &'a PackCount>,
    words: &Words,
    show: &Show,
) -> String {
    let packs: Vec<String> = packs.into_iter().map(|it| pack(it, words, show)).collect();
    packs.join(&words.order.between)
}

/// An amount of money, empty where there is no shop to pay it to.
pub(super) fn priced(plan: &Plan, money: Money, show: &Show) -> String {
    if plan.lesson.shops.is_empty() { String::new() } else { show.money(money) }
}

fn line_text(line: &OrderLine, words: &Words, show: &Show) -> OrderLineText {
    let (packs, cost, left_over) = match &line.purchase {
        Purchase::Nothing | Purchase::NoPrice | Purchase::Elsewhere => {
            (String::new(), String::new(), String::new())
        }
        Purchase::Packs { packs, cost, left_over } => {
            (packs_text(packs, words, show), show.money(*cost), figure(left_over, show))
        }
    };
    let tap = match &line.what {
        OrderItem::Material(material) => material.kind == MaterialKind::Water,
        OrderItem::Supply(_) => false,
    };
    OrderLineText {
        item: line.item.clone(),
        kind: kind(&line.what),
        tap,
        unit: match line.needed {
            Amount::Volume(_) => show.volume_unit().to_string(),
            Amount::Mass(_) => "g".to_string(),
            Amount::Pieces(_) => String::new(),
        },
        needed: figure(&line.needed, show),
        in_stock: figure(&line.in_stock, show),
        take: figure(&lesser(line.needed, line.in_stock), show),
        to_buy: if tap { String::new() } else { figure(&line.to_buy, show) },
        packs,
        cost,
        left_over,
    }
}

/// The lesser of two amounts of one kind.
fn lesser(needed: Amount, in_stock: Amount) -> Amount {
    match (needed, in_stock) {
        (Amount::Volume(a), Amount::Volume(b)) => Amount::Volume(if a < b { a } else { b }),
        (Amount::Mass(a), Amount::Mass(b)) => Amount::Mass(if a < b { a } else { b }),
        (Amount::Pieces(a), Amount::Pieces(b)) => Amount::Pieces(a.min(b)),
        _ => in_stock,
    }
}

/// An amount without its unit, empty when it is nothing.
fn figure(amount: &Amount, show: &Show) -> String {
    let (number, digits) = match amount {
        Amount::Volume(volume) => (show.volume_number(*volume), show.volume_digits()),
        Amount::Mass(mass) => (in_gram(*mass), 1),
        Amount::Pieces(pieces) => (f64::from(*pieces), 0),
    };
    if number <= 0.0 { String::new() } else { by_size(number, digits) }
}

fn pack(pack: &PackCount, words: &Words, show: &Show) -> String {
    fill(
        &words.order.pack,
        &[("count", &pack.count.to_string()), ("size", &amount(&pack.size, words, show))],
    )
}

/// How much of an item, in the words of the lesson.
pub(in crate::handout) fn amount(amount: &Amount, words: &Words, show: &Show) -> String {
    match amount {
        Amount::Volume(volume) => show.volume(*volume),
        Amount::Mass(mass) => show.mass(*mass),
        Amount::Pieces(pieces) => fill(&words.order.pieces, &[("count", &pieces.to_string())]),
    }
}

pub(super) fn supplies(plan: &Plan, words: &Words) -> Vec<SupplyText> {
    plan.supplies
        .iter()
        .map(|supply| SupplyText {
            item: supply.item.clone(),
            pieces: fill(&words.order.pieces, &[("count", &supply.pieces.to_string())]),
            life: match supply.life {
                Life::UsedUp => words.order.used_up.clone(),
                Life::Washable => words.order.washable.clone(),
            },
        })
        .collect()
}

pub(super) fn cost(plan: &Plan, show: &Show) -> CostText {
    CostText {
        order: priced(plan, plan.cost.order, show),
        used: priced(plan, plan.cost.used, show),
        per_student: priced(plan, plan.cost.per_student, show),
        unpriced: plan.cost.unpriced.clone(),
    }
}
