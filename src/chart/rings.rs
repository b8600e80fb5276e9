//! The cover picture: the rings of a ring pour.

use std::f32::consts::TAU;

use super::style::{GRID, tint};
use super::{Drawing, Sizing};
use crate::ink::{Colour, Dash, PathSegment, Point, Shape, Stroke};

/// How many rings are poured.
const RINGS: usize = 34;

/// Points of a ring through which its curve goes.
const KNOTS: usize = 24;

/// Rings from the rim to the middle, each laid on the last, the colours in turn. The
/// wobble of a ring is that of its neighbour a little turned and stretched, as the
/// cup's hand moves slowly; it grows with the ring.
pub(super) fn draw(colours: &[Colour], width: f32) -> Drawing {
    let height = width * 0.86;
    let mut shapes = Vec::new();
    let (cx, cy) = (width / 2.0, height / 2.0);
    // The widest wobble of all rings stays inside the picture.
    let wildest = 1.0 + WOBBLE.iter().map(|wave| wave.0).sum::<f32>();
    let rim = height / 2.0 / wildest - 0.5;
    let stretch = width / height;
    let palette = if colours.is_empty() { &[GRID][..] } else { colours };

    let mut share = 1.0_f32;
    for ring in 0..RINGS {
        let age = ring as f32 / RINGS as f32;
        let mut turn = palette.iter().cycle().skip(ring);
        let Some(&colour) = turn.next() else { break };
        let radius = rim * share.max(0.0);
        if radius < 1.2 {
            break;
        }
        let drift = (rim - radius) * 0.10;
        let centre = Point { x: cx + drift * (0.9 + age).cos(), y: cy - drift * 0.6 };
        let knots: Vec<Point> = (0..KNOTS)
            .map(|knot| {
                let angle = TAU * knot as f32 / KNOTS as f32;
                let reach = radius * (1.0 + wobble(angle, age));
                Point {
                    x: centre.x + stretch * reach * angle.cos(),
                    y: centre.y + reach * angle.sin(),
                }
            })
            .collect();
        let segments = smooth(&knots);
        let edge = Stroke { colour: tint(colour, 0.8), width: 0.3, dash: Dash::Solid };
        let stroke = (ring == 0).then_some(Stroke { colour: GRID, ..edge });
        shapes.push(Shape::Path { segments, fill: Some(colour), stroke });
        // Broad and narrow rings by turns that never quite repeat.
        let beat = (ring as f32 * 2.399).sin() * 0.5 + (ring as f32 * 0.77).cos() * 0.35;
        share -= (1.0 + beat * 0.75).max(0.25) / RINGS as f32;
    }
    Drawing { width, height, shapes, blanks: Vec::new(), size: Sizing::ToRoom }
}

/// Height, number around the ring, first phase and how far it turns inwards.
const WOBBLE: [(f32, f32, f32, f32); 3] =
    [(0.035, 2.0, 0.4, 1.6), (0.022, 3.0, 2.1, -2.2), (0.010, 5.0, 4.0, 3.4)];

/// How far a ring strays from a circle, as a share of its radius.
fn wobble(angle: f32, age: f32) -> f32 {
    let wave = |&(height, number, phase, turn): &(f32, f32, f32, f32)| {
        height * (number * angle + phase + turn * age).sin()
    };
    WOBBLE.iter().map(wave).sum()
}

/// A closed curve through knots: Catmull and Rom's tangents as cubic curves.
fn smooth(knots: &[Point]) -> Vec<PathSegment> {
    let around = |index: usize| knots.iter().cycle().skip(index % knots.len().max(1));
    let mut segments: Vec<PathSegment> =
        knots.first().map(|&first| PathSegment::Move(first)).into_iter().collect();
    for index in 0..knots.len() {
        let mut four = around(index + knots.len() - 1);
        let (Some(a), Some(b), Some(c), Some(d)) =
            (four.next(), four.next(), four.next(), four.next())
        else {
            break;
        };
        let first = Point { x: b.x + (c.x - a.x) / 6.0, y: b.y + (c.y - a.y) / 6.0 };
        let second = Point { x: c.x - (d.x - b.x) / 6.0, y: c.y - (d.y - b.y) / 6.0 };
        segments.push(PathSegment::Cubic(first, second, *c));
    }
    segments.push(PathSegment::Close);
    segments
}
