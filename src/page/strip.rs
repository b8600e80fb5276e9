//! Strips: what is placed on pages from top to bottom.

use std::rc::Rc;

use super::inline::{Line, LinkTo};
use super::style::Size;
use super::{Mark, TagId, draw};
use crate::ink::{Colour, Face};

/// A piece of a document that is not broken over pages. Marks have their x on the
/// page and their y from the top of the strip.
#[derive(Debug, Clone, Default)]
pub(super) struct Strip<'a> {
    /// Points.
    pub height: f32,
    /// Room before it; none at the top of a page.
    pub gap: f32,
    pub give: Give,
    pub joint: Joint,
    pub snap: Snap,
    pub reach: Reach,
    pub drift: Drift,
    /// From the top to the first baseline, if it starts with text.
    pub baseline: Option<f32>,
    pub marks: Vec<Mark>,
    pub links: Vec<Area<'a>>,
    pub anchors: Vec<Anchor<'a>>,
    pub headings: Vec<Entry>,
    pub numbers: Vec<LateNumber<'a>>,
    /// What stands over it again when it is the first of a page.
    pub head: Option<Rc<Strip<'a>>>,
    /// A section of the document that starts with it.
    pub section: Option<Header<'a>>,
    /// Notes in the side column that start beside it.
    pub beside: Vec<Strip<'a>>,
}

/// How a strip joins the one before it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Joint {
    /// A page may end between the two at a cost.
    Open(f32),
    /// They stay together unless nothing else is possible.
    Glued,
    /// A page starts with this strip.
    Page,
    /// A chapter: a page starts with it, or it runs on where the page before would be left
    /// too empty.
    Chapter,
}

impl Default for Joint {
    fn default() -> Self {
        Self::Open(0.0)
    }
}

/// Whether a strip's top is moved down to the grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Snap {
    #[default]
    Free,
    Grid,
}

/// Whether the gap before a strip may be made smaller to fill a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Give {
    #[default]
    Gives,
    /// The gap under a heading is the same on all pages.
    Firm,
}

/// How far a strip reaches across the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Reach {
    #[default]
    Column,
    /// Into the side column too, so that no note may stand beside it.
    Full,
}

/// What a strip does where a figure has no room at the foot of a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Drift {
    /// No figure passes it, and it passes nothing.
    #[default]
    Stays,
    /// A figure with its caption, which may stand below paragraphs that follow it.
    Figure,
    /// A line of the caption below it, or all of the caption beside it.
    Caption,
    /// The first line of a paragraph that a figure may pass.
    Paragraph,
    /// Another line of it.
    Line,
}

/// A sensitive area, from the strip's top.
#[derive(Debug, Clone)]
pub(super) struct Area<'a> {
    pub x: f32,
    pub y: f32,
    pub width: f32,
    pub height: f32,
    pub to: LinkTo<'a>,
    pub tag: TagId,
    pub description: String,
}

/// A named place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Anchor<'a> {
    pub name: &'a str,
    pub y: f32,
}

/// An entry for the outline.
#[derive(Debug, Clone)]
pub(super) struct Entry {
    pub title: String,
    pub level: u8,
    pub y: f32,
}

/// What stands at the top of the pages of a section, left and right.
pub(super) type Header<'a> = &'a (String, String);

/// A page number to be written when pages are known.
#[derive(Debug, Clone, Copy)]
pub(super) struct LateNumber<'a> {
    pub anchor: &'a str,
    /// Where it ends.
    pub right: f32,
    /// Baseline.
    pub y: f32,
    pub face: Face,
    pub size: f32,
    pub colour: Colour,
    pub tag: TagId,
}

impl<'a> Strip<'a> {
    /// A strip of one line of text that starts at `x`.
    pub(super) fn of_line(line: Line<'a>, x: f32, size: Size) -> Self {
        let height = size.leading.max(line.height);
        // Capitals stand in the middle of their leading; a line that is higher for
        // handwriting has the room above.
        let baseline = height - size.leading / 2.0 + size.size * 0.36;
        let mut strip = Self { height, baseline: Some(baseline), ..Self::default() };
        strip.add_line(line, x, baseline);
        strip
    }

    /// Adds a line of text with its baseline's start at (x, y).
    pub(super) fn add_line(&mut self, line: Line<'a>, x: f32, y: f32) {
        for mut mark in line.marks {
            draw::shift(&mut mark.shape, x, y);
            self.marks.push(mark);
        }
        self.anchors.extend(line.anchors.iter().map(|name| Anchor { name, y: y - line.size }));
        for link in line.links {
            self.links.push(Area {
                x: x + link.x,
                y: y - link.size,
                width: link.width,
                height: link.size * 1.3,
                to: link.to,
                tag: link.tag,
                description: link.description,
            });
        }
    }

    /// Adds all that another strip has, `dy` below this one's top.
    pub(super) fn add(&mut self, mut other: Self, dy: f32) {
        other.lower(dy);
        self.marks.append(&mut other.marks);
        self.links.append(&mut other.links);
        self.anchors.append(&mut other.anchors);
        self.headings.append(&mut other.headings);
        self.numbers.append(&mut other.numbers);
        self.beside.append(&mut other.beside);
    }

    /// How far to the right its marks reach.
    pub(super) fn right(&self) -> f32 {
        self.marks.iter().map(|mark| draw::right(&mark.shape)).fold(0.0, f32::max)
    }

    /// Moves everything in it to the right.
    pub(super) fn shift_right(&mut self, dx: f32) {
        for mark in &mut self.marks {
            draw::shift(&mut mark.shape, dx, 0.0);
        }
        for link in &mut self.links {
            link.x += dx;
        }
        for number in &mut self.numbers {
            number.right += dx;
        }
    }

    /// Moves everything in it down.
    fn lower(&mut self, dy: f32) {
        for mark in &mut self.marks {
            draw::shift(&mut mark.shape, 0.0, dy);
        }
        for link in &mut self.links {
            link.y += dy;
        }
        for anchor in &mut self.anchors {
            anchor.y += dy;
        }
        for heading in &mut self.headings {
            heading.y += dy;
        }
        for number in &mut self.numbers {
            number.y += dy;
        }
    }
}

/// Height of strips on top of each other, the first without its gap.
pub(super) fn height_of(strips: &[Strip<'_>]) -> f32 {
    strips.iter().enumerate().map(|(i, s)| s.height + if i > 0 { s.gap } else { 0.0 }).sum()
}

/// Puts strips on top of each other into one.
pub(super) fn stack<'a>(strips: Vec<Strip<'a>>) -> Strip<'a> {
    let mut all = Strip::default();
    for (index, strip) in strips.into_iter().enumerate() {
        if index > 0 {
            all.height += strip.gap;
        } else {
            all.baseline = strip.baseline;
        }
        let (top, height) = (all.height, strip.height);
        all.add(strip, top);
        all.height = top + height;
    }
    all
}
