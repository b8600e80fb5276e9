//! Marks of pages become the content stream of a side of a sheet, with what each belongs to.

use super::font::Fonts;
use super::impose::Side;
use super::pen::Pen;
use crate::ink::Shape;
use crate::page::{Page, Pages, Role, Tag, TagId};

/// What is drawn on a side of a sheet.
pub(super) struct Content {
    pub stream: Vec<u8>,
    pub pages: Vec<OnPage>,
}

/// What shows of one page, in the order in which it is drawn.
pub(super) struct OnPage {
    pub page: usize,
    /// Number (MCID) of its first marked sequence on the side.
    pub first: usize,
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

/// Draws the pages of a side.
pub(super) fn draw(side: &Side, pages: &Pages, fonts: &Fonts) -> Content {
    let mut pen = Pen::new(fonts, pages.size.1);
    let mut first = 0;
    let mut drawn = Vec::with_capacity(side.pages.len());
    for &(number, left) in &side.pages {
        let Some(page) = pages.pages.get(number) else { continue };
        pen.left = left;
        let shown = draw_page(&mut pen, page, first, &pages.tags);
        let sequences = shown.iter().filter(|shown| matches!(shown, Shown::Sequence(_))).count();
        drawn.push(OnPage { page: number, first, shown });
        first += sequences;
    }
    Content { stream: pen.finish(), pages: drawn }
}

/// Draws a page; its sequences have numbers from `number`.
fn draw_page(pen: &mut Pen<'_>, page: &Page, mut number: usize, tags: &[Tag]) -> Vec<Shown> {
    let mut shown = Vec::new();
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
                    pen.out.name(tags.get(tag.0).map_or("P", |tag| super::tags::name(tag.kind)));
                    pen.out.raw(format!("<</MCID {number}>> ").as_bytes());
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
    shown
}
