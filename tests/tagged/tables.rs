//! Tables: as many as the document has, row by row and cell by cell, over all of their pages.

use std::collections::BTreeSet;

use puddlebook::handout::Table;

use super::handouts::{Handout, all};
use super::said::{plain, words};
use super::wished::{Scribe, tables};
use super::{all_keep, ensure};
use crate::pdf_tree::Element;

#[test]
fn every_cell_of_every_table_is_in_its_row() {
    all_keep(cells);
}

#[test]
fn every_heading_of_a_table_says_what_it_heads() {
    all_keep(headings);
}

/// The check of cells counts tables; here is what makes that count mean something.
#[test]
fn a_table_over_several_pages_is_one_table() {
    let pages = |table: &&Element| -> usize {
        let sequences = table.all().into_iter().flat_map(Element::sequences);
        sequences.filter_map(|(page, _)| page).collect::<BTreeSet<usize>>().len()
    };
    let over = |pages_at_least| {
        let tables = all().iter().flat_map(|handout| handout.file.tree.of_kind("Table"));
        tables.filter(|table| pages(table) >= pages_at_least).count()
    };
    assert!(over(2) > 0 && over(3) > 0, "{} over two pages, {} over three", over(2), over(3));
}

pub fn cells(handout: &Handout) -> Result<(), String> {
    let wished = tables(&handout.document.blocks);
    let found = handout.file.tree.of_kind("Table");
    ensure(found.len() == wished.len(), || format!("{} tables of {}", found.len(), wished.len()))?;
    let scribe = Scribe::new(handout);
    for (element, table) in found.into_iter().zip(wished) {
        let caption = plain(&scribe.words(&table.caption));
        let fault = |fault: String| format!("table {caption:?}: {fault}");
        let said = element.of_kind("Caption");
        let said: Vec<String> = said.iter().map(|caption| words(handout, caption)).collect();
        ensure(said.concat() == caption, || fault(format!("is called {said:?}")))?;
        let rows = rows_of(element).map_err(fault)?;
        let said: Vec<Vec<String>> = rows
            .iter()
            .map(|row| row.elements().map(|cell| words(handout, cell)).collect())
            .collect();
        let wished: Vec<Vec<String>> = scribe
            .rows(table)
            .iter()
            .map(|row| row.iter().map(|cell| plain(cell)).collect())
            .collect();
        let differ = said.iter().zip(&wished).find(|(said, wished)| said != wished);
        if let Some((said, wished)) = differ {
            return Err(fault(format!("has the row {said:?} instead of {wished:?}")));
        }
        ensure(said.len() == wished.len(), || {
            fault(format!("has {} rows of {}", said.len(), wished.len()))
        })?;
    }
    Ok(())
}

/// Rows of a table; nothing else but a caption and cells may be in it.
fn rows_of(table: &Element) -> Result<Vec<&Element>, String> {
    for element in table.elements() {
        let within = |row: &Element| row.elements().all(|cell| ["TH", "TD"].contains(&&*cell.kind));
        let is_part = match element.kind.as_str() {
            "TR" => within(element) && element.sequences().next().is_none(),
            kind => kind == "Caption",
        };
        ensure(is_part, || format!("has a {} that is no part of a table", element.kind))?;
    }
    ensure(table.sequences().next().is_none(), || "has words outside of its cells".to_owned())?;
    Ok(table.of_kind("TR"))
}

pub fn headings(handout: &Handout) -> Result<(), String> {
    let wished = tables(&handout.document.blocks);
    for (element, table) in handout.file.tree.of_kind("Table").into_iter().zip(wished) {
        let scopes = |row: &Element| -> Vec<Option<String>> {
            let scope = |cell: &Element| match cell.kind.as_str() {
                "TH" => Some(cell.scope.clone().unwrap_or_else(|| "nothing".to_owned())),
                _ => None,
            };
            row.elements().map(scope).collect()
        };
        let mut rows = element.of_kind("TR").into_iter();
        if has_heads(table) {
            let head = rows.next().map(scopes).unwrap_or_default();
            let heads = head.iter().all(|scope| scope.as_deref() == Some("Column"));
            ensure(heads && !head.is_empty(), || format!("the first row heads {head:?}"))?;
        }
        for row in rows.map(scopes) {
            let mut cells = row.iter().map(Option::as_deref);
            let first = cells.next().flatten();
            ensure(matches!(first, None | Some("Row")) && cells.all(|it| it.is_none()), || {
                format!("a row of the table has cells that head {row:?}")
            })?;
        }
    }
    Ok(())
}

fn has_heads(table: &Table) -> bool {
    table.columns.iter().any(|column| !column.heading.is_empty())
}
