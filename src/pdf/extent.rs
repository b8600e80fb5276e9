//! How far marks reach.

use super::sheet::Sheets;
use crate::ink::{Faces, PathSegment, Point, Shape};
use crate::page::{Pages, Role, TagKind};

/// Left, bottom, right and top in points from the bottom left corner of a page.
pub(super) type Corners = [f32; 4];

/// What is drawn for each figure and the tags within it, by tag, on the first page on which
/// it has marks.
pub(super) fn figure_boxes(pages: &Pages, sheets: &Sheets, faces: &Faces) -> Vec<Option<Corners>> {
    let mut boxes: Vec<Option<(usize, Corners)>> = vec![None; pages.tags.len()];
    let height = pages.size.1;
    for (page, marks) in pages.pages.iter().map(|page| &page.marks).enumerate() {
        for mark in marks {
            let Role::Content(own) = mark.role else { continue };
            let mut reach = None;
            let mut next = Some(own);
            while let Some(tag) = next.and_then(|id| pages.tags.get(id.0)) {
                if tag.kind == TagKind::Figure
                    && let Some(slot) = next.and_then(|id| boxes.get_mut(id.0))
                    && slot.is_none_or(|(first, _)| first == page)
                {
                    let own = *reach.get_or_insert_with(|| extent(&mark.shape, faces));
                    if let Some([left, top, right, bottom]) = own {
                        let edge = sheets.left(page);
                        let own = [edge + left, height - bottom, edge + right, height - top];
                        *slot = Some((page, slot.map_or(own, |(_, other)| around(own, other))));
                    }
                }
                next = tag.parent.filter(|&parent| Some(parent) < next);
            }
        }
    }
    boxes.into_iter().map(|found| found.map(|(_, corners)| corners)).collect()
}

/// The least box around two.
fn around([l, b, r, t]: Corners, [left, bottom, right, top]: Corners) -> Corners {
    [l.min(left), b.min(bottom), r.max(right), t.max(top)]
}

/// Left, top, right and bottom of a shape, y downwards; control points count as if the
/// curve went through them.
pub(super) fn extent(shape: &Shape, faces: &Faces) -> Option<[f32; 4]> {
    match shape {
        Shape::Text(run) => {
            let metrics = faces.metrics(run.face);
            let Point { x, y } = run.origin;
            let top = y - metrics.ascender * run.size;
            Some([x, top, x + run.width(), y - metrics.descender * run.size])
        }
        Shape::Path { segments, stroke, .. } => {
            let half = stroke.map_or(0.0, |stroke| stroke.width / 2.0);
            let points = segments.iter().flat_map(|segment| match *segment {
                PathSegment::Move(p) | PathSegment::Line(p) => [Some(p), None, None],
                PathSegment::Cubic(a, b, c) => [Some(a), Some(b), Some(c)],
                PathSegment::Close => [None; 3],
            });
            points.flatten().fold(None, |reach: Option<[f32; 4]>, Point { x, y }| {
                let own = [x - half, y - half, x + half, y + half];
                Some(reach.map_or(own, |[l, t, r, b]| {
                    [l.min(own[0]), t.min(own[1]), r.max(own[2]), b.max(own[3])]
                }))
            })
        }
    }
}
