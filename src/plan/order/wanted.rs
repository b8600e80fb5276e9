//! What lessons need of an item, on one ruler.

use crate::lesson::{Life, MaterialKind};
use crate::plan::measure::Measure;
use crate::plan::{MaterialNeed, OrderItem, SupplyNeed};
use crate::quantity::units::in_ml;
use std::sync::Arc;

/// What one lesson needs.
#[derive(Clone, Copy)]
pub(in crate::plan) struct Needs<'a> {
    pub materials: &'a [MaterialNeed],
    pub supplies: &'a [SupplyNeed],
}

/// An item with the ruler it is measured by.
pub(super) struct Wanted<'a> {
    pub item: &'a str,
    pub what: OrderItem,
    pub measure: Measure,
    /// What each lesson needs.
    pub by_lesson: Vec<f64>,
    /// Part of it.
    pub reserve: f64,
    pub from_tap: Tap,
}

/// Whether an item comes from the tap when no shop sells it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Tap {
    Yes,
    No,
}

impl Wanted<'_> {
    /// What must be at hand for all lessons: what is kept serves one after the other.
    pub(super) fn needed(&self) -> f64 {
        match self.what {
            OrderItem::Supply(Life::Washable) => self.by_lesson.iter().copied().fold(0.0, f64::max),
            _ => self.by_lesson.iter().sum(),
        }
    }

    /// What is gone after them.
    pub(super) fn used_up(&self) -> f64 {
        match self.what {
            OrderItem::Supply(Life::Washable) => 0.0,
            _ => self.by_lesson.iter().sum(),
        }
    }
}

/// One line an item over all lessons: materials by kind, then supplies. What one lesson
/// uses up is used up.
pub(super) fn wanted<'a>(lessons: &[Needs<'a>]) -> Vec<Wanted<'a>> {
    let mut materials: Vec<(MaterialKind, Wanted)> = Vec::new();
    let mut supplies: Vec<Wanted> = Vec::new();
    for (at, needs) in lessons.iter().enumerate() {
        for need in needs.materials {
            let line = materials.iter_mut().find(|(_, known)| known.item == need.material.name);
            match line {
                Some((_, known)) => known.add(at, in_ml(need.volume), in_ml(need.reserve)),
                None => materials.push((need.material.kind, material(need, at, lessons.len()))),
            }
        }
        for need in needs.supplies {
            match supplies.iter_mut().find(|known| known.item == need.item) {
                Some(known) => {
                    if need.life == Life::UsedUp {
                        known.what = OrderItem::Supply(Life::UsedUp);
                    }
                    known.add(at, f64::from(need.pieces), 0.0);
                }
                None => supplies.push(supply(need, at, lessons.len())),
            }
        }
    }
    materials.sort_by_key(|(kind, _)| *kind);
    materials.into_iter().map(|(_, wanted)| wanted).chain(supplies).collect()
}

impl Wanted<'_> {
    fn add(&mut self, lesson: usize, more: f64, reserve: f64) {
        if let Some(need) = self.by_lesson.get_mut(lesson) {
            *need += more;
        }
        self.reserve += reserve;
    }
}

fn material(need: &MaterialNeed, lesson: usize, lessons: usize) -> Wanted<'_> {
    let mut wanted = Wanted {
        item: &need.material.name,
        what: OrderItem::Material(Arc::clone(&need.material)),
        measure: Measure::Volume { density: need.material.density },
        by_lesson: vec![0.0; lessons],
        reserve: 0.0,
        from_tap: if need.material.kind == MaterialKind::Water { Tap::Yes } else { Tap::No },
    };
    wanted.add(lesson, in_ml(need.volume), in_ml(need.reserve));
    wanted
}

fn supply(need: &SupplyNeed, lesson: usize, lessons: usize) -> Wanted<'_> {
    let mut wanted = Wanted {
        item: &need.item,
        what: OrderItem::Supply(need.life),
        measure: Measure::Pieces,
        by_lesson: vec![0.0; lessons],
        reserve: 0.0,
        from_tap: Tap::No,
    };
    wanted.add(lesson, f64::from(need.pieces), 0.0);
    wanted
}
