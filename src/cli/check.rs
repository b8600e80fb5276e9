//! `check`: what is wrong with lessons, and nothing else.

use super::args;
use super::failure::Failure;
use super::lessons::read_all;
use super::say::println;
use crate::lesson::shown;

pub(super) fn check(arguments: &args::Check) -> Result<(), Failure> {
    for (path, lesson) in read_all(&arguments.lessons)? {
        println!("{}: right ({})", shown(path), lesson.heading.title);
    }
    Ok(())
}
