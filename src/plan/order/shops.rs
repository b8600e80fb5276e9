//! The price lists of all shops as a market, and what is bought in it.

use super::wanted::Wanted;
use crate::lesson::{Pack, Shop};
use crate::plan::buy::{Basket, Effort, Market, Need, Offer, Refusal, ShopAt, Terms};
use crate::plan::impossible::Counted;
use crate::plan::{Impossible, PackCount};
use std::cmp::Reverse;

/// What is to be bought of one item, and who sells it.
pub(super) struct Sought<'a> {
    pub wanted: &'a Wanted<'a>,
    pub to_buy: f64,
    /// The offers, and the packs that they are for.
    offers: Vec<Offer>,
    packs: Vec<(usize, &'a Pack)>,
}

impl<'a> Sought<'a> {
    /// Everything that the shops have of an item.
    pub(super) fn new(
        wanted: &'a Wanted<'a>,
        to_buy: f64,
        shops: &'a [Shop],
    ) -> Result<Self, Impossible> {
        let mut sought = Self { wanted, to_buy, offers: Vec::new(), packs: Vec::new() };
        for (at, shop) in shops.iter().enumerate() {
            let shelves = shop.packs.iter().enumerate();
            for (shelf, pack) in shelves.filter(|(_, pack)| pack.item == wanted.item) {
                sought.offers.push(Offer {
                    shop: ShopAt(at),
                    size: wanted.measure.read(wanted.item, pack.size)?,
                    price: pack.price,
                    in_multiples_of: pack.only_by,
                    from: pack.from.get(),
                });
                sought.packs.push((shelf, pack));
            }
        }
        Ok(sought)
    }

    pub(super) fn is_sold(&self) -> bool {
        !self.offers.is_empty()
    }

    /// The packs of a basket, shop by shop, large ones first as they are carried to the till.
    pub(super) fn packs(&self, counts: &[u32]) -> Vec<PackCount> {
        let mut bought: Vec<(&Offer, (usize, &Pack), u32)> = self
            .offers
            .iter()
            .zip(&self.packs)
            .zip(counts)
            .filter(|(_, count)| **count > 0)
            .map(|((offer, pack), count)| (offer, *pack, *count))
            .collect();
        bought.sort_by(|(one, ..), (other, ..)| {
            one.shop.cmp(&other.shop).then(other.size.total_cmp(&one.size))
        });
        let packs = bought.into_iter().map(|(offer, (shelf, pack), count)| PackCount {
            shop: offer.shop.0,
            shelf,
            size: pack.size,
            price: pack.price,
            count,
        });
        packs.collect()
    }
}

/// The least-cost basket of all that is sought.
pub(super) fn least_cost(
    sought: &[Sought],
    shops: &[Shop],
    effort: Effort,
) -> Result<Basket, Impossible> {
    let market = market(sought, shops, |_| true);
    market.least_cost_with(effort).map_err(|refusal| refused(refusal, sought, shops))
}

/// The least cost if everything came from one shop; `None` where it does not sell it all or
/// does not bring so little.
pub(super) fn alone(sought: &[Sought], shops: &[Shop], shop: ShopAt) -> Option<Basket> {
    market(sought, shops, |at| at == shop).least_cost().ok()
}

fn market(sought: &[Sought], shops: &[Shop], open: impl Fn(ShopAt) -> bool) -> Market {
    let terms = |shop: &Shop| Terms {
        delivery: shop.delivery,
        free_from: shop.free_from,
        minimum: shop.least_order,
    };
    let need = |sought: &Sought| Need {
        amount: sought.to_buy,
        offers: sought.offers.iter().filter(|offer| open(offer.shop)).copied().collect(),
    };
    Market { shops: shops.iter().map(terms).collect(), items: sought.iter().map(need).collect() }
}

/// What is in the way, by its name. A checked lesson has packs of some size at a price, so
/// what is left are sums of shops and counts that run over.
fn refused(refusal: Refusal, sought: &[Sought], shops: &[Shop]) -> Impossible {
    let item =
        |at: usize| sought.get(at).map(|sought| sought.wanted.item.to_owned()).unwrap_or_default();
    match refusal {
        Refusal::MinimumOutOfReach { item: at, shop } => {
            let shop = shops.get(shop.0);
            Impossible::LeastOrderOutOfReach {
                item: item(at),
                shop: shop.map(|shop| shop.name.clone()).unwrap_or_default(),
            }
        }
        Refusal::NoAmount { item: at }
        | Refusal::NoOffer { item: at, .. }
        | Refusal::SoldNowhere { item: at }
        | Refusal::TooManyPacks { item: at } => {
            Impossible::TooMany { what: Counted::Packs { item: item(at) } }
        }
        Refusal::NoTerms { .. } | Refusal::TooManyShops | Refusal::TooDear => {
            // Any item will do where the sum of all runs over: the dearest need is named.
            let most = sought
                .iter()
                .enumerate()
                .max_by_key(|(at, sought)| (sought.to_buy.round() as u64, Reverse(*at)));
            let at = most.map_or(0, |(at, _)| at);
            Impossible::TooMany { what: Counted::Packs { item: item(at) } }
        }
    }
}
