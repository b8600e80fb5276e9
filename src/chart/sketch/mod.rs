//! Schematic drawings of the trade. One hand draws them all: one outline, one thin line, two
//! grounds for wet and dry paint, and words at the parts.

mod callouts;
mod days;
mod faults;
mod film;
mod panels;
mod pencil;
mod pours;
mod ribbons;
mod set_up;
mod wash_water;

use super::Drawing;
use super::board::Type;
use super::style::{ACCENT, INK, LABEL, QUIET_TEXT, tint};
use crate::handout::Sketch;
use crate::ink::{Colour, Dash, Face, Faces, Stroke};

const NAME: Type = Type { face: Face::Bold, size: LABEL, colour: INK };
const WORDS: Type = Type { face: Face::Regular, size: LABEL, colour: INK };
const QUIET: Type = Type { face: Face::Regular, size: LABEL, colour: QUIET_TEXT };

/// Outlines of things, and everything finer.
const OUTLINE: Stroke = Stroke { colour: INK, width: 0.8, dash: Dash::Solid };
const FINE: Stroke = Stroke { colour: INK, width: 0.5, dash: Dash::Solid };

/// Wider than this, in points, there is only more air in it.
const WIDEST: f32 = 336.0;

/// Ground of wet paint and of water with paint in it.
fn wet() -> Colour {
    tint(ACCENT, 0.16)
}

/// Ground of dry paint, and of a second paint.
fn dry() -> Colour {
    tint(ACCENT, 0.42)
}

pub(super) fn draw(sketch: &Sketch, width: f32, faces: &Faces) -> Drawing {
    let width = width.min(WIDEST);
    match sketch {
        Sketch::Film(data) => film::draw(data, width, faces),
        Sketch::SetUp(data) => set_up::draw(data, width, faces),
        Sketch::Ribbons(parts) => ribbons::draw(parts, width, faces),
        Sketch::Pours(parts) => pours::draw(parts, width, faces),
        Sketch::Days(data) => days::draw(data, width, faces),
        Sketch::WashWater(parts) => wash_water::draw(parts, width, faces),
        Sketch::Faults(parts) => faults::draw(parts, width, faces),
    }
}
