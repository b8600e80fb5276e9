//! The order, the supplies and what it all costs.

use super::batch::unless_nothing;
use super::{WeighedText, reasons, spelled, weighed};
use crate::handout::words::{Words, fill};
use crate::lesson::{Amount, Life, MaterialKind};
use crate::plan::{Errand, Order, OrderItem, OrderLine, PackCount, Plan, Purchase, ShopBill};
use crate::quantity::show::{Show, fewer_digits};
use crate::quantity::units::in_gram;
use crate::quantity::{Mass, Money, Volume};
use serde::Serialize;

/// What to buy.
#[derive(Debug, Clone, Serialize)]
pub struct OrderText {
    /// The shops where something is bought.
    pub shops: Vec<ShopText>,
    pub lines: Vec<OrderLineText>,
    /// Empty without a shop.
    pub total: String,
    /// When it must be there, or is delivered; empty without a date.
    pub day: String,
    /// The lessons that it is for; empty for a single one.
    pub lessons: Vec<LessonText>,
    /// What is taken out of the cupboard.
    pub cupboard: Vec<TakenText>,
    /// What stays mixed after the last lesson.
    pub leftovers: Vec<LeftoverText>,
    /// Why it is bought like this, a sentence each.
    pub reasons: Vec<String>,
    /// Items that are bought by other ways, with how much of them.
    pub elsewhere: Vec<String>,
    /// Items that no shop sells, with how much of them.
    pub unsold: Vec<String>,
}

/// One lesson of an order for several.
#[derive(Debug, Clone, Serialize)]
pub struct LessonText {
    /// Where its amounts come from; none when nothing of it has been weighed.
    pub weighed: Option<WeighedText>,
    pub title: String,
    pub date: String,
    pub students: String,
    pub sets: String,
    /// Mixed fresh, and taken from jars (empty when it is nothing).
    pub to_mix: String,
    pub from_jars: String,
    /// What its own order would cost.
    pub alone: String,
}

/// Something that is there already.
#[derive(Debug, Clone, Serialize)]
pub struct TakenText {
    pub item: String,
    /// With its unit.
    pub take: String,
    /// What the cupboard has, where that is more; with its unit.
    pub of: String,
}

/// Mixed paint that is left.
#[derive(Debug, Clone, Serialize)]
pub struct LeftoverText {
    pub colour: String,
    pub mix: String,
    pub volume: String,
    pub mass: String,
    /// The last day it can be used; empty without a date.
    pub last_day: String,
    /// What it would fill: `3 cups of square or 2 of upright`; empty when not one cup.
    pub covers: String,
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
    /// Figures in `unit`; empty in the second shop of an item.
    pub unit: String,
    pub needed: String,
    pub in_stock: String,
    pub left_over: String,
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
    /// What each lesson needs.
    pub by_lesson: Vec<String>,
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

/// The order of an errand.
pub(in crate::handout) fn order(errand: &Errand, words: &Words, show: &Show) -> OrderText {
    let order = errand.order;
    let named = |met: fn(&Purchase) -> bool| {
        let lines = order.lines.iter().filter(|line| met(&line.purchase));
        lines.map(|line| format!("{} ({})", line.item, amount(&line.to_buy, words, show))).collect()
    };
    let first = errand.lessons.first();
    let day = errand.day.or(first.and_then(|plan| plan.lesson.heading.date));
    let last = errand.lessons.last();
    OrderText {
        shops: order.bills.iter().map(|bill| shop(bill, order, words, show)).collect(),
        lines: order.lines.iter().map(|line| line_text(line, words, show)).collect(),
        total: first.map(|plan| priced(plan, order.total, show)).unwrap_or_default(),
        day: day.map(|day| spelled(day, words)).unwrap_or_default(),
        lessons: match errand.lessons {
            [_] => Vec::new(),
            several => several.iter().map(|plan| lesson(plan, words, show)).collect(),
        },
        cupboard: order.lines.iter().filter_map(|line| taken(line, words, show)).collect(),
        leftovers: last.map(|plan| leftovers(plan, words, show)).unwrap_or_default(),
        reasons: reasons::reasons(order, words, show),
        elsewhere: named(|purchase| matches!(purchase, Purchase::Elsewhere)),
        unsold: named(|purchase| matches!(purchase, Purchase::NoPrice)),
    }
}

fn lesson(plan: &Plan, words: &Words, show: &Show) -> LessonText {
    let from_jars = plan.mixing.iter().map(|batch| batch.from_jars).sum();
    LessonText {
        weighed: weighed(plan),
        title: plan.lesson.heading.title.clone(),
        date: plan.lesson.heading.date.map(|date| spelled(date, words)).unwrap_or_default(),
        students: plan.heads.students.to_string(),
        sets: plan.heads.sets().to_string(),
        to_mix: show.measured(plan.to_mix()),
        from_jars: unless_nothing(from_jars, show),
        alone: priced(plan, plan.order.total, show),
    }
}

fn taken(line: &OrderLine, words: &Words, show: &Show) -> Option<TakenText> {
    let take = lesser(line.needed, line.in_stock);
    let has_some = match take {
        Amount::Volume(volume) => volume > Volume::default(),
        Amount::Mass(mass) => mass > Mass::default(),
        Amount::Pieces(pieces) => pieces > 0,
    };
    has_some.then(|| TakenText {
        item: line.item.clone(),
        take: amount(&take, words, show),
        of: if take == line.in_stock { String::new() } else { amount(&line.in_stock, words, show) },
    })
}

fn leftovers(plan: &Plan, words: &Words, show: &Show) -> Vec<LeftoverText> {
    let texts = plan.leftovers.iter().map(|left| {
        let covers: Vec<String> = left
            .covers(plan)
            .iter()
            .map(|cover| {
                let cups = cover.cups.to_string();
                match &cover.layer {
                    None => {
                        fill(&words.order.covers, &[("cups", &cups), ("canvas", &cover.canvas)])
                    }
                    Some(layer) => fill(
                        &words.order.covers_layer,
                        &[("cups", &cups), ("canvas", &cover.canvas), ("layer", layer)],
                    ),
                }
            })
            .collect();
        LeftoverText {
            colour: left.colour.name.clone(),
            mix: left.mix.name.clone(),
            volume: show.volume(left.volume),
            mass: show.mass(left.mass),
            last_day: left.last_day.map(|day| spelled(day, words)).unwrap_or_default(),
            covers: covers.join(&words.order.or),
        }
    });
    texts.collect()
}

fn shop(bill: &ShopBill, order: &Order, words: &Words, show: &Show) -> ShopText {
    // As the items stand in the list of the shop, which is how one walks along its shelves.
    let mut lines: Vec<(usize, ShopLineText)> =
        order.lines.iter().filter_map(|line| shop_line(line, bill.shop, words, show)).collect();
    lines.sort_by_key(|(shelf, _)| *shelf);
    ShopText {
        name: bill.name.clone(),
        goods: show.money(bill.goods),
        delivery: if bill.delivery > Money::ZERO {
            show.money(bill.delivery)
        } else {
            String::new()
        },
        total: show.money(bill.total()),
        lines: lines.into_iter().map(|(_, line)| line).collect(),
    }
}

/// The line, and where its item stands in the list of the shop.
fn shop_line(
    line: &OrderLine,
    shop: usize,
    words: &Words,
    show: &Show,
) -> Option<(usize, ShopLineText)> {
    let Purchase::Packs { packs, left_over, .. } = &line.purchase else { return None };
    let here: Vec<&PackCount> = packs.iter().filter(|pack| pack.shop == shop).collect();
    let shelf = here.iter().map(|pack| pack.shelf).min()?;
    let is_first = packs.first().is_some_and(|pack| pack.shop == shop);
    let once = |text: String| if is_first { text } else { String::new() };
    let cost = here.iter().map(|pack| pack.price * pack.count).sum();
    let decimals = decimals(line, show);
    let text = ShopLineText {
        item: line.item.clone(),
        kind: kind(&line.what),
        unit: unit(line, show),
        needed: once(figure(&line.needed, decimals, show)),
        in_stock: once(figure(&line.in_stock, decimals, show)),
        left_over: once(figure(left_over, decimals, show)),
        packs: packs_text(here, words, show),
        cost: show.money(cost),
    };
    Some((shelf, text))
}

fn unit(line: &OrderLine, show: &Show) -> String {
    match line.needed {
        Amount::Volume(_) => show.volume_unit().to_string(),
        Amount::Mass(_) => "g".to_string(),
        Amount::Pieces(_) => String::new(),
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
    let decimals = decimals(line, show);
    let figure = |amount: &Amount| figure(amount, decimals, show);
    let (packs, cost, left_over) = match &line.purchase {
        Purchase::Nothing | Purchase::NoPrice | Purchase::Elsewhere => {
            (String::new(), String::new(), String::new())
        }
        Purchase::Packs { packs, cost, left_over } => {
            (packs_text(packs, words, show), show.money(*cost), figure(left_over))
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
        unit: unit(line, show),
        by_lesson: line.by_lesson.iter().map(&figure).collect(),
        needed: figure(&line.needed),
        in_stock: figure(&line.in_stock),
        take: figure(&lesser(line.needed, line.in_stock)),
        to_buy: if tap { String::new() } else { figure(&line.to_buy) },
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
fn figure(amount: &Amount, decimals: usize, show: &Show) -> String {
    let (number, _) = number(amount, show);
    if number <= 0.0 { String::new() } else { show.trimmed(number, decimals) }
}

/// The number of an amount, and the most decimals that one of its kind gets.
fn number(amount: &Amount, show: &Show) -> (f64, usize) {
    match amount {
        Amount::Volume(volume) => (show.volume_number(*volume), show.volume_digits()),
        Amount::Mass(mass) => (in_gram(*mass), 1),
        Amount::Pieces(pieces) => (f64::from(*pieces), 0),
    }
}

/// The decimals that the smallest figure of a line gets by its size: all of them have as many,
/// so that what is needed, in stock, bought and left over comes out.
fn decimals(line: &OrderLine, show: &Show) -> usize {
    let left_over = match &line.purchase {
        Purchase::Packs { left_over, .. } => Some(left_over),
        Purchase::Nothing | Purchase::NoPrice | Purchase::Elsewhere => None,
    };
    let figures = [&line.needed, &line.in_stock, &line.to_buy].into_iter().chain(left_over);
    let numbers = figures.map(|amount| number(amount, show)).filter(|(number, _)| *number > 0.0);
    numbers.map(|(number, most)| most.saturating_sub(fewer_digits(number))).max().unwrap_or(0)
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
