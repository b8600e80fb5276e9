use crate::handout::{Edition, Fact};
use crate::ink::{Face, Figures};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::Look;
use crate::page::strip::{Entry, Joint, Strip};
use crate::page::style::Size;
use crate::page::{Mark, Role, TagKind, draw};

use super::facts::{FactStyle, rows};
use super::{Joints, text_strips};

/// Head of a sheet: its kind, its title, a thick rule, and facts in a row.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    kind: &'a str,
    title: &'a str,
    facts: &'a [Fact],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let (scale, palette) = (desk.style.scale.clone(), desk.style.palette);
    let grid = desk.style.grid();
    let tag = desk.tag(TagKind::Paragraph, column.tag);
    let look = Look::new(Face::Bold, scale.note.size, palette.accent, tag);
    let lines = desk.words(kind, look, Setting::ragged(column.width));
    galley.extend(text_strips(lines, column.x, scale.note, 0.0, Joints::Whole));
    galley.glue();

    let (tag, level) = desk.tree.heading(1, column.tag);
    // A title that is a little too long for a line is set smaller rather than broken.
    let on_a_line = |size: &Size| {
        desk.width(Face::Bold, Figures::Proportional, size.size, title) <= column.width
    };
    let size = [scale.chapter, scale.title].into_iter().find(on_a_line).unwrap_or(scale.chapter);
    let look = Look::new(Face::Bold, size.size, palette.ink, tag);
    let lines = desk.words(title, look, Setting::ragged(column.width));
    let mut strips = text_strips(lines, column.x, size, 0.0, Joints::Whole);
    if let Some(first) = strips.first_mut() {
        first.headings.push(Entry { title: title.to_owned(), level, y: 0.0 });
    }
    galley.extend(strips);

    let ends = ((column.x, 0.0), (column.x + column.width, 0.0));
    let rule = draw::line(ends.0, ends.1, palette.accent, 1.5);
    galley.push(Strip {
        height: 1.5,
        gap: grid * 0.8,
        joint: Joint::Glued,
        marks: vec![Mark { shape: rule, role: Role::Artifact }],
        ..Strip::default()
    });
    let style = FactStyle {
        label: scale.small,
        label_colour: palette.quiet,
        values: match desk.style.edition {
            Edition::Standard => vec![scale.body],
            // Three in a row are worth a smaller size, where a page holds few rows.
            Edition::LargePrint => vec![scale.body, scale.note],
        },
        value_colour: palette.ink,
        note: scale.small,
        note_colour: palette.quiet,
        gutter: 2.0 * grid,
    };
    if !facts.is_empty() {
        for mut row in rows(desk, facts, column, &style) {
            row.gap = grid * 0.6;
            row.joint = Joint::Glued;
            galley.push(row);
        }
    }
    galley.leave(2.0 * grid);
}
