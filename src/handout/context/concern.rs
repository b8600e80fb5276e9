//! What a good colleague would say, for the teacher's own sheet.

use super::caution::sentence;
use crate::handout::words::{ConcernWords, Words};
use crate::lesson::Concern;
use crate::plan::Advice;
use serde::Serialize;

/// Something to look at before the class.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ConcernText {
    /// Its name in lesson files.
    pub name: &'static str,
    pub matter: String,
    /// Why it is right all the same; empty when nobody says so.
    pub reason: String,
}

/// What is open, each matter once.
pub(super) fn open(advice: &Advice<'_>, words: &Words) -> Vec<ConcernText> {
    let open = advice.open.iter().map(|warning| warning.matter.concern());
    once(open.map(|concern| text(concern, String::new(), words)))
}

/// What the lesson accepts, each matter once.
pub(super) fn accepted(advice: &Advice<'_>, words: &Words) -> Vec<ConcernText> {
    let accepted = advice.accepted.iter();
    once(accepted.map(|(_, accepted)| text(accepted.concern, sentence(&accepted.reason), words)))
}

fn text(concern: Concern, reason: String, words: &Words) -> ConcernText {
    let matter = matter(concern, &words.concerns).to_owned();
    ConcernText { name: concern.word(), matter, reason }
}

fn once(all: impl Iterator<Item = ConcernText>) -> Vec<ConcernText> {
    let mut all: Vec<ConcernText> = all.collect();
    all.dedup();
    all
}

fn matter(concern: Concern, words: &ConcernWords) -> &str {
    match concern {
        Concern::NoReserve => &words.no_reserve,
        Concern::CoarseScale => &words.coarse_scale,
        Concern::DryingRoom => &words.drying_room,
        Concern::CrowdedTables => &words.crowded_tables,
        Concern::EarlyFinish => &words.early_finish,
        Concern::OverBooking => &words.over_booking,
        Concern::LateDelivery => &words.late_delivery,
        Concern::OverBudget => &words.over_budget,
        Concern::FeeTooLow => &words.fee_too_low,
        Concern::NoPrice => &words.no_price,
        Concern::HeatWithChildren => &words.heat_with_children,
        Concern::AdditivesWithChildren => &words.additives_with_children,
        Concern::FlameAndAlcohol => &words.flame_and_alcohol,
        Concern::ColourCaution => &words.colour_caution,
        Concern::OldJar => &words.old_jar,
        Concern::Unused => &words.unused,
    }
}
