//! What to buy: needs less stock, in packs.

use super::buy::{Market, Need, Offer, Proof, ShopAt, Terms};
use super::impossible::Counted;
use super::measure::Measure;
use super::{
    Impossible, MaterialNeed, Order, OrderItem, OrderLine, PackCount, Purchase, SupplyNeed,
};
use crate::lesson::{Amount, Lesson, MaterialKind, Pack, Shop, Stocked};
use crate::quantity::Money;
use crate::quantity::units::in_ml;
use std::num::NonZeroU32;
use std::sync::Arc;

/// Stock that falls short by less than this part of the need is enough; it is the noise
/// of adding up, and no reason to buy a bottle.
const NOISE: f64 = 1e-9;

/// One line a material, then one a supply.
pub(super) fn order(
    lesson: &Lesson,
    materials: &[MaterialNeed],
    supplies: &[SupplyNeed],
) -> Result<Order, Impossible> {
    let materials = materials.iter().map(Wanted::material);
    let supplies = supplies.iter().map(Wanted::supply);
    let mut order = Order { lines: Vec::new(), total: Money::ZERO, unproven: Vec::new() };
    for wanted in materials.chain(supplies) {
        let (line, proof) = wanted.line(&lesson.stock, lesson.shop.as_ref())?;
        if proof != Proof::LeastCost {
            order.unproven.push(line.item.clone());
        }
        if let Purchase::Packs { cost, .. } = &line.purchase {
            order.total += *cost;
        }
        order.lines.push(line);
    }
    Ok(order)
}

/// An item with the ruler it is measured by.
struct Wanted<'a> {
    item: &'a str,
    what: OrderItem,
    measure: Measure,
    needed: f64,
    /// Part of `needed`.
    reserve: f64,
    from_tap: Tap,
}

/// Whether an item comes from the tap when no shop sells it.
#[derive(PartialEq, Eq)]
enum Tap {
    Yes,
    No,
}

impl<'a> Wanted<'a> {
    fn material(need: &'a MaterialNeed) -> Self {
        Self {
            item: &need.material.name,
            what: OrderItem::Material(Arc::clone(&need.material)),
            measure: Measure::Volume { density: need.material.density },
            needed: in_ml(need.volume),
            reserve: in_ml(need.reserve),
            from_tap: if need.material.kind == MaterialKind::Water { Tap::Yes } else { Tap::No },
        }
    }

    fn supply(need: &'a SupplyNeed) -> Self {
        Self {
            item: &need.item,
            what: OrderItem::Supply(need.life),
            measure: Measure::Pieces,
            needed: f64::from(need.pieces),
            reserve: 0.0,
            from_tap: Tap::No,
        }
    }

    fn line(
        self,
        stock: &[Stocked],
        shop: Option<&Shop>,
    ) -> Result<(OrderLine, Proof), Impossible> {
        let in_stock = self.in_stock(stock)?;
        let missing = self.needed - in_stock;
        let to_buy = if missing <= self.needed * NOISE { 0.0 } else { missing };
        let (purchase, proof) = self.purchase(to_buy, shop)?;
        let line = OrderLine {
            item: self.item.to_owned(),
            what: self.what,
            needed: self.measure.amount(self.needed),
            reserve: self.measure.amount(self.reserve),
            in_stock: self.measure.amount(in_stock),
            to_buy: self.measure.amount(to_buy),
            purchase,
        };
        Ok((line, proof))
    }

    fn in_stock(&self, stock: &[Stocked]) -> Result<f64, Impossible> {
        stock
            .iter()
            .filter(|stocked| stocked.item == self.item)
            .try_fold(0.0, |sum, stocked| Ok(sum + self.measure.read(self.item, stocked.amount)?))
    }

    fn purchase(&self, to_buy: f64, shop: Option<&Shop>) -> Result<(Purchase, Proof), Impossible> {
        let packs: Vec<&Pack> = shop
            .into_iter()
            .flat_map(|shop| &shop.packs)
            .filter(|pack| pack.item == self.item)
            .collect();
        if to_buy <= 0.0 || (packs.is_empty() && self.from_tap == Tap::Yes) {
            return Ok((Purchase::Nothing, Proof::LeastCost));
        }
        if packs.is_empty() {
            return Ok((Purchase::NoPrice, Proof::LeastCost));
        }
        let offers = packs
            .iter()
            .map(|pack| {
                let size = self.measure.read(self.item, pack.size)?;
                let (price, in_multiples_of) = (pack.price, NonZeroU32::MIN);
                Ok(Offer { shop: ShopAt(0), size, price, in_multiples_of, from: 1 })
            })
            .collect::<Result<Vec<_>, Impossible>>()?;
        let market = Market {
            shops: vec![Terms::default()],
            items: vec![Need { amount: to_buy, offers: offers.clone() }],
        };
        // A checked lesson has packs of some size at a price, and this shop has no terms, so
        // only numbers can be in the way.
        let basket = market.least_cost().map_err(|_| Impossible::TooMany {
            what: Counted::Packs { item: self.item.to_owned() },
        })?;
        let counts: Vec<u32> = basket.counts.into_iter().flatten().collect();
        let bought: f64 =
            counts.iter().zip(&offers).map(|(count, offer)| f64::from(*count) * offer.size).sum();
        let mut bags: Vec<(f64, PackCount)> = packs
            .iter()
            .zip(&offers)
            .zip(&counts)
            .filter(|(_, count)| **count > 0)
            .map(|((pack, offer), count)| {
                (offer.size, PackCount { size: pack.size, price: pack.price, count: *count })
            })
            .collect();
        // Large packs first, as they are carried to the till.
        bags.sort_by(|(one, _), (other, _)| other.total_cmp(one));
        let packs: Vec<PackCount> = bags.into_iter().map(|(_, bag)| bag).collect();
        let cost = packs.iter().map(|pack| pack.price * pack.count).sum();
        let left_over = self.measure.amount((bought - to_buy).max(0.0));
        Ok((Purchase::Packs { packs, cost, left_over }, basket.proof))
    }
}

/// The price of the list for one millilitre or piece of an item, at its best pack; as
/// price and size, because their quotient is seldom a decimal.
pub(super) fn best_rate(shop: &Shop, line: &OrderLine) -> Option<(Money, f64)> {
    let measure = measure_of(line);
    shop.packs
        .iter()
        .filter(|pack| pack.item == line.item)
        .filter_map(|pack| Some((pack.price, measure.read(&line.item, pack.size).ok()?)))
        .min_by(|(price, size), (other_price, other_size)| {
            per_unit(*price, *size).total_cmp(&per_unit(*other_price, *other_size))
        })
}

fn per_unit(price: Money, size: f64) -> f64 {
    use rust_decimal::prelude::ToPrimitive;
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
