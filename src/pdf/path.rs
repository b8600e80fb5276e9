//! Paths become drawing operators.

use super::operators::Hundredths;
use super::pen::Pen;
use crate::ink::{Colour, PathSegment, Stroke};

type Corner = (Hundredths, Hundredths);

impl Pen<'_> {
    /// Fills and strokes a path; what is inside follows the nonzero rule.
    pub fn path(&mut self, segments: &[PathSegment], fill: Option<Colour>, stroke: Option<Stroke>) {
        let paint = match (fill, stroke) {
            (Some(_), Some(_)) => "B",
            (Some(_), None) => "f",
            (None, Some(_)) => "S",
            (None, None) => return,
        };
        let drawn = |segment: &PathSegment| {
            matches!(segment, PathSegment::Line(_) | PathSegment::Cubic(..))
        };
        if !segments.iter().any(drawn) {
            return;
        }
        self.end_text();
        if let Some(colour) = fill {
            self.set_fill(colour);
        }
        if let Some(stroke) = stroke {
            self.set_stroke(stroke);
        }
        match self.rectangle(segments) {
            Some([(left, bottom), (width, height)]) => {
                self.out.place((left, bottom));
                self.out.place((width, height));
                self.out.operator("re");
            }
            None => self.trace(segments),
        }
        self.out.operator(paint);
    }

    /// Every piece of a path that has more than its start.
    fn trace(&mut self, segments: &[PathSegment]) {
        let mut start = None;
        let mut open = false;
        for segment in segments {
            if let PathSegment::Line(_) | PathSegment::Cubic(..) = segment
                && let Some(from) = start.take()
            {
                self.out.place(from);
                self.out.operator("m");
                open = true;
            }
            match *segment {
                PathSegment::Move(to) => start = Some(self.place(to)),
                PathSegment::Line(to) => {
                    self.out.place(self.place(to));
                    self.out.operator("l");
                }
                PathSegment::Cubic(a, b, to) => {
                    for point in [a, b, to] {
                        self.out.place(self.place(point));
                    }
                    self.out.operator("c");
                }
                PathSegment::Close if open => self.out.operator("h"),
                PathSegment::Close => {}
            }
            open &= *segment != PathSegment::Close;
        }
    }

    /// Corner and size of an upright rectangle, if the path is one; it has an operator of
    /// its own.
    fn rectangle(&self, segments: &[PathSegment]) -> Option<[Corner; 2]> {
        let (last, sides) = segments.split_last()?;
        let [
            PathSegment::Move(a),
            PathSegment::Line(b),
            PathSegment::Line(c),
            PathSegment::Line(d),
        ] = sides
        else {
            return None;
        };
        let [a, b, c, d] = [a, b, c, d].map(|&corner| self.place(corner));
        let upright = (a.0 == b.0 && b.1 == c.1 && c.0 == d.0 && d.1 == a.1)
            || (a.1 == b.1 && b.0 == c.0 && c.1 == d.1 && d.0 == a.0);
        (upright && *last == PathSegment::Close).then_some([a, (c.0 - a.0, c.1 - a.1)])
    }
}
