use std::rc::Rc;

use crate::ink::Colour;
use crate::page::strip::{Joint, Snap, Strip, height_of, stack};
use crate::page::{Mark, Role, draw};

/// Ending a page within a box that is too high for one.
const WITHIN: f32 = 25.0;

/// A box of at most this part of a page's height is kept whole; a higher one would
/// leave too large a hole before it.
const KEPT_WHOLE: f32 = 0.42;

/// Height of the portions of the others, in parts of a page's.
const PORTION: f32 = 0.08;

/// Parts of a box overlap by this, so that no seam shows between them.
const OVERLAP: f32 = 0.4;

/// What is drawn around a block; lengths in points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Box {
    pub x: f32,
    pub width: f32,
    pub ground: Option<Colour>,
    /// A bar on the left edge: colour and width.
    pub bar: Option<(Colour, f32)>,
    /// Rules at top and bottom.
    pub rules: Option<Colour>,
    pub padding: f32,
    /// Room before it.
    pub gap: f32,
}

impl Box {
    /// Puts strips into the box: one strip when it fits on a page of a height, more
    /// when it does not.
    pub(super) fn around<'a>(&self, strips: Vec<Strip<'a>>, page: f32) -> Vec<Strip<'a>> {
        let room = page - 2.0 * self.padding;
        let whole = height_of(&strips) <= page * KEPT_WHOLE;
        let parts = if whole { vec![strips] } else { portions(strips, room * PORTION) };
        let count = parts.len();
        let mut boxes = Vec::with_capacity(count);
        for (index, part) in parts.into_iter().enumerate() {
            let above = if index == 0 { self.padding } else { 0.0 };
            let below = if index + 1 == count { self.padding } else { 0.0 };
            boxes.push(self.part(part, above, below, index));
        }
        boxes
    }

    fn part<'a>(
        &self,
        mut part: Vec<Strip<'a>>,
        above: f32,
        below: f32,
        index: usize,
    ) -> Strip<'a> {
        let head = part.first_mut().and_then(|strip| strip.head.take()).filter(|_| index > 0);
        let gap = if index > 0 { part.first().map_or(0.0, |strip| strip.gap) } else { 0.0 };
        let inner = stack(part);
        let height = gap + above + inner.height + below;
        let mut strip = Strip { height, ..Strip::default() };
        let top = if index > 0 { -OVERLAP } else { 0.0 };
        let mut draw_box = |x, width, colour| {
            let shape = draw::rectangle(x, top, width, height - top, Some(colour), None);
            strip.marks.push(Mark { shape, role: Role::Artifact });
        };
        if let Some(ground) = self.ground {
            draw_box(self.x, self.width, ground);
        }
        if let Some((colour, width)) = self.bar {
            draw_box(self.x, width, colour);
        }
        if let Some(colour) = self.rules {
            let mut rule = |y| {
                let shape = draw::line((self.x, y), (self.x + self.width, y), colour, 0.75);
                strip.marks.push(Mark { shape, role: Role::Artifact });
            };
            if above > 0.0 {
                rule(0.0);
            }
            if below > 0.0 {
                rule(height);
            }
        }
        strip.baseline = inner.baseline.map(|y| y + gap + above);
        strip.add(inner, gap + above);
        if index == 0 {
            strip.gap = self.gap;
            strip.snap = Snap::Grid;
        } else {
            strip.joint = Joint::Open(WITHIN);
            // A box that goes on starts the page with its padding, and a table in it
            // with its head.
            let again = head.map_or_else(Vec::new, |head| vec![Strip::clone(&head)]);
            strip.head = Some(Rc::new(self.part(again, self.padding, 0.0, 0)));
        }
        strip
    }
}

/// Divides strips where they may part, into portions of at most a height if they
/// can.
fn portions(strips: Vec<Strip<'_>>, most: f32) -> Vec<Vec<Strip<'_>>> {
    let mut parts: Vec<Vec<Strip<'_>>> = Vec::new();
    let mut height = 0.0;
    for strip in strips {
        let open = !matches!(strip.joint, Joint::Glued) || height > 2.0 * most;
        height += strip.height + strip.gap;
        match parts.last_mut() {
            Some(part) if height <= most || !open => part.push(strip),
            _ => {
                height = strip.height;
                parts.push(vec![strip]);
            }
        }
    }
    parts
}
