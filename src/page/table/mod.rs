//! Tables: rows that never split, figures on the decimal mark, horizontal rules.
//!
//! Stages: `cell` (inlines to what a cell needs), `widths` (columns from their
//! content), `rows` (strips). In: a table and the column it stands in. Out: strips,
//! each with the head to repeat. Must not know: where pages end.

mod cell;
mod decimal;
mod rows;
mod widths;

use std::rc::Rc;

use super::block::{Joints, text_strips};
use super::desk::{Column, Desk, Place, Setting};
use super::galley::Galley;
use super::inline::{Look, Paragraph};
use super::strip::{Joint, Reach, Snap, Strip};
use super::style::Size;
use super::{TagId, TagKind};
use crate::handout::{self, Align, Row, RowKind};
use crate::ink::{Face, Figures};
use cell::Cell;
use rows::Grid;

/// Ending a page between two rows; a table stays whole if that costs little.
const BETWEEN_ROWS: f32 = 12.0;

/// A table of at most so many rows is kept on one page.
const SHORT: usize = 6;
const WITHIN_SHORT: f32 = 250.0;

/// Ending it soon after a table's head or shortly before its end costs more.
const EARLY: usize = 4;
const SOON: f32 = 40.0;

/// Between two columns, in em.
const GUTTER: f32 = 1.5;

/// A table of a book that wants so much more than the text column has may reach into
/// the side column.
const MUCH_WIDER: f32 = 1.2;

/// A table is made as wide as its column when its content comes this near.
const NEARLY_FULL: f32 = 0.72;

/// Sets a table in a column.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    table: &'a handout::Table,
    column: Column,
    galley: &mut Galley<'a>,
) {
    if table.columns.is_empty() {
        return;
    }
    let size = match column.place {
        Place::Side => desk.style.scale.small,
        Place::Flow | Place::Inside => desk.style.scale.note,
    };
    let tag = desk.tag(TagKind::Table, column.tag);
    let grid = desk.style.grid();
    let caption = caption(desk, table, column, tag, size);
    let head = head(desk, table, tag, size);
    let mut body: Vec<Vec<Cell<'a>>> =
        table.rows.iter().map(|row| body_row(desk, row, table, tag, size)).collect();
    leave_room_to_write(&mut body, table);
    let gutter = GUTTER * size.size;
    let natural = widths::natural(&table.columns, &head, &body, gutter);
    let (width, reach) = match desk.style.frame.side {
        Some(_) if column.place == Place::Flow && natural > MUCH_WIDER * column.width => {
            (desk.style.frame.full_width, Reach::Full)
        }
        _ => (column.width, Reach::Column),
    };
    let widths = widths::choose(&table.columns, &head, &body, width, gutter);
    let after = widths::after_marks(table.columns.len(), &body);
    let columns = rows::columns(&table.columns, column.x, gutter, &widths, &after);
    let grid_of_cells = Grid::new(desk, columns, column.x, size);
    let gap = if caption.is_empty() { 1.5 * grid } else { grid * 0.5 };
    for mut strip in caption {
        strip.reach = reach;
        galley.push(strip);
        galley.glue();
    }
    let mut rows = Galley::default();
    strips(desk, table, &grid_of_cells, head, body, gap, &mut rows);
    for mut strip in rows.finish() {
        strip.reach = reach;
        galley.push(strip);
    }
    galley.leave(1.5 * grid);
}

/// The caption: bold, over the table.
fn caption<'a>(
    desk: &mut Desk<'a, '_>,
    table: &'a handout::Table,
    column: Column,
    tag: TagId,
    size: Size,
) -> Vec<Strip<'a>> {
    if table.caption.is_empty() {
        return Vec::new();
    }
    let tag = desk.tag(TagKind::Caption, tag);
    let look = Look::new(Face::Bold, size.size, desk.style.palette.ink, tag);
    let lines = desk.lines(&table.caption, look, Setting::ragged(column.width));
    text_strips(lines, column.x, size, 1.5 * desk.style.grid(), Joints::Whole)
}

/// Columns without a word are there to be filled by hand.
fn leave_room_to_write(body: &mut [Vec<Cell<'_>>], table: &handout::Table) {
    for column in 0..table.columns.len() {
        let mut cells = body.iter().filter_map(|row| row.get(column));
        if cells.all(|cell| cell.paragraph.is_empty()) {
            for (row, cells) in table.rows.iter().zip(body.iter_mut()) {
                if let (RowKind::Body, Some(cell)) = (row.kind, cells.get_mut(column)) {
                    cell.blank = true;
                }
            }
        }
    }
}

/// Head and rows as strips on the galley.
fn strips<'a>(
    desk: &Desk<'a, '_>,
    table: &handout::Table,
    grid: &Grid<'_>,
    head: Vec<Cell<'a>>,
    body: Vec<Vec<Cell<'a>>>,
    gap: f32,
    galley: &mut Galley<'a>,
) {
    let headed = head.iter().any(|cell| !cell.paragraph.is_empty());
    let mut repeated = None;
    if headed {
        let mut strip = grid.head(head);
        repeated = Some(Rc::new(strip.clone()));
        strip.gap = gap;
        galley.push(strip);
        galley.glue();
    }
    let count = body.len();
    let within = if count <= SHORT { WITHIN_SHORT } else { BETWEEN_ROWS };
    let page = desk.style.frame.height - repeated.as_ref().map_or(0.0, |head| head.height);
    let mut previous = None;
    for (index, (cells, row)) in body.into_iter().zip(&table.rows).enumerate() {
        let joint = match (previous, row.kind) {
            // Two rows at least stand under a head, and on the last page; a group's
            // heading stays with its first row, the total with what it sums.
            (None | Some(RowKind::Group), _) | (_, RowKind::Total) => Joint::Glued,
            _ if index == 1 || index + 1 == count => Joint::Glued,
            (_, RowKind::Body) if index < EARLY || index + EARLY > count => {
                Joint::Open(within + SOON)
            }
            (_, RowKind::Group) => Joint::Open(within * 0.3),
            (_, RowKind::Body) => Joint::Open(within),
        };
        previous = Some(row.kind);
        for (part, mut strip) in grid.row(cells, row.kind, page).into_iter().enumerate() {
            strip.head = repeated.clone();
            strip.joint = if part == 0 { joint } else { Joint::Open(400.0) };
            if index == 0 && part == 0 && !headed {
                strip.gap = gap;
                strip.joint = Joint::Open(0.0);
            }
            strip.snap = Snap::Free;
            galley.push(strip);
        }
    }
}

fn head<'a>(
    desk: &mut Desk<'a, '_>,
    table: &'a handout::Table,
    parent: TagId,
    size: Size,
) -> Vec<Cell<'a>> {
    let row = desk.tag(TagKind::TableRow, parent);
    let colour = desk.style.palette.ink;
    let small = desk.style.scale.small.size.min(size.size);
    table
        .columns
        .iter()
        .map(|column| {
            let tag = desk.tag(TagKind::ColumnHeader, row);
            let look =
                Look { figures: Figures::Tabular, ..Look::new(Face::Bold, small, colour, tag) };
            Cell::new(collect(desk, &column.heading, look), None)
        })
        .collect()
}

fn body_row<'a>(
    desk: &mut Desk<'a, '_>,
    row: &'a Row,
    table: &handout::Table,
    parent: TagId,
    size: Size,
) -> Vec<Cell<'a>> {
    let tag = desk.tag(TagKind::TableRow, parent);
    let palette = desk.style.palette;
    let face = match row.kind {
        RowKind::Body => Face::Regular,
        RowKind::Total | RowKind::Group => Face::Bold,
    };
    let mut cells = Vec::with_capacity(table.columns.len());
    for (index, column) in table.columns.iter().enumerate() {
        let inlines = row.cells.get(index).map_or(&[] as &[_], Vec::as_slice);
        let kind = if index == 0 && table.columns.len() > 1 {
            TagKind::RowHeader
        } else {
            TagKind::TableCell
        };
        let tag = desk.tag(kind, tag);
        let colour = if row.kind == RowKind::Group { palette.accent } else { palette.ink };
        let look = Look { figures: Figures::Tabular, ..Look::new(face, size.size, colour, tag) };
        let decimal = column.align == Align::Decimal && row.kind != RowKind::Group;
        let paragraph = collect(desk, inlines, look);
        let before_mark = if decimal { decimal::before_mark(&paragraph) } else { None };
        cells.push(Cell::new(paragraph, before_mark));
    }
    cells
}

fn collect<'a>(
    desk: &mut Desk<'a, '_>,
    inlines: &'a [handout::Inline],
    look: Look,
) -> Paragraph<'a> {
    let mut collector = desk.collector();
    collector.inlines(inlines, look);
    collector.finish()
}
