use crate::handout::Fact;
use crate::ink::{Colour, Face, Figures};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Line, Look};
use crate::page::strip::{Joint, Snap, Strip};
use crate::page::style::Size;
use crate::page::{Mark, Role, TagId, TagKind, draw};

/// Labelled values side by side, at most so many in a row.
const MOST_IN_ROW: usize = 4;

/// How a row of facts is set.
pub(super) struct FactStyle {
    pub label: Size,
    pub label_colour: Colour,
    /// Sizes for the values, largest first: all values of a row take the first at
    /// which each fits its cell on one line.
    pub values: Vec<Size>,
    pub value_colour: Colour,
    pub note: Size,
    pub note_colour: Colour,
    /// Between cells.
    pub gutter: f32,
}

/// Big numbers on a tinted band.
pub(super) fn key_figures<'a>(
    desk: &mut Desk<'a, '_>,
    facts: &'a [Fact],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let (scale, palette) = (&desk.style.scale, desk.style.palette);
    let grid = desk.style.grid();
    let style = FactStyle {
        label: scale.note,
        label_colour: palette.ink,
        values: vec![scale.display, scale.chapter, scale.title, scale.large],
        value_colour: palette.accent,
        note: scale.small,
        note_colour: palette.quiet,
        gutter: 2.0 * grid,
    };
    let division = desk.tag(TagKind::Division, column.tag);
    let inner = column.inset(1.5 * grid, 1.5 * grid).tagged(division);
    let rows = rows(desk, facts, inner, &style);
    let count = rows.len();
    for (index, row) in rows.into_iter().enumerate() {
        let height = row.height + 2.0 * grid;
        let ground = Some(palette.tint);
        let shape = draw::rectangle(column.x, 0.0, column.width, height, ground, None);
        let mut strip = Strip { height, ..Strip::default() };
        strip.marks.push(Mark { shape, role: Role::Artifact });
        strip.add(row, grid);
        if index == 0 {
            (strip.gap, strip.snap) = (grid, Snap::Grid);
        } else {
            strip.joint = if index + 1 == count { Joint::Glued } else { Joint::Open(40.0) };
        }
        galley.push(strip);
    }
    galley.leave(1.5 * grid);
}

/// Facts in rows, a strip a row.
pub(super) fn rows<'a>(
    desk: &mut Desk<'a, '_>,
    facts: &'a [Fact],
    column: Column,
    style: &FactStyle,
) -> Vec<Strip<'a>> {
    let most = ((column.width / (11.0 * style.label.character() + style.gutter)) as usize)
        .clamp(1, MOST_IN_ROW);
    let cell_width = |count: usize| {
        (column.width - style.gutter * count.saturating_sub(1) as f32) / count.max(1) as f32
    };
    let fits = |desk: &Desk<'_, '_>, size: Size, count: usize| {
        let (width, figures) = (cell_width(count), Figures::Proportional);
        facts.iter().all(|f| desk.width(Face::Bold, figures, size.size, &f.value) <= width)
    };
    // Five facts stand better as three and two than as four and one; and fewer stand
    // in a row where a value would not fit on a line.
    let even = |most: usize| facts.len().div_ceil(facts.len().div_ceil(most).max(1)).max(1);
    let smallest = style.values.last().copied().unwrap_or(style.note);
    let in_row = (2..=most.max(2)).rev().map(even).find(|&count| fits(desk, smallest, count));
    let in_row = in_row.unwrap_or_else(|| even(2));
    let value = style.values.iter().copied().find(|&size| fits(desk, size, in_row));
    let value = value.unwrap_or(smallest);
    facts
        .chunks(in_row)
        .map(|row| self::row(desk, row, column, cell_width(in_row), value, style))
        .collect()
}

fn row<'a>(
    desk: &mut Desk<'a, '_>,
    facts: &'a [Fact],
    column: Column,
    width: f32,
    value: Size,
    style: &FactStyle,
) -> Strip<'a> {
    let mut cells = Vec::with_capacity(facts.len());
    for fact in facts {
        let tag = desk.tag(TagKind::Paragraph, column.tag);
        cells.push(cell(desk, fact, width, value, style, tag));
    }
    // Values stand on one line even where a label takes two.
    let label = cells.iter().map(|cell| cell.label.len()).max().unwrap_or(0) as f32;
    let mut strip = Strip::default();
    for (index, cell) in cells.into_iter().enumerate() {
        let x = column.x + index as f32 * (width + style.gutter);
        let skipped = label - cell.label.len() as f32;
        let mut y = skipped * style.label.leading;
        for (lines, size) in
            [(cell.label, style.label), (cell.value, value), (cell.note, style.note)]
        {
            for line in lines {
                strip.add_line(line, x, y + size.leading / 2.0 + size.size * 0.36);
                y += size.leading;
            }
        }
        strip.height = strip.height.max(y);
    }
    strip
}

struct Cell<'a> {
    label: Vec<Line<'a>>,
    value: Vec<Line<'a>>,
    note: Vec<Line<'a>>,
}

fn cell<'a>(
    desk: &mut Desk<'a, '_>,
    fact: &'a Fact,
    width: f32,
    value: Size,
    style: &FactStyle,
    tag: TagId,
) -> Cell<'a> {
    let setting = Setting::ragged(width);
    let label = Look::new(Face::Regular, style.label.size, style.label_colour, tag);
    let number = Look::new(Face::Bold, value.size, style.value_colour, tag);
    let note = Look::new(Face::Regular, style.note.size, style.note_colour, tag);
    Cell {
        label: desk.words_before(&fact.value, &fact.label, label, setting),
        value: desk.words_before(&fact.note, &fact.value, number, setting),
        note: desk.words(&fact.note, note, setting),
    }
}
