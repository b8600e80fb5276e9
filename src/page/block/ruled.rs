use crate::page::desk::{Column, Desk};
use crate::page::galley::Galley;
use crate::page::strip::{Joint, Strip};
use crate::page::style::WRITING;
use crate::page::{Answer, Mark, Role, TagKind, draw};

/// Ending a page between ruled lines.
const BETWEEN: f32 = 120.0;

/// Empty lines for handwriting.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    lines: u32,
    column: Column,
    galley: &mut Galley<'a>,
) {
    let paragraph = desk.tag(TagKind::Paragraph, column.tag);
    for index in 0..lines {
        let ends = (column.x, column.x + column.width);
        let rule = draw::line((ends.0, WRITING), (ends.1, WRITING), desk.style.palette.quiet, 0.5);
        let joint = match index {
            0 | 1 => Joint::Glued,
            last if last + 1 == lines => Joint::Glued,
            _ => Joint::Open(BETWEEN),
        };
        let number = (index + 1).to_string();
        let what =
            desk.ruled_line.replace("{line}", &number).replace("{lines}", &lines.to_string());
        let field = desk.tree.field(Answer::Written, &what, paragraph);
        let marks = vec![Mark { shape: rule, role: Role::Field(field) }];
        galley.push(Strip { height: WRITING + 0.5, joint, marks, ..Strip::default() });
    }
    galley.leave(desk.style.grid());
}
