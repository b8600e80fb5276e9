use crate::page::desk::{Column, Desk};
use crate::page::galley::Galley;
use crate::page::strip::{Joint, Strip};
use crate::page::style::WRITING;
use crate::page::{Mark, Role, draw};

/// Ending a page between ruled lines.
const BETWEEN: f32 = 120.0;

/// Empty lines for handwriting.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    lines: u32,
    column: Column,
    galley: &mut Galley<'a>,
) {
    for index in 0..lines {
        let ends = (column.x, column.x + column.width);
        let rule = draw::line((ends.0, WRITING), (ends.1, WRITING), desk.style.palette.quiet, 0.5);
        let joint = match index {
            0 | 1 => Joint::Glued,
            last if last + 1 == lines => Joint::Glued,
            _ => Joint::Open(BETWEEN),
        };
        let marks = vec![Mark { shape: rule, role: Role::Artifact }];
        galley.push(Strip { height: WRITING + 0.5, joint, marks, ..Strip::default() });
    }
    galley.leave(desk.style.grid());
}
