use crate::handout::{Form, HeadingLevel, Inline};
use crate::ink::{Colour, Face};
use crate::page::desk::{Column, Desk, Place, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Look, words};
use crate::page::strip::{Anchor, Entry, Joint, Strip};
use crate::page::style::{Chapters, Size};
use crate::page::{Mark, Role, draw};

use super::{Joints, text_strips};

/// The short thick rule over a chapter: width and height in points.
const CHAPTER_RULE: (f32, f32) = (36.0, 3.0);

/// Over a chapter that does not start a page, in grid steps.
const RUN_ON: f32 = 4.0;

struct Rank {
    size: Size,
    colour: Colour,
    /// Room before and after, in grid steps.
    before: f32,
    after: f32,
    level: u8,
}

/// A heading: it stays with what follows; in a book a chapter starts a page.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    level: HeadingLevel,
    text: &'a [Inline],
    anchor: &'a str,
    column: Column,
    galley: &mut Galley<'a>,
) {
    let rank = rank(desk, level, column);
    let (tag, level_set) = desk.tree.heading(rank.level, column.tag);
    let look = Look::new(Face::Bold, rank.size.size, rank.colour, tag);
    let lines = desk.lines(text, look, Setting::ragged(column.width));
    let grid = desk.style.grid();
    let chapter =
        level == HeadingLevel::One && desk.style.form == Form::Book && column.place == Place::Flow;
    if chapter {
        let mut rule = chapter_rule(desk, column);
        match desk.style.chapters {
            Chapters::OnNewPages => galley.page(),
            Chapters::RunOn => (rule.joint, rule.gap) = (Joint::Chapter, RUN_ON * grid),
        }
        galley.head(vec![rule], grid, desk.style.snap());
    }
    let gap = if chapter { grid } else { rank.before * grid };
    let mut strips = text_strips(lines, column.x, rank.size, gap, Joints::Whole);
    if let Some(first) = strips.first_mut() {
        if !anchor.is_empty() {
            first.anchors.push(Anchor { name: anchor, y: 0.0 });
        }
        if column.place == Place::Flow {
            first.headings.push(Entry { title: words(text), level: level_set, y: 0.0 });
        }
    }
    galley.head(strips, rank.after * grid, desk.style.snap());
}

fn chapter_rule<'a>(desk: &Desk<'a, '_>, column: Column) -> Strip<'a> {
    let (width, height) = CHAPTER_RULE;
    let fill = Some(desk.style.palette.accent);
    let shape = draw::rectangle(column.x, 0.0, width, height, fill, None);
    Strip {
        height: desk.style.grid(),
        joint: Joint::Open(0.0),
        marks: vec![Mark { shape, role: Role::Artifact }],
        ..Strip::default()
    }
}

fn rank(desk: &Desk<'_, '_>, level: HeadingLevel, column: Column) -> Rank {
    let (scale, palette) = (&desk.style.scale, &desk.style.palette);
    let book = desk.style.form == Form::Book;
    if column.place == Place::Side {
        let level = level as u8 + 1;
        return Rank { size: column.text, colour: palette.ink, before: 1.0, after: 0.5, level };
    }
    match level {
        HeadingLevel::One if book => {
            Rank { size: scale.chapter, colour: palette.accent, before: 4.0, after: 3.0, level: 1 }
        }
        HeadingLevel::One => {
            Rank { size: scale.title, colour: palette.accent, before: 3.0, after: 1.0, level: 1 }
        }
        HeadingLevel::Two => {
            Rank { size: scale.large, colour: palette.accent, before: 3.0, after: 1.0, level: 2 }
        }
        HeadingLevel::Three => {
            Rank { size: scale.body, colour: palette.ink, before: 2.0, after: 0.5, level: 3 }
        }
    }
}
