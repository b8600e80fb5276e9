//! What the lessons of a course share: one cupboard and one street of shops.

use super::order::Street;
use crate::lesson::{Lesson, Pack, Shop, Stocked};

/// The shops, the stock and the items bought elsewhere of several lessons as one.
pub(super) struct Household {
    shops: Vec<Shop>,
    elsewhere: Vec<String>,
    pub(super) stock: Vec<Stocked>,
}

impl Household {
    /// The first lesson's word stands; later ones add shops, packs and items that it does not
    /// have.
    pub(super) fn of<'a>(lessons: impl Iterator<Item = &'a Lesson>) -> Self {
        let mut all = Self { shops: Vec::new(), elsewhere: Vec::new(), stock: Vec::new() };
        for lesson in lessons {
            for shop in &lesson.shops {
                all.add_shop(shop);
            }
            for item in &lesson.elsewhere {
                if !all.elsewhere.contains(item) {
                    all.elsewhere.push(item.clone());
                }
            }
            // A lesson may count an item in several lines, so they are added together.
            let counted = all.stock.len();
            for line in &lesson.stock {
                let earlier = all.stock.get(..counted).unwrap_or_default();
                if !earlier.iter().any(|known| known.item == line.item) {
                    all.stock.push(line.clone());
                }
            }
        }
        all
    }

    fn add_shop(&mut self, new: &Shop) {
        let Some(shop) = self.shops.iter_mut().find(|known| known.name == new.name) else {
            self.shops.push(new.clone());
            return;
        };
        for pack in &new.packs {
            if !shop.packs.iter().any(|known| is_same(known, pack)) {
                shop.packs.push(pack.clone());
            }
        }
    }

    pub(super) fn street(&self) -> Street<'_> {
        Street { shops: &self.shops, elsewhere: &self.elsewhere }
    }
}

/// Whether two lines of price lists are about the same pack; the price is the first's.
fn is_same(one: &Pack, other: &Pack) -> bool {
    one.item == other.item && one.size == other.size && one.from == other.from
}
