//! What can be touched on a page: links and fields.

use lopdf::{Document, Object, ObjectId};

use super::PdfError;
use super::sheet::Sheets;
use crate::page::{Pages, TagId};

/// A link or a field that stands on a page.
pub(super) struct Annotation {
    pub id: ObjectId,
    pub page: usize,
    pub tag: TagId,
}

/// The key of the first of them in the parent tree; the pages come before.
pub(super) fn first_key(pages: &Pages) -> usize {
    pages.pages.len()
}

/// Lists all of them, which are in order of pages, on their pages.
pub(super) fn list(
    draft: &mut Document,
    sheets: &Sheets,
    annotations: &[Annotation],
) -> Result<(), PdfError> {
    let mut by_page: Vec<(usize, Vec<Object>)> = Vec::new();
    for annotation in annotations {
        match by_page.iter_mut().rev().find(|(page, _)| *page == annotation.page) {
            Some((_, ids)) => ids.push(annotation.id.into()),
            None => by_page.push((annotation.page, vec![annotation.id.into()])),
        }
    }
    for (page, ids) in by_page {
        sheets.dictionary(draft, page)?.set("Annots", ids);
    }
    Ok(())
}
