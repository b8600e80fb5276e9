//! Tables.

use super::MarkdownFault;
use super::reader::Reader;
use crate::handout::document::{Align, Column, Inline, Row, RowKind, Table};
use pulldown_cmark::{Alignment, Event, Tag, TagEnd};

/// A row on its way, with the source of its first cell: an "=" that the template
/// wrote marks a total, one that came escaped from a lesson does not.
struct RawRow {
    cells: Vec<Vec<Inline>>,
    total: bool,
}

/// Reads up to the end of the table.
pub(super) fn read(reader: &mut Reader<'_>, aligns: &[Alignment]) -> Result<Table, MarkdownFault> {
    let mut rows = Vec::new();
    let mut head = Vec::new();
    while let Some((event, _)) = reader.next_with_source() {
        match event {
            Event::Start(Tag::TableHead) => head = cells(reader, TagEnd::TableHead)?.cells,
            Event::Start(Tag::TableRow) => rows.push(row(cells(reader, TagEnd::TableRow)?)),
            Event::End(TagEnd::Table) => break,
            _ => {}
        }
    }
    let columns = head
        .into_iter()
        .zip(aligns)
        .map(|(heading, align)| Column {
            heading,
            align: match align {
                Alignment::Right => Align::Decimal,
                Alignment::Center => Align::Centre,
                Alignment::Left | Alignment::None => Align::Left,
            },
        })
        .collect();
    Ok(Table { caption: Vec::new(), columns, rows })
}

fn cells(reader: &mut Reader<'_>, end: TagEnd) -> Result<RawRow, MarkdownFault> {
    let mut cells = Vec::new();
    let mut total = false;
    while let Some((event, source)) = reader.next_with_source() {
        match event {
            Event::Start(Tag::TableCell) => {
                if cells.is_empty() {
                    total = source.trim_start_matches(['|', ' ']).starts_with('=');
                }
                cells.push(reader.words(TagEnd::TableCell)?);
            }
            Event::End(tag) if tag == end => break,
            _ => {}
        }
    }
    Ok(RawRow { cells, total })
}

fn row(raw: RawRow) -> Row {
    let RawRow { mut cells, total } = raw;
    if total {
        if let Some(Inline::Text(text)) = cells.first_mut().and_then(|cell| cell.first_mut()) {
            *text = text.trim_start_matches('=').trim_start().to_string();
        }
        return Row { kind: RowKind::Total, cells };
    }
    let group = cells.len() > 1
        && cells.first().is_some_and(|cell| !cell.is_empty())
        && cells.iter().skip(1).all(Vec::is_empty);
    Row { kind: if group { RowKind::Group } else { RowKind::Body }, cells }
}
