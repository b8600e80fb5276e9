//! The command line of puddlebook.

use std::process::ExitCode;

fn main() -> ExitCode {
    puddlebook::cli::run()
}
