//! What is needed besides paint, by rule.

use super::class::canvases_in_class;
use super::count::whole;
use super::impossible::Counted;
use super::{Batch, Heads, Impossible, SupplyNeed};
use crate::lesson::{Lesson, Life, Per, SupplyRule};

/// One line an item: rules for the same item add up before they are rounded up, so that
/// half a piece here and half a piece there are one piece. An item that one rule uses up
/// is used up.
pub(super) fn supplies(
    lesson: &Lesson,
    mixing: &[Batch],
    heads: Heads,
) -> Result<Vec<SupplyNeed>, Impossible> {
    let bases = Bases::of(lesson, mixing, heads)?;
    let mut sums: Vec<(&SupplyRule, f64, Life)> = Vec::new();
    for rule in &lesson.supplies {
        let pieces = rule.count * f64::from(bases.count(rule.per));
        match sums.iter_mut().find(|(first, _, _)| first.item == rule.item) {
            Some((_, sum, life)) => {
                *sum += pieces;
                if rule.life == Life::UsedUp {
                    *life = Life::UsedUp;
                }
            }
            None => sums.push((rule, pieces, rule.life)),
        }
    }
    sums.into_iter()
        .map(|(rule, sum, life)| {
            let item = rule.item.clone();
            let too_many =
                || Impossible::TooMany { what: Counted::Pieces { item: rule.item.clone() } };
            let pieces = whole(all_of(sum)).ok_or_else(too_many)?;
            Ok(SupplyNeed { item, pieces, life })
        })
        .collect()
}

/// Rounded up, where a hair above a whole number is noise of the arithmetic (ten times
/// a tenth is one).
fn all_of(pieces: f64) -> f64 {
    (pieces - 1e-9 * pieces.max(1.0)).ceil().max(0.0)
}

/// What supplies are counted by.
struct Bases {
    students: u32,
    canvases: u32,
    cups: u32,
    tables: u32,
}

impl Bases {
    fn of(lesson: &Lesson, mixing: &[Batch], heads: Heads) -> Result<Self, Impossible> {
        let too_many = || Impossible::TooMany { what: Counted::Cups };
        let canvases = lesson.canvases.iter().try_fold(0_u32, |sum, canvas| {
            sum.checked_add(canvases_in_class(canvas, heads)?).ok_or_else(too_many)
        })?;
        let cups = mixing
            .iter()
            .try_fold(0_u32, |sum, batch| sum.checked_add(batch.cups))
            .ok_or_else(too_many)?;
        Ok(Self { students: heads.students, canvases, cups, tables: heads.tables })
    }

    fn count(&self, per: Per) -> u32 {
        match per {
            Per::Student => self.students,
            Per::Canvas => self.canvases,
            Per::ColourCup => self.cups,
            Per::Table => self.tables,
            Per::Class => 1,
        }
    }
}
