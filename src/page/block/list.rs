use crate::handout::{Block, Inline};
use crate::ink::{Face, Figures};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Alignment, Line, Look};
use crate::page::strip::{Joint, Strip};
use crate::page::{TagId, TagKind};

/// From the left edge to the text of an item, in em: bullets, boxes to tick.
const BULLET_INDENT: f32 = 1.3;
const TICK_INDENT: f32 = 1.7;

/// Between a number and its text, in em.
const AFTER_NUMBER: f32 = 0.6;

/// Ending a page between two items, and beside the first or last of a list.
const BETWEEN_ITEMS: f32 = 8.0;
const NEAR_END: f32 = 25.0;

const BULLET: &str = "•";
static TICK: [Inline; 1] = [Inline::Tick];

/// What stands before an item.
enum Marker {
    Bullet,
    Number(String),
    /// An item that starts with a box to tick is marked by it.
    Tick,
}

/// A list, numbered from `start` if there is one.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    start: Option<u32>,
    items: &'a [Vec<Block>],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let list = desk.tag(TagKind::List, column.tag);
    let size = column.text.size;
    let ticks = items.iter().any(|item| starts_with_tick(item));
    let last = start.map(|s| s.saturating_add(items.len() as u32).saturating_sub(1));
    let indent = match last {
        Some(last) => {
            desk.width(Face::Regular, Figures::Tabular, size, &format!("{last}."))
                + AFTER_NUMBER * size
        }
        None if ticks => TICK_INDENT * size,
        None => BULLET_INDENT * size,
    };
    let short = items.iter().all(|item| matches!(item.as_slice(), [] | [Block::Paragraph(_)]));
    galley.leave(if short { column.text.leading / 4.0 } else { 0.0 });
    for (index, item) in items.iter().enumerate() {
        let marker = match start {
            _ if starts_with_tick(item) => Marker::Tick,
            Some(start) => Marker::Number(format!("{}.", start.saturating_add(index as u32))),
            None => Marker::Bullet,
        };
        let mut strips = one(desk, item, &marker, column, indent, list);
        if let (Some(first), true) = (strips.first_mut(), index > 0) {
            let ends = index == 1 || index + 1 == items.len();
            first.joint = Joint::Open(if ends { NEAR_END } else { BETWEEN_ITEMS });
            if short {
                first.gap = 0.0;
            }
        }
        galley.extend(strips);
    }
    galley.leave(column.text.leading / 2.0);
}

/// One item.
fn one<'a>(
    desk: &mut Desk<'a, '_>,
    item: &'a [Block],
    marker: &Marker,
    column: Column,
    indent: f32,
    list: TagId,
) -> Vec<Strip<'a>> {
    let tag = desk.tag(TagKind::ListItem, list);
    let label = desk.tag(TagKind::Label, tag);
    let sign = self::marker(desk, marker, label, column, indent);
    let body = desk.tag(TagKind::ListBody, tag);
    let inner = column.inset(indent, 0.0).tagged(body);
    let mut galley = Galley::default();
    match item {
        [Block::Paragraph(inlines), rest @ ..] if matches!(marker, Marker::Tick) => {
            let inlines = inlines.get(1..).unwrap_or_default();
            super::text::paragraph(desk, inlines, inner, &mut galley);
            desk.blocks(rest, inner, &mut galley);
        }
        blocks => desk.blocks(blocks, inner, &mut galley),
    }
    let mut strips = galley.finish();
    if strips.is_empty() {
        strips.push(Strip { height: column.text.leading, ..Strip::default() });
    }
    if let (Some(first), Some(sign)) = (strips.first_mut(), sign) {
        let baseline =
            first.baseline.unwrap_or(column.text.leading / 2.0 + column.text.size * 0.36);
        let body = std::mem::take(&mut first.marks);
        first.add_line(sign, column.x, baseline);
        first.marks.extend(body);
    }
    strips
}

fn marker<'a>(
    desk: &mut Desk<'a, '_>,
    marker: &Marker,
    label: TagId,
    column: Column,
    indent: f32,
) -> Option<Line<'a>> {
    let look = column.look(label);
    let setting = Setting::ragged(indent);
    match marker {
        Marker::Bullet => desk.label(BULLET.to_owned(), look, setting),
        Marker::Tick => desk.lines(&TICK, look, setting).into_iter().next(),
        Marker::Number(number) => {
            let look = Look { figures: Figures::Tabular, ..look };
            let room = indent - AFTER_NUMBER * column.text.size;
            desk.label(number.clone(), look, Setting::aligned(room + 0.1, Alignment::Right))
        }
    }
}

fn starts_with_tick(item: &[Block]) -> bool {
    match item {
        [Block::Paragraph(inlines), ..] => matches!(inlines.as_slice(), [Inline::Tick, ..]),
        _ => false,
    }
}
