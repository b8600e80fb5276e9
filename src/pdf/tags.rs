//! The structure tree (ISO 32000-1, 14.7 and 14.8).

use lopdf::{Dictionary, Document, Object, ObjectId, dictionary};

use super::PdfError;
use super::extent::figure_box;
use super::link::{self, Annotation};
use super::meta::{catalog, string};
use super::sheet::Sheets;
use crate::ink::{Faces, Shape};
use crate::page::{Pages, Role, Tag, TagId, TagKind};

/// What hangs from a tag.
#[derive(Clone, Copy)]
enum Kid {
    Tag(TagId),
    /// A marked sequence by page and number.
    Sequence(usize, usize),
    /// A link by its place among all links.
    Link(usize),
}

/// Adds the structure tree. `sequences` are the tags of the marked sequences of each
/// page.
pub(super) fn add(
    draft: &mut Document,
    pages: &Pages,
    sheets: &Sheets,
    sequences: &[Vec<TagId>],
    links: &[Annotation],
    faces: &Faces,
) -> Result<(), PdfError> {
    if pages.tags.is_empty() {
        return Ok(());
    }
    let root = draft.new_object_id();
    let ids: Vec<ObjectId> = pages.tags.iter().map(|_| draft.new_object_id()).collect();
    let id_of = |tag: TagId| {
        ids.get(tag.0).copied().ok_or(PdfError::NoSuchTag { tag: tag.0, tags: ids.len() })
    };

    let families = families(&pages.tags, sequences, links)?;
    let mut notes = Vec::new();
    for ((index, tag), kids) in pages.tags.iter().enumerate().zip(&families) {
        let id = id_of(TagId(index))?;
        let parent = tag.parent.map_or(Ok(root), id_of)?;
        let mut dict = dictionary! { "S" => name(tag.kind), "P" => parent };
        let home = kids.iter().find_map(|kid| match kid {
            Kid::Sequence(page, _) => Some(*page),
            _ => None,
        });
        if let Some(page) = home {
            dict.set("Pg", sheets.get(page)?);
        }
        let mut list = Vec::with_capacity(kids.len());
        for &kid in kids {
            list.push(match kid {
                Kid::Tag(tag) => id_of(tag)?.into(),
                Kid::Sequence(page, number) if Some(page) == home => (number as i64).into(),
                Kid::Sequence(page, number) => Object::from(dictionary! {
                    "Type" => "MCR", "Pg" => sheets.get(page)?, "MCID" => number as i64,
                }),
                Kid::Link(index) => match links.get(index) {
                    Some(link) => Object::from(dictionary! {
                        "Type" => "OBJR", "Pg" => sheets.get(link.page)?, "Obj" => link.id,
                    }),
                    None => continue,
                },
            });
        }
        if list.len() > 1 {
            dict.set("K", list);
        } else if let Some(only) = list.pop() {
            dict.set("K", only);
        }
        if let Some(alt) = &tag.alt {
            dict.set("Alt", string(alt));
        }
        if let Some(attributes) = attributes(pages, TagId(index), home, faces) {
            dict.set("A", attributes);
        }
        if tag.kind == TagKind::Note {
            let name = string(&format!("note{:06}", notes.len() + 1));
            dict.set("ID", name.clone());
            notes.extend([name, id.into()]);
        }
        draft.set_object(id, dict);
    }

    let mut numbers = Vec::new();
    for (page, sequences) in sequences.iter().enumerate() {
        let tags: Result<Vec<Object>, _> =
            sequences.iter().map(|&tag| id_of(tag).map(Object::from)).collect();
        numbers.extend([(page as i64).into(), Object::Array(tags?)]);
        let sheet = sheets.dictionary(draft, page)?;
        sheet.set("StructParents", page as i64);
        sheet.set("Tabs", Object::Name(b"S".to_vec()));
    }
    for (key, link) in (link::first_key(pages)..).zip(links) {
        numbers.extend([(key as i64).into(), id_of(link.tag)?.into()]);
    }
    let parents = draft.add_object(dictionary! { "Nums" => numbers });
    let mut dict = dictionary! {
        "Type" => "StructTreeRoot",
        "K" => id_of(TagId(0))?,
        "ParentTree" => parents,
        "ParentTreeNextKey" => (link::first_key(pages) + links.len()) as i64,
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

/// What hangs from each tag, in reading order: content and tags that carry content
/// where they first appear, an empty tag after its elder sibling.
fn families(
    tags: &[Tag],
    sequences: &[Vec<TagId>],
    links: &[Annotation],
) -> Result<Vec<Vec<Kid>>, PdfError> {
    let missing = |tag: TagId| PdfError::NoSuchTag { tag: tag.0, tags: tags.len() };
    let mut families: Vec<Vec<(usize, Kid)>> = vec![Vec::new(); tags.len()];
    let mut first = vec![usize::MAX; tags.len()];
    let mut order = 0;
    for (page, tags) in sequences.iter().enumerate() {
        for (number, &tag) in tags.iter().enumerate() {
            let family = families.get_mut(tag.0).ok_or(missing(tag))?;
            family.push((order, Kid::Sequence(page, number)));
            let first = first.get_mut(tag.0).ok_or(missing(tag))?;
            *first = order.min(*first);
            order += 1;
        }
    }
    for (index, link) in links.iter().enumerate() {
        let family = families.get_mut(link.tag.0).ok_or(missing(link.tag))?;
        family.push((order, Kid::Link(index)));
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

/// What a reader must know of a tag beyond its kind.
fn attributes(pages: &Pages, id: TagId, page: Option<usize>, faces: &Faces) -> Option<Dictionary> {
    let tag = pages.tags.get(id.0)?;
    let scope = |scope: &str| dictionary! { "O" => "Table", "Scope" => scope };
    match tag.kind {
        TagKind::ColumnHeader => Some(scope("Column")),
        TagKind::RowHeader => Some(scope("Row")),
        TagKind::List => {
            let kind = numbering(pages, id)?;
            Some(dictionary! { "O" => "List", "ListNumbering" => kind })
        }
        TagKind::Figure => {
            let corners = figure_box(pages, id, page?, faces)?;
            let corners = corners.map(|c| Object::Real((c * 100.0).round() / 100.0)).to_vec();
            Some(dictionary! { "O" => "Layout", "Placement" => "Block", "BBox" => corners })
        }
        _ => None,
    }
}

/// How the items of a list are marked, from the mark of the first one.
fn numbering(pages: &Pages, list: TagId) -> Option<&'static str> {
    let items: Vec<TagId> = children(pages, list).collect();
    let label = items
        .iter()
        .flat_map(|&item| children(pages, item))
        .find(|&tag| pages.tags.get(tag.0).is_some_and(|tag| tag.kind == TagKind::Label))?;
    let marks = pages.pages.iter().flat_map(|page| &page.marks);
    let first =
        marks.filter(|mark| mark.role == Role::Content(label)).find_map(|mark| match &mark.shape {
            Shape::Text(run) => run.text.chars().next(),
            Shape::Path { .. } => None,
        });
    Some(match first {
        Some(c) if c.is_numeric() => "Decimal",
        _ => "Disc",
    })
}

fn children(pages: &Pages, parent: TagId) -> impl Iterator<Item = TagId> {
    let tags = pages.tags.iter().enumerate().skip(parent.0);
    tags.filter(move |(_, tag)| tag.parent == Some(parent)).map(|(index, _)| TagId(index))
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
        TagKind::Caption => "Caption",
        TagKind::Link => "Link",
        TagKind::Note => "Note",
        TagKind::Division => "Div",
        TagKind::Contents => "TOC",
        TagKind::ContentsItem => "TOCI",
    }
}
