//! A film of paint in section: wet, with a skin, dry. Its grains are the same all the time;
//! only the water between them leaves.

use super::super::Drawing;
use super::super::board::{Anchor, Board};
use super::super::hatch::{Slant, hatch};
use super::panels::{Row, panels};
use super::pencil::{Pencil, Step, block};
use super::{FINE, OUTLINE, QUIET, dry, wet};
use crate::handout::FilmSketch;
use crate::ink::{Faces, Point, Rect};

const SIZE: (f32, f32) = (96.0, 54.0);
/// Sides of the piece that is shown, and the top of its canvas.
const LEFT: f32 = 0.0;
const RIGHT: f32 = 96.0;
const CANVAS: f32 = 48.0;
const BOTTOM: f32 = 54.0;

/// Heights of the film. Dry film = wet film × the share that does not leave, here 35 % (the
/// coatings trade works such an example); paint with more water in it loses more.
const WET: f32 = 30.0;
const DRY: f32 = 0.35 * WET;
/// Somewhere between.
const SKINNED: f32 = 0.7 * WET;
const SKIN: f32 = 4.0;

/// Where water leaves, and where its name ends.
const ARROWS: [f32; 3] = [72.0, 81.0, 90.0];
const WATER: f32 = 66.0;
/// Narrower than this, in points, there is no room above the film to write it.
const LEAST: f32 = 60.0;

pub(super) fn draw(data: &FilmSketch, width: f32, faces: &Faces) -> Drawing {
    let water = Board::new(faces).measure(QUIET, &data.water) * SIZE.0 / WATER;
    let row = Row { size: SIZE, most: 3, least: water.max(LEAST) };
    panels(&data.stages, &row, width, faces, |pencil, stage| {
        canvas(pencil);
        match stage {
            0 => wet_film(pencil, &data.water),
            1 => skinned_film(pencil),
            _ => dry_film(pencil),
        }
    })
}

fn canvas(pencil: &mut Pencil<'_, '_>) {
    let (from, to) = (pencil.at((LEFT, CANVAS)), pencil.at((RIGHT, BOTTOM)));
    let area = Rect { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y };
    pencil.board.path(hatch(area, Slant::Rising, 4.0), None, Some(FINE));
    pencil.outline(&block(LEFT, CANVAS, RIGHT, BOTTOM));
}

fn wet_film(pencil: &mut Pencil<'_, '_>, water: &str) {
    let top = CANVAS - WET;
    pencil.thing(wet(), &block(LEFT, top, RIGHT, CANVAS));
    pencil.grains((LEFT, top), (RIGHT, CANVAS), (12, 5));
    for x in ARROWS {
        pencil.arrow((x, top - 2.0), (x, 1.0));
    }
    let Point { x, y } = pencil.at((WATER, top));
    pencil.board.text(QUIET, Point { x, y: y - 4.0 }, Anchor::End, water);
}

fn skinned_film(pencil: &mut Pencil<'_, '_>) {
    let top = CANVAS - SKINNED;
    pencil.thing(wet(), &block(LEFT, top, RIGHT, CANVAS));
    pencil.ground(dry(), &block(LEFT, top, RIGHT, top + SKIN));
    pencil.line(OUTLINE, &block_top(top));
    pencil.grains((LEFT, top), (RIGHT, top + SKIN), (24, 1));
    pencil.grains((LEFT, top + SKIN), (RIGHT, CANVAS), (12, 3));
    for x in ARROWS {
        pencil.arrow((x, top - 2.0), (x, top - 10.0));
    }
}

fn dry_film(pencil: &mut Pencil<'_, '_>) {
    let top = CANVAS - DRY;
    pencil.thing(dry(), &block(LEFT, top, RIGHT, CANVAS));
    pencil.grains((LEFT, top), (RIGHT, CANVAS), (20, 3));
}

fn block_top(top: f32) -> [Step; 2] {
    [Step::Move(LEFT, top + SKIN), Step::Line(RIGHT, top + SKIN)]
}
