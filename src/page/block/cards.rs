use crate::handout::{Card, Fact, Inline};
use crate::ink::{Colour, Dash, Face, Figures, Stroke};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Alignment, Look};
use crate::page::strip::{Joint, Strip};
use crate::page::style::Size;
use crate::page::{Mark, Role, TagKind, draw};

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
    /// Size of the readings.
    reading: Size,
}

/// Cards in a grid with lines to cut along.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let page = desk.style.frame.height - 0.2;
    let columns = if column.width / 2.0 >= NARROWEST * column.text.character() { 2 } else { 1 };
    let width = column.width / columns as f32;
    let cell = Column { width, ..column };
    let (rows, sized) = fit(desk, cards, cell, page);
    let height = page / rows as f32;
    let mut cards = sized.into_iter().peekable();
    while cards.peek().is_some() {
        let mut strip = Strip { height, ..Strip::default() };
        strip.joint = Joint::Open(0.0);
        for index in 0..columns {
            let Some(mut card) = cards.next() else { break };
            let x = index as f32 * width;
            for mark in &mut card.marks {
                draw::shift(&mut mark.shape, x, 0.0);
            }
            strip.marks.extend(cut_lines(desk, column.x + x, width, height));
            card.links.clear();
            strip.add(card, 0.0);
        }
        galley.push(strip);
    }
}

/// How many rows a page has, and the cards set for it: six to a page if they fit,
/// with readings as large as fit.
fn fit<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    cell: Column,
    page: f32,
) -> (usize, Vec<Strip<'a>>) {
    let scale = desk.style.scale.clone();
    let mark = desk.tree.mark();
    for (rows, reading) in [
        (3, scale.chapter),
        (3, scale.title),
        (2, scale.display),
        (2, scale.chapter),
        (2, scale.title),
    ] {
        let mut sized = Vec::with_capacity(cards.len());
        for card in cards {
            sized.push(part(desk, Part { card, lines: &card.lines, reading }, cell));
        }
        if sized.iter().all(|card| card.height <= page / rows as f32) {
            return (rows, sized);
        }
        desk.tree.rewind(mark);
    }
    (1, divided(desk, cards, cell, page))
}

/// Cards as high as a page; one with more lines than that in as many parts as it
/// takes.
fn divided<'a>(
    desk: &mut Desk<'a, '_>,
    cards: &'a [Card],
    cell: Column,
    page: f32,
) -> Vec<Strip<'a>> {
    let reading = desk.style.scale.title;
    let mut sized = Vec::with_capacity(cards.len());
    for card in cards {
        let mark = desk.tree.mark();
        let whole = part(desk, Part { card, lines: &card.lines, reading }, cell);
        if whole.height <= page {
            sized.push(whole);
            continue;
        }
        desk.tree.rewind(mark);
        let parts = (whole.height / (page * 0.5)).ceil().max(1.0) as usize;
        let each = card.lines.len().div_ceil(parts).max(1);
        for lines in card.lines.chunks(each) {
            sized.push(part(desk, Part { card, lines, reading }, cell));
        }
    }
    sized
}

/// Dashed lines around a card, with a gap at the corners where the knife turns.
fn cut_lines(desk: &Desk<'_, '_>, x: f32, width: f32, height: f32) -> Vec<Mark> {
    let stroke = Stroke { colour: desk.style.palette.quiet, width: 0.5, dash: Dash::Dashed };
    let (right, bottom) = (x + width, height);
    [
        ((x, 0.0), (right, 0.0)),
        ((x, bottom), (right, bottom)),
        ((x, 0.0), (x, bottom)),
        ((right, 0.0), (right, bottom)),
    ]
    .into_iter()
    .map(|(from, to)| Mark { shape: draw::dashed(from, to, stroke), role: Role::Artifact })
    .collect()
}

/// One card at the left edge of the column.
fn part<'a>(desk: &mut Desk<'a, '_>, part: Part<'a>, cell: Column) -> Strip<'a> {
    let (scale, palette, grid) = (desk.style.scale.clone(), desk.style.palette, desk.style.grid());
    let padding = 1.6 * grid;
    let division = desk.tag(TagKind::Division, cell.tag);
    let inner = cell.inset(padding, padding).tagged(division);
    let mut strip = Strip { height: padding, ..Strip::default() };
    let mut text_x = inner.x;
    if let Some(colour) = part.card.swatch {
        let (width, height) = (SWATCH.0 * scale.body.leading, SWATCH.1 * scale.body.leading);
        let edge = Stroke { colour: palette.ink, width: 0.5, dash: Dash::Solid };
        let shape = draw::rectangle(inner.x, padding, width, height, Some(colour), Some(edge));
        strip.marks.push(Mark { shape, role: Role::Artifact });
        text_x += width + grid * 1.4;
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
    text(desk, &mut strip, &part.card.title, scale.title, Face::Bold, palette.ink);
    text(desk, &mut strip, &part.card.subtitle, scale.note, Face::Regular, palette.quiet);
    if part.card.swatch.is_some() {
        strip.height = strip.height.max(top + SWATCH.1 * scale.body.leading);
    }
    strip.height += grid;
    for fact in part.lines {
        line(desk, fact, inner, part.reading, &mut strip);
    }
    if !part.card.foot.is_empty() {
        let tag = desk.tag(TagKind::Paragraph, division);
        let look = Look::new(Face::Regular, scale.small.size, palette.quiet, tag);
        strip.height += grid * 0.6;
        for line in desk.words(&part.card.foot, look, Setting::ragged(inner.width)) {
            let size = scale.small;
            strip.add_line(line, inner.x, strip.height + size.leading / 2.0 + size.size * 0.36);
            strip.height += size.leading;
        }
    }
    strip.height += padding;
    strip
}

/// A line of a card: box to tick, label with its note below, big reading.
fn line<'a>(
    desk: &mut Desk<'a, '_>,
    fact: &'a Fact,
    inner: Column,
    big: Size,
    strip: &mut Strip<'a>,
) {
    let (scale, palette, grid) = (desk.style.scale.clone(), desk.style.palette, desk.style.grid());
    let tag = desk.tag(TagKind::Paragraph, inner.tag);
    let top = strip.height;
    let rule = draw::line((inner.x, top), (inner.x + inner.width, top), palette.rule, 0.5);
    strip.marks.push(Mark { shape: rule, role: Role::Artifact });
    let padding = grid * 0.4;
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
    let labels = desk.words(&fact.label, look, Setting::ragged(label_width));
    let readings =
        desk.words(&fact.value, reading_look, Setting::aligned(reading_width, Alignment::Right));
    let note_look = Look::new(Face::Regular, scale.small.size, palette.quiet, tag);
    let notes = desk.words(&fact.note, note_look, Setting::ragged(label_width));
    if let Some(tick) = tick {
        strip.add_line(tick, inner.x, baseline);
    }
    let x = inner.x + tick_width;
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
    let mut y = bottom + scale.small.size * 0.9;
    for line in notes {
        strip.add_line(line, x, y);
        bottom = y + scale.small.size * 0.3;
        y += scale.small.leading;
    }
    strip.height = (bottom + padding).max(top + 2.0 * padding + big.leading);
}
