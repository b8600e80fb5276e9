//! Paths become drawing operations.

use printpdf::{
    Line, LinePoint, Op, PaintMode, Point, Polygon, PolygonRing, Pt, Rect, WindingOrder,
};

use super::pen::Pen;
use crate::ink::{Colour, PathSegment, Stroke};

/// A piece of a path from one move to the next.
#[derive(Default)]
struct Piece {
    points: Vec<LinePoint>,
    closed: bool,
}

impl Pen<'_> {
    /// Fills and strokes a path; what is inside follows the nonzero rule.
    pub fn path(&mut self, segments: &[PathSegment], fill: Option<Colour>, stroke: Option<Stroke>) {
        let pieces = self.pieces(segments);
        if pieces.is_empty() || (fill.is_none() && stroke.is_none()) {
            return;
        }
        self.end_text();
        if let Some(colour) = fill {
            self.set_fill(colour);
        }
        if let Some(stroke) = stroke {
            self.set_stroke(stroke);
        }
        match (pieces.as_slice(), fill, stroke) {
            ([piece], Some(_), Some(_)) if piece.closed => {
                self.ops.push(paint(vec![piece.points.clone()], PaintMode::FillStroke));
                return;
            }
            (_, Some(_), _) => {
                let rings = pieces.iter().map(|piece| piece.points.clone()).collect();
                self.ops.push(paint(rings, PaintMode::Fill));
            }
            (_, None, _) => {}
        }
        if stroke.is_some() {
            self.ops.extend(pieces.into_iter().map(outline));
        }
    }

    fn pieces(&self, segments: &[PathSegment]) -> Vec<Piece> {
        let mut pieces: Vec<Piece> = Vec::new();
        let mut piece = Piece::default();
        let mut start = None;
        for segment in segments {
            match *segment {
                PathSegment::Move(to) => {
                    start = Some(self.place(to));
                    let done = std::mem::take(&mut piece);
                    pieces.push(done);
                }
                PathSegment::Close => {
                    piece.closed = true;
                    pieces.push(std::mem::take(&mut piece));
                    continue;
                }
                PathSegment::Line(_) | PathSegment::Cubic(..) => {}
            }
            if piece.points.is_empty() {
                piece.points.extend(start.map(on_curve));
            }
            match *segment {
                PathSegment::Line(to) => piece.points.push(on_curve(self.place(to))),
                PathSegment::Cubic(a, b, to) => piece.points.extend([
                    LinePoint { p: self.place(a), bezier: true },
                    LinePoint { p: self.place(b), bezier: true },
                    on_curve(self.place(to)),
                ]),
                PathSegment::Move(_) | PathSegment::Close => {}
            }
        }
        pieces.push(piece);
        pieces.retain(|piece| piece.points.len() > 1);
        pieces
    }
}

fn on_curve(p: Point) -> LinePoint {
    LinePoint { p, bezier: false }
}

/// Closed rings painted in one go.
fn paint(rings: Vec<Vec<LinePoint>>, mode: PaintMode) -> Op {
    let winding_order = WindingOrder::NonZero;
    if let [ring] = rings.as_slice()
        && let Some(rectangle) = rectangle(ring)
    {
        let rectangle = Rect { mode: Some(mode), winding_order: Some(winding_order), ..rectangle };
        return Op::DrawRectangle { rectangle };
    }
    let rings = rings.into_iter().map(|points| PolygonRing { points }).collect();
    Op::DrawPolygon { polygon: Polygon { rings, mode, winding_order } }
}

fn outline(piece: Piece) -> Op {
    if piece.closed && rectangle(&piece.points).is_some() {
        return paint(vec![piece.points], PaintMode::Stroke);
    }
    Op::DrawLine { line: Line { points: piece.points, is_closed: piece.closed } }
}

/// An upright rectangle, if the ring is one; it has an operator of its own.
fn rectangle(ring: &[LinePoint]) -> Option<Rect> {
    let corners = match ring {
        [a, b, c, d] => [a, b, c, d],
        [a, b, c, d, e] if a.p == e.p => [a, b, c, d],
        _ => return None,
    };
    if corners.iter().any(|corner| corner.bezier) {
        return None;
    }
    let [a, b, c, d] = corners.map(|corner| corner.p);
    let upright = (a.x == b.x && b.y == c.y && c.x == d.x && d.y == a.y)
        || (a.y == b.y && b.x == c.x && c.y == d.y && d.x == a.x);
    let (width, height) = (tidy(c.x.0 - a.x.0), tidy(c.y.0 - a.y.0));
    upright.then(|| Rect::from_xywh(a.x, a.y, width, height))
}

/// Hundredths again, after a subtraction.
fn tidy(length: f32) -> Pt {
    Pt((length * 100.0).round() / 100.0)
}
