//! What is washed up, with how much water, and what becomes of the paint that is left.

use crate::lesson::{Lesson, Life};
use crate::plan::{Batch, Leftover, SupplyNeed};
use crate::quantity::Volume;

/// The washing-up of a class.
#[derive(Debug, Clone)]
pub struct WashingPlan {
    /// What comes back and needs water, in the order of the supplies.
    pub washed: Vec<Washed>,
    /// Batches after which the jug is washed.
    pub batches: u32,
    /// Water for the jug.
    pub jug_water: Volume,
    /// Water for the jug and all pieces.
    pub water: Volume,
    /// What one bucket is filled with.
    pub bucket: Volume,
    /// Buckets that hold the used water until it has settled.
    pub buckets: u32,
    /// Cups that are scraped out.
    pub cups: u32,
    /// Paint that stays in them and on their sticks; it dries and is thrown away.
    pub left_in_cups: Volume,
    /// Mixed paint that is left in the jugs; it goes into jars and keeps.
    pub left_in_jugs: Volume,
}

/// Pieces of one supply that are washed.
#[derive(Debug, Clone)]
pub struct Washed {
    pub item: String,
    pub pieces: u32,
    /// For all pieces.
    pub water: Volume,
}

/// Only supplies that come back are washed, and only batches of which something was mixed.
pub(super) fn washing(
    lesson: &Lesson,
    supplies: &[SupplyNeed],
    mixing: &[Batch],
    leftovers: &[Leftover],
) -> WashingPlan {
    let rule = &lesson.washing;
    let washed: Vec<Washed> = supplies
        .iter()
        .filter(|need| need.life == Life::Washable)
        .filter_map(|need| {
            let (_, each) = rule.each_piece.iter().find(|(item, _)| *item == need.item)?;
            let water = *each * f64::from(need.pieces);
            let item = need.item.clone();
            (water > Volume::default()).then_some(Washed { item, pieces: need.pieces, water })
        })
        .collect();
    let mixed = mixing.iter().filter(|batch| batch.volume > Volume::default());
    let batches = u32::try_from(mixed.count()).unwrap_or(u32::MAX);
    let jug_water = rule.after_each_batch * f64::from(batches);
    let water = washed.iter().map(|washed| washed.water).fold(jug_water, |sum, water| sum + water);
    let cups = mixing.iter().fold(0_u32, |sum, batch| sum.saturating_add(batch.cups));
    WashingPlan {
        washed,
        batches,
        jug_water,
        water,
        bucket: rule.bucket,
        // A hair over a full bucket is noise; a cast of floats stops at the ends of the range.
        buckets: ((water / rule.bucket).value - 1e-9).ceil().max(0.0) as u32,
        cups,
        left_in_cups: lesson.mixing.cup_loss * f64::from(cups),
        left_in_jugs: leftovers.iter().map(|left| left.volume).sum(),
    }
}
