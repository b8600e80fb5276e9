//! Rings around a spot, at true size, for a blob of paint that spreads over them.

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::outline::ellipse;
use super::style::{ACCENT, HAIRLINE, INK, LABEL, LEADING, MM, SMALL, WHITE, tint};
use crate::handout::{SpreadBand, SpreadRings};
use crate::ink::{Colour, Dash, Face, Faces, Point, Stroke};

const RING: Stroke = Stroke { colour: INK, width: 0.8, dash: Dash::Solid };

/// Half of the outermost line.
const RIM: f32 = 0.5;

/// Arms of the cross on the spot, and the end of a leader, in points.
const CROSS: f32 = 7.0;
const DOT: f32 = 1.6;

pub(super) fn draw(data: &SpreadRings, larger: f32, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let radii = data.rings.iter().map(|ring| ring.radius);
    let largest = radii.chain(data.bands.iter().map(|band| band.outer)).fold(0.0, f64::max);
    let reach = largest as f32 * MM + RIM;
    let small = Type { face: Face::Regular, size: SMALL * larger, colour: INK };
    // The labels of the outermost ring stand half outside of it.
    let over = small.size * LEADING / 2.0;
    let middle = Point { x: reach, y: reach + over };
    for (index, band) in data.bands.iter().enumerate() {
        // Every other band is tinted, so that grey paper tells them apart.
        let ground = if index % 2 == 1 { tint(ACCENT, 0.14) } else { WHITE };
        circle(&mut board, middle, band.outer, Some(ground), RING);
        circle(&mut board, middle, band.inner, Some(WHITE), RING);
    }
    for ring in &data.rings {
        circle(&mut board, middle, ring.radius, None, RING);
    }
    cross(&mut board, middle);

    let bold = Type { face: Face::Bold, ..small };
    let below = middle.y + CROSS + 4.0 + board.capitals(small);
    board.text(small, Point { y: below, ..middle }, Anchor::Middle, &data.centre_label);
    for ring in &data.rings {
        let radius = ring.radius as f32 * MM;
        for (set, y, label) in
            [(bold, middle.y - radius, &ring.label), (small, middle.y + radius, &ring.radius_label)]
        {
            let top = y - over;
            let lines = std::slice::from_ref(label);
            board.halo(set, middle.x, top, Anchor::Middle, lines);
            board.lines(set, middle.x, top, Anchor::Middle, lines);
        }
    }
    let name = Type { face: Face::Bold, size: LABEL * larger, colour: INK };
    for (band, corner) in data.bands.iter().zip([(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0)]) {
        name_band(&mut board, band, (middle, corner), name);
    }
    board.finish_at_true_size(2.0 * reach, 2.0 * middle.y)
}

fn circle(
    board: &mut Board<'_>,
    middle: Point,
    radius: f64,
    ground: Option<Colour>,
    stroke: Stroke,
) {
    let radius = radius as f32 * MM;
    board.path(ellipse(middle, radius, radius), ground, Some(stroke));
}

fn cross(board: &mut Board<'_>, at: Point) {
    let (left, right) = (Point { x: at.x - CROSS, ..at }, Point { x: at.x + CROSS, ..at });
    let (top, foot) = (Point { y: at.y - CROSS, ..at }, Point { y: at.y + CROSS, ..at });
    board.line(left, right, RING);
    board.line(top, foot, RING);
}

/// Writes the name of a band into a corner outside of the rings, with a leader to its middle.
fn name_band(
    board: &mut Board<'_>,
    band: &SpreadBand,
    (middle, (across, down)): (Point, (f32, f32)),
    set: Type,
) {
    let reach = middle.x;
    let capitals = board.capitals(set);
    let anchor = if across < 0.0 { Anchor::Start } else { Anchor::End };
    let y = middle.y + down * reach + if down < 0.0 { capitals } else { 0.0 };
    board.text(set, Point { x: middle.x + across * reach, y }, anchor, &band.name);
    let along = (band.inner + band.outer) as f32 / 2.0 * MM * std::f32::consts::FRAC_1_SQRT_2;
    let to = Point { x: middle.x + across * along, y: middle.y + down * along };
    let width = board.measure(set, &band.name);
    let clear = if down < 0.0 { y + 2.5 } else { y - capitals - 2.5 };
    let from = Point { x: middle.x + across * (reach - width / 2.0), y: clear };
    board.line(from, to, HAIRLINE);
    board.path(ellipse(to, DOT, DOT), Some(INK), None);
}
