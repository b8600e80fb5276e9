//! The command line: arguments, what is printed, what is written, exit codes.
//!
//! | code | meaning |
//! | --- | --- |
//! | 0 | done |
//! | 1 | a lesson, a data file, weighings or a template are wrong |
//! | 2 | the command was called wrongly |
//! | 3 | something could not be read or written |

mod args;
mod beside;
mod check;
mod costs;
mod disk;
mod failure;
mod json;
mod kept;
mod learn;
mod lessons;
mod make;
mod order;
mod plan;
mod plan_room;
mod say;
mod unfinished;
mod words;

use args::{Arguments, Command};
use clap::Parser;
use std::process::ExitCode;

/// Runs the program on its arguments.
pub fn run() -> ExitCode {
    let result = match Arguments::parse().command {
        Command::Make(arguments) => make::make(&arguments),
        Command::Plan(arguments) => plan::plan(&arguments),
        Command::Order(arguments) => order::order(&arguments),
        Command::Learn(arguments) => learn::learn(&arguments),
        Command::Check(arguments) => check::check(&arguments),
    };
    match result.and_then(|()| say::heard()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            failure.print();
            failure.code()
        }
    }
}
