//! The reserve: how it is argued, and what a habit would do instead.

use super::batch::unless_nothing;
use super::order::priced;
use crate::handout::words::{Words, fill};
use crate::plan::Plan;
use crate::quantity::show::Show;
use serde::Serialize;

/// The argument in figures. Amounts without a word are of all mixed paint.
#[derive(Debug, Clone, Serialize)]
pub struct ReserveText {
    /// How often each colour is enough, in words.
    pub level: String,
    pub class_varies: String,
    pub students_vary: String,
    /// What is expected to be used, both units.
    pub expected: String,
    /// What is mixed on top of it, over all colours, both units; empty when it is nothing.
    pub added: String,
    /// What would do if all colours were one paint; empty when it is nothing.
    pub as_one: String,
    /// The sums over all colours, in one unit.
    pub paint: ReserveLineText,
    /// One for each batch of the class, in its order.
    pub colours: Vec<ReserveLineText>,
    /// One for each material of the finishes.
    pub finishes: Vec<ReserveLineText>,
    pub habit: HabitText,
}

/// One colour or finish.
#[derive(Debug, Clone, Serialize)]
pub struct ReserveLineText {
    /// Colour or material.
    pub name: String,
    /// Empty for a finish.
    pub mix: String,
    pub expected: String,
    /// Empty when it is nothing.
    pub reserve: String,
    /// What is mixed of it, or needed of a finish.
    pub volume: String,
    /// The same by habit.
    pub habit: String,
}

/// What a habit would do.
#[derive(Debug, Clone, Serialize)]
pub struct HabitText {
    /// What is added for each student.
    pub extra: String,
    /// What would be mixed, both units.
    pub to_mix: String,
    /// What the packs would cost; empty without a shop.
    pub total: String,
}

pub(super) fn reserve(plan: &Plan, words: &Words, show: &Show) -> ReserveText {
    let reserve = &plan.reserve;
    let level = reserve.rule.level;
    let nothing = reserve.by_colour <= crate::quantity::Volume::default();
    ReserveText {
        level: fill(
            &words.reserve.level,
            &[("classes", &level.classes().to_string()), ("out_of", &level.out_of().to_string())],
        ),
        class_varies: show.share(reserve.rule.class_varies),
        students_vary: show.share(reserve.rule.students_vary),
        expected: show.volume_both(reserve.expected),
        added: if nothing { String::new() } else { show.volume_both(reserve.by_colour) },
        as_one: unless_nothing(reserve.as_one, show),
        paint: ReserveLineText {
            name: String::new(),
            mix: String::new(),
            expected: show.volume(reserve.expected),
            reserve: unless_nothing(reserve.by_colour, show),
            volume: show.measured(plan.to_mix()),
            habit: show.measured(reserve.habit.to_mix()),
        },
        colours: colours(plan, show),
        finishes: finishes(plan, show),
        habit: HabitText {
            extra: show.share(reserve.habit.extra),
            to_mix: show.measured_both(reserve.habit.to_mix()),
            total: priced(plan, reserve.habit.total, show),
        },
    }
}

fn colours(plan: &Plan, show: &Show) -> Vec<ReserveLineText> {
    let lines = plan.mixing.iter().zip(&plan.reserve.habit.mixing);
    lines
        .map(|(batch, habit)| ReserveLineText {
            name: batch.colour.name.clone(),
            mix: batch.mix.name.clone(),
            expected: show.volume(batch.expected),
            reserve: unless_nothing(batch.reserve, show),
            volume: show.measured(batch.volume),
            habit: show.measured(*habit),
        })
        .collect()
}

fn finishes(plan: &Plan, show: &Show) -> Vec<ReserveLineText> {
    let lines = plan.finishing.iter().zip(&plan.reserve.habit.finishing);
    lines
        .map(|(need, habit)| ReserveLineText {
            name: need.material.name.clone(),
            mix: String::new(),
            expected: show.volume(need.expected),
            reserve: unless_nothing(need.reserve, show),
            volume: show.volume(need.volume),
            habit: show.volume(*habit),
        })
        .collect()
}
