//! What to buy: needs less stock, in packs of all shops.
//!
//! In: what lessons need, the cupboard, the shops. Out: an [`Order`], and the cupboard as the
//! lessons leave it. `wanted` puts needs on one ruler, `shops` makes the market of them.

mod cupboard;
mod shops;
mod wanted;

pub(super) use cupboard::Cupboard;
pub(super) use wanted::Needs;

use super::buy::{Basket, Bill, Effort, Proof, ShopAt};
use super::measure::Measure;
use super::{Impossible, Order, OrderItem, OrderLine, Purchase, ShopBill, SingleShop};
use crate::lesson::{Amount, Shop};
use crate::quantity::Money;
use rust_decimal::prelude::ToPrimitive;
use shops::Sought;
use wanted::{Tap, Wanted, wanted};

/// Stock that falls short by less than this part of the need is enough; it is the noise
/// of adding up, and no reason to buy a bottle.
const NOISE: f64 = 1e-9;

/// Where things can be bought.
#[derive(Clone, Copy)]
pub(super) struct Street<'a> {
    pub shops: &'a [Shop],
    /// Items that are not bought there.
    pub elsewhere: &'a [String],
}

/// One line a material, then one a supply; what the lessons leave goes back to the cupboard.
pub(super) fn order(
    lessons: &[Needs],
    cupboard: &mut Cupboard,
    street: Street,
) -> Result<Order, Impossible> {
    let wanted = wanted(lessons);
    let (shelves, sought) = shelves(&wanted, cupboard, street)?;
    let basket = shops::least_cost(&sought, street.shops, Effort::Whole)?;
    let mut lines = Vec::with_capacity(shelves.len());
    for shelf in shelves {
        let (purchase, left_over) = shelf.purchase(&sought, &basket);
        let at_hand = shelf.in_stock + shelf.to_buy + left_over;
        cupboard.leave(shelf.wanted.item, at_hand - shelf.wanted.used_up());
        lines.push(shelf.line(purchase));
    }
    Ok(Order {
        lines,
        bills: bills(&basket, street.shops),
        total: basket.total,
        within: within(basket.proof),
        singly: singly(&sought, street.shops),
    })
}

/// What an order for one lesson would cost, and how far that may be from the least.
pub(super) fn price(
    needs: Needs,
    cupboard: &Cupboard,
    street: Street,
    effort: Effort,
) -> Result<(Money, Option<Money>), Impossible> {
    let wanted = wanted(&[needs]);
    let (_, sought) = shelves(&wanted, cupboard, street)?;
    let basket = shops::least_cost(&sought, street.shops, effort)?;
    Ok((basket.total, within(basket.proof)))
}

fn within(proof: Proof) -> Option<Money> {
    match proof {
        Proof::LeastCost => None,
        Proof::Within(gap) => Some(gap),
    }
}

/// How each item is come by, and what is sought of all that is bought.
fn shelves<'a>(
    wanted: &'a [Wanted<'a>],
    cupboard: &Cupboard,
    street: Street<'a>,
) -> Result<(Vec<Shelf<'a>>, Vec<Sought<'a>>), Impossible> {
    let mut sought: Vec<Sought> = Vec::new();
    let mut shelves = Vec::with_capacity(wanted.len());
    for wanted in wanted {
        let in_stock = cupboard.holds(wanted)?;
        let missing = wanted.needed() - in_stock;
        let to_buy = if missing <= wanted.needed() * NOISE { 0.0 } else { missing };
        let way = way(wanted, to_buy, street, &mut sought)?;
        shelves.push(Shelf { wanted, in_stock, to_buy, way });
    }
    Ok((shelves, sought))
}

/// An item and how it is come by.
struct Shelf<'a> {
    wanted: &'a Wanted<'a>,
    in_stock: f64,
    to_buy: f64,
    way: Way,
}

enum Way {
    /// Stock is enough, or it comes from the tap.
    Nothing,
    Elsewhere,
    NoPrice,
    /// Its place among what is sought.
    Market(usize),
}

/// How an item is come by; what is bought is added to what is sought.
fn way<'a>(
    wanted: &'a Wanted<'a>,
    to_buy: f64,
    street: Street<'a>,
    sought: &mut Vec<Sought<'a>>,
) -> Result<Way, Impossible> {
    if to_buy <= 0.0 {
        return Ok(Way::Nothing);
    }
    if street.elsewhere.iter().any(|item| item == wanted.item) {
        return Ok(Way::Elsewhere);
    }
    let offered = Sought::new(wanted, to_buy, street.shops)?;
    Ok(if offered.is_sold() {
        sought.push(offered);
        Way::Market(sought.len() - 1)
    } else if wanted.from_tap == Tap::Yes {
        Way::Nothing
    } else {
        Way::NoPrice
    })
}

impl Shelf<'_> {
    /// How it is met, and what is left of the packs on the ruler of the item.
    fn purchase(&self, sought: &[Sought], basket: &Basket) -> (Purchase, f64) {
        let at = match self.way {
            Way::Nothing => return (Purchase::Nothing, 0.0),
            Way::Elsewhere => return (Purchase::Elsewhere, 0.0),
            Way::NoPrice => return (Purchase::NoPrice, 0.0),
            Way::Market(at) => at,
        };
        let counts = basket.counts.get(at).map(Vec::as_slice).unwrap_or_default();
        let left_over = basket.left_over.get(at).copied().unwrap_or_default();
        let packs = sought.get(at).map(|sought| sought.packs(counts)).unwrap_or_default();
        let cost = packs.iter().map(|pack| pack.price * pack.count).sum();
        let left = self.wanted.measure.amount(left_over);
        (Purchase::Packs { packs, cost, left_over: left }, left_over)
    }

    fn line(self, purchase: Purchase) -> OrderLine {
        let Self { wanted, in_stock, to_buy, .. } = self;
        let amount = |reading: f64| wanted.measure.amount(reading);
        OrderLine {
            item: wanted.item.to_owned(),
            what: wanted.what.clone(),
            by_lesson: wanted.by_lesson.iter().map(|need| amount(*need)).collect(),
            needed: amount(wanted.needed()),
            reserve: amount(wanted.reserve),
            in_stock: amount(in_stock),
            to_buy: amount(to_buy),
            purchase,
        }
    }
}

/// The bills of the shops where something is bought.
fn bills(basket: &Basket, shops: &[Shop]) -> Vec<ShopBill> {
    let bills = basket.bills.iter().zip(shops).enumerate();
    bills
        .filter_map(|(at, (bill, shop))| {
            let Bill { goods, delivery } = (*bill)?;
            let name = shop.name.clone();
            let saved = if delivery == Money::ZERO { shop.delivery } else { Money::ZERO };
            Some(ShopBill { shop: at, name, goods, delivery, delivery_saved: saved })
        })
        .collect()
}

/// What the same would cost from each shop by itself.
fn singly(sought: &[Sought], shops: &[Shop]) -> Vec<SingleShop> {
    if shops.len() < 2 || sought.is_empty() {
        return Vec::new();
    }
    let shops = shops.iter().enumerate().map(|(at, shop)| SingleShop {
        name: shop.name.clone(),
        total: shops::alone(sought, shops, ShopAt(at)).map(|basket| basket.total),
    });
    shops.collect()
}

/// The price of the lists for one millilitre or piece of an item, at its best pack; as
/// price and size, because their quotient is seldom a decimal.
pub(super) fn best_rate(shops: &[Shop], line: &OrderLine) -> Option<(Money, f64)> {
    let measure = measure_of(line);
    shops
        .iter()
        .flat_map(|shop| &shop.packs)
        .filter(|pack| pack.item == line.item)
        .filter_map(|pack| Some((pack.price, measure.read(&line.item, pack.size).ok()?)))
        .min_by(|(price, size), (other_price, other_size)| {
            per_unit(*price, *size).total_cmp(&per_unit(*other_price, *other_size))
        })
}

fn per_unit(price: Money, size: f64) -> f64 {
    price.amount().to_f64().unwrap_or(f64::MAX) / size
}

/// The ruler of a line.
pub(super) fn measure_of(line: &OrderLine) -> Measure {
    match &line.what {
        OrderItem::Material(material) => Measure::Volume { density: material.density },
        OrderItem::Supply(_) => Measure::Pieces,
    }
}

/// An amount of a line on its ruler; nothing when it cannot be read, which no line made
/// here holds.
pub(super) fn reading(line: &OrderLine, amount: Amount) -> f64 {
    measure_of(line).read(&line.item, amount).unwrap_or_default()
}
