//! Draws in the units of a small sheet that is laid onto the board smaller or larger; lines
//! keep their width.

use super::super::board::Board;
use super::super::dimension::ARROW;
use super::super::outline::ellipse;
use super::super::style::INK;
use super::{FINE, OUTLINE};
use crate::ink::{Colour, PathSegment, Point, Stroke};

/// A step of a path on the small sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Step {
    Move(f32, f32),
    Line(f32, f32),
    /// Two control points, then the end.
    Curve([f32; 6]),
}

/// A sheet with its top left corner somewhere on the board.
pub(super) struct Pencil<'b, 'f> {
    pub board: &'b mut Board<'f>,
    pub origin: Point,
    /// Points to a unit.
    pub scale: f32,
}

impl Pencil<'_, '_> {
    pub fn at(&self, (x, y): (f32, f32)) -> Point {
        Point { x: self.origin.x + x * self.scale, y: self.origin.y + y * self.scale }
    }

    fn path(&self, steps: &[Step]) -> Vec<PathSegment> {
        let segment = |step: &Step| match *step {
            Step::Move(x, y) => PathSegment::Move(self.at((x, y))),
            Step::Line(x, y) => PathSegment::Line(self.at((x, y))),
            Step::Curve([a, b, c, d, x, y]) => {
                PathSegment::Cubic(self.at((a, b)), self.at((c, d)), self.at((x, y)))
            }
        };
        steps.iter().map(segment).collect()
    }

    /// An open line.
    pub fn line(&mut self, stroke: Stroke, steps: &[Step]) {
        let segments = self.path(steps);
        self.board.path(segments, None, Some(stroke));
    }

    /// A closed ground without an outline.
    pub fn ground(&mut self, ground: Colour, steps: &[Step]) {
        let segments = self.closed(steps);
        self.board.path(segments, Some(ground), None);
    }

    /// A thing: a ground within its outline.
    pub fn thing(&mut self, ground: Colour, steps: &[Step]) {
        let segments = self.closed(steps);
        self.board.path(segments, Some(ground), Some(OUTLINE));
    }

    /// An outline around what is drawn already.
    pub fn outline(&mut self, steps: &[Step]) {
        let segments = self.closed(steps);
        self.board.path(segments, None, Some(OUTLINE));
    }

    fn closed(&self, steps: &[Step]) -> Vec<PathSegment> {
        let mut segments = self.path(steps);
        segments.push(PathSegment::Close);
        segments
    }

    /// A round thing, or one seen aslant.
    pub fn round(&mut self, ground: Colour, centre: (f32, f32), radii: (f32, f32)) {
        let segments = ellipse(self.at(centre), radii.0 * self.scale, radii.1 * self.scale);
        self.board.path(segments, Some(ground), Some(FINE));
    }

    /// A grain of pigment or plastic.
    pub fn grain(&mut self, centre: (f32, f32)) {
        let radius = GRAIN * self.scale;
        self.board.path(ellipse(self.at(centre), radius, radius), Some(INK), None);
    }

    /// Rows of grains over an area, as far from one another as from its sides.
    pub fn grains(&mut self, from: (f32, f32), to: (f32, f32), (columns, rows): (u16, u16)) {
        let step = |from: f32, to: f32, count: u16| (to - from) / f32::from(count.max(1));
        let (dx, dy) = (step(from.0, to.0, columns), step(from.1, to.1, rows));
        for row in 0..rows {
            // Every other row stands in the gaps of the one above.
            let shift = if row % 2 == 0 { 0.3 } else { 0.7 };
            for column in 0..columns {
                let x = from.0 + dx * (f32::from(column) + shift);
                self.grain((x, from.1 + dy * (f32::from(row) + 0.5)));
            }
        }
    }

    /// An arrow with its tip at the end.
    pub fn arrow(&mut self, from: (f32, f32), to: (f32, f32)) {
        let (from, to) = (self.at(from), self.at(to));
        let length = (to.x - from.x).hypot(to.y - from.y).max(f32::EPSILON);
        let (dx, dy) = ((to.x - from.x) / length, (to.y - from.y) / length);
        let back = Point { x: to.x - dx * ARROW.0, y: to.y - dy * ARROW.0 };
        let side =
            |sign: f32| Point { x: back.x - dy * ARROW.1 * sign, y: back.y + dx * ARROW.1 * sign };
        self.board.line(from, back, FINE);
        self.board.polygon(&[to, side(1.0), side(-1.0)], Some(INK), None);
    }
}

/// Radius of a grain.
const GRAIN: f32 = 0.9;

/// A box by its corners.
pub(super) fn block(left: f32, top: f32, right: f32, bottom: f32) -> [Step; 4] {
    [
        Step::Move(left, top),
        Step::Line(right, top),
        Step::Line(right, bottom),
        Step::Line(left, bottom),
    ]
}

/// Steps turned clockwise about a point.
pub(super) fn turned(steps: &[Step], (cx, cy): (f32, f32), degrees: f32) -> Vec<Step> {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let turn = |x: f32, y: f32| {
        let (x, y) = (x - cx, y - cy);
        (cx + x * cos - y * sin, cy + x * sin + y * cos)
    };
    let step = |step: &Step| match *step {
        Step::Move(x, y) => {
            let (x, y) = turn(x, y);
            Step::Move(x, y)
        }
        Step::Line(x, y) => {
            let (x, y) = turn(x, y);
            Step::Line(x, y)
        }
        Step::Curve([a, b, c, d, x, y]) => {
            let ((a, b), (c, d), (x, y)) = (turn(a, b), turn(c, d), turn(x, y));
            Step::Curve([a, b, c, d, x, y])
        }
    };
    steps.iter().map(step).collect()
}
