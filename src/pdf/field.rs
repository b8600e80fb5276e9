//! Fields: what is blank on paper can be filled on a screen (ISO 32000-1, 12.7).

use lopdf::{Document, ObjectId, Stream, dictionary};

use super::PdfError;
use super::annotation::Annotation;
use super::extent::extent;
use super::meta::{catalog, text_string};
use super::object;
use super::operators::{decimal, hundredths};
use super::sheet::Sheets;
use super::written::Written;
use crate::ink::Faces;
use crate::page::style::WRITING;
use crate::page::{Answer, Mark, Pages, Role, TagId, TagKind};

/// What a box shows, shared by all of them. What is written has a look only once it is
/// there, and readers make that themselves.
struct Looks {
    empty: ObjectId,
    ticked: ObjectId,
}

/// A tick in a square of ten points.
const TICK: &[u8] = b"0.11 0.13 0.15 RG\n1.5 w\n1 J\n1 j\n2 5.2 m\n4.3 2.4 l\n8.2 8 l\nS";

/// Adds a field for every mark that shows one, and the form that they make up. The first
/// has `key` in the parent tree.
pub(super) fn add(
    draft: &mut Document,
    written: &mut Written,
    pages: &Pages,
    (sheets, faces): (&Sheets, &Faces),
    mut key: usize,
) -> Result<Vec<Annotation>, PdfError> {
    let mut fields = Vec::new();
    let mut looks = None;
    for (page, mark, tag) in shown(pages) {
        let Some([left, bottom, right, top]) = area(pages, mark, tag, faces) else { continue };
        let (left, right) = (sheets.left(page) + left, sheets.left(page) + right);
        let id = draft.new_object_id();
        let described = pages.tags.get(tag.0);
        let what = described.and_then(|tag| tag.alt.as_deref()).unwrap_or_default();
        let ticked = described.is_some_and(|tag| tag.kind == TagKind::Field(Answer::Ticked));
        let looks = ticked.then(|| &*looks.get_or_insert_with(|| Looks::new(draft)));
        let name = format!("{} {what}", fields.len() + 1);
        let sheet = sheets.get(page)?;
        written.add(id, |out| {
            out.extend(b"<</Type/Annot/Subtype/Widget/F 4/Rect[");
            for corner in [left, bottom, right, top] {
                decimal(out, hundredths(corner), 2);
                out.push(b' ');
            }
            out.extend(b"]/P ");
            object::reference(out, sheet);
            out.extend(b"/T");
            object::literal(out, &text_string(&name));
            out.extend(b"/TU");
            object::literal(out, &text_string(what));
            out.extend(b"/StructParent ");
            object::integer(out, key);
            if let Some(looks) = looks {
                out.extend(b"/FT/Btn/AS/Off/AP<</N<</Off ");
                object::reference(out, looks.empty);
                out.extend(b"/On ");
                object::reference(out, looks.ticked);
                out.extend(b">>>>>>");
            } else {
                out.extend(b"/FT/Tx>>");
            }
        });
        fields.push(Annotation { id, page, tag });
        key += 1;
    }
    if !fields.is_empty() {
        form(draft, written, &fields)?;
    }
    Ok(fields)
}

/// The form: all fields, and how what is typed looks. Readers have the face; its size is
/// theirs to choose, to the height of the field.
fn form(
    draft: &mut Document,
    written: &mut Written,
    fields: &[Annotation],
) -> Result<(), PdfError> {
    let face = draft.add_object(dictionary! {
        "Type" => "Font", "Subtype" => "Type1", "BaseFont" => "Helvetica",
        "Encoding" => "WinAnsiEncoding",
    });
    let form = draft.new_object_id();
    written.add(form, |out| {
        out.extend(b"<</DA(/F 0 Tf 0 g)/DR<</Font<</F ");
        object::reference(out, face);
        out.extend(b">>>>/Fields[");
        for field in fields {
            object::reference(out, field.id);
            out.push(b' ');
        }
        out.extend(b"]>>");
    });
    catalog(draft)?.set("AcroForm", form);
    Ok(())
}

impl Looks {
    fn new(draft: &mut Document) -> Self {
        let mut look = |content: &[u8]| {
            let dict = dictionary! {
                "Type" => "XObject", "Subtype" => "Form",
                "BBox" => vec![0.into(), 0.into(), 10.into(), 10.into()],
            };
            draft.add_object(Stream::new(dict, content.to_vec()))
        };
        Self { empty: look(b""), ticked: look(TICK) }
    }
}

/// Marks that show fields, in reading order.
fn shown(pages: &Pages) -> impl Iterator<Item = (usize, &Mark, TagId)> {
    pages.pages.iter().enumerate().flat_map(|(page, own)| {
        own.marks.iter().filter_map(move |mark| match mark.role {
            Role::Field(tag) => Some((page, mark, tag)),
            Role::Content(_) | Role::Artifact => None,
        })
    })
}

/// Where a field is filled: in its box, or over its rule with room for handwriting.
fn area(pages: &Pages, mark: &Mark, tag: TagId, faces: &Faces) -> Option<[f32; 4]> {
    let [left, top, right, bottom] = extent(&mark.shape, faces)?;
    let top = match pages.tags.get(tag.0)?.kind {
        TagKind::Field(Answer::Written) => bottom - WRITING,
        _ => top,
    };
    let height = pages.size.1;
    Some([left, height - bottom, right, height - top])
}
