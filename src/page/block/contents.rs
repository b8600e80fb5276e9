use crate::handout::{Block, Form, HeadingLevel, Inline};
use crate::ink::{Dash, Face, Stroke};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{LinkTo, Look, words};
use crate::page::strip::{Area, Entry, Joint, LateNumber, Strip, height_of};
use crate::page::style::Size;
use crate::page::{Mark, Role, TagId, TagKind, draw};

use super::{Joints, text_strips};

/// Room kept for the page number, in em.
const NUMBER: f32 = 2.6;

/// Indent of the second level, in em.
const INDENT: f32 = 1.5;

/// Ending a page within the contents; it does so between chapters if it can.
const WITHIN: f32 = 30.0;

/// Table of contents: headings of the first two levels, dots, page numbers.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    title: &'a str,
    blocks: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let book = desk.style.form == Form::Book;
    let (scale, palette, grid) = (desk.style.scale.clone(), desk.style.palette, desk.style.grid());
    if book {
        galley.page();
    }
    let (tag, level) = desk.tree.heading(1, column.tag);
    let size = if book { scale.chapter } else { scale.title };
    let look = Look::new(Face::Bold, size.size, palette.accent, tag);
    let lines = desk.words(title, look, Setting::ragged(column.width));
    let mut strips = text_strips(lines, column.x, size, 2.0 * grid, Joints::Whole);
    if let Some(first) = strips.first_mut() {
        first.headings.push(Entry { title: title.to_owned(), level, y: 0.0 });
    }
    let head = strips;
    let mark = desk.tree.mark();
    let page = desk.style.frame.height - height_of(&head) - 2.0 * grid;
    let mut entries = self::entries(desk, blocks, Depth::Sections, column);
    // Sections are left out where chapters alone fill a page.
    if book && height_of(&entries) > page {
        desk.tree.rewind(mark);
        entries = self::entries(desk, blocks, Depth::Chapters, column);
    }
    galley.extend(head);
    galley.leave(2.0 * grid);
    galley.glue();
    galley.extend(entries);
    galley.leave(2.0 * grid);
    if book {
        galley.page();
    }
}

/// What the contents name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Depth {
    Chapters,
    Sections,
}

/// An entry for each heading to a depth.
fn entries<'a>(
    desk: &mut Desk<'a, '_>,
    blocks: &'a [Block],
    depth: Depth,
    column: Column,
) -> Vec<Strip<'a>> {
    let mut galley = Galley::default();
    let contents = desk.tag(TagKind::Contents, column.tag);
    let mut before = None;
    for block in blocks {
        let Block::Heading { level, text, anchor } = block else { continue };
        match (level, depth) {
            (HeadingLevel::One, _) | (HeadingLevel::Two, Depth::Sections) => {}
            _ => continue,
        }
        // A chapter keeps its first section.
        if before == Some(HeadingLevel::One) && *level == HeadingLevel::Two {
            galley.glue();
        }
        before = Some(*level);
        entry(desk, Line { level: *level, text, anchor }, column.tagged(contents), &mut galley);
    }
    galley.finish()
}

struct Line<'a> {
    level: HeadingLevel,
    text: &'a [Inline],
    anchor: &'a str,
}

fn entry<'a>(desk: &mut Desk<'a, '_>, line: Line<'a>, column: Column, galley: &mut Galley<'a>) {
    let (palette, size) = (desk.style.palette, desk.style.scale.body);
    let item = desk.tag(TagKind::ContentsItem, column.tag);
    let tag = desk.tag(TagKind::Link, item);
    let first = line.level == HeadingLevel::One;
    let face = if first { Face::Bold } else { Face::Regular };
    let indent = if first { 0.0 } else { INDENT * size.size };
    let look = Look::new(face, size.size, palette.ink, tag);
    let measure = column.width - indent - NUMBER * size.size;
    let mut collector = desk.collector();
    collector.inlines(line.text, look);
    collector.apart(look);
    let paragraph = collector.finish();
    let lines = desk.set(&paragraph, Setting::ragged(measure));
    let end = lines.last().map_or(0.0, |line| line.width) + column.x + indent;
    let gap = if first { desk.style.grid() } else { 0.0 };
    let mut strips = text_strips(lines, column.x + indent, size, gap, Joints::Whole);
    if let Some(opening) = strips.first_mut() {
        opening.joint = if first { Joint::Open(0.0) } else { Joint::Open(WITHIN) };
    }
    if let Some(last) = strips.last_mut() {
        let look = Look { face: Face::Regular, ..look };
        finish(last, line.anchor, end, column.x + column.width, look, desk.style.palette.quiet);
    }
    for strip in &mut strips {
        strip.links.push(area(line.anchor, words(line.text), column, size, tag));
    }
    galley.extend(strips);
}

/// Dots and number on the last line of an entry.
fn finish<'a>(
    strip: &mut Strip<'a>,
    anchor: &'a str,
    end: f32,
    right: f32,
    look: Look,
    dots: crate::ink::Colour,
) {
    let y = strip.baseline.unwrap_or(strip.height * 0.7);
    let Look { face, size, colour, tag, .. } = look;
    strip.numbers.push(LateNumber { anchor, right, y, face, size, colour, tag });
    let (from, to) = (end + size * 0.5, right - size * 1.6);
    if to > from {
        let stroke = Stroke { colour: dots, width: 0.6, dash: Dash::Dotted };
        let shape = draw::dashed((from, y - 0.6), (to, y - 0.6), stroke);
        strip.marks.push(Mark { shape, role: Role::Artifact });
    }
}

fn area(anchor: &str, description: String, column: Column, size: Size, tag: TagId) -> Area<'_> {
    let Column { x, width, .. } = column;
    let to = LinkTo::Anchor(anchor);
    Area { x, y: 0.0, width, height: size.leading, to, tag, description }
}
