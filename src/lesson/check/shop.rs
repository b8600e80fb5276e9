use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::{Entry, Field, Written};
use super::super::legible::Legible;
use super::super::limits;
use super::super::model::{Amount, Colour, Jar, Mix, Pack, Shop, Stocked};
use super::super::problem::{ProblemKind, Sold};
use super::super::raw;
use super::super::tree::NodeId;
use super::{distinct, money, name_twice};
use crate::quantity::{Currency, Date, Dimension, Money};
use std::num::NonZeroU32;
use std::sync::Arc;

/// The price lists and their one currency, which is known also where a list is broken.
pub(super) fn shops(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    items: &Catalogue<Sold>,
) -> (Option<Vec<Shop>>, Option<Currency>) {
    let entries = match &raw.shops {
        Field::Absent => return (Some(Vec::new()), None),
        Field::Broken => return (None, None),
        Field::Present(entries) => &entries.0,
    };
    if let Some(extra) = entries.get(limits::SHOPS) {
        desk.fault_of_name(extra.node, ProblemKind::TooManyShops, None);
    }
    let mut first: Option<(NodeId, Currency)> = None;
    let mut shops = Vec::new();
    for entry in entries {
        let Some(raw) = &entry.value else {
            shops.push(None);
            continue;
        };
        let written = desk.need(entry.node, "currency", &raw.currency);
        let currency = written.and_then(|written| Some((written.node, desk.read(written)?)));
        match (first, currency) {
            (Some((other, known)), Some((node, currency))) if currency != known => {
                desk.fault_with(node, ProblemKind::TwoCurrencies, other);
            }
            (None, Some(_)) => first = currency,
            _ => {}
        }
        shops.push(shop(desk, entry, raw, currency.map(|(_, currency)| currency), items));
    }
    (shops.into_iter().collect(), first.map(|(_, currency)| currency))
}

fn shop(
    desk: Desk<'_>,
    entry: &Entry<raw::Shop>,
    raw: &raw::Shop,
    currency: Option<Currency>,
    items: &Catalogue<Sold>,
) -> Option<Shop> {
    let money = |field: &Field<Written<Money>>| match field {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(written) => money::amount(desk, written, currency).map(Some),
    };
    let (delivery, free_from, least_order) =
        (money(&raw.delivery), money(&raw.free_from), money(&raw.least_order));
    let packs = desk.need(entry.node, "packs", &raw.packs)?;
    let packs: Vec<Option<Pack>> = packs
        .value
        .0
        .iter()
        .map(|item| pack(desk, item.node, item.value.as_ref()?, currency, items))
        .collect();
    let packs: Option<Vec<Pack>> = packs.into_iter().collect();
    Some(Shop {
        name: entry.name.clone(),
        delivery: delivery?.unwrap_or(Money::ZERO),
        free_from: free_from?,
        least_order: least_order?,
        packs: packs?,
    })
}

/// Items that are not bought in these shops.
pub(super) fn elsewhere(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    items: &Catalogue<Sold>,
) -> Option<Vec<String>> {
    let list = match &raw.elsewhere {
        Field::Absent => return Some(Vec::new()),
        Field::Broken => return None,
        Field::Present(list) => list,
    };
    let found = distinct(desk, list, name_twice, |written| {
        items.find(desk, written).map(|_| written.text.trim().to_owned())
    });
    Some(found.into_iter().map(|(_, item)| item).collect())
}

/// Mixed paint that is left from before; its age counts from the day of the lesson.
pub(super) fn jars(
    desk: Desk<'_>,
    root: NodeId,
    raw: &raw::Lesson,
    colours: &Catalogue<Arc<Colour>>,
    mixes: &Catalogue<Arc<Mix>>,
) -> Option<Vec<Jar>> {
    let list = match &raw.jars {
        Field::Absent => return Some(Vec::new()),
        Field::Broken => return None,
        Field::Present(list) => &list.0,
    };
    let day = desk.need(root, "date", &raw.date).and_then(|written| Date::read(&written.text).ok());
    let jars: Vec<Option<Jar>> = list
        .iter()
        .map(|item| jar(desk, item.node, item.value.as_ref()?, day, colours, mixes))
        .collect();
    jars.into_iter().collect()
}

fn jar(
    desk: Desk<'_>,
    node: NodeId,
    raw: &raw::Jar,
    day: Option<Date>,
    colours: &Catalogue<Arc<Colour>>,
    mixes: &Catalogue<Arc<Mix>>,
) -> Option<Jar> {
    let colour = desk.need(node, "colour", &raw.colour);
    let colour = colour.and_then(|written| Some(colours.find(desk, written)?.name.clone()));
    let mix = desk.need(node, "mix", &raw.mix);
    let mix = mix.and_then(|written| Some(mixes.find(desk, written)?.name.clone()));
    let amount = desk.need(node, "amount", &raw.amount).and_then(|written| {
        let amount = amount(desk, written)?;
        let item = (colour.clone().unwrap_or_default(), Sold::ByVolumeOrWeight);
        comparable(desk, written.node, Some(&item), amount)
    });
    let mixed = desk.need(node, "mixed", &raw.mixed).and_then(|written| {
        let mixed = desk.read(written)?;
        if day.is_some_and(|day| mixed > day) {
            desk.fault(written.node, ProblemKind::JarFromTheFuture);
            return None;
        }
        Some(mixed)
    });
    let keeps = match &raw.keeps {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(written) => desk.bounded(written, &limits::DAYS).map(|days| Some(days.0)),
    };
    Some(Jar { colour: colour?, mix: mix?, amount: amount?, mixed: mixed?, keeps: keeps? })
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
    let price = price.and_then(|written| money::amount(desk, written, currency));
    let one = NonZeroU32::MIN;
    let from = desk.bounded_or(&raw.from, &limits::PACKS, one.get());
    let only_by = desk.bounded_or(&raw.only_by, &limits::PACKS, one.get());
    let (item, _) = item?;
    Some(Pack {
        item,
        size: size?,
        price: price?,
        from: NonZeroU32::new(from?).unwrap_or(one),
        only_by: NonZeroU32::new(only_by?).unwrap_or(one),
    })
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
