//! Every handout of the demo lessons as a tagged PDF, read back with another library.
//!
//! Each rule is a check that names the first fault of a handout. `faults` shows that every
//! check bites.

mod about;
mod artifacts;
mod broken;
mod faults;
mod figures;
mod glyphs;
mod handouts;
pub mod marked;
mod order;
mod paper;
mod said;
mod tables;
mod wished;

use handouts::Handout;

/// A rule that every handout keeps: the first fault, if there is one.
type Check = fn(&Handout) -> Result<(), String>;

/// Holds all handouts against a rule.
fn all_keep(check: Check) {
    let fault =
        |handout: &Handout| check(handout).err().map(|fault| format!("{}: {fault}", handout.name));
    let faults: Vec<String> = handouts::all().iter().filter_map(fault).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// A fault, unless something holds.
fn ensure(holds: bool, fault: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(fault()) }
}
