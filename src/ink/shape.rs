use super::{Colour, Face, Glyph};

/// A place in points (1/72 in), from the top left corner, y downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    pub x: f32,
    pub y: f32,
}

/// An upright rectangle in points, from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    pub x: f32,
    pub y: f32,
    pub width: f32,
    pub height: f32,
}

/// One step of a path.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PathSegment {
    Move(Point),
    Line(Point),
    /// Two control points, then the end.
    Cubic(Point, Point, Point),
    Close,
}

/// How a line is broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dash {
    Solid,
    Dashed,
    Dotted,
    DashDot,
}

/// How an outline is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    pub colour: Colour,
    /// Points.
    pub width: f32,
    pub dash: Dash,
}

/// A run of glyphs of one face, size and colour on one baseline.
#[derive(Debug, Clone, PartialEq)]
pub struct TextRun {
    pub face: Face,
    /// Points.
    pub size: f32,
    pub colour: Colour,
    /// Start of the baseline.
    pub origin: Point,
    /// Advances include kerning and whatever justification added.
    pub glyphs: Vec<Glyph>,
    /// The text that the glyphs stand for; `Glyph::text` slices it.
    pub text: String,
}

impl TextRun {
    /// Width of all advances, in points.
    pub fn width(&self) -> f32 {
        self.glyphs.iter().map(|g| g.advance).sum::<f32>() * self.size
    }
}

/// One mark.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    Path { segments: Vec<PathSegment>, fill: Option<Colour>, stroke: Option<Stroke> },
    Text(TextRun),
}
