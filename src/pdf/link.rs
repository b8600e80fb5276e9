//! Links: sensitive areas with where they lead.

use lopdf::{Document, Object, dictionary};

use super::PdfError;
use super::annotation::Annotation;
use super::meta::string;
use super::sheet::{Sheets, destination};
use crate::page::{LinkTarget, Pages};

/// Adds all links, in order of pages.
pub(super) fn add(
    draft: &mut Document,
    pages: &Pages,
    sheets: &Sheets,
) -> Result<Vec<Annotation>, PdfError> {
    let height = pages.size.1;
    let mut all = Vec::new();
    for (page, links) in pages.pages.iter().map(|page| &page.links).enumerate() {
        for link in links {
            let area = link.area;
            let left = sheets.left(page) + area.x;
            let corners = [left, height - area.y - area.height, left + area.width, height - area.y];
            let mut dict = dictionary! {
                "Type" => "Annot",
                "Subtype" => "Link",
                "Rect" => corners.map(|c| Object::Real((c * 100.0).round() / 100.0)).to_vec(),
                "Border" => vec![0.into(), 0.into(), 0.into()],
                "F" => 4,
                "Contents" => string(&link.description),
                "StructParent" => (sheets.count() + all.len()) as i64,
            };
            match &link.to {
                LinkTarget::Place { page, y } => {
                    dict.set("Dest", destination(sheets.get(*page)?, height - y));
                }
                LinkTarget::Web(address) => {
                    let action = dictionary! { "S" => "URI", "URI" => Object::string_literal(address.as_str()) };
                    dict.set("A", action);
                }
            }
            let id = draft.add_object(dict);
            all.push(Annotation { id, page, tag: link.tag });
        }
    }
    Ok(all)
}
