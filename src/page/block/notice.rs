use crate::handout::{Block, Edition, Inline, NoticeKind, Sign};
use crate::ink::{Colour, Face};
use crate::page::desk::{Column, Desk, Place, Setting};
use crate::page::galley::Galley;
use crate::page::inline::Look;
use crate::page::strip::{Joint, Snap, Strip, height_of};
use crate::page::{Mark, Role, TagKind};

use super::frame::Box;
use super::{Joints, sign, text_strips};

/// Side of a sign in leadings of the text beside it.
const SIGN: f32 = 2.7;

/// The same in large print, where it is as large to the eye.
const SIGN_LARGE_PRINT: f32 = 2.0;

/// A column of fewer characters has the sign over the text, not beside it.
const SIGN_ABOVE: f32 = 40.0;

/// A box; cautions have a sign.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    kind: NoticeKind,
    heading: &'a [Inline],
    body: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let grid = desk.style.grid();
    let mut after = 1.5 * grid;
    let (mut frame, colour) = frame(desk, kind, column);
    let division = desk.tag(TagKind::Division, column.tag);
    let padding = if frame.ground.is_some() { 1.4 * grid } else { 1.2 * grid };
    let mut inner = column.inset(padding, padding).tagged(division);
    let sign = match kind {
        NoticeKind::Caution(sign) => Some(sign),
        NoticeKind::Practice | NoticeKind::Example | NoticeKind::Remark => None,
    };
    let sign_height = match desk.style.edition {
        Edition::Standard => SIGN,
        Edition::LargePrint => SIGN_LARGE_PRINT,
    };
    let side = sign_height * column.text.leading;
    let above = inner.width < SIGN_ABOVE * column.text.character();
    let corner = inner.x;
    if sign.is_some() && !above {
        inner = inner.inset(side + padding, 0.0);
    }
    let tag = desk.tag(TagKind::Paragraph, division);
    let look = Look::new(Face::Bold, inner.text.size, colour, tag);
    let lines = desk.lines(heading, look, Setting::ragged(inner.width));
    let mut strips = text_strips(lines, inner.x, inner.text, 0.0, Joints::Whole);
    let mut rest = desk.inner(body, inner);
    if let (Some(first), false) = (rest.first_mut(), strips.is_empty()) {
        first.gap = grid * 0.3;
        first.joint = Joint::Glued;
    }
    strips.extend(rest);
    if let Some(sign) = sign {
        strips = with_sign(desk, sign, strips, (corner, side), above);
    }
    if desk.style.edition == Edition::LargePrint && body.is_empty() {
        // Signs one below the other, to be said aloud.
        (frame.padding, frame.gap) = (0.6 * grid, grid);
        after = grid;
    }
    let mut boxes = frame.around(strips, desk.style.frame.height);
    if column.place == Place::Side {
        for strip in &mut boxes {
            strip.snap = Snap::Free;
        }
    }
    galley.extend(boxes);
    galley.leave(after);
}

/// Adds a sign, beside the first strips or above them.
fn with_sign<'a>(
    desk: &Desk<'a, '_>,
    sign: Sign,
    mut strips: Vec<Strip<'a>>,
    (x, side): (f32, f32),
    above: bool,
) -> Vec<Strip<'a>> {
    let shapes = sign::draw(sign, (x, 0.0), side, &desk.style.palette);
    let mut marks: Vec<Mark> =
        shapes.into_iter().map(|shape| Mark { shape, role: Role::Artifact }).collect();
    if above {
        if let Some(first) = strips.first_mut() {
            first.gap = desk.style.grid() * 0.5;
            first.joint = Joint::Glued;
        }
        strips.insert(0, Strip { height: side, marks, ..Strip::default() });
        return strips;
    }
    let height = height_of(&strips);
    if height < side {
        // A caution of one line is still as high as its sign, and stands beside its middle.
        let half = Strip { height: (side - height) / 2.0, ..Strip::default() };
        if let Some(first) = strips.first_mut() {
            first.joint = Joint::Glued;
        }
        strips.push(Strip { joint: Joint::Glued, ..half.clone() });
        strips.insert(0, half);
    }
    if let Some(first) = strips.first_mut() {
        marks.append(&mut first.marks);
        first.marks = marks;
    }
    strips
}

/// The box of a kind, and the colour of its heading.
fn frame(desk: &Desk<'_, '_>, kind: NoticeKind, column: Column) -> (Box, Colour) {
    let palette = desk.style.palette;
    let grid = desk.style.grid();
    let plain = Box {
        x: column.x,
        width: column.width,
        ground: None,
        bar: None,
        rules: None,
        padding: 1.2 * grid,
        gap: 1.5 * grid,
    };
    match kind {
        NoticeKind::Caution(_) => {
            let bar = Some((palette.warm, 3.0));
            (Box { ground: Some(palette.warm_tint), bar, ..plain }, palette.warm)
        }
        NoticeKind::Practice => {
            (Box { ground: Some(palette.tint), bar: None, ..plain }, palette.accent)
        }
        NoticeKind::Example => {
            let bar = Some((palette.accent, 2.0));
            (Box { bar, padding: 0.4 * grid, ..plain }, palette.accent)
        }
        NoticeKind::Remark => (Box { rules: Some(palette.rule), ..plain }, palette.ink),
    }
}
