//! What is printed. Whoever reads it may have enough of it (`… | head -1`): then the rest goes
//! nowhere, and the work is done all the same. Lines that could not be written for another
//! reason are told at the end.

use super::failure::Failure;
use std::fmt::Arguments;
use std::io::{self, Write};
use std::sync::Mutex;

/// The first reason why something could not be printed.
static UNHEARD: Mutex<Option<io::Error>> = Mutex::new(None);

/// Prints a line for those who asked; use it through `println!` of this file.
pub(super) fn line(what: Arguments<'_>) {
    let mut out = anstream::stdout().lock();
    keep(writeln!(out, "{what}").and_then(|()| out.flush()));
}

/// Prints bytes as they are, for another program to read.
pub(super) fn bytes(what: &[u8]) {
    let mut out = io::stdout().lock();
    keep(out.write_all(what).and_then(|()| out.flush()));
}

/// Keeps the first reason, for the end.
fn keep(printed: io::Result<()>) {
    if let Err(error) = printed
        && error.kind() != io::ErrorKind::BrokenPipe
        && let Ok(mut unheard) = UNHEARD.lock()
    {
        unheard.get_or_insert(error);
    }
}

/// Prints a line about what went wrong; where nobody can hear it, nobody can be told.
pub(super) fn aside(what: Arguments<'_>) {
    let _ = writeln!(anstream::stderr().lock(), "{what}");
}

/// Whether everything could be printed.
///
/// # Errors
/// Why not.
pub(super) fn heard() -> Result<(), Failure> {
    let unheard = UNHEARD.lock().ok().and_then(|mut unheard| unheard.take());
    unheard.map_or(Ok(()), |error| {
        Err(Failure::disk(format!("could not print what was asked for: {error}")))
    })
}

/// As the one of the standard library, but it does not panic.
macro_rules! println {
    () => { $crate::cli::say::line(format_args!("")) };
    ($($what:tt)*) => { $crate::cli::say::line(format_args!($($what)*)) };
}
/// As the one of the standard library, but it does not panic.
macro_rules! eprintln {
    ($($what:tt)*) => { $crate::cli::say::aside(format_args!($($what)*)) };
}
pub(super) use {eprintln, println};
