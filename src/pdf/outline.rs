//! The outline: bookmarks in their levels.

use lopdf::{Dictionary, Document, Object, ObjectId, dictionary};

use super::PdfError;
use super::meta::{catalog, string};
use super::sheet::{Sheets, destination};
use crate::page::Pages;

/// A bookmark on its way into the tree.
struct Entry {
    id: ObjectId,
    level: u8,
    dict: Dictionary,
    parent: Option<usize>,
    children: Vec<usize>,
}

/// Adds the outline, chapters closed, and asks the reader to show it.
pub(super) fn add(draft: &mut Document, pages: &Pages, sheets: &Sheets) -> Result<(), PdfError> {
    if pages.outline.is_empty() {
        return Ok(());
    }
    let root = draft.new_object_id();
    let mut entries: Vec<Entry> = Vec::with_capacity(pages.outline.len());
    let mut top = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    for bookmark in &pages.outline {
        let place = destination(sheets.get(bookmark.page)?, pages.size.1 - bookmark.y);
        let dict = dictionary! { "Title" => string(&bookmark.title), "Dest" => place };
        open.retain(|&e| entries.get(e).is_some_and(|entry| entry.level < bookmark.level));
        let parent = open.last().copied();
        let index = entries.len();
        match parent.and_then(|parent| entries.get_mut(parent)) {
            Some(parent) => parent.children.push(index),
            None => top.push(index),
        }
        let id = draft.new_object_id();
        entries.push(Entry { id, level: bookmark.level, dict, parent, children: Vec::new() });
        open.push(index);
    }

    let ids: Vec<ObjectId> = entries.iter().map(|entry| entry.id).collect();
    let mut neighbours = vec![(None, None); entries.len()];
    for family in entries.iter().map(|entry| &entry.children).chain([&top]) {
        for pair in family.windows(2) {
            if let [before, after] = *pair {
                if let Some(slot) = neighbours.get_mut(before) {
                    slot.1 = ids.get(after).copied();
                }
                if let Some(slot) = neighbours.get_mut(after) {
                    slot.0 = ids.get(before).copied();
                }
            }
        }
    }
    for (entry, (previous, next)) in entries.into_iter().zip(neighbours) {
        let mut dict = entry.dict;
        let parent = entry.parent.and_then(|parent| ids.get(parent)).copied().unwrap_or(root);
        dict.set("Parent", parent);
        if let Some(id) = previous {
            dict.set("Prev", id);
        }
        if let Some(id) = next {
            dict.set("Next", id);
        }
        span(&mut dict, &ids, &entry.children);
        if !entry.children.is_empty() {
            dict.set("Count", -(entry.children.len() as i64));
        }
        draft.set_object(entry.id, dict);
    }
    let mut dict = dictionary! { "Type" => "Outlines", "Count" => top.len() as i64 };
    span(&mut dict, &ids, &top);
    draft.set_object(root, dict);
    let catalog = catalog(draft)?;
    catalog.set("Outlines", root);
    catalog.set("PageMode", Object::Name(b"UseOutlines".to_vec()));
    Ok(())
}

/// Names the first and the last of a family.
fn span(dict: &mut Dictionary, ids: &[ObjectId], family: &[usize]) {
    for (key, child) in [("First", family.first()), ("Last", family.last())] {
        if let Some(id) = child.and_then(|&child| ids.get(child)) {
            dict.set(key, *id);
        }
    }
}
