//! Pages two on a side, to be folded: the paper is folded here, and read.

use puddlebook::handout::{Edition, Form, Paper};
use puddlebook::ink::Faces;
use puddlebook::page::style::Style;
use puddlebook::page::{Link, LinkTarget, Pages, Role, TagId, TagKind};
use puddlebook::{ink, pdf};

use crate::pdf_file::ReadFile;
use crate::pdf_sample::Sample;
use crate::pdf_tree::{Element, Kid};

/// Half of A4, in points.
const HALF: (f32, f32) = (420.9449, 595.2756);

/// Pages that each say which they are, and lead to the next.
fn numbered(count: usize, faces: &Faces) -> Pages {
    let mut sample = Sample::new(faces);
    sample.pages.size = HALF;
    for page in 0..count {
        sample.page();
        let tag = sample.tag(TagKind::Paragraph, TagId(0));
        sample.text(Role::Content(tag), (40.0, 60.0), &format!("This is page {}.", page + 1));
        let link = sample.tag(TagKind::Link, tag);
        sample.text(Role::Content(link), (40.0, 80.0), "On we go");
        let area = ink::Rect { x: 40.0, y: 70.0, width: 60.0, height: 12.0 };
        let to = LinkTarget::Place { page: (page + 1) % count, y: 50.0 };
        let description = format!("after page {}", page + 1);
        let link = Link { area, to, tag: link, description };
        sample.pages.pages[page].links.push(link);
    }
    sample.pages
}

/// What stands on the left and on the right of each side.
fn halves(file: &ReadFile) -> Vec<[String; 2]> {
    let half = |side: usize, right: bool| {
        let sequences = &file.pages[side].sequences;
        let here = sequences.iter().filter(|s| s.glyphs.iter().all(|g| (g.x > HALF.0) == right));
        here.map(|sequence| sequence.text.clone()).collect::<String>()
    };
    (0..file.pages.len()).map(|side| [half(side, false), half(side, true)]).collect()
}

/// The pages of a booklet as its reader turns them: sheets printed on both sides, laid on each
/// other and folded.
fn folded(sides: &[[String; 2]]) -> Vec<String> {
    let sheets: Vec<&[[String; 2]]> = sides.chunks(2).collect();
    let outer = |sheet: &[[String; 2]]| sheet[0].clone();
    let inner = |sheet: &[[String; 2]]| sheet[1].clone();
    let mut read = Vec::new();
    for sheet in &sheets {
        let ([_, right], [left, _]) = (outer(sheet), inner(sheet));
        read.extend([right, left]);
    }
    for sheet in sheets.iter().rev() {
        let ([left, _], [_, right]) = (outer(sheet), inner(sheet));
        read.extend([right, left]);
    }
    read
}

#[test]
fn folded_it_reads_in_order_and_ends_with_empty_pages() {
    let faces = Faces::new();
    for count in 1..=13 {
        let bytes = pdf::write_booklet(&numbered(count, &faces), &faces).unwrap();
        let file = ReadFile::new(&bytes);
        let sides = halves(&file);
        assert_eq!(sides.len(), count.div_ceil(4) * 2, "{count} pages");
        for page in &file.pages {
            assert!((page.size.0 - 2.0 * HALF.0).abs() < 0.01 && page.size.1 == HALF.1);
        }
        for (at, text) in folded(&sides).iter().enumerate() {
            let wished = format!("This is page {}.On we go", at + 1);
            let wished = if at < count { wished.as_str() } else { "" };
            assert_eq!(text, wished, "{count} pages");
        }
    }
}

/// Everything that is said below an element, in its order.
fn said(element: &Element, file: &ReadFile) -> String {
    let kid = |kid: &Kid| match kid {
        Kid::Element(element) => said(element, file),
        Kid::Sequence(page, mcid) => file.sequence(*page, *mcid).unwrap().text.clone(),
        Kid::Annotation(_) => String::new(),
    };
    element.kids.iter().map(kid).collect()
}

#[test]
fn who_listens_hears_the_pages_in_their_own_order() {
    let faces = Faces::new();
    let pages = numbered(11, &faces);
    let flat = ReadFile::new(&pdf::write(&pages, &faces).unwrap());
    let booklet = ReadFile::new(&pdf::write_booklet(&pages, &faces).unwrap());
    let heard = said(&booklet.tree, &booklet);
    assert_eq!(heard, said(&flat.tree, &flat));
    assert!(heard.starts_with("This is page 1.On we goThis is page 2."), "{heard}");
}

#[test]
fn links_stand_on_their_words() {
    let faces = Faces::new();
    let file = ReadFile::new(&pdf::write_booklet(&numbered(8, &faces), &faces).unwrap());
    let halves = halves(&file);
    assert_eq!(file.touched.len(), 8);
    for link in file.touched.values() {
        let [(left, _), (right, _)] = link.area;
        let text = &halves[link.page][usize::from(left > HALF.0)];
        let number = link.text.trim_start_matches("after page ");
        assert!(text.starts_with(&format!("This is page {number}.")), "{} {text}", link.text);
        assert!((right - left - 60.0).abs() < 0.1);
    }
}

/// Half of a sheet is all that a page has, and its text is as wide as that of a whole one.
#[test]
fn pages_are_half_of_the_paper_and_type_keeps_its_size() {
    for paper in [Paper::A4, Paper::Letter] {
        let whole = Style::new(Form::Book, paper, Edition::Standard);
        let half = Style::booklet(Form::Book, paper, Edition::Standard);
        assert!((2.0 * half.frame.paper.0 - whole.frame.paper.1).abs() < 0.01);
        assert_eq!(half.frame.paper.1, whole.frame.paper.0);
        assert_eq!(half.scale, whole.scale);
        assert!(half.frame.width > 0.98 * whole.frame.width, "{paper:?}");
        let right = half.frame.left + half.frame.width;
        assert!((half.frame.paper.0 - right - half.frame.left).abs() < 0.01, "even margins");
    }
}
