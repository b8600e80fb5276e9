//! Several lessons, bought for together.
//!
//! Lessons follow each other by date. Paint that one leaves in its jars goes into the next
//! that wants the same colour and mix while it keeps; they share one cupboard and
//! one street of shops. What one order leaves of its packs is stock for the next.

use super::household::Household;
use super::order::{self, Cupboard, Needs};
use super::{Course, Delivery, Errand, Impossible, Plan, jars, plan};
use crate::lesson::{Amount, Jar, Lesson};
use crate::quantity::{Date, Money};

/// Plans lessons one after the other and orders for them, once or for each delivery day.
///
/// A lesson is supplied by the last delivery on or before its date; lessons before the first
/// delivery, and all of them without deliveries, by an order of their own.
///
/// # Errors
///
/// As [`plan`], and when the lessons buy in different currencies or are written in different
/// languages.
pub fn course(mut lessons: Vec<Lesson>, deliveries: &[Date]) -> Result<Course, Impossible> {
    // Stable, so that lessons without a date stay where they were put.
    lessons.sort_by_key(|lesson| lesson.heading.date);
    let mut plans: Vec<Plan> = Vec::with_capacity(lessons.len());
    let mut carried: Option<Vec<Jar>> = None;
    for mut lesson in lessons {
        if let Some(first) = plans.first() {
            let (first, other) = (&first.lesson.print, &lesson.print);
            if first.language != other.language {
                let (first, other) = (first.language, other.language);
                return Err(Impossible::TwoLanguages { first, other });
            }
            if first.currency != other.currency {
                let (first, other) = (first.currency, other.currency);
                return Err(Impossible::TwoCurrencies { first, other });
            }
        }
        if let Some(jars) = carried.take() {
            lesson.jars = jars;
        }
        let plan = plan(lesson)?;
        carried = Some(jars_after(&plan));
        plans.push(plan);
    }
    let groups = groups(&plans, deliveries);
    let singly: Vec<_> = (0..plans.len()).map(|at| (None, at..at + 1)).collect();
    let lesson_by_lesson = ordered(&plans, singly)?.iter().map(|one| one.order.total).sum();
    let deliveries = ordered(&plans, groups)?;
    Ok(Course { lessons: plans, deliveries, lesson_by_lesson })
}

/// What stands in jars after a lesson: what it leaves, and what it had no use for.
fn jars_after(plan: &Plan) -> Vec<Jar> {
    let left = plan.leftovers.iter().filter_map(|left| {
        let mixed = left.mixed?;
        let keeps = left.last_day.and_then(|last| mixed.until(last).ok());
        Some(Jar {
            colour: left.colour.name.clone(),
            mix: left.mix.name.clone(),
            amount: Amount::Volume(left.volume),
            mixed,
            keeps: keeps.and_then(|span| u32::try_from(span.get_days()).ok()),
        })
    });
    let idle = plan.lesson.jars.iter().filter(|jar| jars::is_idle(jar, &plan.mixing));
    left.chain(idle.cloned()).collect()
}

type Group = (Option<Date>, std::ops::Range<usize>);

fn groups(plans: &[Plan], deliveries: &[Date]) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for (at, plan) in plans.iter().enumerate() {
        let before = |day: &&Date| plan.lesson.heading.date.is_some_and(|date| **day <= date);
        let day = deliveries.iter().filter(before).max().copied();
        match groups.last_mut() {
            Some((known, lessons)) if *known == day => lessons.end = at + 1,
            _ => groups.push((day, at..at + 1)),
        }
    }
    groups
}

fn ordered(plans: &[Plan], groups: Vec<Group>) -> Result<Vec<Delivery>, Impossible> {
    let household = Household::of(plans.iter().map(|plan| &plan.lesson));
    let mut cupboard = Cupboard::new(&household.stock);
    let mut orders = Vec::with_capacity(groups.len());
    for (day, lessons) in groups {
        let members = plans.get(lessons.clone()).unwrap_or_default();
        let needs: Vec<Needs> = members
            .iter()
            .map(|plan| Needs { materials: &plan.materials, supplies: &plan.supplies })
            .collect();
        let order = order::order(&needs, &mut cupboard, household.street())?;
        orders.push(Delivery { day, lessons, order });
    }
    Ok(orders)
}

impl Course {
    /// Its orders, each with what it is for.
    pub fn errands(&self) -> impl Iterator<Item = Errand<'_>> {
        self.deliveries.iter().filter_map(|delivery| {
            let lessons = self.lessons.get(delivery.lessons.clone())?;
            Some(Errand { lessons, day: delivery.day, order: &delivery.order })
        })
    }

    /// What all deliveries cost.
    pub fn total(&self) -> Money {
        self.deliveries.iter().map(|delivery| delivery.order.total).sum()
    }
}
