//! A canvas with its sides folded out, to scale, with dimension lines.

use super::Drawing;
use super::board::{Anchor, Board, Type, closed};
use super::caption::{Caption, Hand};
use super::dimension::{Dimension, Run, WITHIN};
use super::middle::Middle;
use super::outline::{ellipse, perimeter, regular};
use super::sketch_frame;
use super::style::{ACCENT, HAIRLINE, INK, LABEL, LEADING, TITLE, WHITE, tint};
use crate::handout::{Outline, Unfolded};
use crate::ink::{Colour, Dash, Face, Faces, PathSegment, Point, Rect, Stroke};

const FACE: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const EDGE: Type = Type { face: Face::Regular, size: LABEL, colour: INK };
const MEASURE: Type = Type { face: Face::Regular, size: LABEL, colour: INK };

/// The canvas is cut along this line and folded along the other.
const CUT: Stroke = Stroke { colour: INK, width: 1.0, dash: Dash::Solid };
const FOLD: Stroke = Stroke { colour: INK, width: 0.6, dash: Dash::Dashed };

/// From the thing measured to its dimension line, and what the line needs beyond.
const STAND: f32 = 13.0;
const BEYOND: f32 = 7.0;
/// What the arrows and text of a low height take above it.
const LOW: f32 = 22.0;
/// From a strip to the arrows of its depth.
const CLEAR: f32 = 7.0;

/// Ends of arrows that stand outside, with the air before their text.
const TAIL: f32 = 14.0;

/// The sum of the sides has so much room beside them at least: one product stays whole.
const SUM: f32 = 64.0;

/// A face is not made smaller than this part of what there is room for.
const LEAST: f32 = 0.2;

/// The ground of a side strip; light enough to write on.
fn strip_ground() -> Colour {
    tint(ACCENT, 0.1)
}

/// Draws it for print that will be larger by a factor.
pub(super) fn draw(data: &Unfolded, width: f32, larger: f32, faces: &Faces) -> Drawing {
    let captions = Captions::of(data, Hand::new(data.blank_mm, larger));
    let depth = positive(data.depth).unwrap_or(0.0);
    match data.outline {
        Outline::Rectangle { width: w, height: h } => {
            let size = (positive(w).unwrap_or(1.0), positive(h).unwrap_or(1.0));
            cross(data, &captions, size, depth, width, faces)
        }
        Outline::Oval { width: w, height: h } => {
            let (w, h) = (positive(w).unwrap_or(1.0), positive(h).unwrap_or(1.0));
            let centre = Point { x: w / 2.0, y: h / 2.0 };
            let face = Plain {
                outline: ellipse(centre, w / 2.0, h / 2.0),
                size: (w, h),
                measured: (0.0, w),
                folds: 1,
                length: perimeter(w, h),
                corners: Vec::new(),
            };
            face_and_strip(data, &captions, face, depth, width, faces)
        }
        Outline::Polygon { sides, side } => {
            let side = positive(side).unwrap_or(1.0);
            let corners = regular(sides);
            let bounds = |of: fn(&Point) -> f32| {
                let values = corners.iter().map(of);
                let low = values.clone().fold(f32::INFINITY, f32::min);
                (low, values.fold(f32::NEG_INFINITY, f32::max))
            };
            let ((left, right), (top, bottom)) = (bounds(|p| p.x), bounds(|p| p.y));
            let at = |p: &Point| Point { x: (p.x - left) * side, y: (p.y - top) * side };
            let placed: Vec<Point> = corners.iter().map(at).collect();
            let lying = ((-0.5 - left) * side, (0.5 - left) * side);
            let face = Plain {
                outline: closed(&placed),
                size: ((right - left) * side, (bottom - top) * side),
                measured: lying,
                folds: corners.len(),
                length: corners.len() as f32 * side,
                corners,
            };
            face_and_strip(data, &captions, face, depth, width, faces)
        }
    }
}

/// The texts of a canvas's dimensions.
struct Captions<'a> {
    width: Caption<'a>,
    height: Caption<'a>,
    depth: Caption<'a>,
    middle: Caption<'a>,
}

impl<'a> Captions<'a> {
    fn of(data: &'a Unfolded, hand: Hand) -> Self {
        let caption = |text| Caption { set: MEASURE, text, hand };
        Self {
            width: caption(&data.width_label),
            height: caption(&data.height_label),
            depth: caption(&data.depth_label),
            middle: caption(&data.middle_label),
        }
    }

    /// From the thing measured to the line of its width, with room for a hand above it.
    fn stand(&self) -> f32 {
        STAND.max(self.width.over() + 1.0)
    }
}

/// A rectangle with a strip at every side.
fn cross(
    data: &Unfolded,
    captions: &Captions<'_>,
    size: (f32, f32),
    depth: f32,
    width: f32,
    faces: &Faces,
) -> Drawing {
    let mut board = Board::new(faces);
    let (whole, width) = (width, sketch_frame::room_beside(data, width));
    let left = captions.height.stacked(&board).0.max(8.0) + 10.0;
    let deep = if depth > 0.0 { captions.depth.width(&board) + TAIL + 4.0 } else { 2.0 };
    let beside = board.wrap(EDGE, (width * 0.26).max(deep).max(SUM), &data.edge_label);
    let mut right = deep.max(board.widest(EDGE, &beside) + 12.0);
    let stand = captions.stand();
    let below = stand + BEYOND;
    let fit = |right: f32| {
        ((width - left - right) / (size.0 + 2.0 * depth))
            .min((width * 0.62).min(250.0) / (size.1 + 2.0 * depth))
    };
    let across = captions.width.width(&board);
    if size.0 * fit(right) < across + WITHIN {
        right = right.max(across + TAIL);
    }
    let scale = fit(right);
    let (w, h, d) = (size.0 * scale, size.1 * scale, depth * scale);
    // The arrows of a thin strip stand in the open, above the strip at the top.
    let mut above = if d > 0.0 { captions.depth.tall(&board).max(CLEAR) + CLEAR } else { 1.0 };
    if is_low(&board, h, &captions.height) {
        above = above.max(LOW - d);
    }
    let (x, y) = (left + d, above + d);
    let face = Rect { x, y, width: w, height: h };

    if d > 0.0 {
        for strip in [
            Rect { y: y - d, height: d, ..face },
            Rect { y: y + h, height: d, ..face },
            Rect { x: x - d, width: d, ..face },
            Rect { x: x + w, width: d, ..face },
        ] {
            board.rectangle(strip, Some(strip_ground()), Some(CUT));
        }
        board.rectangle(face, Some(WHITE), Some(Stroke { colour: WHITE, ..CUT }));
        board.rectangle(face, None, Some(FOLD));
    } else {
        board.rectangle(face, Some(WHITE), Some(CUT));
    }
    let middle = Point { x: x + w / 2.0, y: y + h / 2.0 };
    face_label(&mut board, &data.face_label, middle, w - 6.0);

    let reach = x + w + d;
    if d > 0.0 {
        let lies = d >= EDGE.size * 1.3 && board.measure(EDGE, &data.edge_label) <= w - 8.0;
        if lies {
            let baseline = y + h + (d + board.capitals(EDGE)) / 2.0;
            let at = Point { x: middle.x, y: baseline };
            board.text(EDGE, at, Anchor::Middle, &data.edge_label);
        } else if !beside.is_empty() {
            let tall = EDGE.size * LEADING * beside.len() as f32;
            let top = middle.y - tall / 2.0;
            board.lines(EDGE, reach + 12.0, top, Anchor::Start, &beside);
            let from = Point { x: x + w + d / 2.0, y: middle.y };
            board.line(from, Point { x: reach + 9.5, y: middle.y }, HAIRLINE);
        }
        let at = y - d - CLEAR;
        let deep = Dimension { run: Run::Across, from: x + w, to: reach, at, edge: y };
        deep.draw(&mut board, &captions.depth);
    }
    let bottom = y + h + d;
    let across =
        Dimension { run: Run::Across, from: x, to: x + w, at: bottom + stand, edge: bottom };
    across.draw(&mut board, &captions.width);
    let at = left - (left - 10.0) / 2.0 - 6.0;
    let down = Dimension { run: Run::Down, from: y, to: y + h, at, edge: x - d };
    down.draw(&mut board, &captions.height);
    let reach = (reach + right).min(width);
    let reach = sketch_frame::frame(&mut board, data, (reach, whole), bottom + below);
    board.finish(reach, bottom + below)
}

/// A face that does not unfold into one piece with its side.
struct Plain {
    outline: Vec<PathSegment>,
    size: (f32, f32),
    /// What the width dimension measures: the whole of a round, a side of a polygon.
    measured: (f32, f32),
    /// Pieces of the strip between folds.
    folds: usize,
    /// Length of the strip.
    length: f32,
    /// Of a polygon: its corners around the origin, for a side of length 1.
    corners: Vec<Point>,
}

/// A face with its side as a strip below.
fn face_and_strip(
    data: &Unfolded,
    captions: &Captions<'_>,
    face: Plain,
    depth: f32,
    width: f32,
    faces: &Faces,
) -> Drawing {
    let mut board = Board::new(faces);
    let tall = !data.height_label.is_empty();
    let stand = captions.stand();
    let left = if tall { captions.height.stacked(&board).0 + 12.0 } else { 1.0 };
    let right = if depth > 0.0 { captions.depth.width(&board) + 16.0 } else { 2.0 };
    let length = if depth > 0.0 { face.length } else { 0.0 };
    let mut scale = ((width - right - 1.0) / length.max(f32::MIN_POSITIVE))
        .min((sketch_frame::room_beside(data, width) - left - right) / face.size.0)
        .min((width * 0.5).min(200.0) / face.size.1);
    // The arrows of a short side stand outside of it, and its text after them.
    let across = captions.width.width(&board);
    let lies = face.measured.1 - face.measured.0;
    let short = lies * scale < across + WITHIN;
    if short {
        let room = width - left.max(TAIL) - TAIL - across;
        scale = scale.min((room / face.measured.1).max(scale * LEAST));
    }
    let (w, h, d) = (face.size.0 * scale, face.size.1 * scale, depth * scale);
    // On a polygon, the line from its centre to a side.
    let down = face.corners.iter().map(|corner| corner.y).fold(0.0, f32::max);
    let side = lies * scale;
    let left = if short { left.max(TAIL - face.measured.0 * scale) } else { left };
    let middle = Middle { corners: &face.corners, side, down: down * side };
    let has_middle = down > 0.0 && !data.middle_label.is_empty();
    let notes = has_middle.then(|| {
        middle.settle(&board, (FACE, &*data.face_label), captions.middle, width - left - w)
    });
    let (aside, high) = notes.as_ref().map_or((0.0, 0.0), |n| (n.wide(&board), n.tall() - h));
    let low = if tall && is_low(&board, h, &captions.height) { LOW } else { 1.0 };
    let (x, y) = (left, low.max(high));

    let at = |p: Point| Point { x: x + p.x * scale, y: y + p.y * scale };
    let outline = face.outline.iter().map(|segment| match *segment {
        PathSegment::Move(p) => PathSegment::Move(at(p)),
        PathSegment::Line(p) => PathSegment::Line(at(p)),
        PathSegment::Cubic(a, b, c) => PathSegment::Cubic(at(a), at(b), at(c)),
        PathSegment::Close => PathSegment::Close,
    });
    let outline = outline.collect();
    board.path(outline, Some(WHITE), Some(CUT));
    match &notes {
        Some(notes) => {
            let along = x + (face.measured.0 + face.measured.1) / 2.0 * scale;
            let centre = Point { x: along, y: y + h - middle.down };
            middle.draw(&mut board, centre, notes);
        }
        None => {
            let centre = Point { x: x + w / 2.0, y: y + h / 2.0 };
            face_label(&mut board, &data.face_label, centre, w * 0.75);
        }
    }
    let (from, to) = (x + face.measured.0 * scale, x + face.measured.1 * scale);
    let dimension = Dimension { run: Run::Across, from, to, at: y + h + stand, edge: y + h };
    dimension.draw(&mut board, &captions.width);
    if tall {
        let at = (left - 12.0) / 2.0 + 3.5;
        let down = Dimension { run: Run::Down, from: y, to: y + h, at, edge: x };
        down.draw(&mut board, &captions.height);
    }
    let mut bottom = y + h + stand + BEYOND;
    let mut reach = (x + w + right.max(aside)).max(to + TAIL + across);
    // The arrows of the strip's depth stand above it.
    let clear = if d > 0.0 { CLEAR } else { 0.0 };
    reach = sketch_frame::frame(&mut board, data, (reach, width), bottom - clear);
    if d > 0.0 {
        let strip = Rect { x: 1.0, y: bottom + 8.0, width: length * scale, height: d };
        board.rectangle(strip, Some(strip_ground()), Some(CUT));
        for fold in 1..face.folds {
            let x = strip.x + strip.width * fold as f32 / face.folds as f32;
            let (top, foot) = (Point { x, y: strip.y }, Point { x, y: strip.y + d });
            board.line(top, foot, FOLD);
        }
        bottom = strip.y + d;
        let deep = Dimension {
            run: Run::Down,
            from: strip.y,
            to: bottom,
            at: strip.x + strip.width + 7.0,
            edge: strip.x + strip.width,
        };
        deep.draw(&mut board, &captions.depth);
        reach = reach.max(strip.x + strip.width + right);
        bottom = bottom.max(strip.y + d + 2.0 * 5.0 + 1.0);
        let piece = strip.width / face.folds as f32;
        let label = board.measure(EDGE, &data.edge_label);
        if d >= EDGE.size * 1.3 && label <= piece - 6.0 {
            let at = Point {
                x: strip.x + piece * ((face.folds / 2) as f32 + 0.5),
                y: strip.y + (d + board.capitals(EDGE)) / 2.0,
            };
            board.text(EDGE, at, Anchor::Middle, &data.edge_label);
        } else if !data.edge_label.is_empty() {
            let lines = board.wrap(EDGE, strip.width, &data.edge_label);
            let top = strip.y + d + 4.0;
            let tall = board.lines(EDGE, strip.x, top, Anchor::Start, &lines);
            bottom = bottom.max(top + tall);
        }
    }
    board.finish(reach.min(width), bottom)
}

/// Whether a height has no room for its text between its arrows.
fn is_low(board: &Board<'_>, height: f32, caption: &Caption<'_>) -> bool {
    height < caption.stacked(board).1 + WITHIN
}

/// Writes into the middle of a face, in as many lines as it takes.
fn face_label(board: &mut Board<'_>, label: &str, middle: Point, room: f32) {
    let lines = board.wrap(FACE, room, label);
    let tall = FACE.size * LEADING * lines.len() as f32;
    board.lines(FACE, middle.x, middle.y - tall / 2.0, Anchor::Middle, &lines);
}

fn positive(value: f64) -> Option<f32> {
    (value.is_finite() && value > 0.0).then_some(value as f32)
}
