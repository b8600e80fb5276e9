//! Bars of equal length, split into the same kinds of parts: a line each, the name before
//! the bar and an amount behind it. The key stands above, in samples of the parts.

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::hatch::{Slant, hatch};
use super::style::{ACCENT, HAIRLINE, INK, LABEL, LEADING, SMALL, TITLE, WHITE, tint};
use crate::handout::{ShareRow, Shares};
use crate::ink::{Colour, Dash, Face, Faces, Point, Rect, Stroke};

const HEADING: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const NAME: Type = Type { face: Face::Regular, size: LABEL, colour: INK };
const KEY: Type = Type { face: Face::Regular, size: SMALL, colour: INK };

/// Height in points of a bar, and from one bar to the next.
const THICK: f32 = 7.5;
const STEP: f32 = 13.0;
/// Air between a bar and the words beside it.
const AIR: f32 = 7.0;
/// No bar is shorter than this part of the width.
const LEAST: f32 = 0.35;

pub(super) fn draw(data: &Shares, width: f32, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let title = board.wrap(HEADING, width, &data.title);
    let mut top = board.lines(HEADING, 0.0, 0.0, Anchor::Start, &title) + 3.0;
    top += key(&mut board, data, width, top) + 4.0;

    let widest = |texts: &mut dyn Iterator<Item = &String>| {
        texts.map(|text| board.measure(NAME, text)).fold(0.0, f32::max)
    };
    let names = widest(&mut data.rows.iter().map(|row| &row.name));
    let amounts = widest(&mut data.rows.iter().map(|row| &row.amount));
    let left = (names + AIR).min(width * (1.0 - LEAST));
    let right = (width - amounts - AIR).max(left + width * LEAST / 2.0);
    for row in &data.rows {
        let bar = Rect { x: left, y: top, width: right - left, height: THICK };
        let baseline = top + (THICK + board.capitals(NAME)) / 2.0;
        board.text(NAME, Point { x: 0.0, y: baseline }, Anchor::Start, &row.name);
        split(&mut board, row, bar);
        board.text(NAME, Point { x: width, y: baseline }, Anchor::End, &row.amount);
        top += STEP;
    }
    board.finish(width, top - STEP + THICK + 2.0)
}

/// What the parts are; the height that it takes.
fn key(board: &mut Board<'_>, data: &Shares, width: f32, top: f32) -> f32 {
    let step = KEY.size * LEADING;
    let (mut x, mut line) = (0.0, 0.0);
    for (index, name) in data.parts.iter().enumerate() {
        let room = 11.0 + board.measure(KEY, name) + 14.0;
        if x > 0.0 && x + room > width + 14.0 {
            (x, line) = (0.0, line + step);
        }
        let middle = top + line + step / 2.0;
        part(board, Rect { x, y: middle - 3.5, width: 7.5, height: 7.0 }, index);
        let y = middle + board.capitals(KEY) / 2.0;
        board.text(KEY, Point { x: x + 11.0, y }, Anchor::Start, name);
        x += room;
    }
    line + step
}

/// A bar cut in proportion to its sizes.
fn split(board: &mut Board<'_>, row: &ShareRow, bar: Rect) {
    let whole: f64 = row.sizes.iter().sum();
    let mut x = bar.x;
    for (index, size) in row.sizes.iter().enumerate() {
        let share = if whole > 0.0 { (size / whole) as f32 } else { 0.0 };
        let area = Rect { x, width: bar.width * share, ..bar };
        if share > 0.0 {
            part(board, area, index);
        }
        x += area.width;
    }
}

/// Dark, light and hatched tell the parts apart in grey too.
fn part(board: &mut Board<'_>, area: Rect, index: usize) {
    let (ground, slant): (Colour, _) = match index % 3 {
        0 => (ACCENT, None),
        1 => (tint(ACCENT, 0.2), None),
        _ => (WHITE, Some(Slant::Rising)),
    };
    board.rectangle(area, Some(ground), None);
    if let Some(slant) = slant {
        let thin = Stroke { colour: ACCENT, width: 0.7, dash: Dash::Solid };
        board.path(hatch(area, slant, 4.0), None, Some(thin));
    }
    board.rectangle(area, None, Some(Stroke { width: 0.7, ..HAIRLINE }));
}
