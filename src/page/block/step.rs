use crate::handout::{Block, Edition, Inline};
use crate::ink::{Face, Figures};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Alignment, Look};
use crate::page::strip::{Joint, Strip, height_of};
use crate::page::{Mark, Role, draw};

use super::{Joints, text_strips};

/// From the left edge to the text of a step, in em of the body.
const INDENT: f32 = 2.6;

/// Ending a page within a step costs more the less of a page the step takes: part of a
/// page's height at most, and the cost.
const WHOLE: [(f32, f32); 2] = [(0.2, 400.0), (0.4, 160.0)];
const WHOLE_LARGE_PRINT: [(f32, f32); 3] = [(0.2, 400.0), (0.4, 160.0), (0.55, 110.0)];

/// Diameter of the disc with its number, in em.
const DISC: f32 = 1.7;

/// A numbered step: its number in the margin, the rest indented.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    number: u32,
    heading: &'a [Inline],
    body: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let (palette, size, grid) = (desk.style.palette, desk.style.scale.body, desk.style.grid());
    let em = size.size;
    let (tag, _) = desk.tree.heading(3, column.tag);
    let disc = DISC * em;
    let number_look =
        Look { figures: Figures::Tabular, ..Look::new(Face::Bold, em, palette.paper, tag) };
    let setting = Setting::aligned(disc, Alignment::Centre);
    let number = desk.label(number.to_string(), number_look, setting);
    let inner = column.inset(INDENT * em, 0.0);
    let look = Look::new(Face::Bold, em, palette.ink, tag);
    let lines = desk.lines(heading, look, Setting::ragged(inner.width));
    let mut strips = text_strips(lines, inner.x, size, 2.0 * grid, Joints::Whole);
    if strips.is_empty() {
        strips.push(Strip { height: size.leading, gap: 2.0 * grid, ..Strip::default() });
    }
    if let Some(first) = strips.first_mut() {
        let baseline = first.baseline.unwrap_or(size.leading / 2.0 + em * 0.36);
        let rest = std::mem::take(&mut first.marks);
        let centre = (column.x + disc / 2.0, baseline - em * 0.36);
        let shape = draw::disc(centre, disc / 2.0, Some(palette.accent), None);
        first.marks.push(Mark { shape, role: Role::Artifact });
        if let Some(number) = number {
            first.add_line(number, column.x, baseline);
        }
        first.marks.extend(rest);
    }
    galley.head(strips, grid * 0.5, desk.style.snap());
    let mut strips = desk.inner(body, inner);
    let part = height_of(&strips) / desk.style.frame.height;
    let whole = match desk.style.edition {
        Edition::Standard => WHOLE.as_slice(),
        Edition::LargePrint => WHOLE_LARGE_PRINT.as_slice(),
    };
    if let Some((_, within)) = whole.iter().find(|(most, _)| part <= *most) {
        for strip in strips.iter_mut().skip(1) {
            if let Joint::Open(cost) = strip.joint {
                strip.joint = Joint::Open(cost + within);
            }
        }
    }
    galley.extend(strips);
    galley.leave(grid);
}
