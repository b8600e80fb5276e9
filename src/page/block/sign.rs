//! Signs in the shape families of ISO 7010: a triangle warns, a disc tells what to
//! do, a barred ring forbids. Shapes and pictures are drawn here; the colours are
//! those of the pages, and the shapes say the same in grey.

use super::pictogram::{self, Part, Step};
use crate::handout::Sign;
use crate::ink::{Colour, Dash, Palette, PathSegment, Point, Shape, Stroke};
use crate::page::draw;

/// Shape families.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Family {
    Warning,
    Duty,
    Ban,
}

fn family(sign: Sign) -> Family {
    match sign {
        Sign::Flame | Sign::Heat | Sign::Shock | Sign::Slip | Sign::Harm => Family::Warning,
        Sign::Gloves | Sign::Air | Sign::Mask | Sign::Adult | Sign::Label => Family::Duty,
        Sign::Drain => Family::Ban,
    }
}

/// A sign in a square with its top left corner at (x, y).
pub(super) fn draw(sign: Sign, (x, y): (f32, f32), side: f32, palette: &Palette) -> Vec<Shape> {
    let scale = side / 100.0;
    let square = |left: f32, top: f32, side: f32| Square {
        x: x + left * scale,
        y: y + top * scale,
        scale: side / 100.0 * scale,
    };
    let whole = square(0.0, 0.0, 100.0);
    let parts = pictogram::of(sign);
    match family(sign) {
        Family::Warning => {
            let mut shapes = vec![triangle(whole, palette)];
            square(32.0, 38.0, 37.0).paint(parts, palette.ink, palette.paper, &mut shapes);
            shapes
        }
        Family::Duty => {
            let mut shapes = vec![draw::disc(
                (x + side / 2.0, y + side / 2.0),
                side * 0.48,
                Some(palette.accent),
                None,
            )];
            square(22.0, 20.0, 57.0).paint(parts, palette.paper, palette.accent, &mut shapes);
            shapes
        }
        Family::Ban => {
            let centre = (x + side / 2.0, y + side / 2.0);
            let stroke = Stroke { colour: palette.warm, width: 10.0 * scale, dash: Dash::Solid };
            let mut shapes =
                vec![draw::disc(centre, side * 0.43, Some(palette.paper), Some(stroke))];
            square(25.0, 22.0, 52.0).paint(parts, palette.ink, palette.paper, &mut shapes);
            let reach = side * 0.43 * std::f32::consts::FRAC_1_SQRT_2;
            let from = (centre.0 - reach, centre.1 - reach);
            let to = (centre.0 + reach, centre.1 + reach);
            shapes.push(draw::dashed(from, to, stroke));
            shapes
        }
    }
}

/// A triangle with rounded corners and a strong edge.
fn triangle(at: Square, palette: &Palette) -> Shape {
    let stroke = Stroke { colour: palette.warm, width: 8.0 * at.scale, dash: Dash::Solid };
    let steps = [
        Step::Move(45.0, 12.0),
        Step::Curve([47.0, 8.0, 53.0, 8.0, 55.0, 12.0]),
        Step::Line(94.0, 83.0),
        Step::Curve([97.0, 88.0, 94.0, 92.0, 89.0, 92.0]),
        Step::Line(11.0, 92.0),
        Step::Curve([6.0, 92.0, 3.0, 88.0, 6.0, 83.0]),
    ];
    let segments = at.path(&steps, true);
    Shape::Path { segments, fill: Some(palette.paper), stroke: Some(stroke) }
}

/// A square of 100 by 100 units on the page.
#[derive(Debug, Clone, Copy)]
struct Square {
    x: f32,
    y: f32,
    /// Points a unit.
    scale: f32,
}

impl Square {
    fn at(self, x: f32, y: f32) -> Point {
        Point { x: self.x + x * self.scale, y: self.y + y * self.scale }
    }

    fn path(self, steps: &[Step], closed: bool) -> Vec<PathSegment> {
        let mut segments: Vec<PathSegment> = steps
            .iter()
            .map(|step| match *step {
                Step::Move(x, y) => PathSegment::Move(self.at(x, y)),
                Step::Line(x, y) => PathSegment::Line(self.at(x, y)),
                Step::Curve([a, b, c, d, x, y]) => {
                    PathSegment::Cubic(self.at(a, b), self.at(c, d), self.at(x, y))
                }
            })
            .collect();
        if closed {
            segments.push(PathSegment::Close);
        }
        segments
    }

    fn paint(self, parts: &[Part], colour: Colour, ground: Colour, shapes: &mut Vec<Shape>) {
        let fill = |steps, colour| Shape::Path {
            segments: self.path(steps, true),
            fill: Some(colour),
            stroke: None,
        };
        let stroke = |steps, width: f32, colour| Shape::Path {
            segments: self.path(steps, false),
            fill: None,
            stroke: Some(Stroke { colour, width: width * self.scale, dash: Dash::Solid }),
        };
        let disc = |x, y, radius: f32, colour| {
            let centre = self.at(x, y);
            draw::disc((centre.x, centre.y), radius * self.scale, Some(colour), None)
        };
        shapes.extend(parts.iter().map(|part| match *part {
            Part::Fill(steps) => fill(steps, colour),
            Part::Hole(steps) => fill(steps, ground),
            Part::Stroke(width, steps) => stroke(steps, width, colour),
            Part::Gap(width, steps) => stroke(steps, width, ground),
            Part::Disc(x, y, radius) => disc(x, y, radius, colour),
            Part::Eye(x, y, radius) => disc(x, y, radius, ground),
        }));
    }
}
