use std::collections::HashMap;

use super::place::Placed;
use crate::ink::{Faces, Figures, Point, Rect, Shape, TextRun};
use crate::page::inline::LinkTo;
use crate::page::strip::{Area, Drift, LateNumber, Strip};
use crate::page::{Bookmark, Link, LinkTarget, MOST_PAGES, Mark, Page, Role, draw};

/// Places of anchors: page from 0 and height from the top of the page.
pub(in crate::page) struct Numbers<'a> {
    places: HashMap<&'a str, (usize, f32)>,
}

impl<'a> Numbers<'a> {
    /// From placed strips; where two anchors share a name, the first counts.
    pub(in crate::page) fn of(strips: &[Strip<'a>], placed: &[Placed], top: f32) -> Self {
        let mut places = HashMap::new();
        for (strip, at) in strips.iter().zip(placed) {
            for anchor in &strip.anchors {
                places.entry(anchor.name).or_insert((at.page, top + at.top + anchor.y));
            }
            for (note, note_top) in strip.beside.iter().zip(&at.notes) {
                for anchor in &note.anchors {
                    places.entry(anchor.name).or_insert((at.page, top + note_top + anchor.y));
                }
            }
        }
        Self { places }
    }

    /// Page numbers from 1.
    pub(in crate::page) fn numbers(&self) -> HashMap<&'a str, usize> {
        self.places.iter().map(|(&name, &(page, _))| (name, page + 1)).collect()
    }

    fn target(&self, to: LinkTo<'_>) -> Option<LinkTarget> {
        match to {
            LinkTo::Web(address) => Some(LinkTarget::Web(address.to_owned())),
            LinkTo::Anchor(name) => {
                let &(page, y) = self.places.get(name)?;
                Some(LinkTarget::Place { page, y })
            }
        }
    }
}

/// Gives every mark its place on its page.
pub(in crate::page) fn press<'a>(
    strips: Vec<Strip<'a>>,
    placed: &[Placed],
    numbers: &Numbers<'a>,
    faces: &Faces,
    top: f32,
) -> (Vec<Page>, Vec<Bookmark>) {
    let count = placed.last().map_or(1, |last| last.page + 1).min(MOST_PAGES + 1);
    let mut press =
        Press { pages: vec![Page::default(); count], outline: Vec::new(), numbers, faces };
    for (mut strip, at) in strips.into_iter().zip(placed) {
        let y = top + at.top;
        if let Some(head) = strip.head.take().filter(|_| at.first) {
            press.repeat(&head, at.page, y - head.height);
        }
        // Reading order: a note before what it stands beside, a caption after its figure.
        let beside = std::mem::take(&mut strip.beside).into_iter().zip(&at.notes);
        let (captions, notes): (Vec<_>, Vec<_>) =
            beside.partition(|(note, _)| note.drift == Drift::Caption);
        for (note, note_top) in notes {
            press.strip(note, at.page, top + note_top);
        }
        press.strip(strip, at.page, y);
        for (caption, caption_top) in captions {
            press.strip(caption, at.page, top + caption_top);
        }
    }
    (press.pages, press.outline)
}

struct Press<'p, 'a> {
    pages: Vec<Page>,
    outline: Vec<Bookmark>,
    numbers: &'p Numbers<'a>,
    faces: &'p Faces,
}

impl<'a> Press<'_, 'a> {
    fn strip(&mut self, strip: Strip<'a>, index: usize, top: f32) {
        let Some(page) = self.pages.get_mut(index) else { return };
        page.marks.reserve(strip.marks.len());
        for mut mark in strip.marks {
            draw::shift(&mut mark.shape, 0.0, top);
            page.marks.push(mark);
        }
        for number in strip.numbers {
            page.marks.push(late(&number, self.numbers, self.faces, top));
        }
        for area in strip.links {
            if let Some(to) = self.numbers.target(area.to) {
                page.links.push(link(area, to, top));
            }
        }
        for heading in strip.headings {
            let y = top + heading.y;
            let (title, level) = (heading.title, heading.level);
            self.outline.push(Bookmark { title, level, page: index, y });
        }
    }

    /// A table's head once more, for the eye only.
    fn repeat(&mut self, head: &Strip<'a>, index: usize, top: f32) {
        let Some(page) = self.pages.get_mut(index) else { return };
        for mark in &head.marks {
            let mut shape = mark.shape.clone();
            draw::shift(&mut shape, 0.0, top);
            page.marks.push(Mark { shape, role: Role::Artifact });
        }
    }
}

fn link(area: Area<'_>, to: LinkTarget, top: f32) -> Link {
    let Area { x, y, width, height, tag, description, .. } = area;
    Link { area: Rect { x, y: y + top, width, height }, to, tag, description }
}

/// The page number of an anchor; a question mark where there is no such anchor.
fn late(number: &LateNumber<'_>, numbers: &Numbers<'_>, faces: &Faces, top: f32) -> Mark {
    let text = match numbers.places.get(number.anchor) {
        Some(&(page, _)) => (page + 1).to_string(),
        None => "?".to_owned(),
    };
    let LateNumber { right, y, face, size, colour, tag, .. } = *number;
    let x = right - faces.measure(face, Figures::Tabular, size, &text);
    let glyphs = faces.glyphs(face, Figures::Tabular, &text);
    let origin = Point { x, y: y + top };
    let shape = Shape::Text(TextRun { face, size, colour, origin, glyphs, text });
    Mark { shape, role: Role::Content(tag) }
}
