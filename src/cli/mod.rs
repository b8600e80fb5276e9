//! The command line: arguments, what is printed, what is written, exit codes.
//!
//! | code | meaning |
//! | --- | --- |
//! | 0 | done |
//! | 1 | a lesson, a data file, weighings or a template are wrong |
//! | 2 | the command was called wrongly |
//! | 3 | something could not be read or written |

mod advice;
mod args;
mod beside;
mod check;
mod completions;
mod costs;
mod disk;
mod explain;
mod failure;
mod json;
mod kept;
mod learn;
mod lessons;
mod make;
mod manual;
mod order;
mod plan;
mod plan_room;
mod preview;
mod quoted;
mod say;
mod schema;
pub mod start;
mod words;
mod wrapped;

use args::{Arguments, Command};
use clap::{CommandFactory, Parser};
use std::process::ExitCode;

/// The arguments that the program takes, with their help texts.
pub fn command() -> clap::Command {
    Arguments::command()
}

/// Runs the program on its arguments.
pub fn run() -> ExitCode {
    let result = match Arguments::parse().command {
        Command::Start(arguments) => start::start(&arguments),
        Command::Make(arguments) => make::make(&arguments),
        Command::Plan(arguments) => plan::plan(&arguments),
        Command::Order(arguments) => order::order(&arguments),
        Command::Learn(arguments) => learn::learn(&arguments),
        Command::Preview(arguments) => preview::preview(arguments),
        Command::Check(arguments) => check::check(&arguments),
        Command::Explain(arguments) => explain::explain(&arguments),
        Command::Schema(arguments) => schema::schema(&arguments),
        Command::Completions(arguments) => completions::completions(&arguments),
        Command::Manual(arguments) => manual::manual(&arguments),
    };
    match result.and_then(|()| say::heard()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            failure.print();
            failure.code()
        }
    }
}
