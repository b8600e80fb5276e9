//! Fields of the handouts, read back with another library.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::OnceLock;

use hayro_syntax::Pdf;
use hayro_syntax::object::{Array, Dict, Number, ObjectIdentifier};
use puddlebook::handout::{Desk, Sheet, Templates};
use puddlebook::ink::{Faces, PathSegment, Shape};
use puddlebook::lesson::{self, Language};
use puddlebook::page::{self, Answer, Pages, Role, TagId, TagKind};
use puddlebook::{pdf, plan};

use crate::pdf_reader as reader;
use crate::pdf_tree::parent_tree;

struct Handout {
    sheet: Sheet,
    pages: Pages,
    bytes: Vec<u8>,
}

/// Every handout of a demo lesson.
fn handouts() -> &'static [Handout] {
    static MADE: OnceLock<Vec<Handout>> = OnceLock::new();
    MADE.get_or_init(|| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("lessons/boathouse-evening.yaml");
        let lesson = lesson::read(&path).unwrap_or_else(|faults| panic!("{faults}"));
        let plan = plan::plan(lesson).unwrap();
        let templates = Templates::new(Language::English, &BTreeMap::new()).unwrap();
        let desk = Desk::new(&plan, &templates).unwrap();
        let faces = Faces::new();
        let make = |sheet: Sheet| {
            let pages = page::lay_out(&desk.write(sheet).unwrap(), &faces);
            let bytes = pdf::write(&pages, &faces).unwrap();
            Handout { sheet, pages, bytes }
        };
        Sheet::ALL.into_iter().map(make).collect()
    })
}

/// A field as a reader program finds it.
#[derive(Debug)]
struct Field {
    id: ObjectIdentifier,
    page: usize,
    /// Left, bottom, right, top.
    area: [f32; 4],
    kind: String,
    name: String,
    tip: String,
    key: i64,
}

fn fields(file: &Pdf) -> Vec<Field> {
    let mut found = Vec::new();
    for (page, sheet) in file.pages().iter().enumerate() {
        let Some(annotations) = sheet.raw().get::<Array<'_>>("Annots") else { continue };
        assert_eq!(reader::name(sheet.raw(), "Tabs").as_deref(), Some("S"));
        for widget in annotations.iter::<Dict<'_>>() {
            if reader::name(&widget, "Subtype").as_deref() != Some("Widget") {
                continue;
            }
            assert_eq!(reader::reference(&widget, "P"), sheet.raw().obj_id());
            let corners: Vec<f32> = widget
                .get::<Array<'_>>("Rect")
                .unwrap()
                .iter::<Number>()
                .map(|n| n.as_f32())
                .collect();
            found.push(Field {
                id: widget.obj_id().unwrap(),
                page,
                area: corners.try_into().unwrap(),
                kind: reader::name(&widget, "FT").unwrap(),
                name: reader::texts(&widget, "T").unwrap(),
                tip: reader::texts(&widget, "TU").unwrap(),
                key: widget.get::<Number>("StructParent").unwrap().as_i64(),
            });
        }
    }
    found
}

/// Page, tag and mark of what shows where a field is.
fn shown(pages: &Pages) -> Vec<(usize, TagId, &Shape)> {
    pages
        .pages
        .iter()
        .enumerate()
        .flat_map(|(at, page)| page.marks.iter().map(move |mark| (at, mark)))
        .filter_map(|(at, mark)| match mark.role {
            Role::Field(tag) => Some((at, tag, &mark.shape)),
            Role::Content(_) | Role::Artifact => None,
        })
        .collect()
}

fn reach(shape: &Shape) -> ((f32, f32), (f32, f32)) {
    let Shape::Path { segments, .. } = shape else { panic!("{shape:?} shows a field") };
    let points = segments.iter().filter_map(|segment| match segment {
        PathSegment::Move(at) | PathSegment::Line(at) => Some((at.x, at.y)),
        PathSegment::Cubic(..) | PathSegment::Close => None,
    });
    points.fold(((f32::MAX, f32::MAX), (f32::MIN, f32::MIN)), |(low, high), (x, y)| {
        ((low.0.min(x), low.1.min(y)), (high.0.max(x), high.1.max(y)))
    })
}

#[test]
fn every_blank_and_box_is_a_field_where_it_shows() {
    for made in handouts() {
        let file = reader::open(&made.bytes);
        let (read, shown) = (fields(&file), shown(&made.pages));
        assert_eq!(read.len(), shown.len(), "{:?}", made.sheet);
        for (field, (page, tag, shape)) in read.iter().zip(shown) {
            let tag = &made.pages.tags[tag.0];
            assert_eq!(field.page, page);
            assert_eq!(Some(&field.tip), tag.alt.as_ref());
            let (low, high) = reach(shape);
            let [left, bottom, right, top] = field.area;
            let height = made.pages.size.1;
            // Half the width of a stroke, and a rounding.
            assert!((left - low.0).abs() < 0.6 && (right - high.0).abs() < 0.6, "{field:?}");
            assert!((height - bottom - high.1).abs() < 0.6, "{field:?}");
            match tag.kind {
                TagKind::Field(Answer::Written) => {
                    assert_eq!(field.kind, "Tx");
                    // Eight millimetres for a hand, and for a finger.
                    assert!((top - bottom - 22.68).abs() < 0.1, "{field:?}");
                    assert!(right - left > 14.0, "{field:?}");
                }
                TagKind::Field(Answer::Ticked) => {
                    assert_eq!(field.kind, "Btn");
                    assert!((height - top - low.1).abs() < 0.6, "{field:?}");
                }
                other => panic!("{other:?} is shown as a field"),
            }
        }
    }
    let count = |sheet| {
        let made = handouts().iter().find(|made| made.sheet == sheet).unwrap();
        shown(&made.pages).len()
    };
    assert!(count(Sheet::Worksheet) > 100 && count(Sheet::Weigh) > 200 && count(Sheet::Cards) > 20);
}

#[test]
fn no_two_fields_share_a_name_or_a_place() {
    for made in handouts() {
        let read = fields(&reader::open(&made.bytes));
        let names: BTreeSet<&str> = read.iter().map(|field| &*field.name).collect();
        assert_eq!(names.len(), read.len(), "{:?}", made.sheet);
        // A full stop would part a name from the name of a group (ISO 32000-1, 12.7.3.2).
        assert!(names.iter().all(|name| !name.contains('.')), "{names:?}");
        for (at, one) in read.iter().enumerate() {
            for other in &read[at + 1..] {
                let [l, b, r, t] = one.area;
                let [left, bottom, right, top] = other.area;
                let apart = r <= left || right <= l || t <= bottom + 0.7 || top <= b + 0.7;
                assert!(one.page != other.page || apart, "{one:?} {other:?}");
            }
        }
    }
}

#[test]
fn the_form_lists_all_fields_and_the_structure_has_them_once() {
    for made in handouts() {
        let file = reader::open(&made.bytes);
        let read = fields(&file);
        let root = reader::root(&file);
        let form = root.get::<Dict<'_>>("AcroForm");
        let listed = form.map(|form| reader::references(&form.get::<Array<'_>>("Fields").unwrap()));
        let ids: Vec<ObjectIdentifier> = read.iter().map(|field| field.id).collect();
        assert_eq!(listed.unwrap_or_default(), ids, "{:?}", made.sheet);
        let parents = parent_tree(&file);
        for field in &read {
            let &[Some(element)] = &parents[&field.key][..] else {
                panic!("{field:?} has two elements")
            };
            let element: Dict<'_> = file.xref().get(element).unwrap();
            assert_eq!(reader::name(&element, "S").as_deref(), Some("Form"));
            // Nothing hangs from it but the field (ISO 32000-1, Table 338).
            let only = element.get::<Dict<'_>>("K").expect("one child");
            assert_eq!(reader::name(&only, "Type").as_deref(), Some("OBJR"));
            assert_eq!(reader::reference(&only, "Obj"), Some(field.id));
        }
    }
}
