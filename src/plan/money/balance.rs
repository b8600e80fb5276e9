//! What comes in and what goes out, for the class as it is.

use super::split::shared;
use crate::lesson::{Charge, Lesson};
use crate::plan::Heads;
use crate::quantity::{Coin, Money};
use std::num::NonZeroU32;

/// What a class pays and takes in.
#[derive(Debug, Clone)]
pub struct Balance {
    /// Paid for packs and their delivery.
    pub bought: Money,
    /// What is paid whatever number comes, together.
    pub fixed: Money,
    /// What each student costs besides, together.
    pub each: Money,
    /// `bought`, `fixed`, and `each` for every student.
    pub total: Money,
    /// The total shared by the students, to the nearest coin.
    pub per_student: Money,
    /// The least fee at which the students of this class pay for it: `per_student` rounded up.
    pub pays_for_itself: Money,
    /// At the fee that is asked, if one is.
    pub takings: Option<Takings>,
}

/// What the fee brings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Takings {
    pub fee: Money,
    /// From all students.
    pub income: Money,
    /// Income less the total: a loss when it is below zero.
    pub surplus: Money,
}

/// Adds up what a class with this order pays.
pub(super) fn balance(lesson: &Lesson, heads: Heads, bought: Money) -> Balance {
    let charges = &lesson.charges;
    let coin = Coin::of(lesson.print.currency);
    let total = total(lesson, heads.students, bought);
    Balance {
        bought,
        fixed: sum(&charges.fixed),
        each: sum(&charges.each),
        total,
        per_student: shared(total, heads.students, coin),
        pays_for_itself: fee(lesson, heads.students, total),
        takings: charges.fee.map(|fee| {
            let income = fee * heads.students;
            Takings { fee, income, surplus: income - total }
        }),
    }
}

/// What a class of so many students pays when so much is bought for it.
pub(super) fn total(lesson: &Lesson, students: u32, bought: Money) -> Money {
    bought + sum(&lesson.charges.fixed) + sum(&lesson.charges.each) * students
}

/// The least fee, in whole coins, with which so many students pay the total.
pub(super) fn fee(lesson: &Lesson, students: u32, total: Money) -> Money {
    let students = NonZeroU32::new(students).unwrap_or(NonZeroU32::MIN);
    Coin::of(lesson.print.currency).to_cover(total, students)
}

fn sum(charges: &[Charge]) -> Money {
    charges.iter().map(|charge| charge.amount).sum()
}
