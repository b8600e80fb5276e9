//! What draws on a page: operators, with the state they leave behind.

use super::font::Fonts;
use super::operators::{Hundredths, Operators, hundredths};
use super::text::Line;
use crate::ink::{Colour, Dash, Face, Point, Stroke};

/// Draws on one page. Only what changes is written: the state begins as ISO 32000-1,
/// Table 52 gives it.
pub(super) struct Pen<'a> {
    pub(super) out: Operators,
    pub(super) fonts: &'a Fonts,
    /// Height of the page in points.
    height: f32,
    /// Left edge of the page in points.
    pub left: f32,
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

#[derive(Clone, Copy, PartialEq)]
enum Cap {
    Butt,
    Round,
}

const BLACK: Colour = Colour::new(0, 0, 0);

impl<'a> Pen<'a> {
    pub fn new(fonts: &'a Fonts, height: f32) -> Self {
        Self {
            out: Operators::default(),
            fonts,
            height,
            left: 0.0,
            fill: BLACK,
            stroke: Stroke { colour: BLACK, width: 1.0, dash: Dash::Solid },
            cap: Cap::Butt,
            font: None,
            section: None,
            line: None,
            rise: 0,
        }
    }

    /// The stream, everything closed.
    pub fn finish(mut self) -> Vec<u8> {
        self.end_text();
        self.out.into_bytes()
    }

    /// Leaves the text section, if one is open.
    pub fn end_text(&mut self) {
        self.flush_line();
        if self.section.take().is_some() {
            self.out.operator("ET");
        }
    }

    pub(super) fn set_fill(&mut self, colour: Colour) {
        if self.fill != colour {
            self.fill = colour;
            self.out.colour(colour, ["g", "rg"]);
        }
    }

    pub(super) fn set_stroke(&mut self, stroke: Stroke) {
        if self.stroke.colour != stroke.colour {
            self.out.colour(stroke.colour, ["G", "RG"]);
        }
        let width = hundredths(stroke.width);
        let new_width = hundredths(self.stroke.width) != width;
        if new_width {
            self.out.length(width);
            self.out.operator("w");
        }
        let broken = stroke.dash != Dash::Solid;
        if self.stroke.dash != stroke.dash || (new_width && broken) {
            self.out.array(&dashes(stroke));
            self.out.length(0);
            self.out.operator("d");
        }
        let cap = if stroke.dash == Dash::Dotted { Cap::Round } else { Cap::Butt };
        if self.cap != cap {
            self.cap = cap;
            self.out.operator(match cap {
                Cap::Butt => "0 J",
                Cap::Round => "1 J",
            });
        }
        self.stroke = stroke;
    }

    /// A place from the top as a place from the bottom.
    pub(super) fn place(&self, at: Point) -> (Hundredths, Hundredths) {
        (self.across(at.x), self.height_of(at.y))
    }

    /// A place from the left edge of the page as one from that of the sheet.
    pub(super) fn across(&self, x: f32) -> Hundredths {
        hundredths(self.left + x)
    }

    pub(super) fn height_of(&self, y: f32) -> Hundredths {
        hundredths(self.height - y)
    }
}

/// Lengths of dash and gap grow with the line; dots are round.
fn dashes(stroke: Stroke) -> Vec<Hundredths> {
    let unit = stroke.width.max(0.75);
    let lengths: &[f32] = match stroke.dash {
        Dash::Solid => &[],
        Dash::Dashed => &[4.0, 2.5],
        Dash::Dotted => &[0.0, 2.25],
        Dash::DashDot => &[6.0, 2.25, 1.25, 2.25],
    };
    lengths.iter().map(|length| hundredths(length * unit)).collect()
}
