//! Ounces typed as grams, grams typed as ounces.

use super::cups::{palette, technique_layer};
use super::{Doubt, DoubtKind};
use crate::lesson::{Lesson, Trust, WeighedClass, WeighedCup};
use crate::plan::area::areas;
use crate::plan::batch::cupful;
use crate::quantity::Mass;
use std::ops::RangeInclusive;

/// An ounce is 28.35 g. Cups are filled a little more or less than planned, and their own
/// weight may stand in the reading, hence the room on both sides; judgement, no source.
const ABOUT_28: RangeInclusive<f64> = 20.0..=40.0;

/// The rows of a class to look at again.
pub(super) fn doubts(class: &WeighedClass) -> impl Iterator<Item = Doubt> {
    let plain = class.cups.iter().filter(|cup| cup.trust == Trust::Plain);
    plain.filter_map(|cup| {
        let planned = planned_fill(cup, &class.lesson)?;
        Some(Doubt { place: cup.place.clone(), kind: kind(cup.before, planned)? })
    })
}

fn kind(weighed: Mass, planned: Mass) -> Option<DoubtKind> {
    if ABOUT_28.contains(&(planned / weighed).value) {
        Some(DoubtKind::TooLight { weighed, planned })
    } else if ABOUT_28.contains(&(weighed / planned).value) {
        Some(DoubtKind::TooHeavy { weighed, planned })
    } else {
        None
    }
}

/// What the plan fills into this cup; `None` where it cannot say.
fn planned_fill(cup: &WeighedCup, lesson: &Lesson) -> Option<Mass> {
    let film = technique_layer(cup)?.films.of(cup.mix.consistency).typical();
    let is_it = |colour: &str| colour == cup.colour.name;
    let (_, share) = palette(cup)?.colours.iter().find(|(colour, _)| is_it(&colour.name))?;
    let need = areas(&cup.canvas).painted * film * share.as_f64() + lesson.mixing.cup_loss;
    let (fill, _) = cupful(&cup.colour, &cup.mix, need, lesson.mixing.scale_step).ok()?;
    Some(fill)
}
