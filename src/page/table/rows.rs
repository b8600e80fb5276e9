use super::cell::Cell;
use crate::handout::{Align, Column, RowKind};
use crate::ink::{Colour, Palette};
use crate::page::desk::Desk;
use crate::page::inline::{self, Alignment, Dictionary, Division, Line};
use crate::page::strip::Strip;
use crate::page::style::{Size, WRITING};
use crate::page::{Mark, Role, draw};

/// Room above and below the text of a row, in parts of its leading.
const PADDING: f32 = 0.2;

/// Rules in points: under the head and around the total; between rows.
const STRONG: f32 = 0.9;
const HAIR: f32 = 0.4;

/// From the rule of a blank to the next rule of the table, so that the two are not taken
/// for a double rule.
pub(super) const CLEAR: f32 = 6.0;

/// The columns of a table on the page.
pub(super) struct Grid<'d> {
    columns: Vec<Place>,
    left: f32,
    right: f32,
    size: Size,
    head_size: f32,
    padding: f32,
    palette: Palette,
    division: Division,
    dictionary: &'d Dictionary,
}

/// A column on the page; lengths in points.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    x: f32,
    width: f32,
    align: Align,
    /// From the decimal mark to the right edge.
    after: f32,
}

/// Columns side by side from a left edge.
pub(super) fn columns(
    columns: &[Column],
    left: f32,
    gutter: f32,
    widths: &[f32],
    after: &[f32],
) -> Vec<Place> {
    let mut x = left;
    let mut places = Vec::with_capacity(columns.len());
    for ((column, &width), &after) in columns.iter().zip(widths).zip(after) {
        places.push(Place { x, width, align: column.align, after });
        x += width + gutter;
    }
    places
}

/// A cell as lines.
struct Set<'a> {
    lines: Vec<Line<'a>>,
    x: f32,
}

impl<'d> Grid<'d> {
    pub(super) fn new(desk: &Desk<'_, 'd>, columns: Vec<Place>, left: f32, size: Size) -> Self {
        Self {
            right: columns.last().map_or(left, |last| last.x + last.width),
            columns,
            left,
            size,
            head_size: desk.style.scale.small.size.min(size.size),
            padding: PADDING * size.leading,
            palette: desk.style.palette,
            division: desk.allowed(Division::Sparing),
            dictionary: desk.dictionary,
        }
    }

    /// The head: bold, over a strong rule, its last lines level.
    pub(super) fn head<'a>(&self, cells: Vec<Cell<'a>>) -> Strip<'a> {
        let sets: Vec<Set<'a>> = cells
            .iter()
            .zip(&self.columns)
            .map(|(cell, place)| {
                let alignment = match place.align {
                    Align::Left => Alignment::Left,
                    Align::Centre => Alignment::Centre,
                    Align::Decimal => Alignment::Right,
                };
                Set { lines: self.lines(cell, place.width, alignment), x: place.x }
            })
            .collect();
        let leading = self.size.leading * 0.95;
        let most = sets.iter().map(|set| set.lines.len()).max().unwrap_or(0);
        let height = most as f32 * leading + 2.0 * self.padding;
        let mut strip = Strip { height, ..Strip::default() };
        for set in sets {
            let skipped = (most - set.lines.len()) as f32 * leading;
            let mut y = self.padding + skipped + leading / 2.0 + self.head_size * 0.36;
            for line in set.lines {
                strip.add_line(line, set.x, y);
                y += leading;
            }
        }
        self.rule(&mut strip, height - STRONG / 2.0, self.palette.ink, STRONG);
        strip
    }

    /// A row; in parts only when it is higher than a page.
    pub(super) fn row<'a>(&self, cells: Vec<Cell<'a>>, kind: RowKind, page: f32) -> Vec<Strip<'a>> {
        let writing = cells.iter().any(|cell| cell.blank);
        let mut sets = self.set(&cells, kind);
        let mut strips = Vec::new();
        let most = ((page - 2.0 * self.padding) / WRITING.max(self.size.leading)).max(1.0) as usize;
        loop {
            let rest: Vec<Set<'a>> = sets
                .iter_mut()
                .map(|set| {
                    let at = most.min(set.lines.len());
                    Set { lines: set.lines.split_off(at), x: set.x }
                })
                .collect();
            let more = rest.iter().any(|set| !set.lines.is_empty());
            strips.push(self.strip(sets, kind, writing, more));
            if !more {
                return strips;
            }
            sets = rest;
        }
    }

    fn set<'a>(&self, cells: &[Cell<'a>], kind: RowKind) -> Vec<Set<'a>> {
        let whole = self.right - self.left;
        cells
            .iter()
            .zip(&self.columns)
            .enumerate()
            .map(|(index, (cell, place))| {
                if kind == RowKind::Group && index == 0 {
                    // A heading over the rows that follow has all the width.
                    let lines = self.lines(cell, whole, Alignment::Left);
                    return Set { lines, x: self.left };
                }
                self.cell(cell, *place)
            })
            .collect()
    }

    fn lines<'a>(&self, cell: &Cell<'a>, width: f32, alignment: Alignment) -> Vec<Line<'a>> {
        inline::set(&cell.paragraph, width, alignment, self.division, self.dictionary)
    }

    fn cell<'a>(&self, cell: &Cell<'a>, place: Place) -> Set<'a> {
        let set = |width, alignment| self.lines(cell, width, alignment);
        let (x, width) = (place.x, place.width);
        match (place.align, cell.before_mark) {
            (Align::Left, _) => Set { lines: set(width, Alignment::Left), x },
            (Align::Centre, _) => Set { lines: set(width, Alignment::Centre), x },
            (Align::Decimal, Some(before)) => {
                let start = (width - place.after - before).max(0.0);
                let lines = set(width - start, Alignment::Left);
                Set { lines, x: x + start }
            }
            // A dash stands where the figures before the mark end, if there is room.
            (Align::Decimal, None) if cell.most <= width - place.after => {
                Set { lines: set(width - place.after, Alignment::Right), x }
            }
            (Align::Decimal, None) => Set { lines: set(width, Alignment::Right), x },
        }
    }

    fn strip<'a>(&self, sets: Vec<Set<'a>>, kind: RowKind, writing: bool, more: bool) -> Strip<'a> {
        let leading = self.size.leading;
        let height_of = |line: &Line<'_>| line.height.max(leading);
        // The first lines of all cells share a baseline, also beside a blank, which
        // is higher than text.
        let first = |set: &Set<'_>| set.lines.first().map_or(leading, height_of);
        let highest = sets.iter().map(first).fold(leading, f32::max);
        let sunk = |set: &Set<'_>| highest - first(set);
        let text = sets
            .iter()
            .map(|set| sunk(set) + set.lines.iter().map(height_of).sum::<f32>())
            .fold(leading, f32::max);
        let ruled = sets.iter().flat_map(|set| &set.lines).any(|line| line.height > 0.0);
        // A blank has its own room above it.
        let over =
            if ruled && kind == RowKind::Body && highest >= WRITING { 0.0 } else { self.padding };
        let mut height = over + text + self.padding;
        if writing {
            height = height.max(WRITING);
        }
        let above = if kind == RowKind::Group { self.padding } else { 0.0 };
        height += above;
        let below = if ruled && kind == RowKind::Total { CLEAR } else { 0.0 };
        height += below;
        let mut strip = Strip { height, ..Strip::default() };
        if kind == RowKind::Total {
            self.rule(&mut strip, 0.0, self.palette.ink, STRONG);
        }
        // Where a row is higher for writing, its words stand at its foot.
        let spare = height - above - below - text - over - self.padding;
        for set in sets {
            let mut y = above + spare + over + sunk(&set);
            for line in set.lines {
                let line_height = height_of(&line);
                let baseline = y + line_height - leading / 2.0 + self.size.size * 0.36;
                strip.add_line(line, set.x, baseline);
                y += line_height;
            }
        }
        match kind {
            _ if more => {}
            // Blanks have rules of their own.
            RowKind::Body if ruled => {}
            RowKind::Body => self.rule(&mut strip, height, self.palette.rule, HAIR),
            RowKind::Total => self.rule(&mut strip, height, self.palette.ink, STRONG),
            RowKind::Group => self.rule(&mut strip, height, self.palette.rule, HAIR),
        }
        strip
    }

    fn rule(&self, strip: &mut Strip<'_>, y: f32, colour: Colour, width: f32) {
        let shape = draw::line((self.left, y), (self.right, y), colour, width);
        strip.marks.push(Mark { shape, role: Role::Artifact });
    }
}
