//! A canvas on its feet over a tray: with the level on it, and under its cover.

use super::super::Drawing;
use super::super::board::{Anchor, Board};
use super::super::style::WHITE;
use super::callouts::{Callout, callouts};
use super::pencil::Step::{Curve as C, Line as L, Move as M};
use super::pencil::{Pencil, block};
use super::{FINE, NAME, OUTLINE, WORDS, dry, wet};
use crate::handout::SetUpSketch;
use crate::ink::{Faces, Point};

/// Of one of the two pictures, in its own units.
const SIZE: (f32, f32) = (96.0, 60.0);
/// Larger than its own units it looks coarse; smaller, nothing can be made out.
const LARGEST: f32 = 1.1;
const LEAST: f32 = 0.8;

/// Points between the two pictures side by side, or one below the other.
const GUTTER: f32 = 16.0;
const AIR: f32 = 10.0;
/// Between a picture and its name, and its words beside it.
const BELOW: f32 = 3.0;
const BESIDE: f32 = 9.0;
/// Words beside a picture take this part of what there is, if no word is longer.
const COLUMN: f32 = 0.28;

/// One of the two.
struct Scene<'a> {
    name: &'a str,
    /// Words, and the place that they are about.
    labels: [(&'a str, (f32, f32)); 4],
    sketch: fn(&mut Pencil<'_, '_>),
}

pub(super) fn draw(data: &SetUpSketch, width: f32, faces: &Faces) -> Drawing {
    let SetUpSketch { before, drying } = data;
    let scenes = [
        Scene {
            name: &before.name,
            labels: [
                (&before.level, (62.0, 28.5)),
                (&before.canvas, (78.0, 37.0)),
                (&before.feet, (72.0, 46.0)),
                (&before.tray, (80.8, 53.0)),
            ],
            sketch: levelled,
        },
        Scene {
            name: &drying.name,
            labels: [
                (&drying.cover, (88.0, 15.0)),
                (&drying.film, (70.0, 30.3)),
                (&drying.drip, (80.2, 45.2)),
                (&drying.gap, (91.0, 54.5)),
            ],
            sketch: covered,
        },
    ];
    let mut board = Board::new(faces);
    let half = (width - GUTTER) / 2.0;
    let beside = scenes.iter().all(|scene| scale(&board, scene, half) >= LEAST);
    let mut end: f32 = 0.0;
    for (number, scene) in scenes.iter().enumerate() {
        end = match (number, beside) {
            (0, true) => picture(&mut board, scene, Point { x: 0.0, y: 0.0 }, half),
            (_, true) => {
                end.max(picture(&mut board, scene, Point { x: half + GUTTER, y: 0.0 }, half))
            }
            (0, false) => picture(&mut board, scene, Point { x: 0.0, y: 0.0 }, width),
            (_, false) => picture(&mut board, scene, Point { x: 0.0, y: end + AIR }, width),
        };
    }
    board.finish(width, end)
}

/// Width of the words beside a scene.
fn column(board: &Board<'_>, scene: &Scene<'_>, width: f32) -> f32 {
    let words = scene.labels.iter().flat_map(|(words, _)| words.split(' '));
    words.map(|word| board.measure(WORDS, word)).fold(width * COLUMN, f32::max)
}

fn scale(board: &Board<'_>, scene: &Scene<'_>, width: f32) -> f32 {
    (width - column(board, scene, width) - BESIDE - OUTLINE.width) / SIZE.0
}

/// A scene with its words, from its top left corner; where it ends.
fn picture(board: &mut Board<'_>, scene: &Scene<'_>, origin: Point, width: f32) -> f32 {
    let scale = scale(board, scene, width).clamp(0.2, LARGEST);
    let rim = OUTLINE.width / 2.0;
    let sheet = Point { x: origin.x + rim, y: origin.y };
    let mut pencil = Pencil { board, origin: sheet, scale };
    (scene.sketch)(&mut pencil);
    let labels = scene.labels.map(|(words, at)| Callout { words, at: pencil.at(at) });
    let (left, bottom) = (SIZE.0 * scale + OUTLINE.width + BESIDE, origin.y + SIZE.1 * scale);
    let room = (origin.y, bottom);
    let end = callouts(board, &labels, origin.x + left, width - left, room);
    let name = board.wrap(NAME, SIZE.0 * scale, scene.name);
    let below = bottom + BELOW;
    let foot = below + board.lines(NAME, origin.x, below, Anchor::Start, &name);
    foot.max(end)
}

/// What stands on the table both times.
fn canvas_in_tray(pencil: &mut Pencil<'_, '_>) {
    pencil.line(FINE, &[M(0.0, 59.0), L(96.0, 59.0)]);
    pencil.line(OUTLINE, &[M(13.5, 49.0), L(16.5, 58.4), L(79.5, 58.4), L(82.5, 49.0)]);
    for x in [26.0, 70.0] {
        pencil.thing(
            WHITE,
            &[M(x - 2.4, 42.0), L(x + 2.4, 42.0), L(x + 3.4, 58.0), L(x - 3.4, 58.0)],
        );
    }
    pencil.thing(WHITE, &block(18.0, 32.0, 78.0, 42.0));
}

fn levelled(pencil: &mut Pencil<'_, '_>) {
    canvas_in_tray(pencil);
    pencil.thing(WHITE, &block(32.0, 25.5, 64.0, 31.6));
    pencil.round(wet(), (48.0, 28.5), (5.5, 1.7));
    for x in [45.4, 50.6] {
        pencil.line(FINE, &[M(x, 26.4), L(x, 30.6)]);
    }
}

fn covered(pencil: &mut Pencil<'_, '_>) {
    canvas_in_tray(pencil);
    pencil.thing(
        wet(),
        &[
            M(14.8, 41.4),
            L(14.8, 32.0),
            C([14.8, 29.6, 15.8, 28.6, 18.0, 28.6]),
            L(78.0, 28.6),
            C([80.2, 28.6, 81.2, 29.6, 81.2, 32.0]),
            L(81.2, 41.4),
            L(78.0, 41.4),
            L(78.0, 32.0),
            L(18.0, 32.0),
            L(18.0, 41.4),
        ],
    );
    for x in [16.4, 79.6] {
        pencil.thing(
            dry(),
            &[
                M(x, 39.4),
                C([x + 0.6, 42.6, x + 2.1, 44.0, x + 2.1, 45.4]),
                C([x + 2.1, 48.0, x - 2.1, 48.0, x - 2.1, 45.4]),
                C([x - 2.1, 44.0, x - 0.6, 42.6, x, 39.4]),
            ],
        );
    }
    // A carton without a bottom; damp air gets out below it.
    pencil.line(OUTLINE, &[M(8.0, 51.0), L(8.0, 8.0), L(88.0, 8.0), L(88.0, 51.0)]);
    pencil.arrow((12.0, 54.5), (1.0, 54.5));
    pencil.arrow((84.0, 54.5), (95.0, 54.5));
}
