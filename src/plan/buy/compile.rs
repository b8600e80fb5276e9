//! Checks a market and turns it into a table.

use super::coinage::{Coinage, Coins, MOST};
use super::table::{Item, Pack, Shop, Shops, Table};
use super::work::{PACKS, SHORT_OF};
use super::{Market, Need, Offer, Refusal, ShopAt};
use crate::quantity::Money;

pub(super) fn compile(market: &Market) -> Result<Table, Refusal> {
    check(market)?;
    let coinage = coinage(market);
    let shops = market
        .shops
        .iter()
        .map(|terms| {
            Ok(Shop {
                delivery: coinage.coins(terms.delivery).ok_or(Refusal::TooDear)?,
                free_from: terms.free_from.and_then(|sum| coinage.coins_up(sum)),
                // A minimum beyond counting is beyond reach.
                minimum: terms.minimum.map_or(0, |sum| coinage.coins_up(sum).unwrap_or(Coins::MAX)),
            })
        })
        .collect::<Result<Vec<_>, _>>()?;
    let mut items = market
        .items
        .iter()
        .enumerate()
        .filter(|(_, need)| need.amount > 0.0)
        .map(|(at, need)| item(at, need, &coinage))
        .collect::<Result<Vec<_>, _>>()?;
    close_shops(&shops, &mut items)?;
    let dearest = items.iter().map(sure_cost).fold(0, Coins::saturating_add);
    if dearest > MOST {
        return Err(Refusal::TooDear);
    }
    Ok(Table { coinage, shops, items })
}

fn check(market: &Market) -> Result<(), Refusal> {
    if market.shops.len() > Shops::MOST {
        return Err(Refusal::TooManyShops);
    }
    for (at, terms) in market.shops.iter().enumerate() {
        let sums = [Some(terms.delivery), terms.free_from, terms.minimum];
        if sums.into_iter().flatten().any(|sum| sum < Money::ZERO) {
            return Err(Refusal::NoTerms { shop: ShopAt(at) });
        }
    }
    for (item, need) in market.items.iter().enumerate() {
        if !need.amount.is_finite() {
            return Err(Refusal::NoAmount { item });
        }
        let makes_sense = |offer: &Offer| {
            offer.size > 0.0
                && offer.size.is_finite()
                && offer.price >= Money::ZERO
                && offer.shop.0 < market.shops.len()
        };
        if let Some(offer) = need.offers.iter().position(|offer| !makes_sense(offer)) {
            return Err(Refusal::NoOffer { item, offer });
        }
    }
    Ok(())
}

fn coinage(market: &Market) -> Coinage {
    let offers = market.items.iter().flat_map(|item| &item.offers).map(|offer| offer.price);
    let charges = market.shops.iter().map(|terms| terms.delivery);
    let prices: Vec<Money> = offers.chain(charges).collect();
    let sums = market.shops.iter().flat_map(|terms| [terms.free_from, terms.minimum]);
    Coinage::of(&prices, &sums.flatten().collect::<Vec<_>>())
}

fn item(at: usize, need: &Need, coinage: &Coinage) -> Result<Item, Refusal> {
    if need.offers.is_empty() {
        return Err(Refusal::SoldNowhere { item: at });
    }
    let mut packs = Vec::new();
    for (place, offer) in need.offers.iter().enumerate() {
        let step = offer.in_multiples_of.get();
        let Some(first) = offer.from.max(1).checked_next_multiple_of(step) else { continue };
        let price = coinage.coins(offer.price).ok_or(Refusal::TooDear)?;
        let size = offer.size / need.amount;
        let pack = Pack { at: place, shop: offer.shop.0, size, price, step, first };
        if enough(&pack).is_some() {
            packs.push(pack);
        }
    }
    if packs.is_empty() {
        return Err(Refusal::TooManyPacks { item: at });
    }
    let sellers = sellers(&packs);
    Ok(Item { at, packs, sellers })
}

/// The count that meets the need with this pack alone.
fn enough(pack: &Pack) -> Option<u32> {
    pack.at_least((1.0 - SHORT_OF) / pack.size)
}

fn sellers(packs: &[Pack]) -> Shops {
    packs.iter().fold(Shops::default(), |shops, pack| shops.with(pack.shop))
}

/// What one pack alone costs at most, an upper bound of what an item will.
fn sure_cost(item: &Item) -> Coins {
    let alone = |pack: &Pack| enough(pack).map(|count| pack.cost(count));
    item.packs.iter().filter_map(alone).max().unwrap_or(0)
}

/// Takes away the packs of shops whose minimum no amount of buying reaches. In every other
/// shop one offer alone can reach it, so whatever shops are chosen there is a basket.
fn close_shops(shops: &[Shop], items: &mut [Item]) -> Result<(), Refusal> {
    let most = |pack: &Pack| pack.cost(PACKS / pack.step * pack.step);
    let mut open = Shops::default();
    for (at, shop) in shops.iter().enumerate() {
        let packs = items.iter().flat_map(|item| &item.packs).filter(|pack| pack.shop == at);
        if packs.map(most).max().is_some_and(|reach| reach >= shop.minimum) {
            open = open.with(at);
        }
    }
    for item in items {
        let Some(shop) = item.packs.first().map(|pack| pack.shop) else { continue };
        item.packs.retain(|pack| open.has(pack.shop));
        if item.packs.is_empty() {
            return Err(Refusal::MinimumOutOfReach { item: item.at, shop: ShopAt(shop) });
        }
        item.sellers = sellers(&item.packs);
    }
    Ok(())
}
