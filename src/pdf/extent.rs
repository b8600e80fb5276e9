//! How far marks reach.

use crate::ink::{Faces, PathSegment, Point, Shape};
use crate::page::{Pages, Role, TagId};

/// Left, bottom, right and top of what is drawn on a page for a tag and the tags
/// within it, in points from the bottom left corner.
pub(super) fn figure_box(
    pages: &Pages,
    tag: TagId,
    page: usize,
    faces: &Faces,
) -> Option<[f32; 4]> {
    let within = |role: Role| match role {
        Role::Content(mut own) => loop {
            if own == tag {
                break true;
            }
            match pages.tags.get(own.0).and_then(|t| t.parent) {
                Some(parent) if parent < own => own = parent,
                _ => break false,
            }
        },
        Role::Artifact => false,
    };
    let height = pages.size.1;
    let mut reach: Option<[f32; 4]> = None;
    for mark in pages.pages.get(page)?.marks.iter().filter(|mark| within(mark.role)) {
        let Some([left, top, right, bottom]) = extent(&mark.shape, faces) else { continue };
        let [l, b, r, t] = [left, height - bottom, right, height - top];
        reach = Some(match reach {
            Some([a, c, d, e]) => [a.min(l), c.min(b), d.max(r), e.max(t)],
            None => [l, b, r, t],
        });
    }
    reach
}

/// Left, top, right and bottom of a shape, y downwards; control points count as if the
/// curve went through them.
fn extent(shape: &Shape, faces: &Faces) -> Option<[f32; 4]> {
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
