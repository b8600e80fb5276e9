//! The least cost of every item, and of all of them, in a set of shops.

use super::coinage::Coins;
use super::cover::{Ask, Choice, cover};
use super::table::{Item, Pack, Shops, Table};
use super::work::Work;
use std::collections::BTreeMap;
use std::rc::Rc;

/// The best choice for an item in a set of shops.
#[derive(Debug)]
pub(super) struct Pick {
    pub choice: Choice,
    /// No choice costs less; below the cost only where the limit of work was reached.
    pub floor: Coins,
    uses: Shops,
}

/// The best choices for all items, each by itself.
#[derive(Debug)]
pub(super) struct Total {
    pub picks: Vec<Rc<Pick>>,
    /// Of all goods.
    pub floor: Coins,
    /// A lower bound of what is left over by choices that cost no more than the floor.
    pub left: f64,
    /// Shop by shop.
    pub goods: Vec<Coins>,
    pub uses: Shops,
}

impl Total {
    /// Whether every pick is known to be the cheapest.
    pub(super) fn is_proven(&self) -> bool {
        self.picks.iter().all(|pick| pick.floor == pick.choice.cost)
    }
}

/// Remembers what was worked out. A pick for a set is that of every smaller set which holds
/// all shops that the pick uses, so most sets cost nothing.
pub(super) struct Sets<'t> {
    table: &'t Table,
    picks: Vec<Vec<(Shops, Rc<Pick>)>>,
    totals: BTreeMap<Shops, Option<Rc<Total>>>,
}

impl<'t> Sets<'t> {
    pub(super) fn new(table: &'t Table) -> Self {
        Self { table, picks: vec![Vec::new(); table.items.len()], totals: BTreeMap::new() }
    }

    /// `None` when some item is not sold in these shops.
    pub(super) fn total(&mut self, allowed: Shops, work: &mut Work) -> Option<Rc<Total>> {
        if let Some(known) = self.totals.get(&allowed) {
            return known.clone();
        }
        let table = self.table;
        let picks: Option<Vec<Rc<Pick>>> = table
            .items
            .iter()
            .zip(&mut self.picks)
            .map(|(item, known)| pick(item, known, allowed.and(item.sellers), work))
            .collect();
        let total = picks.map(|picks| Rc::new(total(table, picks)));
        self.totals.insert(allowed, total.clone());
        total
    }
}

fn pick(
    item: &Item,
    known: &mut Vec<(Shops, Rc<Pick>)>,
    allowed: Shops,
    work: &mut Work,
) -> Option<Rc<Pick>> {
    let same = |(set, pick): &&(Shops, Rc<Pick>)| allowed.within(*set) && pick.uses.within(allowed);
    if let Some((_, pick)) = known.iter().find(same) {
        return Some(Rc::clone(pick));
    }
    let listing = cover(item, Ask { allowed, targets: &[], limit: None }, work)?;
    let choice = listing.choices.into_iter().next()?;
    let floor = listing.unlisted.map_or(choice.cost, |unlisted| unlisted.min(choice.cost));
    let uses = packs(item, &choice).fold(Shops::default(), |uses, (pack, _)| uses.with(pack.shop));
    let pick = Rc::new(Pick { choice, floor, uses });
    known.push((allowed, Rc::clone(&pick)));
    Some(pick)
}

fn packs<'a>(item: &'a Item, choice: &'a Choice) -> impl Iterator<Item = (&'a Pack, u32)> {
    choice.counts.iter().filter_map(|(place, count)| Some((item.packs.get(*place)?, *count)))
}

fn total(table: &Table, picks: Vec<Rc<Pick>>) -> Total {
    let mut goods = vec![0; table.shops.len()];
    for (item, pick) in table.items.iter().zip(&picks) {
        for (pack, count) in packs(item, &pick.choice) {
            if let Some(sum) = goods.get_mut(pack.shop) {
                *sum += pack.cost(count);
            }
        }
    }
    let uses = picks.iter().fold(Shops::default(), |uses, pick| uses.or(pick.uses));
    let floor = picks.iter().map(|pick| pick.floor).sum();
    let mut total = Total { floor, left: 0.0, goods, uses, picks };
    if total.is_proven() {
        total.left = total.picks.iter().map(|pick| pick.choice.left).sum();
    }
    total
}
