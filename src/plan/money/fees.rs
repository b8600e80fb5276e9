//! The fee at which a class pays for itself, with few students and with many.
//!
//! For each number of students everything is planned again: batches, reserve, supplies and the
//! order. More students need more of everything, and share what is paid once; but packs come
//! whole, so the fee rises wherever one more student takes a new pack that costs more than the
//! fee. Otherwise it falls or stays: if `total(n + 1) - total(n) <= fee(n)`, then
//! `total(n + 1) <= n fee(n) + fee(n)`, and so `fee(n + 1) <= fee(n)`.

use super::balance;
use crate::lesson::{Lesson, Students};
use crate::plan::buy::Effort;
use crate::plan::order::{self, Cupboard, Street};
use crate::plan::provision::provision;
use crate::plan::reserve::Margin;
use crate::plan::{CanvasPlan, Impossible, Plan, class, demand};
use crate::quantity::Money;
use std::num::NonZeroU32;

/// Classes are looked at up to at least so many students,
const AT_LEAST: u32 = 12;
/// and up to at most so many; in between up to twice the class.
const AT_MOST: u32 = 60;

/// What classes of the same lesson would cost.
#[derive(Debug, Clone)]
pub struct Fees {
    /// One for each number of students, from one on; the lesson's own among them. A number
    /// that cannot be planned or bought for is left out.
    pub classes: Vec<ClassFee>,
    /// The fee that is asked, if one is.
    pub asked: Option<Money>,
}

/// A class of so many students.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ClassFee {
    pub students: u32,
    /// Paid for packs and their delivery.
    pub bought: Money,
    /// When the search for the least cost reached its limit of work: nothing is cheaper by more.
    pub within: Option<Money>,
    /// With what is paid besides.
    pub total: Money,
    /// The least fee with which it pays for itself, in whole coins.
    pub fee: Money,
}

impl Fees {
    /// The fewest students with whom the fee that is asked pays.
    pub fn pays_from(&self) -> Option<u32> {
        self.paying().next()
    }

    /// Larger classes with which it does not pay after all: a new pack is not yet paid for.
    pub fn fails_again(&self) -> Vec<u32> {
        let Some(from) = self.pays_from() else { return Vec::new() };
        let larger = self.classes.iter().filter(|class| class.students > from);
        larger.filter(|class| !self.pays(class)).map(|class| class.students).collect()
    }

    /// Whether the fee that is asked pays for a class; not without one.
    pub fn pays(&self, class: &ClassFee) -> bool {
        self.asked.is_some_and(|asked| class.fee <= asked)
    }

    fn paying(&self) -> impl Iterator<Item = u32> {
        self.classes.iter().filter(|class| self.pays(class)).map(|class| class.students)
    }
}

/// Plans the lesson for one student, two, and so on up to twice its own number, but at least
/// 12 and at most 60; and for its own number where that is larger.
///
/// It takes as long as many orders, so it is no part of a plan. The searches for the least cost
/// share a part of the limit of work that the order of a plan has; where that is not enough,
/// `ClassFee::within` says so.
pub fn fees(plan: &Plan) -> Fees {
    let own = plan.heads.students;
    let last = own.saturating_mul(2).clamp(AT_LEAST, AT_MOST);
    let effort = Effort::OneOf(NonZeroU32::new(last).unwrap_or(NonZeroU32::MIN));
    let mut lesson = plan.lesson.clone();
    let classes = (1..=last).chain((own > last).then_some(own)).filter_map(|students| {
        let (bought, within) = if students == own {
            (plan.order.total, plan.order.within)
        } else {
            lesson.class.students = Students::Count(NonZeroU32::new(students)?);
            bought(&lesson, &plan.canvases, effort).ok()?
        };
        let total = balance::total(&lesson, students, bought);
        let fee = balance::fee(&lesson, students, total);
        Some(ClassFee { students, bought, within, total, fee })
    });
    let classes = classes.collect();
    Fees { classes, asked: plan.lesson.charges.fee }
}

/// What would be bought for a lesson. What one canvas takes is the same for any class.
fn bought(
    lesson: &Lesson,
    canvases: &[CanvasPlan],
    effort: Effort,
) -> Result<(Money, Option<Money>), Impossible> {
    let heads = class::heads(lesson)?;
    let demand = demand::of_class(lesson, canvases, heads)?;
    let provision = provision(lesson, heads, &demand, Margin::argued(&lesson.reserve))?;
    let street = Street { shops: &lesson.shops, elsewhere: &lesson.elsewhere };
    order::price(provision.needs(), &Cupboard::new(&lesson.stock), street, effort)
}
