//! What was used of weighed cups as a table for spreadsheets (RFC 4180).

use crate::lesson::harmless;
use crate::plan::learn::Learned;
use crate::quantity::Mass;
use crate::quantity::show::trimmed;
use crate::quantity::units::in_gram;

/// Header of the table, in the order of the columns.
const COLUMNS: [&str; 12] = [
    "class", "date", "student", "canvas", "piece", "layer", "colour", "before g", "after g",
    "used g", "least g", "most g",
];
/// Decimals of grams; no scale of a studio is finer.
const DECIMALS: usize = 3;

/// A row for each cup as CSV with CRLF line ends: what was weighed, what was used, and the least
/// and the most that the two readings allow. A cell that a spreadsheet would take for a formula
/// is made a text.
pub fn used_csv(learned: &Learned) -> Result<Vec<u8>, csv::Error> {
    let mut table =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    table.write_record(COLUMNS)?;
    let grams = |mass: Mass| trimmed(in_gram(mass), DECIMALS);
    for class in &learned.classes {
        let date = class.date.map(|date| date.to_string()).unwrap_or_default();
        for cup in &class.cups {
            table.write_record([
                harmless(&class.title),
                date.clone(),
                harmless(&cup.student),
                harmless(&cup.canvas),
                cup.piece.to_string(),
                harmless(&cup.layer),
                harmless(&cup.colour.name),
                grams(cup.before),
                grams(cup.after),
                grams(cup.used.typical()),
                grams(cup.used.low()),
                grams(cup.used.high()),
            ])?;
        }
    }
    table.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}
