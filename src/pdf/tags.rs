//! The structure tree (ISO 32000-1, 14.7 and 14.8).

use lopdf::{Document, Object, ObjectId, dictionary};

use super::annotation::Annotation;
use super::content::{OnPage, Shown};
use super::element::Element;
use super::extent::figure_boxes;
use super::impose::Imposition;
use super::meta::{catalog, string};
use super::sheet::Sheets;
use super::written::Written;
use super::{PdfError, object};
use crate::ink::{Faces, Shape};
use crate::page::{Pages, Role, Tag, TagId, TagKind};

/// What hangs from a tag.
#[derive(Clone, Copy)]
enum Kid {
    Tag(TagId),
    /// A marked sequence by page and number.
    Sequence(usize, usize),
    /// A link or a field by its place among all of them.
    Touched(usize),
}

/// What the structure tree hangs on.
pub(super) struct Ground<'a> {
    pub sheets: &'a Sheets,
    /// What shows on each page.
    pub shown: &'a [OnPage],
    pub imposition: &'a Imposition,
    /// Links, then fields.
    pub touched: &'a [Annotation],
}

/// Adds the structure tree. Its elements are many, so they are `written` at once.
pub(super) fn add(
    draft: &mut Document,
    written: &mut Written,
    pages: &Pages,
    ground: &Ground<'_>,
    faces: &Faces,
) -> Result<(), PdfError> {
    let Ground { sheets, shown, imposition, touched } = *ground;
    if pages.tags.is_empty() {
        return Ok(());
    }
    let root = draft.new_object_id();
    let ids: Vec<ObjectId> = pages.tags.iter().map(|_| draft.new_object_id()).collect();
    let id_of = |tag: TagId| {
        ids.get(tag.0).copied().ok_or(PdfError::NoSuchTag { tag: tag.0, tags: ids.len() })
    };

    let families = families(&pages.tags, shown, touched)?;
    let (boxes, numberings) = (figure_boxes(pages, sheets, faces), numberings(pages));
    let mut notes = Vec::new();
    for ((index, tag), kids) in pages.tags.iter().enumerate().zip(&families) {
        let id = id_of(TagId(index))?;
        let parent = tag.parent.map_or(Ok(root), id_of)?;
        let note = (tag.kind == TagKind::Note).then(|| format!("note{:06}", notes.len() / 2 + 1));
        let mut element = Element::new(name(tag.kind), parent);
        let home = kids.iter().find_map(|kid| match kid {
            Kid::Sequence(page, _) => Some(*page),
            _ => None,
        });
        if let Some(page) = home {
            element.page(sheets.get(page)?);
        }
        for &kid in kids {
            match kid {
                Kid::Tag(tag) => element.child(id_of(tag)?),
                Kid::Sequence(page, number) if Some(page) == home => element.sequence(number),
                Kid::Sequence(page, number) => element.sequence_on(sheets.get(page)?, number),
                Kid::Touched(index) => {
                    if let Some(touched) = touched.get(index) {
                        element.object_on(sheets.get(touched.page)?, touched.id);
                    }
                }
            }
        }
        if tag.kind == TagKind::Figure {
            element.text("Alt", tag.alt.as_deref());
        }
        element.text("ID", note.as_deref());
        match (tag.kind, boxes.get(index), numberings.get(index)) {
            (TagKind::ColumnHeader, ..) => element.attributes("Table/Scope/Column"),
            (TagKind::RowHeader, ..) => element.attributes("Table/Scope/Row"),
            (TagKind::List, _, Some(Some(numbering))) => {
                element.attributes(&format!("List/ListNumbering/{numbering}"));
            }
            (TagKind::Figure, Some(Some(corners)), _) => {
                let [l, b, r, t] = corners.map(|c| (c * 100.0).round() / 100.0);
                element.attributes(&format!("Layout/Placement/Block/BBox[{l} {b} {r} {t}]"));
            }
            _ => {}
        }
        written.add(id, |out| element.finish(out));
        notes.extend(note.into_iter().flat_map(|note| [string(&note), id.into()]));
    }

    let parents = draft.new_object_id();
    let mut numbers = b"<</Nums[".to_vec();
    for (at, side) in imposition.sides.iter().enumerate() {
        object::integer(&mut numbers, at);
        numbers.push(b'[');
        let shown = side.pages.iter().filter_map(|&(page, _)| shown.get(page));
        for shown in shown.flat_map(|page| &page.shown) {
            if let Shown::Sequence(tag) = *shown {
                object::reference(&mut numbers, id_of(tag)?);
                numbers.push(b' ');
            }
        }
        numbers.push(b']');
        let sheet = sheets.dictionary(draft, at)?;
        sheet.set("StructParents", at as i64);
        sheet.set("Tabs", Object::Name(b"S".to_vec()));
    }
    for (key, touched) in (sheets.count()..).zip(touched) {
        object::integer(&mut numbers, key);
        numbers.push(b' ');
        object::reference(&mut numbers, id_of(touched.tag)?);
        numbers.push(b' ');
    }
    numbers.extend(b"]>>");
    written.add(parents, |out| out.append(&mut numbers));
    let mut dict = dictionary! {
        "Type" => "StructTreeRoot",
        "K" => id_of(TagId(0))?,
        "ParentTree" => parents,
        "ParentTreeNextKey" => (sheets.count() + touched.len()) as i64,
    };
    if !notes.is_empty() {
        dict.set("IDTree", dictionary! { "Names" => notes });
    }
    draft.set_object(root, dict);
    let catalog = catalog(draft)?;
    catalog.set("StructTreeRoot", root);
    catalog.set("MarkInfo", dictionary! { "Marked" => true });
    Ok(())
}

/// What hangs from each tag, in reading order: content, fields and tags that carry them
/// where they first appear, an empty tag after its elder sibling.
fn families(
    tags: &[Tag],
    shown: &[OnPage],
    touched: &[Annotation],
) -> Result<Vec<Vec<Kid>>, PdfError> {
    let missing = |tag: TagId| PdfError::NoSuchTag { tag: tag.0, tags: tags.len() };
    let mut families: Vec<Vec<(usize, Kid)>> = vec![Vec::new(); tags.len()];
    let mut first = vec![usize::MAX; tags.len()];
    let mut order = 0;
    for OnPage { page, first: number, shown } in shown {
        let mut number = *number;
        for shown in shown {
            let (Shown::Sequence(tag) | Shown::Field(tag)) = *shown;
            let first = first.get_mut(tag.0).ok_or(missing(tag))?;
            *first = order.min(*first);
            if let Shown::Sequence(_) = shown {
                let family = families.get_mut(tag.0).ok_or(missing(tag))?;
                family.push((order, Kid::Sequence(*page, number)));
                number += 1;
            }
            order += 1;
        }
    }
    for (index, touched) in touched.iter().enumerate() {
        let family = families.get_mut(touched.tag.0).ok_or(missing(touched.tag))?;
        family.push((order, Kid::Touched(index)));
    }
    for (index, tag) in tags.iter().enumerate().rev() {
        let Some(parent) = tag.parent else { continue };
        let own = first.get(index).copied().unwrap_or(usize::MAX);
        match first.get_mut(parent.0) {
            Some(first) if parent.0 < index => *first = own.min(*first),
            _ => return Err(missing(parent)),
        }
    }
    let mut reached = vec![0; tags.len()];
    for (index, tag) in tags.iter().enumerate() {
        let Some(parent) = tag.parent else { continue };
        let (Some(family), Some(reached)) = (families.get_mut(parent.0), reached.get_mut(parent.0))
        else {
            return Err(missing(parent));
        };
        let at = first.get(index).copied().filter(|&at| at != usize::MAX).unwrap_or(*reached);
        *reached = at;
        family.push((at, Kid::Tag(TagId(index))));
    }
    Ok(families
        .into_iter()
        .map(|mut family| {
            family.sort_by_key(|&(order, _)| order);
            family.into_iter().map(|(_, kid)| kid).collect()
        })
        .collect())
}

/// How the items of each list are marked, by tag, from the mark of the first one.
fn numberings(pages: &Pages) -> Vec<Option<&'static str>> {
    let kind = |id: TagId| pages.tags.get(id.0).map(|tag| tag.kind);
    let parent = |id: TagId| pages.tags.get(id.0).and_then(|tag| tag.parent);
    let mut found = vec![None; pages.tags.len()];
    for mark in pages.pages.iter().flat_map(|page| &page.marks) {
        let Role::Content(label) = mark.role else { continue };
        let Shape::Text(run) = &mark.shape else { continue };
        if kind(label) == Some(TagKind::Label)
            && let Some(list) = parent(label).and_then(parent)
            && let Some(slot) = found.get_mut(list.0)
        {
            slot.get_or_insert(match run.text.chars().next() {
                Some(c) if c.is_numeric() => "Decimal",
                _ => "Disc",
            });
        }
    }
    found
}

/// The standard structure type.
pub(super) const fn name(kind: TagKind) -> &'static str {
    match kind {
        TagKind::Document => "Document",
        TagKind::Heading(0 | 1) => "H1",
        TagKind::Heading(2) => "H2",
        TagKind::Heading(3) => "H3",
        TagKind::Heading(4) => "H4",
        TagKind::Heading(5) => "H5",
        TagKind::Heading(6..) => "H6",
        TagKind::Paragraph => "P",
        TagKind::List => "L",
        TagKind::ListItem => "LI",
        TagKind::Label => "Lbl",
        TagKind::ListBody => "LBody",
        TagKind::Table => "Table",
        TagKind::TableRow => "TR",
        TagKind::ColumnHeader | TagKind::RowHeader => "TH",
        TagKind::TableCell => "TD",
        TagKind::Figure => "Figure",
        TagKind::Field(_) => "Form",
        TagKind::Caption => "Caption",
        TagKind::Link => "Link",
        TagKind::Note => "Note",
        TagKind::Division => "Div",
        TagKind::Contents => "TOC",
        TagKind::ContentsItem => "TOCI",
    }
}
