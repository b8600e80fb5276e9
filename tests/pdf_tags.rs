//! The structure tree read back with another library.

use std::collections::BTreeSet;

use hayro_syntax::object::{Array, Dict, Number, Object};
use puddlebook::ink::Faces;
use puddlebook::page::{TagId, TagKind};

use crate::pdf_file::ReadFile;
use crate::pdf_reader as reader;
use crate::pdf_sample::{A4, everything};
use crate::pdf_tree::{Element, Kid};
use crate::tagged::marked;

/// The tree as indented lines, with what hangs from it.
fn outline(element: &Element, depth: usize, out: &mut String) {
    out.push_str(&"  ".repeat(depth));
    out.push_str(&element.kind);
    if let Some(alt) = &element.alt {
        out.push_str(&format!(" \"{alt}\""));
    }
    for value in element.scope.iter().chain(&element.numbering) {
        out.push_str(&format!(" {value}"));
    }
    for kid in &element.kids {
        match kid {
            Kid::Element(_) => out.push_str(" *"),
            Kid::Sequence(page, mcid) => {
                out.push_str(&format!(" {}:{mcid}", page.expect("a page")));
            }
            Kid::Annotation(_) => out.push_str(" link"),
        }
    }
    out.push('\n');
    element.elements().for_each(|child| outline(child, depth + 1, out));
}

#[test]
fn the_tree_says_what_everything_is_in_reading_order() {
    let faces = Faces::new();
    let file = ReadFile::new(&everything(&faces).bytes());
    let mut tree = String::new();
    outline(&file.tree, 0, &mut tree);
    insta::assert_snapshot!(tree, @r#"
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
fn what_is_drawn_is_marked_and_the_parent_tree_leads_back() {
    let faces = Faces::new();
    let file = ReadFile::new(&everything(&faces).bytes());
    assert_eq!(marked::drawing(&file), Ok(()));
    assert_eq!(marked::parents(&file), Ok(()));
    assert_eq!(file.tree.all().into_iter().flat_map(Element::sequences).count(), 19);
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
