//! What can be touched on a page: links and fields.

use lopdf::{Document, Object, ObjectId};
use std::collections::BTreeMap;

use super::PdfError;
use super::sheet::{self, Sheets};
use crate::page::TagId;

/// A link or a field that stands on a page.
pub(super) struct Annotation {
    pub id: ObjectId,
    pub page: usize,
    pub tag: TagId,
}

/// Lists all of them where they stand.
pub(super) fn list(
    draft: &mut Document,
    sheets: &Sheets,
    annotations: &[Annotation],
) -> Result<(), PdfError> {
    let mut by_side: BTreeMap<ObjectId, Vec<Object>> = BTreeMap::new();
    for annotation in annotations {
        by_side.entry(sheets.get(annotation.page)?).or_default().push(annotation.id.into());
    }
    for (side, ids) in by_side {
        sheet::dictionary(draft, side)?.set("Annots", ids);
    }
    Ok(())
}
