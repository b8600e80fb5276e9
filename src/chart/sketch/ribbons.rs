//! The ribbon test: paint that runs back into its cup from a stick.

use super::super::Drawing;
use super::super::style::WHITE;
use super::panels::{Row, panels};
use super::pencil::Step::{Curve as C, Line as L, Move as M};
use super::pencil::{Pencil, Step};
use super::{OUTLINE, wet};
use crate::handout::Part;
use crate::ink::Faces;

const ROW: Row = Row { size: (96.0, 54.0), most: 3, least: 0.0 };

/// Where the ribbon meets the paint.
const X: f32 = 26.0;
const LEVEL: f32 = 36.0;
/// Where it leaves the stick.
const STICK: f32 = 8.5;

pub(super) fn draw(parts: &[Part], width: f32, faces: &Faces) -> Drawing {
    panels(parts, &ROW, width, faces, |pencil, number| {
        let paint = [M(3.4, LEVEL), L(48.6, LEVEL), L(45.5, 53.0), L(6.5, 53.0)];
        pencil.ground(wet(), &paint);
        pencil.line(OUTLINE, &[M(3.4, LEVEL), L(48.6, LEVEL)]);
        match number {
            0 => ribbon(pencil, 0.8, LEVEL),
            1 => {
                mound(pencil, &low_mound());
                ribbon(pencil, 1.6, LEVEL - 3.0);
            }
            _ => {
                mound(pencil, &coil());
                ribbon(pencil, 2.6, LEVEL - 10.0);
            }
        }
        // The cup and the flat stick.
        pencil.line(OUTLINE, &[M(0.6, 22.0), L(6.5, 53.0), L(45.5, 53.0), L(51.4, 22.0)]);
        pencil.thing(WHITE, &[M(22.5, 7.0), L(64.0, 0.8), L(64.6, 4.6), L(23.1, 10.8)]);
    })
}

/// Half as wide as is said, from the stick down to some height.
fn ribbon(pencil: &mut Pencil<'_, '_>, half: f32, foot: f32) {
    let (left, right) = (X - half, X + half);
    let waist = half * 0.8;
    pencil.ground(
        wet(),
        &[M(left, STICK), L(right, STICK), L(X + waist, foot + 0.6), L(X - waist, foot + 0.6)],
    );
    pencil.line(OUTLINE, &[M(left, STICK), L(X - waist, foot)]);
    pencil.line(OUTLINE, &[M(right, STICK), L(X + waist, foot)]);
}

fn mound(pencil: &mut Pencil<'_, '_>, steps: &[Step]) {
    pencil.ground(wet(), steps);
    pencil.line(OUTLINE, steps);
}

fn low_mound() -> [Step; 3] {
    [
        M(X - 15.0, LEVEL),
        C([X - 8.0, LEVEL, X - 6.0, LEVEL - 3.2, X, LEVEL - 3.2]),
        C([X + 6.0, LEVEL - 3.2, X + 8.0, LEVEL, X + 15.0, LEVEL]),
    ]
}

/// Folds that lie on one another.
fn coil() -> [Step; 5] {
    [
        M(X - 12.0, LEVEL),
        C([X - 17.0, LEVEL - 5.5, X - 11.0, LEVEL - 5.5, X - 8.0, LEVEL - 5.5]),
        C([X - 12.0, LEVEL - 10.5, X - 6.0, LEVEL - 10.5, X, LEVEL - 10.5]),
        C([X + 6.0, LEVEL - 10.5, X + 12.0, LEVEL - 10.5, X + 8.0, LEVEL - 5.5]),
        C([X + 11.0, LEVEL - 5.5, X + 17.0, LEVEL - 5.5, X + 12.0, LEVEL]),
    ]
}
