//! Marks of a page become its content stream, with what each belongs to.

use super::font::Fonts;
use super::pen::Pen;
use crate::ink::Shape;
use crate::page::{Page, Role, TagId, TagKind};

/// What a page draws.
pub(super) struct Content {
    pub stream: Vec<u8>,
    /// In the order in which they are drawn.
    pub shown: Vec<Shown>,
}

/// What shows on a page and has its place in the structure.
#[derive(Clone, Copy)]
pub(super) enum Shown {
    /// A marked sequence of this tag; they are numbered (MCID) from 0.
    Sequence(TagId),
    /// The place of a field.
    Field(TagId),
}

/// Draws a page of some height in points. `kind` names the structure type of a tag.
pub(super) fn draw(
    page: &Page,
    height: f32,
    fonts: &Fonts,
    kind: impl Fn(TagId) -> Option<TagKind>,
) -> Content {
    let mut pen = Pen::new(fonts, height);
    let mut shown = Vec::new();
    let mut number = 0;
    let mut current = None;
    for mark in &page.marks {
        if current != Some(mark.role) {
            pen.end_text();
            if current.is_some() {
                pen.out.operator("EMC");
            }
            match mark.role {
                Role::Artifact | Role::Field(_) => {
                    pen.out.name("Artifact");
                    pen.out.operator("BMC");
                }
                Role::Content(tag) => {
                    pen.out.name(kind(tag).map_or("P", super::tags::name));
                    pen.out.raw(format!("<</MCID {}>> ", number).as_bytes());
                    pen.out.operator("BDC");
                    shown.push(Shown::Sequence(tag));
                    number += 1;
                }
            }
            if let Role::Field(tag) = mark.role {
                shown.push(Shown::Field(tag));
            }
            current = Some(mark.role);
        }
        match &mark.shape {
            Shape::Path { segments, fill, stroke } => pen.path(segments, *fill, *stroke),
            Shape::Text(run) => pen.run(run),
        }
    }
    pen.end_text();
    if current.is_some() {
        pen.out.operator("EMC");
    }
    Content { stream: pen.finish(), shown }
}
