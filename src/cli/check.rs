//! `check`: what is wrong with lessons, what a colleague would say of them, and nothing else.

use super::advice::{self, Counts};
use super::args;
use super::failure::Failure;
use super::lessons::{read_all, work_out_all};
use anstream::println;

pub(super) fn check(arguments: &args::Check) -> Result<(), Failure> {
    let mut counts = Counts::default();
    for (path, plan) in work_out_all(read_all(&arguments.lessons)?)? {
        println!("{}: right ({})", path.display(), plan.lesson.heading.title);
        let advice = plan.advice();
        advice::print(&plan.lesson, &advice);
        counts += &advice;
    }
    println!("{}", counts.text());
    Ok(())
}
