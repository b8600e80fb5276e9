//! Marks of a page become its operations, with what each belongs to.

use std::collections::BTreeMap;

use printpdf::{DictItem, Op};

use super::font::Fonts;
use super::pen::Pen;
use crate::ink::Shape;
use crate::page::{Page, Role, TagId, TagKind};

/// What a page draws.
#[derive(Default)]
pub(super) struct Content {
    pub ops: Vec<Op>,
    /// The tag of each marked sequence, by its number (MCID).
    pub sequences: Vec<TagId>,
}

/// Draws a page of some height in points. `kind` names the structure type of a tag.
pub(super) fn draw(
    page: &Page,
    height: f32,
    fonts: &Fonts,
    kind: impl Fn(TagId) -> Option<TagKind>,
) -> Content {
    let mut pen = Pen::new(fonts, height);
    let mut sequences = Vec::new();
    let mut current = None;
    for mark in &page.marks {
        if current != Some(mark.role) {
            if current.is_some() {
                pen.end_text();
                pen.ops.push(Op::EndMarkedContent);
            }
            pen.end_text();
            pen.ops.push(match mark.role {
                Role::Artifact => Op::BeginMarkedContent { tag: "Artifact".to_owned() },
                Role::Content(tag) => {
                    let number = sequences.len() as i64;
                    sequences.push(tag);
                    let map = BTreeMap::from([("MCID".to_owned(), DictItem::Int(number))]);
                    Op::BeginMarkedContentWithProperties {
                        tag: kind(tag).map_or("P", super::tags::name).to_owned(),
                        properties: DictItem::Dict { map },
                    }
                }
            });
            current = Some(mark.role);
        }
        match &mark.shape {
            Shape::Path { segments, fill, stroke } => pen.path(segments, *fill, *stroke),
            Shape::Text(run) => pen.run(run),
        }
    }
    pen.end_text();
    if current.is_some() {
        pen.ops.push(Op::EndMarkedContent);
    }
    Content { ops: pen.finish(), sequences }
}
