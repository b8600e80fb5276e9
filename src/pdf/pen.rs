//! What draws on a page: operations, with the state they leave behind.

use printpdf::{Color, Greyscale, LineCapStyle, LineDashPattern, Op, Point, Pt, Rgb};

use super::font::Fonts;
use super::text::Line;
use crate::ink::{Colour, Dash, Face, Stroke};

/// Draws on one page. Only what changes is written: the state begins as ISO 32000-1,
/// Table 52 gives it.
pub(super) struct Pen<'a> {
    pub(super) ops: Vec<Op>,
    pub(super) fonts: &'a Fonts,
    /// Height of the page in points.
    height: f32,
    fill: Colour,
    stroke: Stroke,
    cap: Cap,
    pub(super) font: Option<(Face, Hundredths)>,
    /// Where the open text section has its line start.
    pub(super) section: Option<(Hundredths, Hundredths)>,
    /// The line that is being put together.
    pub(super) line: Option<Line>,
    pub(super) rise: Hundredths,
}

/// Hundredths of a point (3.5 micrometres), the fineness of every coordinate.
pub(super) type Hundredths = i32;

#[derive(Clone, Copy, PartialEq)]
enum Cap {
    Butt,
    Round,
}

const BLACK: Colour = Colour::new(0, 0, 0);

impl<'a> Pen<'a> {
    pub fn new(fonts: &'a Fonts, height: f32) -> Self {
        Self {
            ops: Vec::new(),
            fonts,
            height,
            fill: BLACK,
            stroke: Stroke { colour: BLACK, width: 1.0, dash: Dash::Solid },
            cap: Cap::Butt,
            font: None,
            section: None,
            line: None,
            rise: 0,
        }
    }

    /// The operations, everything closed.
    pub fn finish(mut self) -> Vec<Op> {
        self.end_text();
        self.ops
    }

    /// Leaves the text section, if one is open.
    pub fn end_text(&mut self) {
        self.flush_line();
        if self.section.take().is_some() {
            self.ops.push(Op::EndTextSection);
        }
    }

    pub(super) fn set_fill(&mut self, colour: Colour) {
        if self.fill != colour {
            self.fill = colour;
            self.ops.push(Op::SetFillColor { col: color(colour) });
        }
    }

    pub(super) fn set_stroke(&mut self, stroke: Stroke) {
        if self.stroke.colour != stroke.colour {
            self.ops.push(Op::SetOutlineColor { col: color(stroke.colour) });
        }
        let width = hundredths(stroke.width);
        let new_width = hundredths(self.stroke.width) != width;
        if new_width {
            self.ops.push(Op::SetOutlineThickness { pt: points(width) });
        }
        let broken = stroke.dash != Dash::Solid;
        if self.stroke.dash != stroke.dash || (new_width && broken) {
            self.ops.push(Op::SetLineDashPattern { dash: dashes(stroke) });
        }
        let cap = if stroke.dash == Dash::Dotted { Cap::Round } else { Cap::Butt };
        if self.cap != cap {
            self.cap = cap;
            let cap = match cap {
                Cap::Butt => LineCapStyle::Butt,
                Cap::Round => LineCapStyle::Round,
            };
            self.ops.push(Op::SetLineCapStyle { cap });
        }
        self.stroke = stroke;
    }

    /// A place from the top as a place from the bottom.
    pub(super) fn place(&self, at: crate::ink::Point) -> Point {
        Point { x: points(hundredths(at.x)), y: points(self.height_of(at.y)) }
    }

    pub(super) fn height_of(&self, y: f32) -> Hundredths {
        hundredths(self.height - y)
    }
}

pub(super) fn hundredths(points: f32) -> Hundredths {
    (points * 100.0).round() as Hundredths
}

pub(super) fn points(hundredths: Hundredths) -> Pt {
    Pt(hundredths as f32 / 100.0)
}

/// Grey stays grey, so that a greyscale printer need not guess.
fn color(colour: Colour) -> Color {
    let part = |c: u8| (f32::from(c) / 255.0 * 1000.0).round() / 1000.0;
    if colour.r == colour.g && colour.g == colour.b {
        return Color::Greyscale(Greyscale { percent: part(colour.r), icc_profile: None });
    }
    let (r, g, b) = (part(colour.r), part(colour.g), part(colour.b));
    Color::Rgb(Rgb { r, g, b, icc_profile: None })
}

/// Lengths of dash and gap grow with the line; dots are round.
fn dashes(stroke: Stroke) -> LineDashPattern {
    let unit = stroke.width.max(0.75);
    let of = |lengths: &[f32]| -> Vec<f32> {
        lengths.iter().map(|length| (length * unit * 100.0).round() / 100.0).collect()
    };
    let lengths = match stroke.dash {
        Dash::Solid => Vec::new(),
        Dash::Dashed => of(&[4.0, 2.5]),
        Dash::Dotted => of(&[0.0, 2.25]),
        Dash::DashDot => of(&[6.0, 2.25, 1.25, 2.25]),
    };
    LineDashPattern::new(0.0, &lengths)
}
