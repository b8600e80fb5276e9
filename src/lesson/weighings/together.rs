//! What rows say together: no cup twice, one way of pouring a canvas, no more run off than
//! was poured.

use super::super::desk::Desk;
use super::super::problem::ProblemKind;
use super::row::Row;
use crate::quantity::{Date, Mass};
use std::collections::BTreeMap;

/// A canvas of a class.
type Piece<'a> = (usize, Option<Date>, &'a str, &'a str, u32);

fn piece((lesson, row): &(usize, Row)) -> Piece<'_> {
    (*lesson, row.date, &row.cup.student, &row.cup.canvas.name, row.cup.piece)
}

/// Rows, each with the place of its lesson.
pub(super) fn check(desk: Desk<'_>, rows: &[(usize, Row)]) {
    let mut cups = BTreeMap::new();
    let mut layers: BTreeMap<_, Vec<&Row>> = BTreeMap::new();
    let mut canvases: BTreeMap<_, &Row> = BTreeMap::new();
    for pair in rows {
        let (piece, row) = (piece(pair), &pair.1);
        let colour = row.cup.colour.name.as_str();
        match cups.get(&(piece, row.cup.layer.as_str(), colour)) {
            Some(before) => {
                let kind = ProblemKind::CupTwice { colour: colour.to_owned() };
                desk.fault_with(row.colour, kind, *before);
                continue;
            }
            None => {
                cups.insert((piece, row.cup.layer.as_str(), colour), row.colour);
            }
        }
        match canvases.get(&piece) {
            Some(first) if first.cup.technique.name != row.cup.technique.name => {
                desk.fault_with(row.technique, ProblemKind::PouredTwoWays, first.technique);
                continue;
            }
            Some(_) => {}
            None => {
                canvases.insert(piece, row);
            }
        }
        layers.entry((piece, row.cup.layer.as_str())).or_default().push(row);
    }
    layers.values().for_each(|rows| layer(desk, rows));
}

/// The cups of one layer of one canvas.
fn layer(desk: Desk<'_>, rows: &[&Row]) {
    let Some((first, rest)) = rows.split_first() else { return };
    for row in rest.iter().filter(|row| row.cup.mix.name != first.cup.mix.name) {
        desk.fault_with(row.mix, ProblemKind::PouredTwoWays, first.mix);
    }
    let mut trays = rows.iter().filter_map(|row| Some((row.tray?, row.cup.tray?)));
    let Some((tray, caught)) = trays.next() else { return };
    for (again, _) in trays {
        desk.fault_with(again, ProblemKind::TrayTwice, tray);
    }
    // Where a colour was not weighed nobody knows how much was poured.
    let canvas = &first.cup.canvas;
    let planned = canvas.technique.layers.iter().zip(&canvas.layers);
    let planned = planned.filter(|(layer, _)| layer.name == first.cup.layer).map(|(_, of)| of);
    let colours = planned.flat_map(|of| &of.colours).count();
    let used: Mass = rows.iter().map(|row| row.cup.before - row.cup.after).sum();
    // Two readings for each cup, one or two for the tray: each half a step off at most.
    let slack: Mass = rows.iter().map(|row| row.cup.step).sum::<Mass>() + first.cup.step;
    if rows.len() >= colours && caught > used + slack {
        desk.fault(tray, ProblemKind::TrayHeavier { used });
    }
}
