//! What is in the cupboard, from one order to the next.

use super::wanted::Wanted;
use crate::lesson::Stocked;
use crate::plan::Impossible;
use std::collections::BTreeMap;

/// The stock of a lesson, and what earlier orders of a course left of it.
#[derive(Debug, Clone)]
pub(in crate::plan) struct Cupboard<'a> {
    counted: &'a [Stocked],
    /// On the ruler of each item; these are no longer as counted.
    touched: BTreeMap<String, f64>,
}

impl<'a> Cupboard<'a> {
    pub(in crate::plan) fn new(counted: &'a [Stocked]) -> Self {
        Self { counted, touched: BTreeMap::new() }
    }

    /// What there is of an item.
    pub(super) fn holds(&self, wanted: &Wanted) -> Result<f64, Impossible> {
        if let Some(left) = self.touched.get(wanted.item) {
            return Ok(*left);
        }
        let counted = self.counted.iter().filter(|stocked| stocked.item == wanted.item);
        counted.into_iter().try_fold(0.0, |sum, stocked| {
            Ok(sum + wanted.measure.read(wanted.item, stocked.amount)?)
        })
    }

    /// Leaves `left` of an item.
    pub(super) fn leave(&mut self, item: &str, left: f64) {
        self.touched.insert(item.to_owned(), left.max(0.0));
    }
}
