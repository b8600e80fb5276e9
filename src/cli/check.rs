//! `check`: what is wrong with lessons, what a colleague would say of them, and nothing else.

use super::advice::{self, Counts};
use super::args;
use super::failure::Failure;
use super::lessons::{read_all, work_out_all};
use super::say::println;
use crate::lesson::shown;

pub(super) fn check(arguments: &args::Check) -> Result<(), Failure> {
    let mut counts = Counts::default();
    for (path, plan) in work_out_all(read_all(&arguments.lessons)?)? {
        println!("{}: right ({})", shown(path), plan.lesson.heading.title);
        let advice = plan.advice();
        advice::print(&plan.lesson, &advice);
        counts += &advice;
    }
    println!("{}", counts.text());
    Ok(())
}
