//! The weigh sheet as a table for spreadsheets (RFC 4180), to be filled in.

use super::cups::{Painter, Weighing, cups, sitters};
use crate::lesson::{WEIGHING_COLUMNS, harmless};
use crate::plan::Plan;
use crate::quantity::show::trimmed;
use crate::quantity::units::in_gram;

/// The cups of a class as CSV with CRLF line ends, in the order of the weigh sheet: a row for
/// each cup, with before, after and tray left empty. `lesson` is where the lesson is, seen from
/// the folder of the table. The piece is given where a painter has several alike canvases. A
/// cell that a spreadsheet would take for a formula is made a text.
pub fn weigh_csv(plan: &Plan, lesson: &str) -> Result<Vec<u8>, csv::Error> {
    let mut table =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    table.write_record(WEIGHING_COLUMNS)?;
    let date = plan.lesson.heading.date.map(|date| date.to_string()).unwrap_or_default();
    let scale = format!("{} g", trimmed(in_gram(plan.lesson.mixing.scale_step), 3));
    let lesson = harmless(lesson);
    for sitter in sitters(plan) {
        let student = match sitter.painter {
            Painter::Named(name) => harmless(name),
            Painter::Numbered(number) => number.to_string(),
            Painter::Demonstration => "demonstration".to_owned(),
            Painter::Spare => "spare".to_owned(),
        };
        for Weighing { canvas, piece, pieces, layer, cup, .. } in cups(plan, sitter) {
            let piece = if pieces > 1 { piece.to_string() } else { String::new() };
            table.write_record([
                lesson.as_str(),
                &date,
                &student,
                &harmless(&canvas.name),
                &piece,
                &harmless(&canvas.technique.name),
                &harmless(&layer.layer.mix.name),
                &harmless(&layer.name),
                &harmless(&cup.colour.name),
                "",
                "",
                "",
                &scale,
                "",
                "",
            ])?;
        }
    }
    table.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}
