//! `completions`: what a shell needs to complete commands and options.

use super::args;
use super::failure::Failure;
use super::say;

pub(super) fn completions(arguments: &args::Completions) -> Result<(), Failure> {
    let mut script = Vec::new();
    clap_complete::generate(arguments.shell, &mut super::command(), "puddlebook", &mut script);
    say::bytes(&script);
    Ok(())
}
