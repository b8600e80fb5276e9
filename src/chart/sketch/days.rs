//! The days after a pour, each at its place below a film that dries from the top.

use super::super::Drawing;
use super::super::board::{Anchor, Board, Type};
use super::super::style::QUIET_LINE;
use super::{FINE, NAME, OUTLINE, QUIET, WORDS, dry, wet};
use crate::handout::{DaysSketch, DrawnDay};
use crate::ink::{Faces, PathSegment, Point, Stroke};

/// Height of the wet film, and how much of it is left when it is dry through: more than is
/// true, so that the word fits in.
const FILM: f32 = 28.0;
const LEFT_DRY: f32 = 0.6;
/// When it is dry through (common practice, no source).
const DRY_THROUGH: f32 = 14.0;

/// Points between neighbours, below a row, from the film to the names of its days, and from the
/// outline to the words in the film.
const GUTTER: f32 = 9.0;
const AIR: f32 = 11.0;
const TICK: f32 = 5.0;
const INSET: f32 = 4.0;
/// Lines of what to do, at most, before days go onto another row.
const MOST_LINES: usize = 6;

pub(super) fn draw(data: &DaysSketch, width: f32, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let rows = rows(&board, &data.days, width);
    let mut top = 0.0;
    for (number, (days, widths)) in rows.iter().enumerate() {
        let next = rows.get(number + 1).and_then(|(days, _)| days.first());
        let mut lefts = Vec::new();
        let mut x = 0.0;
        for width in widths {
            lefts.push(x);
            x += width + GUTTER;
        }
        let end = next.or(days.last()).map_or(0, |day| day.day);
        film(&mut board, days, &lefts, (end, width), top);
        if number == 0 {
            let at = Point { x: INSET, y: top + FILM - INSET };
            board.text(WORDS, at, Anchor::Start, &data.soft);
        }
        if next.is_none() {
            let low = top + FILM * (1.0 - LEFT_DRY / 2.0) + board.capitals(WORDS) / 2.0;
            let at = Point { x: width - INSET, y: low };
            board.text(WORDS, at, Anchor::End, &data.dry);
        }
        let below = top + FILM;
        let mut foot = below;
        for ((day, x), width) in days.iter().zip(lefts).zip(widths) {
            foot = foot.max(written(&mut board, day, Point { x, y: below }, *width));
        }
        top = foot + AIR;
    }
    board.finish(width, (top - AIR).max(FILM))
}

/// A day below the film; where it ends.
fn written(board: &mut Board<'_>, day: &DrawnDay, at: Point, width: f32) -> f32 {
    let tick = Stroke { colour: QUIET_LINE, ..FINE };
    let x = at.x + FINE.width / 2.0;
    let mut y = at.y + TICK;
    board.line(Point { x, ..at }, Point { x, y: y + 2.0 }, tick);
    for (set, text) in [(NAME, &day.name), (QUIET, &day.date), (WORDS, &day.words)] {
        let lines = board.wrap(set, width, text);
        y += board.lines(set, at.x, y, Anchor::Start, &lines);
    }
    y
}

/// The film from the first of some days to the day at which its row ends, with what is dry on
/// top of what is soft.
fn film(board: &mut Board<'_>, days: &[DrawnDay], lefts: &[f32], end: (u32, f32), top: f32) {
    let foot = top + FILM;
    let rim = OUTLINE.width / 2.0;
    let times = days.iter().zip(lefts).map(|(day, x)| (day.day, x.max(rim)));
    let times: Vec<(u32, f32)> = times.chain([(end.0, end.1 - rim)]).collect();
    let surface = |&(day, x): &(u32, f32)| Point { x, y: foot - height(day) + rim };
    let front = |&(day, x): &(u32, f32)| Point { x, y: foot - soft(day).min(height(day) - rim) };
    let above: Vec<Point> = times.iter().map(surface).collect();
    let between: Vec<Point> = times.iter().map(front).collect();
    let floor = [Point { x: end.1 - rim, y: foot }, Point { x: rim, y: foot }];
    let whole: Vec<Point> = above.iter().chain(&floor).copied().collect();
    board.polygon(&whole, Some(wet()), None);
    let dried: Vec<Point> = above.iter().chain(between.iter().rev()).copied().collect();
    board.polygon(&dried, Some(dry()), None);
    board.path(line(&between), None, Some(FINE));
    board.polygon(&whole, None, Some(OUTLINE));
}

fn line(points: &[Point]) -> Vec<PathSegment> {
    let step = |(number, &at): (usize, &Point)| {
        if number == 0 { PathSegment::Move(at) } else { PathSegment::Line(at) }
    };
    points.iter().enumerate().map(step).collect()
}

/// How far drying has come: fast at first, then slower and slower, as what is dry already holds
/// the rest back.
fn progress(day: u32) -> f32 {
    (day as f32 / DRY_THROUGH).min(1.0).sqrt()
}

/// Of the film, and of what is soft in it.
fn height(day: u32) -> f32 {
    FILM * (1.0 - (1.0 - LEFT_DRY) * progress(day))
}

fn soft(day: u32) -> f32 {
    height(day) * (1.0 - progress(day))
}

/// Days in rows as even as they can be, with the width of each.
fn rows<'d>(
    board: &Board<'_>,
    days: &'d [DrawnDay],
    width: f32,
) -> Vec<(&'d [DrawnDay], Vec<f32>)> {
    for count in 1..=days.len() {
        let rows = days.chunks(days.len().div_ceil(count));
        let rows: Option<Vec<_>> =
            rows.map(|days| Some((days, widths(board, days, width)?))).collect();
        if let Some(rows) = rows {
            return rows;
        }
    }
    days.chunks(1).map(|day| (day, vec![width])).collect()
}

/// Widths for days side by side that make the longest of them short; `None` where they are too
/// many.
fn widths(board: &Board<'_>, days: &[DrawnDay], width: f32) -> Option<Vec<f32>> {
    let gutters = GUTTER * days.len().saturating_sub(1) as f32;
    (1..=MOST_LINES).find_map(|lines| {
        let needed: Vec<f32> = days.iter().map(|day| narrowest(board, day, lines)).collect();
        let spare = width - gutters - needed.iter().sum::<f32>();
        let each = spare / days.len().max(1) as f32;
        (spare >= 0.0).then(|| needed.iter().map(|width| width + each).collect())
    })
}

/// The least width at which what to do takes so many lines.
fn narrowest(board: &Board<'_>, day: &DrawnDay, lines: usize) -> f32 {
    let widest = |set: Type, text: &str| {
        text.split(' ').map(|word| board.measure(set, word)).fold(0.0, f32::max)
    };
    let mut width =
        widest(WORDS, &day.words).max(widest(QUIET, &day.date)).max(board.measure(NAME, &day.name));
    let whole = board.measure(WORDS, &day.words);
    while width < whole && board.wrap(WORDS, width, &day.words).len() > lines {
        width += 2.0;
    }
    width
}
