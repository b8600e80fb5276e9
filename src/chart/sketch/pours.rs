//! Techniques as small pictures: the same canvas each time, seen aslant from the front.

use super::super::Drawing;
use super::super::outline::ellipse;
use super::super::style::WHITE;
use super::panels::{Row, panels};
use super::pencil::Step::{Curve as C, Line as L, Move as M};
use super::pencil::{Pencil, Step, turned};
use super::{FINE, OUTLINE, dry, wet};
use crate::handout::Part;
use crate::ink::Faces;

const ROW: Row = Row { size: (96.0, 47.0), most: 3, least: 0.0 };

/// The face of the canvas; its front side is so deep.
const FACE: [Step; 4] = [M(1.0, 41.0), L(68.0, 41.0), L(92.0, 22.0), L(25.0, 22.0)];
const DEPTH: f32 = 4.0;
const MIDDLE: (f32, f32) = (46.5, 31.5);

pub(super) fn draw(parts: &[Part], width: f32, faces: &Faces) -> Drawing {
    panels(parts, &ROW, width, faces, |pencil, number| {
        if number == 5 {
            turntable(pencil);
        }
        canvas(pencil);
        match number {
            0 => straight(pencil),
            1 => flip_cup(pencil),
            2 => ring(pencil),
            3 => swipe(pencil),
            4 => blown(pencil),
            _ => spun(pencil),
        }
    })
}

fn canvas(pencil: &mut Pencil<'_, '_>) {
    pencil.thing(WHITE, &[M(1.0, 41.0), L(68.0, 41.0), L(68.0, 45.0), L(1.0, 45.0)]);
    pencil.thing(
        WHITE,
        &[M(68.0, 41.0), L(92.0, 22.0), L(92.0, 22.0 + DEPTH), L(68.0, 41.0 + DEPTH)],
    );
    pencil.thing(WHITE, &FACE);
}

/// A cup that pours at its lip: a stream of some width falls from there to some height.
fn pouring(pencil: &mut Pencil<'_, '_>, lip: (f32, f32), half: f32, foot: f32) {
    let (x, y) = lip;
    pencil.ground(
        dry(),
        &[M(x - half, y), L(x + half, y), L(x + half * 0.7, foot), L(x - half * 0.7, foot)],
    );
    pencil.line(FINE, &[M(x - half, y), L(x - half * 0.7, foot)]);
    pencil.line(FINE, &[M(x + half, y), L(x + half * 0.7, foot)]);
    // Upright it would stand left of its lip, its mouth up.
    let cup = [M(x - 12.0, y), L(x, y), L(x - 2.0, y + 13.0), L(x - 10.0, y + 13.0)];
    pencil.thing(WHITE, &turned(&cup, lip, 78.0));
}

fn straight(pencil: &mut Pencil<'_, '_>) {
    pencil.round(wet(), (66.0, 28.5), (12.0, 3.6));
    pencil.round(dry(), (MIDDLE.0, 33.5), (13.0, 4.2));
    pouring(pencil, (42.0, 12.5), 1.6, 33.0);
}

fn flip_cup(pencil: &mut Pencil<'_, '_>) {
    let (x, y) = MIDDLE;
    pencil.round(dry(), (x, y + 1.0), (20.0, 5.8));
    pencil.thing(
        WHITE,
        &[
            M(x - 8.0, y),
            L(x - 5.8, 14.0),
            C([x - 5.0, 12.4, x + 5.0, 12.4, x + 5.8, 14.0]),
            L(x + 8.0, y),
            C([x + 6.0, y + 3.0, x - 6.0, y + 3.0, x - 8.0, y]),
        ],
    );
    pencil.arrow((x, 11.0), (x, 1.0));
}

fn ring(pencil: &mut Pencil<'_, '_>) {
    for (number, share) in [1.0, 0.78, 0.56, 0.34, 0.14].into_iter().enumerate() {
        let ground = if number % 2 == 0 { dry() } else { WHITE };
        pencil.round(ground, MIDDLE, (26.0 * share, 7.6 * share));
    }
    pouring(pencil, (MIDDLE.0, 12.5), 0.8, MIDDLE.1);
}

/// A point of the face by its shares along the front and towards the back.
fn on_face(across: f32, back: f32) -> (f32, f32) {
    (1.0 + 67.0 * across + 24.0 * back, 41.0 - 19.0 * back)
}

fn swipe(pencil: &mut Pencil<'_, '_>) {
    let corner = |(x, y): (f32, f32), first: bool| if first { M(x, y) } else { L(x, y) };
    let band = |from: f32, to: f32| {
        [
            corner(on_face(from, 0.0), true),
            corner(on_face(to, 0.0), false),
            corner(on_face(to, 1.0), false),
            corner(on_face(from, 1.0), false),
        ]
    };
    pencil.ground(wet(), &band(0.0, 1.0));
    pencil.ground(dry(), &band(0.0, 0.14));
    // The veil behind the strip thins out.
    for back in [0.1, 0.26, 0.42, 0.58, 0.74, 0.9] {
        let ((x, y), (end, _)) = (on_face(0.14, back), on_face(0.62, back));
        pencil.line(FINE, &[M(x, y), L(end, y)]);
    }
    pencil.outline(&FACE);
    let ((fx, fy), (bx, by)) = (on_face(0.62, 0.0), on_face(0.62, 1.0));
    pencil.thing(WHITE, &[M(fx, fy), L(bx, by), L(bx - 6.0, by - 13.0), L(fx - 6.0, fy - 13.0)]);
    pencil.arrow((bx + 3.0, by - 7.0), (bx + 19.0, by - 7.0));
}

fn blown(pencil: &mut Pencil<'_, '_>) {
    pencil.ground(wet(), &FACE);
    pencil.outline(&FACE);
    pencil.thing(
        dry(),
        &[
            M(36.0, 31.0),
            C([36.0, 27.5, 44.0, 27.0, 50.0, 27.5]),
            C([58.0, 27.5, 66.0, 24.0, 73.0, 24.6]),
            C([75.0, 26.2, 64.0, 28.0, 58.0, 29.4]),
            C([66.0, 29.4, 74.0, 28.8, 77.0, 30.4]),
            C([74.0, 32.4, 64.0, 31.8, 57.0, 32.2]),
            C([62.0, 33.6, 68.0, 36.4, 66.0, 37.6]),
            C([58.0, 38.2, 52.0, 35.6, 47.0, 35.4]),
            C([40.0, 35.4, 36.0, 34.0, 36.0, 31.0]),
        ],
    );
    // A straw, held low.
    let straw = [M(0.0, 15.4), L(22.0, 15.4), L(22.0, 18.2), L(0.0, 18.2)];
    pencil.thing(WHITE, &turned(&straw, (22.0, 16.8), 30.0));
    pencil.arrow((26.0, 19.2), (37.0, 25.6));
}

fn turntable(pencil: &mut Pencil<'_, '_>) {
    pencil.board.path(
        ellipse(pencil.at((MIDDLE.0, 37.0)), 44.0 * pencil.scale, 9.4 * pencil.scale),
        Some(WHITE),
        Some(OUTLINE),
    );
}

fn spun(pencil: &mut Pencil<'_, '_>) {
    let (x, y) = MIDDLE;
    pencil.round(dry(), MIDDLE, (22.0, 6.4));
    for (dx, dy) in [(-1.0, -0.2), (1.0, 0.2), (0.35, -0.8), (-0.35, 0.8)] {
        let from = (x + dx * 7.0, y + dy * 2.4);
        pencil.arrow(from, (x + dx * 31.0, y + dy * 8.6));
    }
    // Which way it turns.
    pencil.line(FINE, &[M(x - 34.0, 13.0), C([x - 20.0, 5.0, x + 20.0, 5.0, x + 31.0, 11.6])]);
    pencil.arrow((x + 30.0, 11.0), (x + 35.0, 14.0));
}
