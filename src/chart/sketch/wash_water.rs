//! Wash water over night, and where its two parts go.

use super::super::Drawing;
use super::super::style::WHITE;
use super::panels::{Row, panels};
use super::pencil::Step::{Curve as C, Line as L, Move as M};
use super::pencil::{Pencil, Step, block, turned};
use super::{FINE, OUTLINE, dry, wet};
use crate::handout::Part;
use crate::ink::Faces;

const ROW: Row = Row { size: (74.0, 44.0), most: 4, least: 0.0 };

/// The bucket, open at the top, and how far its wall runs inwards on the way down.
const RIM: f32 = 9.0;
const FLOOR: f32 = 43.2;
const LEFT: f32 = 0.6;
const RIGHT: f32 = 44.6;
const TAPER: f32 = 5.0;
/// Its water, and what settles in it.
const LEVEL: f32 = 15.0;
const SETTLED: f32 = 36.5;
/// Columns and rows of grains, all through the water and when they have settled.
const CLOUD: (u16, u16) = (6, 6);
const BED: (u16, u16) = (12, 3);

pub(super) fn draw(parts: &[Part], width: f32, faces: &Faces) -> Drawing {
    panels(parts, &ROW, width, faces, |pencil, number| match number {
        0 => evening(pencil),
        1 => morning(pencil),
        2 => poured_off(pencil),
        _ => sludge(pencil),
    })
}

/// How far the wall stands in at some height.
fn inset(y: f32) -> f32 {
    TAPER * (y - RIM) / (FLOOR - RIM)
}

/// From one height in the bucket to another.
fn filled(top: f32, bottom: f32) -> [Step; 4] {
    [
        M(LEFT + inset(top), top),
        L(RIGHT - inset(top), top),
        L(RIGHT - inset(bottom), bottom),
        L(LEFT + inset(bottom), bottom),
    ]
}

fn surface(pencil: &mut Pencil<'_, '_>, y: f32) {
    pencil.line(FINE, &filled(y, y)[..2]);
}

fn walls() -> [Step; 4] {
    [M(LEFT, RIM), L(LEFT + TAPER, FLOOR), L(RIGHT - TAPER, FLOOR), L(RIGHT, RIM)]
}

fn bucket(pencil: &mut Pencil<'_, '_>) {
    pencil.line(OUTLINE, &walls());
    // Its handle stands up.
    let grip = [M(LEFT, RIM), C([LEFT + 5.0, 0.0, RIGHT - 5.0, 0.0, RIGHT, RIM])];
    pencil.line(FINE, &grip);
}

fn evening(pencil: &mut Pencil<'_, '_>) {
    pencil.ground(dry(), &filled(LEVEL, FLOOR));
    surface(pencil, LEVEL);
    pencil.grains((LEFT + 5.0, LEVEL + 0.6), (RIGHT - 5.0, FLOOR - 0.6), CLOUD);
    bucket(pencil);
}

fn morning(pencil: &mut Pencil<'_, '_>) {
    pencil.ground(wet(), &filled(LEVEL, SETTLED));
    pencil.ground(dry(), &filled(SETTLED, FLOOR));
    surface(pencil, LEVEL);
    surface(pencil, SETTLED);
    pencil.grains((LEFT + 5.0, SETTLED), (RIGHT - 5.0, FLOOR - 0.4), BED);
    bucket(pencil);
}

/// Leans until the water that is left stands level from the lip to the last of what has settled.
fn poured_off(pencil: &mut Pencil<'_, '_>) {
    let origin = pencil.at((1.0, 1.0));
    let mut pencil = Pencil { board: &mut *pencil.board, origin, scale: pencil.scale * 0.82 };
    let far = LEFT + inset(SETTLED);
    let lean = (SETTLED - RIM).atan2(RIGHT - far).to_degrees();
    let lean = |steps: &[Step]| turned(steps, (22.6, 26.0), lean);
    let water = [M(RIGHT, RIM), L(RIGHT - inset(SETTLED), SETTLED), L(far, SETTLED)];
    pencil.ground(wet(), &lean(&water));
    pencil.ground(dry(), &lean(&filled(SETTLED, FLOOR)));
    pencil.line(FINE, &lean(&filled(SETTLED, SETTLED)[..2]));
    pencil.line(FINE, &lean(&[M(far, SETTLED), L(RIGHT, RIM)]));
    pencil.line(OUTLINE, &lean(&walls()));
    if let [M(x, y)] = lean(&[M(RIGHT, RIM)])[..] {
        pencil.thing(
            wet(),
            &[
                M(x, y),
                C([x + 3.0, y, x + 5.0, y + 6.0, x + 5.0, 51.0]),
                L(x + 2.0, 51.0),
                C([x + 2.0, y + 8.0, x + 1.4, y + 3.0, x, y + 2.4]),
            ],
        );
    }
}

fn sludge(pencil: &mut Pencil<'_, '_>) {
    pencil.ground(dry(), &block(3.0, 38.4, 33.0, 43.2));
    // Cracked as it dries.
    for x in [9.0, 15.5, 22.0, 27.5] {
        pencil.line(FINE, &[M(x, 38.4), L(x - 1.2, 40.2), L(x + 0.4, 41.6)]);
    }
    pencil.line(OUTLINE, &[M(0.6, 35.4), L(3.0, 43.2), L(33.0, 43.2), L(35.4, 35.4)]);
    for x in [10.0, 18.0, 26.0] {
        pencil.arrow((x, 35.0), (x, 26.0));
    }
    // The crumbs go into the bin.
    pencil.line(FINE, &[M(31.0, 24.0), C([34.0, 10.0, 47.0, 4.0, 56.0, 11.6])]);
    pencil.arrow((55.6, 11.2), (59.2, 16.2));
    pencil.thing(WHITE, &[M(46.6, 18.0), L(72.6, 18.0), L(70.2, 43.2), L(49.0, 43.2)]);
    for x in [54.0, 59.6, 65.2] {
        pencil.line(FINE, &[M(x, 23.0), L(59.6 + (x - 59.6) * 0.9, 38.6)]);
    }
}
