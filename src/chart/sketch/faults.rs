//! What a film of paint looks like when something went wrong: sections, the film drawn much
//! thicker than it is.

use super::super::Drawing;
use super::super::style::WHITE;
use super::panels::{Row, panels};
use super::pencil::Step::{Curve as C, Line as L, Move as M};
use super::pencil::{Pencil, Step, block};
use super::{FINE, OUTLINE, dry, wet};
use crate::handout::Part;
use crate::ink::Faces;

const ROW: Row = Row { size: (96.0, 33.0), most: 3, least: 0.0 };

/// Rims of the canvas, its cloth, and the foot of its frame.
const LEFT: f32 = 2.6;
const RIGHT: f32 = 93.4;
const CLOTH: f32 = 21.0;
const THICK: f32 = 2.4;
const FOOT: f32 = 32.0;
/// The surface of a good film.
const TOP: f32 = 9.0;

pub(super) fn draw(parts: &[Part], width: f32, faces: &Faces) -> Drawing {
    panels(parts, &ROW, width, faces, |pencil, number| match number {
        0 => crazing(pencil),
        1 => pinholes(pencil),
        2 => craters(pencil),
        3 => puddle(pencil),
        4 => drips(pencil),
        _ => bare_rim(pencil),
    })
}

fn frame(pencil: &mut Pencil<'_, '_>) {
    for (from, to) in [(LEFT, LEFT + 8.0), (RIGHT - 8.0, RIGHT)] {
        pencil.thing(WHITE, &block(from, CLOTH + THICK, to, FOOT));
    }
}

fn canvas(pencil: &mut Pencil<'_, '_>) {
    frame(pencil);
    pencil.thing(WHITE, &block(LEFT, CLOTH, RIGHT, CLOTH + THICK));
}

/// Over the rims and down the sides, as a film should lie.
fn film(pencil: &mut Pencil<'_, '_>) {
    pencil.thing(
        wet(),
        &[
            M(LEFT - 2.0, FOOT - 1.0),
            L(LEFT - 2.0, TOP + 5.0),
            C([LEFT - 2.0, TOP + 1.0, LEFT, TOP, LEFT + 3.0, TOP]),
            L(RIGHT - 3.0, TOP),
            C([RIGHT, TOP, RIGHT + 2.0, TOP + 1.0, RIGHT + 2.0, TOP + 5.0]),
            L(RIGHT + 2.0, FOOT - 1.0),
            L(RIGHT, FOOT - 1.0),
            L(RIGHT, CLOTH),
            L(LEFT, CLOTH),
            L(LEFT, FOOT - 1.0),
        ],
    );
}

fn crazing(pencil: &mut Pencil<'_, '_>) {
    canvas(pencil);
    film(pencil);
    // A skin in pieces.
    for (from, to) in [(4.0, 24.0), (27.6, 39.4), (42.6, 62.4), (66.0, 74.4), (78.0, 92.0)] {
        pencil.thing(
            dry(),
            &[M(from, TOP), L(to, TOP), L(to - 1.6, TOP + 4.0), L(from + 1.6, TOP + 4.0)],
        );
    }
    for x in [25.8, 41.0, 64.2, 76.2] {
        notch(pencil, x, 1.6, 7.0);
    }
}

/// A gap in the surface.
fn notch(pencil: &mut Pencil<'_, '_>, x: f32, half: f32, depth: f32) {
    let sides = [M(x - half, TOP), L(x, TOP + depth), L(x + half, TOP)];
    pencil.ground(
        WHITE,
        &[
            M(x - half, TOP - 0.8),
            L(x - half, TOP),
            L(x, TOP + depth),
            L(x + half, TOP),
            L(x + half, TOP - 0.8),
        ],
    );
    pencil.line(OUTLINE, &sides);
}

fn pinholes(pencil: &mut Pencil<'_, '_>) {
    canvas(pencil);
    film(pencil);
    for (x, y) in [(31.0, 16.0), (58.0, 15.0), (73.0, 17.0)] {
        pencil.round(WHITE, (x, y), (1.9, 1.9));
    }
    for x in [20.0, 45.0, 66.0, 82.0] {
        let pit = [
            M(x - 1.0, TOP),
            C([x - 1.0, TOP + 2.5, x - 2.0, TOP + 3.0, x - 2.0, TOP + 4.6]),
            C([x - 2.0, TOP + 7.4, x + 2.0, TOP + 7.4, x + 2.0, TOP + 4.6]),
            C([x + 2.0, TOP + 3.0, x + 1.0, TOP + 2.5, x + 1.0, TOP]),
        ];
        dent(pencil, x, 1.0, &pit);
    }
}

/// An opening of some half width, cut out of the surface along its steps.
fn dent(pencil: &mut Pencil<'_, '_>, x: f32, half: f32, steps: &[Step]) {
    pencil.ground(WHITE, steps);
    pencil.ground(WHITE, &block(x - half, TOP - 0.8, x + half, TOP + 0.8));
    pencil.line(OUTLINE, steps);
}

fn craters(pencil: &mut Pencil<'_, '_>) {
    canvas(pencil);
    film(pencil);
    for (x, half) in [(26.0, 8.0), (52.0, 11.0), (76.0, 6.0)] {
        let floor = CLOTH - 1.4;
        let dish = [
            M(x - half - 3.0, TOP),
            C([x - half - 1.0, TOP - 2.4, x - half, TOP - 1.0, x - half * 0.8, TOP + 3.0]),
            C([x - half * 0.5, floor, x + half * 0.5, floor, x + half * 0.8, TOP + 3.0]),
            C([x + half, TOP - 1.0, x + half + 1.0, TOP - 2.4, x + half + 3.0, TOP]),
        ];
        dent(pencil, x, half + 2.6, &dish);
    }
}

fn puddle(pencil: &mut Pencil<'_, '_>) {
    frame(pencil);
    let (middle, sag) = (48.0, CLOTH + 9.0);
    let cloth = |lower: f32| {
        [
            M(LEFT, CLOTH + lower),
            C([LEFT + 26.0, CLOTH + lower, middle - 20.0, sag + lower, middle, sag + lower]),
            C([middle + 20.0, sag + lower, RIGHT - 26.0, CLOTH + lower, RIGHT, CLOTH + lower]),
        ]
    };
    // Level above, so it is deepest where the cloth is lowest.
    let level = CLOTH - 3.0;
    let mut pool = vec![M(LEFT, level), L(LEFT, CLOTH)];
    pool.extend(&cloth(0.0)[1..]);
    pool.push(L(RIGHT, level));
    pencil.thing(wet(), &pool);
    pencil.line(OUTLINE, &cloth(0.0));
    pencil.line(OUTLINE, &cloth(THICK));
    for x in [LEFT, RIGHT] {
        pencil.line(OUTLINE, &[M(x, CLOTH), L(x, CLOTH + THICK)]);
    }
}

fn drips(pencil: &mut Pencil<'_, '_>) {
    canvas(pencil);
    film(pencil);
    for (x, size) in [(LEFT + 0.6, 1.2), (RIGHT - 0.2, 0.9)] {
        let (half, top, foot) = (2.6 * size, FOOT - 6.0, FOOT + 0.6);
        pencil.thing(
            dry(),
            &[
                M(x, top),
                C([x + half * 0.3, top + 3.0, x + half, foot - 3.4, x + half, foot - 2.2]),
                C([x + half, foot + 0.4, x - half, foot + 0.4, x - half, foot - 2.2]),
                C([x - half, foot - 3.4, x - half * 0.3, top + 3.0, x, top]),
            ],
        );
    }
}

fn bare_rim(pencil: &mut Pencil<'_, '_>) {
    canvas(pencil);
    pencil.thing(
        wet(),
        &[
            M(LEFT - 2.0, FOOT - 1.0),
            L(LEFT - 2.0, TOP + 5.0),
            C([LEFT - 2.0, TOP + 1.0, LEFT, TOP, LEFT + 3.0, TOP]),
            L(56.0, TOP),
            C([64.0, TOP, 69.0, TOP + 3.0, 70.0, CLOTH]),
            L(LEFT, CLOTH),
            L(LEFT, FOOT - 1.0),
        ],
    );
    pencil.line(FINE, &[M(70.0, CLOTH - 4.0), L(RIGHT, CLOTH - 4.0)]);
    for x in [71.0, RIGHT] {
        pencil.line(FINE, &[M(x, CLOTH - 5.6), L(x, CLOTH - 2.4)]);
    }
}
