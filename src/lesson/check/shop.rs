use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::{At, Field, Written};
use super::super::limits;
use super::super::model::{Amount, Pack, Shop, Stocked};
use super::super::problem::{ProblemKind, Sold};
use super::super::raw;
use super::super::tree::NodeId;
use crate::quantity::{Currency, Dimension, Money};

/// The price list and its currency: `Some(None)` when there is none.
pub(super) fn shop(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    items: &Catalogue<Sold>,
) -> Option<Option<(Shop, Currency)>> {
    let At { node, value: raw } = match &raw.shop {
        Field::Absent => return Some(None),
        Field::Broken => return None,
        Field::Present(shop) => shop,
    };
    let name = desk.need_text(*node, "name", &raw.name);
    let currency = desk.need(*node, "currency", &raw.currency);
    let currency = currency.and_then(|written| desk.read(written));
    let packs = desk.need(*node, "packs", &raw.packs)?;
    let packs: Vec<Option<Pack>> = packs
        .value
        .0
        .iter()
        .map(|item| pack(desk, item.node, item.value.as_ref()?, currency, items))
        .collect();
    let packs: Option<Vec<Pack>> = packs.into_iter().collect();
    Some(Some((Shop { name: name?, packs: packs? }, currency?)))
}

fn pack(
    desk: Desk<'_>,
    node: NodeId,
    raw: &raw::Pack,
    currency: Option<Currency>,
    items: &Catalogue<Sold>,
) -> Option<Pack> {
    let item = desk.need(node, "item", &raw.item).and_then(|written| {
        let sold = items.find(desk, written)?;
        Some((written.text.clone(), sold))
    });
    let size = desk.need(node, "size", &raw.size).and_then(|written| {
        let amount = amount(desk, written)?;
        comparable(desk, written.node, item.as_ref(), amount)
    });
    let price = desk.need(node, "price", &raw.price);
    let price = price.and_then(|written| price_of(desk, written, currency));
    let (item, _) = item?;
    Some(Pack { item, size: size?, price: price? })
}

/// A price with no more decimals than the currency has.
fn price_of(desk: Desk<'_>, written: &Written<Money>, currency: Option<Currency>) -> Option<Money> {
    let price = desk.bounded(written, &limits::PRICE)?;
    let exponent = currency.and_then(|currency| Some((currency, currency.exponent()?)));
    if let Some((currency, decimals)) = exponent
        && price.amount().normalize().scale() > u32::from(decimals)
    {
        let kind = ProblemKind::PriceDecimals { currency: currency.code(), decimals };
        desk.fault(written.node, kind);
        return None;
    }
    Some(price)
}

/// An amount of more than nothing.
fn amount(desk: Desk<'_>, written: &Written<Amount>) -> Option<Amount> {
    let amount = desk.read(written)?;
    let fine = match &amount {
        Amount::Volume(volume) => desk.holds(written.node, volume, &limits::PACK_VOLUME),
        Amount::Mass(mass) => desk.holds(written.node, mass, &limits::PACK_MASS),
        Amount::Pieces(pieces) => desk.holds(written.node, pieces, &limits::PACK_PIECES),
    };
    fine.then_some(amount)
}

/// The amount, if an item of this sort is sold so.
fn comparable(
    desk: Desk<'_>,
    node: NodeId,
    item: Option<&(String, Sold)>,
    amount: Amount,
) -> Option<Amount> {
    let (item, sold) = item?;
    let found = match amount {
        Amount::Volume(_) => Dimension::Volume,
        Amount::Mass(_) => Dimension::Mass,
        Amount::Pieces(_) => Dimension::Pieces,
    };
    if (*sold == Sold::ByThePiece) == (found == Dimension::Pieces) {
        return Some(amount);
    }
    let kind = ProblemKind::NotComparable { item: item.clone(), sold: *sold, found };
    desk.fault(node, kind);
    None
}

/// What is in the cupboard; amounts of nothing are left out.
pub(super) fn stock(desk: Desk<'_>, raw: &raw::Lesson, items: &Catalogue<Sold>) -> Vec<Stocked> {
    let Field::Present(entries) = &raw.stock else { return Vec::new() };
    let lines = entries.0.iter().filter_map(|entry| {
        let sold = items.find_key(desk, entry);
        let written = entry.value.as_ref()?;
        if written.text.trim() == "0" {
            return None;
        }
        let amount = amount(desk, written)?;
        let item = entry.name.clone();
        let amount = comparable(desk, written.node, Some(&(item.clone(), sold?)), amount)?;
        Some(Stocked { item, amount })
    });
    lines.collect()
}
