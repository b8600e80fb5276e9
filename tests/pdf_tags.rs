//! The structure tree read back with another library.

use std::collections::{BTreeMap, BTreeSet};

use hayro_syntax::Pdf;
use hayro_syntax::object::{Array, Dict, MaybeRef, Number, Object, ObjectIdentifier};
use puddlebook::ink::Faces;
use puddlebook::page::{TagId, TagKind};

use crate::pdf_reader as reader;
use crate::pdf_sample::{A4, everything};

/// The tree as indented lines, with what hangs from it.
fn outline(pdf: &Pdf) -> String {
    let root = reader::root(pdf).get::<Dict<'_>>("StructTreeRoot").expect("a structure tree");
    let document = root.get::<Dict<'_>>("K").expect("a document");
    let mut out = String::new();
    draw(pdf, &document, 0, &mut out);
    out
}

fn draw(pdf: &Pdf, element: &Dict<'_>, depth: usize, out: &mut String) {
    out.push_str(&"  ".repeat(depth));
    out.push_str(&reader::name(element, "S").expect("a structure type"));
    if let Some(alt) = reader::texts(element, "Alt") {
        out.push_str(&format!(" \"{alt}\""));
    }
    if let Some(attributes) = element.get::<Dict<'_>>("A") {
        for key in ["Scope", "ListNumbering"] {
            if let Some(value) = reader::name(&attributes, key) {
                out.push_str(&format!(" {value}"));
            }
        }
    }
    let home = reader::reference(element, "Pg");
    let mut children = Vec::new();
    for kid in kids(element) {
        match kid {
            Object::Number(mcid) => {
                out.push_str(&format!(" {}:{}", page_of(pdf, home), mcid.as_i64()));
            }
            Object::Dict(dict) => match reader::name(&dict, "Type").as_deref() {
                Some("MCR") => {
                    let page = page_of(pdf, reader::reference(&dict, "Pg"));
                    let mcid = dict.get::<Number>("MCID").expect("an MCID").as_i64();
                    out.push_str(&format!(" {page}:{mcid}"));
                }
                Some("OBJR") => out.push_str(" link"),
                _ => {
                    assert_eq!(reader::reference(&dict, "P"), element.obj_id());
                    out.push_str(" *");
                    children.push(dict);
                }
            },
            other => panic!("{other:?} hangs from a tag"),
        }
    }
    out.push('\n');
    for child in children {
        draw(pdf, &child, depth + 1, out);
    }
}

fn kids<'a>(element: &Dict<'a>) -> Vec<Object<'a>> {
    match element.get::<Object<'_>>("K") {
        None => Vec::new(),
        Some(Object::Array(array)) => array.iter::<Object<'_>>().collect(),
        Some(one) => vec![one],
    }
}

fn page_of(pdf: &Pdf, id: Option<ObjectIdentifier>) -> usize {
    pdf.pages().iter().position(|page| page.raw().obj_id() == id).expect("a page")
}

#[test]
fn the_tree_says_what_everything_is_in_reading_order() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    insta::assert_snapshot!(outline(&reader::open(&bytes)), @r#"
    Document * * * * * * * *
      H1 0:0
      P 0:1 * 0:3
        Link 0:2 link
      L Decimal * *
        LI * *
          Lbl 0:4
          LBody 0:5
        LI * *
          Lbl 0:6
          LBody 0:7
      Figure "A square of 10 × 10 in" 0:8 *
        Caption 0:9
      Note 0:10
      Table * * *
        TR * * *
          TH Column 0:11
          TH Column 0:12
          TH Column
        TR * * *
          TH Row 0:13
          TD 0:14
          TD
        TR * * *
          TH Row 1:0
          TD 1:1
          TD
      H2 1:2
      H1 1:3
    "#);
}

#[test]
fn everything_on_a_page_is_tagged_or_declared_decoration() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let pdf = reader::open(&bytes);
    let fonts = reader::fonts(&pdf);
    for number in 0..pdf.pages().len() {
        let page = reader::page(&pdf, number, &fonts);
        assert!(page.unmarked.is_empty());
        for sequence in &page.sequences {
            assert_eq!(sequence.mcid.is_none(), sequence.kind == "Artifact");
        }
    }
}

/// Element of each marked sequence, by page and number, as the tree has it.
fn owners(pdf: &Pdf) -> BTreeMap<(usize, i64), ObjectIdentifier> {
    fn visit(pdf: &Pdf, element: &Dict<'_>, found: &mut BTreeMap<(usize, i64), ObjectIdentifier>) {
        let home = reader::reference(element, "Pg");
        for kid in kids(element) {
            let (page, mcid) = match kid {
                Object::Number(mcid) => (home, mcid.as_i64()),
                Object::Dict(dict) => match dict.get::<Number>("MCID") {
                    Some(mcid) => (reader::reference(&dict, "Pg"), mcid.as_i64()),
                    None => {
                        if dict.contains_key("S") {
                            visit(pdf, &dict, found);
                        }
                        continue;
                    }
                },
                _ => continue,
            };
            let own = element.obj_id().expect("an indirect element");
            let twice = found.insert((page_of(pdf, page), mcid), own);
            assert_eq!(twice, None, "a sequence hangs from two tags");
        }
    }
    let root = reader::root(pdf).get::<Dict<'_>>("StructTreeRoot").expect("a structure tree");
    let mut found = BTreeMap::new();
    visit(pdf, &root.get::<Dict<'_>>("K").expect("a document"), &mut found);
    found
}

/// The parent tree by its keys.
pub fn parent_tree(pdf: &Pdf) -> BTreeMap<i64, Vec<ObjectIdentifier>> {
    let root = reader::root(pdf).get::<Dict<'_>>("StructTreeRoot").expect("a structure tree");
    let parents = root.get::<Dict<'_>>("ParentTree").expect("a parent tree");
    let numbers = parents.get::<Array<'_>>("Nums").expect("its numbers");
    let mut tree = BTreeMap::new();
    let mut key = None;
    for item in numbers.raw_iter() {
        match (key, item) {
            (None, MaybeRef::NotRef(Object::Number(number))) => key = Some(number.as_i64()),
            (Some(at), MaybeRef::NotRef(Object::Array(array))) => {
                tree.insert(at, reader::references(&array));
                key = None;
            }
            (Some(at), MaybeRef::Ref(reference)) => {
                tree.insert(at, vec![ObjectIdentifier::from(reference)]);
                key = None;
            }
            (_, other) => panic!("{other:?} in the parent tree"),
        }
    }
    tree
}

#[test]
fn every_marked_sequence_is_in_the_parent_tree() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let pdf = reader::open(&bytes);
    let fonts = reader::fonts(&pdf);
    let owners = owners(&pdf);
    let parents = parent_tree(&pdf);
    let mut seen = 0;
    for (number, page) in pdf.pages().iter().enumerate() {
        let key = page.raw().get::<Number>("StructParents").expect("a key").as_i64();
        let drawn: BTreeSet<i64> =
            reader::page(&pdf, number, &fonts).sequences.iter().filter_map(|s| s.mcid).collect();
        assert_eq!(drawn.len(), parents[&key].len());
        for mcid in drawn {
            assert_eq!(owners[&(number, mcid)], parents[&key][mcid as usize]);
            seen += 1;
        }
        assert_eq!(reader::name(page.raw(), "Tabs").as_deref(), Some("S"));
        for link in page.raw().get::<Array<'_>>("Annots").iter().flat_map(|a| a.iter::<Dict<'_>>())
        {
            let key = link.get::<Number>("StructParent").expect("a key").as_i64();
            let element = pdf.xref().get::<Dict<'_>>(parents[&key][0]).expect("an element");
            assert_eq!(reader::name(&element, "S").as_deref(), Some("Link"));
        }
    }
    assert_eq!(seen, owners.len());
    assert_eq!(seen, 19);
}

#[test]
fn a_figure_says_where_it_is() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let pdf = reader::open(&bytes);
    let figure = pdf
        .objects()
        .into_iter()
        .filter_map(Object::into_dict)
        .find(|dict| reader::name(dict, "S").as_deref() == Some("Figure"))
        .expect("a figure");
    let layout = figure.get::<Dict<'_>>("A").expect("attributes");
    let corners: Vec<f32> = layout
        .get::<Array<'_>>("BBox")
        .expect("a box")
        .iter::<Number>()
        .map(|n| n.as_f32())
        .collect();
    // The square with half its line; the caption below reaches lower.
    assert!((corners[0] - 99.5).abs() < 0.02 && (corners[2] - 200.5).abs() < 0.02);
    assert!((corners[3] - (A4.1 - 299.5)).abs() < 0.02);
    assert!(corners[1] < A4.1 - 420.0 && corners[1] > A4.1 - 424.0, "{corners:?}");
}

#[test]
fn the_claim_to_be_accessible_is_made_only_where_it_is_earned() {
    let faces = Faces::new();
    let claims = |change: &dyn Fn(&mut puddlebook::page::Pages)| {
        let mut s = everything(&faces);
        change(&mut s.pages);
        String::from_utf8_lossy(&s.bytes()).contains("<pdfuaid:part>1<")
    };
    let figure = |pages: &puddlebook::page::Pages| {
        pages.tags.iter().position(|tag| tag.kind == TagKind::Figure).expect("a figure")
    };
    assert!(claims(&|_| {}));
    assert!(!claims(&|pages| pages.title.clear()));
    assert!(!claims(&|pages| pages.language.clear()));
    assert!(!claims(&|pages| {
        let figure = figure(pages);
        pages.tags[figure].alt = None;
    }));
    assert!(!claims(&|pages| pages.pages[0].links[0].description.clear()));
    assert!(!claims(&|pages| {
        let heading = pages.tags.iter().position(|tag| tag.kind == TagKind::Heading(2));
        pages.tags[heading.expect("a heading")].kind = TagKind::Heading(4);
    }));
}

#[test]
fn notes_have_identifiers() {
    let faces = Faces::new();
    let mut s = everything(&faces);
    s.tagged(TagKind::Note, (72.0, 720.0), "Another note.");
    let note = s.tag(TagKind::Note, TagId(0));
    assert_eq!(s.pages.tags[note.0].kind, TagKind::Note);
    let bytes = s.bytes();
    let pdf = reader::open(&bytes);
    let ids: BTreeSet<String> = pdf
        .objects()
        .into_iter()
        .filter_map(Object::into_dict)
        .filter(|dict| reader::name(dict, "S").as_deref() == Some("Note"))
        .map(|dict| reader::texts(&dict, "ID").expect("an identifier"))
        .collect();
    assert_eq!(ids.len(), 3);
}
