//! Tables: rows that never split, figures on the decimal mark, horizontal rules.
//!
//! Stages: `cell` (inlines to what a cell needs), `widths` (columns from their
//! content), `rows` (strips), `breaks` (where a page may end). In: a table and the column it stands in. Out: strips,
//! each with the head to repeat. Must not know: where pages end.

mod breaks;
mod cell;
mod decimal;
mod rows;
mod widths;

use std::rc::Rc;

use super::block::{Joints, text_strips};
use super::desk::{Column, Desk, Place, Setting};
use super::galley::Galley;
use super::inline::{Look, Paragraph};
use super::strip::{Give, Joint, Reach, Snap, Strip, stack};
use super::style::Size;
use super::{TagId, TagKind};
use crate::handout::{self, Align, Row, RowKind};
use crate::ink::{Face, Figures};
use cell::Cell;
use rows::Grid;

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
    let again = table.rows.iter().map(|row| again(desk, row, tag, size)).collect();
    let cells = Cells { head, body, again };
    strips(desk, &table.rows, &grid_of_cells, cells, gap, &mut rows);
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

/// The cells of a table, with the heads of its groups as they stand where a group goes on.
struct Cells<'a> {
    head: Vec<Cell<'a>>,
    body: Vec<Vec<Cell<'a>>>,
    again: Vec<Option<Cell<'a>>>,
}

/// Head and rows as strips on the galley.
fn strips<'a>(
    desk: &Desk<'a, '_>,
    rows: &[Row],
    grid: &Grid<'_>,
    cells: Cells<'a>,
    gap: f32,
    galley: &mut Galley<'a>,
) {
    let Cells { head, body, again } = cells;
    let headed = head.iter().any(|cell| !cell.paragraph.is_empty());
    let mut head_strip = None;
    if headed {
        let mut strip = grid.head(head);
        head_strip = Some(strip.clone());
        strip.gap = gap;
        galley.push(strip);
        galley.glue();
    }
    // What stands over a row that starts a page: the head, and that of its group.
    let over_table = head_strip.clone().map(Rc::new);
    let mut over = over_table.clone();
    let mut joints = breaks::joints(rows).into_iter();
    let mut by_hand = false;
    for (index, ((cells, row), again)) in body.into_iter().zip(rows).zip(again).enumerate() {
        if row.kind != RowKind::Body {
            over.clone_from(&over_table);
        }
        let room = desk.style.frame.height - over.as_ref().map_or(0.0, |head| head.height);
        let joint = joints.next().unwrap_or_default();
        let before = std::mem::replace(&mut by_hand, cells.iter().any(Cell::is_by_hand));
        for (part, mut strip) in grid.row(cells, row.kind, room).into_iter().enumerate() {
            strip.head.clone_from(&over);
            strip.joint = if part == 0 { joint } else { Joint::Open(400.0) };
            if index == 0 && part == 0 && !headed {
                strip.gap = gap;
                strip.joint = Joint::Open(0.0);
            }
            if before && part == 0 && row.kind == RowKind::Total {
                (strip.gap, strip.give) = (rows::CLEAR, Give::Firm);
            }
            strip.snap = Snap::Free;
            galley.push(strip);
        }
        if let Some(again) = again {
            let group = grid.row(vec![again], RowKind::Group, room);
            over = Some(Rc::new(stack(head_strip.iter().cloned().chain(group).collect())));
        }
    }
}

/// The heading of a group once more, with the word that says so.
fn again<'a>(desk: &mut Desk<'a, '_>, row: &'a Row, parent: TagId, size: Size) -> Option<Cell<'a>> {
    let heading = row.cells.first().filter(|_| row.kind == RowKind::Group)?;
    let look = Look::new(Face::Bold, size.size, desk.style.palette.accent, parent);
    let continued = desk.continued;
    let mut collector = desk.collector();
    collector.inlines(heading, look);
    collector.plain(continued, look);
    Some(Cell::new(collector.finish(), None))
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

/// What the first cells of rows are. They head their rows; but where headings would outnumber
/// the cells that they head, as in a table of two columns, hearing all of them is no help.
fn first_of_row(table: &handout::Table) -> TagKind {
    let (columns, rows) = (table.columns.len(), table.rows.len());
    let headings = columns + rows;
    if headings <= rows * columns.saturating_sub(1) {
        TagKind::RowHeader
    } else {
        TagKind::TableCell
    }
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
        let kind = if index == 0 { first_of_row(table) } else { TagKind::TableCell };
        let tag = desk.tag(kind, tag);
        let colour = if row.kind == RowKind::Group { palette.accent } else { palette.ink };
        let look = Look { figures: Figures::Tabular, ..Look::new(face, size.size, colour, tag) };
        let decimal = column.align == Align::Decimal && row.kind != RowKind::Group;
        let paragraph = collect(desk, inlines, look);
        let before_mark =
            if decimal { decimal::before_mark(&paragraph, desk.decimal) } else { None };
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
