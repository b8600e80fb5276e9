//! A scale that begins at a fold, for the depth of a canvas, and a ruler below it.

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::labels::{Wish, spread};
use super::ruler::{Ruler, Side, Unit};
use super::style::{HAIRLINE, INK, LABEL, LEADING, MM, SMALL};
use crate::handout::{DepthMark, EdgeGauge};
use crate::ink::{Dash, Face, Faces, Point, Rect, Stroke};

/// The edge at which the scale begins.
const FOLD: Stroke = Stroke { colour: INK, width: 1.2, dash: Dash::Solid };
const CUT: Stroke = Stroke { colour: INK, width: 0.6, dash: Dash::Dashed };
const DEPTH: Stroke = Stroke { colour: INK, width: 0.8, dash: Dash::Dashed };

/// Below the last division, and between gauge and ruler.
const FOOT: f32 = 5.0;
const BETWEEN: f32 = 16.0;
/// Half of the widest outline, so that it stays inside the drawing.
const RIM: f32 = 0.6;

/// From the left edge to the divided line, and on to the marks of canvases, in parts of the
/// width.
const SPINE: f32 = 0.2;
const MARKS: f32 = 0.32;

/// Length of the line of a mark, and from it to its name.
const MARK: f32 = 40.0;
const AIR: f32 = 7.0;

pub(super) fn draw(data: &EdgeGauge, room: f32, larger: f32, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let label = Type { face: Face::Bold, size: LABEL * larger, colour: INK };
    let numbers = Type { face: Face::Regular, size: SMALL * larger, colour: INK };
    // Whole centimetres, as many as there is room for.
    let centimetres = ((room - 2.0 * RIM) / (10.0 * MM)).max(1.0) as u32;
    let width = data.ruler.min(10 * centimetres) as f32 * MM;

    let lines = board.wrap(label, width, &data.fold_label);
    let fold = board.lines(label, RIM, 0.0, Anchor::Start, &lines) + FOOT;
    let depth = data.depth as f32 * MM;
    let units = fold + depth + FOOT + board.capitals(numbers);
    let foot = units + FOOT;
    let spine = Point { x: RIM + width * SPINE, y: fold };
    for (side, unit) in [(Side::Left, Unit::Millimetre), (Side::Right, Unit::Sixteenth)] {
        Ruler { unit, side, zero: spine, length: depth, numbers }.draw(&mut board);
    }
    board.line(spine, Point { y: fold + depth, ..spine }, HAIRLINE);
    let under = |x: f32| Point { x, y: units };
    board.text(numbers, under(spine.x - AIR), Anchor::End, &data.mm_label);
    board.text(numbers, under(spine.x + AIR), Anchor::Start, &data.inch_label);
    let marks =
        Rect { x: RIM + width * MARKS, y: fold, width: width * (1.0 - MARKS), height: depth };
    name_marks(&mut board, &data.marks, marks, Type { face: Face::Regular, ..label });
    let (left, right) = (RIM, RIM + width);
    let corners = [(left, fold), (left, foot), (right, foot), (right, fold)];
    for pair in corners.windows(2) {
        if let [from, to] = *pair {
            board.line(point(from), point(to), CUT);
        }
    }
    board.line(point((left, fold)), point((right, fold)), FOLD);

    let lines = board.wrap(label, width, &data.ruler_label);
    let top = foot + BETWEEN;
    let top = top + board.lines(label, RIM, top, Anchor::Start, &lines) + FOOT;
    let height = 2.0 * Ruler::depth(&board, numbers) + FOOT;
    let whole = Rect { x: RIM, y: top, width, height };
    for (side, unit, y) in
        [(Side::Below, Unit::Millimetre, top), (Side::Above, Unit::Sixteenth, top + height)]
    {
        let zero = Point { x: RIM, y };
        Ruler { unit, side, zero, length: width, numbers }.draw(&mut board);
    }
    board.rectangle(whole, None, Some(HAIRLINE));
    board.finish_at_true_size(width + 2.0 * RIM, top + height + RIM)
}

fn point((x, y): (f32, f32)) -> Point {
    Point { x, y }
}

/// Lines at the depths of canvases, each with its name as near as the others let it.
fn name_marks(board: &mut Board<'_>, marks: &[DepthMark], area: Rect, set: Type) {
    let reached = |mark: &&DepthMark| mark.depth > 0.0 && mark.depth as f32 * MM <= area.height;
    let marks: Vec<&DepthMark> = marks.iter().filter(reached).collect();
    let x = area.x + MARK + AIR;
    let room = area.x + area.width - x - 2.0 * AIR;
    let names: Vec<Vec<String>> =
        marks.iter().map(|mark| board.wrap(set, room, &mark.label)).collect();
    let size = |name: &Vec<String>| name.len() as f32 * set.size * LEADING;
    let place = |mark: &DepthMark| area.y + mark.depth as f32 * MM;
    let wishes: Vec<Wish> = marks
        .iter()
        .zip(&names)
        .map(|(mark, name)| Wish { centre: place(mark), size: size(name) })
        .collect();
    let Some(centres) = spread(&wishes, 1.0, area.y + AIR, area.y + area.height) else { return };
    for ((mark, name), centre) in marks.iter().zip(&names).zip(centres) {
        let y = place(mark);
        board.line(Point { x: area.x, y }, Point { x: area.x + MARK, y }, DEPTH);
        let (from, to) = (Point { x: area.x + MARK, y }, Point { x: x - 3.0, y: centre });
        board.line(from, to, HAIRLINE);
        board.lines(set, x, centre - size(name) / 2.0, Anchor::Start, name);
    }
}
