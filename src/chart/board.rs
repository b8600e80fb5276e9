//! Where shapes gather while a picture is drawn.

use super::style::{LEADING, WHITE};
use super::{Drawing, Sizing};
use crate::ink::{Colour, Face, Faces, Figures, PathSegment, Point, Rect, Shape, Stroke, TextRun};

/// Shapes in the making, with the faces to measure texts.
pub(super) struct Board<'f> {
    pub faces: &'f Faces,
    pub shapes: Vec<Shape>,
    blanks: Vec<(usize, String)>,
}

/// White around a text, in points.
const HALO: f32 = 2.0;

/// How a text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Type {
    pub face: Face,
    /// Points.
    pub size: f32,
    pub colour: Colour,
}

/// Which part of a text stands at a given place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

impl<'f> Board<'f> {
    pub fn new(faces: &'f Faces) -> Self {
        Self { faces, shapes: Vec::new(), blanks: Vec::new() }
    }

    pub fn finish(self, width: f32, height: f32) -> Drawing {
        let size = Sizing::ToRoom;
        Drawing { width, height, shapes: self.shapes, blanks: self.blanks, size }
    }

    /// A drawing that nobody may make smaller.
    pub fn finish_at_true_size(self, width: f32, height: f32) -> Drawing {
        Drawing { size: Sizing::True, ..self.finish(width, height) }
    }

    /// Width of a text in points.
    pub fn measure(&self, set: Type, text: &str) -> f32 {
        self.faces.measure(set.face, Figures::Proportional, set.size, text)
    }

    /// Height of capitals in points, the height by which texts are placed.
    pub fn capitals(&self, set: Type) -> f32 {
        self.faces.metrics(set.face).cap_height * set.size
    }

    /// A text by its baseline.
    pub fn text(&mut self, set: Type, at: Point, anchor: Anchor, text: &str) {
        if text.is_empty() {
            return;
        }
        let run = self.run(set, at, anchor, text);
        self.shapes.push(Shape::Text(run));
    }

    fn run(&self, set: Type, at: Point, anchor: Anchor, text: &str) -> TextRun {
        let mut run = self.faces.run(set.face, set.size, set.colour, at, text);
        run.origin.x -= match anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => run.width() / 2.0,
            Anchor::End => run.width(),
        };
        run
    }

    /// Lines of text from the top of a box; the height that they take.
    pub fn lines(&mut self, set: Type, x: f32, top: f32, anchor: Anchor, lines: &[String]) -> f32 {
        let step = set.size * LEADING;
        let first = top + (step + self.capitals(set)) / 2.0;
        for (index, line) in lines.iter().enumerate() {
            let y = first + step * index as f32;
            self.text(set, Point { x, y }, anchor, line);
        }
        step * lines.len() as f32
    }

    /// White behind lines that are about to be written, so that nothing runs into them.
    pub fn halo(&mut self, set: Type, x: f32, top: f32, anchor: Anchor, lines: &[String]) {
        let step = set.size * LEADING;
        let spare = (step - self.capitals(set)) / 2.0;
        for (index, line) in lines.iter().enumerate() {
            let width = self.measure(set, line);
            let left = match anchor {
                Anchor::Start => x,
                Anchor::Middle => x - width / 2.0,
                Anchor::End => x - width,
            };
            let y = top + step * index as f32 + spare - HALO;
            let area = Rect {
                x: (left - HALO).max(0.0),
                y,
                width: width + HALO + left.clamp(0.0, HALO),
                height: step - 2.0 * spare + 2.0 * HALO,
            };
            self.rectangle(area, Some(WHITE), None);
        }
    }

    /// A text broken into lines no wider than `width`; a longer word stands alone.
    pub fn wrap(&self, set: Type, width: f32, text: &str) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for word in text.split(' ').filter(|word| !word.is_empty()) {
            match lines.last_mut() {
                Some(line) if self.measure(set, &format!("{line} {word}")) <= width => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push(word.to_owned()),
            }
        }
        lines
    }

    /// Width of the widest of some lines.
    pub fn widest(&self, set: Type, lines: &[String]) -> f32 {
        lines.iter().map(|line| self.measure(set, line)).fold(0.0, f32::max)
    }

    pub fn line(&mut self, from: Point, to: Point, stroke: Stroke) {
        let segments = vec![PathSegment::Move(from), PathSegment::Line(to)];
        self.shapes.push(Shape::Path { segments, fill: None, stroke: Some(stroke) });
    }

    /// A line to write on, and what belongs there.
    pub fn blank(&mut self, from: Point, to: Point, stroke: Stroke, what: &str) {
        self.blanks.push((self.shapes.len(), what.to_owned()));
        self.line(from, to, stroke);
    }

    pub fn polygon(&mut self, corners: &[Point], fill: Option<Colour>, stroke: Option<Stroke>) {
        let segments = closed(corners);
        self.shapes.push(Shape::Path { segments, fill, stroke });
    }

    pub fn rectangle(&mut self, area: Rect, fill: Option<Colour>, stroke: Option<Stroke>) {
        let (right, bottom) = (area.x + area.width, area.y + area.height);
        let corners = [(area.x, area.y), (right, area.y), (right, bottom), (area.x, bottom)];
        self.polygon(&corners.map(|(x, y)| Point { x, y }), fill, stroke);
    }

    pub fn path(
        &mut self,
        segments: Vec<PathSegment>,
        fill: Option<Colour>,
        stroke: Option<Stroke>,
    ) {
        self.shapes.push(Shape::Path { segments, fill, stroke });
    }
}

/// A closed path through corners.
pub(super) fn closed(corners: &[Point]) -> Vec<PathSegment> {
    let mut segments: Vec<PathSegment> = corners
        .iter()
        .enumerate()
        .map(|(index, &at)| if index == 0 { PathSegment::Move(at) } else { PathSegment::Line(at) })
        .collect();
    segments.push(PathSegment::Close);
    segments
}
