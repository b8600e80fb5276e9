//! What comes out.

use super::cart::Cart;
use super::coinage::Coins;
use super::table::Table;
use super::{Market, Offer, ShopAt};
use crate::quantity::Money;

/// What to buy.
#[derive(Debug, Clone, PartialEq)]
pub struct Basket {
    /// Packs of every offer, item by item, in the order of the market.
    pub counts: Vec<Vec<u32>>,
    /// One a shop; `None` where nothing is bought.
    pub bills: Vec<Option<Bill>>,
    /// Goods and deliveries.
    pub total: Money,
    /// What will be left of every item, in its unit.
    pub left_over: Vec<f64>,
    pub proof: Proof,
}

/// What one shop is paid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bill {
    pub goods: Money,
    /// Nothing when the goods reach the free sum.
    pub delivery: Money,
}

/// What is known of cheaper baskets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Proof {
    /// There is none.
    LeastCost,
    /// The limit of work was reached: no basket is cheaper than this one by more than that.
    Within(Money),
}

/// Why there is no basket. Items and offers are counted as in the market, from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refusal {
    /// The amount is not a number, or endless.
    NoAmount { item: usize },
    /// The size of the pack is not a positive number, its price is negative, or its shop is
    /// not in the market.
    NoOffer { item: usize, offer: usize },
    /// A charge or a sum of the shop is negative.
    NoTerms { shop: ShopAt },
    /// More shops than can be told apart (64).
    TooManyShops,
    /// No shop offers the item.
    SoldNowhere { item: usize },
    /// By any one offer it would take more than a million packs.
    TooManyPacks { item: usize },
    /// Every shop that sells the item asks for a minimum order that its goods for these
    /// needs cannot reach; this is the first of them.
    MinimumOutOfReach { item: usize, shop: ShopAt },
    /// Prices that add up to more than can be counted in whole coins (10^11).
    TooDear,
}

pub(super) fn basket(market: &Market, table: &Table, found: &super::search::Found) -> Basket {
    let counts = spread(market, table, &found.cart);
    let left_over = market
        .items
        .iter()
        .zip(&counts)
        .map(|(item, counts)| {
            let size = |(offer, count): (&Offer, &u32)| offer.size * f64::from(*count);
            let bought: f64 = item.offers.iter().zip(counts).map(size).sum();
            (bought - item.amount.max(0.0)).max(0.0)
        })
        .collect();
    let money = |coins: Coins| table.coinage.money(coins);
    let goods = found.cart.goods(table);
    let used = found.cart.used(table);
    let bills: Vec<Option<Bill>> = goods
        .iter()
        .zip(&table.shops)
        .enumerate()
        .map(|(at, (goods, shop))| {
            let bill = Bill { goods: money(*goods), delivery: money(shop.charge(*goods)) };
            used.has(at).then_some(bill)
        })
        .collect();
    let total = bills.iter().flatten().map(|bill| bill.goods + bill.delivery).sum();
    let gap = found.total - found.floor;
    let proof = if gap > 0 { Proof::Within(money(gap)) } else { Proof::LeastCost };
    Basket { counts, bills, total, left_over, proof }
}

/// The counts of a cart at their places in the market.
fn spread(market: &Market, table: &Table, cart: &Cart) -> Vec<Vec<u32>> {
    let mut counts: Vec<Vec<u32>> =
        market.items.iter().map(|item| vec![0; item.offers.len()]).collect();
    for (item, bought) in table.items.iter().zip(&cart.counts) {
        let Some(row) = counts.get_mut(item.at) else { continue };
        for (pack, count) in item.packs.iter().zip(bought) {
            if let Some(cell) = row.get_mut(pack.at) {
                *cell = *count;
            }
        }
    }
    counts
}
