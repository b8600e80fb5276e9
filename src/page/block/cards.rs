use crate::handout::{Card, Fact, Inline};
use crate::ink::{Colour, Dash, Face, Figures, Stroke};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Alignment, Look};
use crate::page::strip::Strip;
use crate::page::style::Size;
use crate::page::{Mark, Role, TagKind, draw};

use super::cut::{self, Piece};

/// A card is at least this many characters of body text wide.
const NARROWEST: f32 = 36.0;

/// Width and height of the swatch, in leadings of the body.
const SWATCH: (f32, f32) = (2.6, 2.0);

/// Part of a line's width that its reading takes at most.
const READING: f32 = 0.5;

static TICK: [Inline; 1] = [Inline::Tick];

/// A part of a card: all of it, unless it has more lines than a page can hold.
#[derive(Clone, Copy)]
struct Part<'a> {
    card: &'a Card,
    lines: &'a [Fact],
    sizes: Sizes,
    /// Height of its head at least, so that the lines of neighbours are level.
    head: f32,
}

/// Type sizes of a card: the readings are larger than anything else on it.
#[derive(Clone, Copy)]
struct Sizes {
    name: Size,
    reading: Size,
    /// Part of the usual room between things.
    air: f32,
    notes: Notes,
}

/// Where the note of a line stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Notes {
    Below,
    /// Between label and reading, if there is room; below else.
    Beside,
}

/// Room within the edges of a card, in steps of the grid.
const PADDING: f32 = 1.4;

/// Cards in a grid with lines to cut along.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    column: Column,
    galley: &mut Galley<'a>,
) {
    // What is said of the size stands, and is heard, before the cards.
    let saying = desk.style.scale.small.leading + cut::BELOW;
    let (filled, mut page) = (galley.filled(), desk.style.frame.height - 0.2);
    if filled == 0.0 {
        // It stands on the page of the first cards, and all are of one size.
        page -= saying;
    }
    let columns = if column.width / 2.0 >= NARROWEST * column.text.character() { 2 } else { 1 };
    let width = cut::down_to_mm(column.width / columns as f32);
    galley.leave(1.5 * desk.style.grid());
    let cell = Column { width, ..column };
    let first = if filled == 0.0 { page } else { page - galley.filled() - saying };
    let room = Room { first, page };
    let mark = desk.tree.mark();
    let tag = desk.tag(TagKind::Paragraph, column.tag);
    let mut rows = fewest_pages(desk, cards, cell, columns, room);
    let height = rows.iter().map(|row| row.height).fold(0.0, f32::max);
    if rows.iter().all(|row| (row.height - height).abs() < 0.1) {
        let said = cut::said(desk, Piece { width, height }, column, tag);
        galley.extend(said);
    } else {
        desk.tree.rewind(mark);
        rows = fewest_pages(desk, cards, cell, columns, room);
    }
    let mut strips = Vec::with_capacity(rows.len());
    for Row { height, cards } in rows {
        let mut strip = Strip { height, ..Strip::default() };
        for (index, mut card) in cards.into_iter().enumerate() {
            let x = index as f32 * width;
            card.shift_right(x);
            strip.marks.extend(cut::lines(desk, column.x + x, Piece { width, height }));
            card.links.clear();
            strip.add(card, 0.0);
        }
        strips.push(strip);
    }
    galley.leave(cut::BELOW);
    galley.extend(strips);
}

/// Cards side by side.
struct Row<'a> {
    height: f32,
    cards: Vec<Strip<'a>>,
}

/// Height for rows: what the page that is begun has left, and a whole page.
#[derive(Clone, Copy)]
struct Room {
    first: f32,
    page: f32,
}

impl Room {
    /// How many pages the rows take from here on.
    fn pages(self, rows: &[Row<'_>]) -> usize {
        let (mut pages, mut left) = (1, self.first);
        for row in rows {
            if row.height > left + 0.1 {
                pages += 1;
                left = self.page;
            }
            left -= row.height;
        }
        pages
    }
}

/// Rows of one height, closer set where that takes fewer pages; only cards that no page holds
/// are as high as they need.
fn fewest_pages<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    cell: Column,
    columns: usize,
    room: Room,
) -> Vec<Row<'a>> {
    let scale = desk.style.scale.clone();
    let mark = desk.tree.mark();
    let large = fit(desk, cards, cell, columns, room.page);
    let pages = room.pages(&large);
    if columns == 1 || pages == 1 {
        return large;
    }
    let notes = Notes::Below;
    let medium = Sizes { reading: scale.chapter, name: scale.title, air: 1.0, notes };
    let close = Sizes { name: scale.large, air: 0.6, ..medium };
    let small = Sizes { reading: scale.title, ..close };
    for sizes in [medium, close, small, Sizes { air: 0.4, ..small }] {
        desk.tree.rewind(mark);
        let rows = alike(rows(desk, cards, cell, columns, sizes));
        if room.pages(&rows) < pages && rows.iter().all(|row| row.height <= room.page) {
            return rows;
        }
    }
    desk.tree.rewind(mark);
    fit(desk, cards, cell, columns, room.page)
}

/// All rows as high as the highest, in whole millimetres.
fn alike(rows: Vec<Row<'_>>) -> Vec<Row<'_>> {
    let height = rows.iter().map(|row| cut::up_to_mm(row.height)).fold(0.0, f32::max);
    rows.into_iter().map(|row| Row { height, ..row }).collect()
}

/// The cards in rows: six to a page if they fit, with readings as large as fit; cards
/// that need more than half a page are as high as the highest of them.
fn fit<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    cell: Column,
    columns: usize,
    page: f32,
) -> Vec<Row<'a>> {
    let scale = desk.style.scale.clone();
    let mark = desk.tree.mark();
    // A card as wide as the page has room for its notes on the lines themselves.
    let notes = if columns > 1 { Notes::Below } else { Notes::Beside };
    let large = Sizes { reading: scale.display, name: scale.title, air: 1.0, notes };
    let medium = Sizes { reading: scale.chapter, ..large };
    let close = Sizes { air: 0.8, ..medium };
    let small = Sizes { reading: scale.title, name: scale.large, air: 0.6, notes };
    let wishes = match notes {
        Notes::Below => vec![(3, medium), (3, small), (2, large), (2, medium), (2, small)],
        Notes::Beside => {
            vec![(3, medium), (3, small), (2, large), (2, medium), (2, close), (2, small)]
        }
    };
    for (count, sizes) in wishes {
        let height = cut::down_to_mm(page / count as f32);
        let rows = rows(desk, cards, cell, columns, sizes);
        if rows.iter().flat_map(|row| &row.cards).all(|card| card.height <= height) {
            return rows.into_iter().map(|row| Row { height, ..row }).collect();
        }
        desk.tree.rewind(mark);
    }
    let rows = alike(rows(desk, cards, cell, columns, medium));
    if rows.iter().all(|row| row.height <= page) {
        return rows;
    }
    desk.tree.rewind(mark);
    divided(desk, cards, cell, page, small)
}

/// Cards in rows as high as the highest of each; the lines of neighbours are level.
fn rows<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    cell: Column,
    columns: usize,
    sizes: Sizes,
) -> Vec<Row<'a>> {
    let mut rows = Vec::with_capacity(cards.len().div_ceil(columns));
    for cards in cards.chunks(columns) {
        let mut head = 0.0_f32;
        for card in cards {
            head = head.max(head_height(desk, card, cell, sizes));
        }
        let mut row = Row { height: 0.0, cards: Vec::with_capacity(columns) };
        for card in cards {
            let set = part(desk, Part { card, lines: &card.lines, sizes, head }, cell);
            row.height = row.height.max(set.height);
            row.cards.push(set);
        }
        rows.push(row);
    }
    rows
}

/// One card a row; one with more lines than a page holds in as many parts as it takes.
fn divided<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    cell: Column,
    page: f32,
    sizes: Sizes,
) -> Vec<Row<'a>> {
    let mut rows = Vec::with_capacity(cards.len());
    let mut add = |card: Strip<'a>| rows.push(Row { height: card.height, cards: vec![card] });
    for card in cards {
        let mark = desk.tree.mark();
        let whole = part(desk, Part { card, lines: &card.lines, sizes, head: 0.0 }, cell);
        if whole.height <= page {
            add(whole);
            continue;
        }
        desk.tree.rewind(mark);
        let parts = (whole.height / (page * 0.5)).ceil().max(1.0) as usize;
        let each = card.lines.len().div_ceil(parts).max(1);
        for lines in card.lines.chunks(each) {
            add(part(desk, Part { card, lines, sizes, head: 0.0 }, cell));
        }
    }
    rows
}

/// What the swatch of a card takes from the width of its head.
fn swatch_room(desk: &Desk<'_, '_>, card: &Card) -> f32 {
    let width = SWATCH.0 * desk.style.scale.body.leading + desk.style.grid() * 1.4;
    if card.swatch.is_some() { width } else { 0.0 }
}

/// Between the edges of a card that are cut and what stands on it, however close its lines.
fn sides(desk: &Desk<'_, '_>, sizes: Sizes) -> f32 {
    PADDING * desk.style.grid() * sizes.air.max(0.8)
}

/// Height of the name and what stands under it.
fn head_height<'a>(desk: &mut Desk<'a, '_>, card: &'a Card, cell: Column, sizes: Sizes) -> f32 {
    let note = desk.style.scale.note;
    let colour = desk.style.palette.ink;
    let room = cell.width - 2.0 * sides(desk, sizes) - swatch_room(desk, card);
    let setting = Setting::ragged(room);
    let name = Look::new(Face::Bold, sizes.name.size, colour, cell.tag);
    let names = desk.words(&card.title, name, setting).len() as f32;
    let below = Look::new(Face::Regular, note.size, colour, cell.tag);
    let lines = desk.words(&card.subtitle, below, setting).len() as f32;
    names * sizes.name.leading + lines * note.leading
}

/// One card at the left edge of the column.
fn part<'a>(desk: &mut Desk<'a, '_>, part: Part<'a>, cell: Column) -> Strip<'a> {
    let (scale, palette, grid) = (desk.style.scale.clone(), desk.style.palette, desk.style.grid());
    let air = grid * part.sizes.air;
    let padding = PADDING * air;
    let division = desk.tag(TagKind::Division, cell.tag);
    let sides = sides(desk, part.sizes);
    let inner = cell.inset(sides, sides).tagged(division);
    let mut strip = Strip { height: padding, ..Strip::default() };
    let text_x = inner.x + swatch_room(desk, part.card);
    if let Some(colour) = part.card.swatch {
        let (width, height) = (SWATCH.0 * scale.body.leading, SWATCH.1 * scale.body.leading);
        let edge = Stroke { colour: palette.ink, width: 0.5, dash: Dash::Solid };
        let shape = draw::rectangle(inner.x, padding, width, height, Some(colour), Some(edge));
        strip.marks.push(Mark { shape, role: Role::Artifact });
    }
    let head = Setting::ragged(inner.x + inner.width - text_x);
    let text = |desk: &mut Desk<'a, '_>,
                strip: &mut Strip<'a>,
                words: &'a str,
                size: Size,
                face: Face,
                colour: Colour| {
        let tag = desk.tag(TagKind::Paragraph, division);
        for line in desk.words(words, Look::new(face, size.size, colour, tag), head) {
            strip.add_line(line, text_x, strip.height + size.leading / 2.0 + size.size * 0.36);
            strip.height += size.leading;
        }
    };
    let top = strip.height;
    text(desk, &mut strip, &part.card.title, part.sizes.name, Face::Bold, palette.ink);
    text(desk, &mut strip, &part.card.subtitle, scale.note, Face::Regular, palette.quiet);
    let least = if part.card.swatch.is_some() { SWATCH.1 * scale.body.leading } else { 0.0 };
    strip.height = strip.height.max(top + least.max(part.head)) + air;
    let labels = widest_label(desk, &part, inner);
    for fact in part.lines {
        line(desk, fact, inner, (part.sizes, labels), &mut strip);
    }
    if !part.card.foot.is_empty() {
        let tag = desk.tag(TagKind::Paragraph, division);
        let look = Look::new(Face::Regular, scale.small.size, palette.quiet, tag);
        strip.height += air * 0.6;
        for line in desk.words(&part.card.foot, look, Setting::ragged(inner.width)) {
            let size = scale.small;
            strip.add_line(line, inner.x, strip.height + size.leading / 2.0 + size.size * 0.36);
            strip.height += size.leading;
        }
    }
    strip.height += padding;
    strip
}

/// Width of the widest label of a part.
fn widest_label(desk: &Desk<'_, '_>, part: &Part<'_>, inner: Column) -> f32 {
    let (figures, size) = (Figures::Proportional, inner.text.size);
    let width = |fact: &Fact| desk.width(Face::Regular, figures, size, &fact.label);
    part.lines.iter().map(width).fold(0.0, f32::max)
}

/// A line of a card: box to tick, label with its note, big reading.
fn line<'a>(
    desk: &mut Desk<'a, '_>,
    fact: &'a Fact,
    inner: Column,
    (sizes, widest_label): (Sizes, f32),
    strip: &mut Strip<'a>,
) {
    let (scale, palette, grid) = (desk.style.scale.clone(), desk.style.palette, desk.style.grid());
    let tag = desk.tag(TagKind::Paragraph, inner.tag);
    let top = strip.height;
    let rule = draw::line((inner.x, top), (inner.x + inner.width, top), palette.rule, 0.5);
    strip.marks.push(Mark { shape: rule, role: Role::Artifact });
    let (big, padding) = (sizes.reading, grid * sizes.air * 0.4);
    // Label, reading and box share a baseline.
    let baseline = top + padding + big.leading / 2.0 + big.size * 0.36;
    let look = inner.look(tag);
    let tick = desk.lines(&TICK, look, Setting::ragged(inner.width)).into_iter().next();
    let tick_width = tick.as_ref().map_or(0.0, |tick| tick.width) + grid * 0.8;
    let reading_look =
        Look { figures: Figures::Tabular, ..Look::new(Face::Bold, big.size, palette.ink, tag) };
    let reading_width = desk
        .faces
        .measure(Face::Bold, Figures::Tabular, big.size, &fact.value)
        .min(inner.width * READING)
        + 0.5;
    let label_width = (inner.width - tick_width - reading_width - grid).max(24.0);
    let setting = Setting::ragged(label_width);
    let labels = desk.words_before(&fact.value, &fact.label, look, setting);
    let setting = Setting::aligned(reading_width, Alignment::Right);
    let readings = desk.words_before(&fact.note, &fact.value, reading_look, setting);
    let note_look = Look::new(Face::Regular, scale.small.size, palette.quiet, tag);
    let notes = desk.words(&fact.note, note_look, Setting::ragged(label_width));
    if let Some(tick) = tick {
        strip.add_line(tick, inner.x, baseline);
    }
    let x = inner.x + tick_width;
    let aside = widest_label + 1.2 * grid;
    let width = notes.iter().map(|note| note.width).fold(0.0, f32::max);
    let beside =
        sizes.notes == Notes::Beside && notes.len() == 1 && aside + width <= label_width + 0.1;
    let mut y = baseline;
    for line in labels {
        strip.add_line(line, x, y);
        y += inner.text.leading;
    }
    let mut bottom = y - inner.text.leading + inner.text.size * 0.4;
    let mut y = baseline;
    for line in readings {
        strip.add_line(line, inner.x + inner.width - reading_width, y);
        bottom = bottom.max(y + big.size * 0.3);
        y += big.leading;
    }
    let (x, mut y) =
        if beside { (x + aside, baseline) } else { (x, bottom + scale.small.size * 0.9) };
    for line in notes {
        strip.add_line(line, x, y);
        bottom = bottom.max(y + scale.small.size * 0.3);
        y += scale.small.leading;
    }
    strip.height = (bottom + padding).max(top + 2.0 * padding + big.leading);
}
