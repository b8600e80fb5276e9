//! PDFs read back with another library: pages, text, faces, outline, links.

use hayro_syntax::object::{Array, Dict, Name, Number, Object};
use puddlebook::ink::{Dash, Face, Faces, PathSegment, Point, Rect, Shape, Stroke};
use puddlebook::page::{Bookmark, Link, LinkTarget, Role, TagId, TagKind};
use puddlebook::pdf::PdfError;

use crate::pdf_reader::{self as reader, Sequence};
use crate::pdf_sample::{A4, INK, Sample, everything};

fn sequences(bytes: &[u8], page: usize) -> Vec<Sequence> {
    let pdf = reader::open(bytes);
    reader::page(&pdf, page, &reader::fonts(&pdf)).sequences
}

#[test]
fn pages_have_their_number_and_size() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let pdf = reader::open(&bytes);
    assert_eq!(pdf.pages().len(), 2);
    for number in 0..2 {
        let page = reader::page(&pdf, number, &reader::fonts(&pdf));
        assert!((page.size.0 - A4.0).abs() < 0.01 && (page.size.1 - A4.1).abs() < 0.01);
    }
}

#[test]
fn text_comes_back_whole_and_in_order() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let text = |page| -> Vec<String> {
        sequences(&bytes, page).into_iter().map(|s| s.text).filter(|t| !t.is_empty()).collect()
    };
    assert_eq!(
        text(0),
        [
            "Header",
            "How much paint",
            "Weigh the first cup; the office scale showsAVATAR waves of fine fluid mixed ",
            "see page 2",
            " and stir.",
            "1.",
            "Stir slowly",
            "2.",
            "Stir slowly",
            "The canvas",
            "A fluid ounce is no ounce.",
            "Paint",
            "12.5",
            "Paint",
            "12.5"
        ]
    );
    assert_eq!(text(1), ["Paint", "Paint", "12.5", "What is left", "Safety"]);
}

#[test]
fn glyphs_stand_where_the_page_puts_them() {
    let faces = Faces::new();
    let mut s = Sample::new(&faces);
    s.page();
    let mut expected = Vec::new();
    let texts =
        ["AVATAR, To. fine office 12\u{2044}25", "Ty\u{301} e\u{301}cole 0.75 \u{2013} 40 %"];
    for (text, y) in texts.into_iter().zip([100.0, 130.0]) {
        for face in Face::ALL {
            let at = (72.3, y + 60.0 * (face as usize) as f32);
            let mut run = s.run(face, 11.0, at, text);
            for glyph in run.glyphs.iter_mut().filter(|g| g.slice(&run.text) == Some(" ")) {
                glyph.advance += 0.0413;
            }
            let mut x = at.0;
            for glyph in &run.glyphs {
                expected.push((x + glyph.x_offset * 11.0, A4.1 - at.1));
                x += glyph.advance * 11.0;
            }
            s.mark(Role::Content(TagId(0)), Shape::Text(run));
        }
    }
    let bytes = s.bytes();
    let read = sequences(&bytes, 0);
    let glyphs: Vec<_> = read.iter().flat_map(|s| &s.glyphs).collect();
    assert_eq!(glyphs.len(), expected.len());
    for (glyph, (x, y)) in glyphs.iter().zip(expected) {
        assert!((glyph.x - x).abs() < 0.06, "{glyph:?} should stand at {x}");
        assert!((glyph.y - y).abs() < 0.01, "{glyph:?} should stand at {y}");
    }
}

#[test]
fn faces_are_embedded_and_cut_down_to_what_is_used() {
    let faces = Faces::new();
    let mut s = everything(&faces);
    let bold = s.run(Face::BoldItalic, 9.0, (72.0, 500.0), "Bold");
    s.mark(Role::Artifact, Shape::Text(bold));
    let bytes = s.bytes();
    let pdf = reader::open(&bytes);
    let fonts = reader::fonts(&pdf);
    assert_eq!(fonts.len(), 2);
    for font in fonts.values() {
        let (tag, name) = font.base.split_once('+').expect("a subset tag");
        assert!(tag.len() == 6 && tag.bytes().all(|b| b.is_ascii_uppercase()), "{tag}");
        assert!(["Lato-Regular", "Lato-BoldItalic"].contains(&name), "{name}");
        let face = ttf_parser::Face::parse(&font.program, 0).expect("a font that can be read");
        assert!(face.number_of_glyphs() < 80, "{} glyphs", face.number_of_glyphs());
        assert!(font.program.len() < 60_000);
    }
}

#[test]
fn every_glyph_has_text_and_the_width_of_its_font() {
    let faces = Faces::new();
    let mut s = everything(&faces);
    for (index, face) in Face::ALL.into_iter().enumerate() {
        let text =
            "The quick brown fox fits 1234567890 12\u{2044}25 in\u{b2} (\u{bd} \u{3a9}) flüssig";
        let run = s.run(face, 10.0, (72.0, 500.0 + 20.0 * index as f32), text);
        s.mark(Role::Content(TagId(0)), Shape::Text(run));
    }
    let bytes = s.bytes();
    let pdf = reader::open(&bytes);
    let fonts = reader::fonts(&pdf);
    assert_eq!(fonts.len(), 4);
    let mut halves = 0;
    for number in 0..2 {
        for glyph in reader::page(&pdf, number, &fonts).sequences.iter().flat_map(|s| &s.glyphs) {
            assert_ne!(glyph.code, 0, "the glyph for nothing is shown");
            let font = &fonts[&glyph.font];
            let text = &font.to_unicode[&glyph.code];
            assert!(!text.is_empty() && !text.contains('\u{FFFD}'), "{glyph:?}");
        }
    }
    for font in fonts.values() {
        let face = ttf_parser::Face::parse(&font.program, 0).expect("a font that can be read");
        for (&code, &width) in &font.widths {
            let units = face.glyph_hor_advance(ttf_parser::GlyphId(code)).expect("a width");
            let own = f32::from(units) * 1000.0 / f32::from(face.units_per_em());
            assert!((own - width).abs() < 0.001, "code {code} of {}: {own}, {width}", font.base);
            halves += usize::from(width.fract() != 0.0);
        }
        assert_eq!(font.widths.len(), font.to_unicode.len());
    }
    assert!(halves > 0, "no width shows whether halves are kept");
}

#[test]
fn a_glyph_that_stands_for_another_text_says_so() {
    let faces = Faces::new();
    let mut s = Sample::new(&faces);
    s.page();
    // The hyphen at a line's end stands for a soft one; a white square for what is lacking.
    let mut run = s.run(Face::Regular, 10.0, (72.0, 72.0), "paint-");
    run.text = "paint\u{ad}".to_owned();
    run.glyphs[5].text = 5..7;
    s.mark(Role::Content(TagId(0)), Shape::Text(run));
    s.text(Role::Content(TagId(0)), (72.0, 90.0), "ing - a\u{a0}pot of \u{6c34}, \u{25a1}");
    let bytes = s.bytes();
    let read = sequences(&bytes, 0);
    assert_eq!(read[0].text, "paint\u{ad}ing - a pot of \u{6c34}, \u{25a1}");
}

#[test]
fn lines_take_few_operators() {
    let faces = Faces::new();
    let mut s = Sample::new(&faces);
    s.page();
    let mut x = 72.0;
    for word in "many words set one by one on a baseline".split_inclusive(' ') {
        let run = s.run(Face::Regular, 10.0, (x, 100.0), word);
        x += run.width() + 0.4;
        s.mark(Role::Content(TagId(0)), Shape::Text(run));
    }
    let bytes = s.bytes();
    let pdf = reader::open(&bytes);
    let stream = pdf.pages()[0].page_stream().expect("content");
    let stream = String::from_utf8_lossy(stream);
    assert_eq!(stream.matches("TJ").count(), 1, "{stream}");
    assert_eq!(stream.matches("Td").count(), 1, "{stream}");
}

#[test]
fn the_outline_is_nested() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let pdf = reader::open(&bytes);
    let outline = reader::root(&pdf).get::<Dict<'_>>("Outlines").expect("an outline");
    let mut lines = Vec::new();
    walk(&outline, 0, &mut lines);
    assert_eq!(lines, ["0 How much paint", "1 What is left \u{2014} and how long", "0 Safety"]);
    assert_eq!(reader::name(&reader::root(&pdf), "PageMode").as_deref(), Some("UseOutlines"));
}

fn walk(parent: &Dict<'_>, depth: usize, lines: &mut Vec<String>) {
    let mut next = parent.get::<Dict<'_>>("First");
    let mut last = None;
    while let Some(entry) = next {
        let place = entry.get::<Array<'_>>("Dest").expect("a destination");
        assert_eq!(reader::references(&place).len(), 1);
        assert_eq!(reader::reference(&entry, "Parent"), parent.obj_id());
        assert_eq!(reader::reference(&entry, "Prev"), last);
        lines.push(format!("{depth} {}", reader::texts(&entry, "Title").expect("a title")));
        walk(&entry, depth + 1, lines);
        last = entry.obj_id();
        next = entry.get::<Dict<'_>>("Next");
    }
    assert_eq!(reader::reference(parent, "Last"), last);
}

#[test]
fn links_lead_to_places_and_to_the_web() {
    let faces = Faces::new();
    let mut s = everything(&faces);
    let link = s.tag(TagKind::Link, TagId(0));
    let area = Rect { x: 72.0, y: 200.0, width: 100.0, height: 12.0 };
    let to = LinkTarget::Web("https://example.com/paint".to_owned());
    let description = "The example paint page".to_owned();
    s.pages.pages[1].links.push(Link { area, to, tag: link, description });
    let bytes = s.bytes();
    let pdf = reader::open(&bytes);

    let annotation = |page: usize| -> Dict<'_> {
        let annots = pdf.pages()[page].raw().get::<Array<'_>>("Annots").expect("annotations");
        annots.iter::<Dict<'_>>().next().expect("a link")
    };
    let place = annotation(0).get::<Array<'_>>("Dest").expect("a destination");
    assert_eq!(reader::references(&place), [pdf.pages()[1].raw().obj_id().expect("a page")]);
    let top: Vec<f32> = place.iter::<Object<'_>>().filter_map(|o| o.into_f32()).collect();
    assert!((top[0] - (A4.1 - 60.0)).abs() < 0.1, "{top:?}");
    let action = annotation(1).get::<Dict<'_>>("A").expect("an action");
    assert_eq!(reader::name(&action, "S").as_deref(), Some("URI"));
    assert_eq!(reader::texts(&action, "URI").as_deref(), Some("https://example.com/paint"));
    assert_eq!(
        reader::texts(&annotation(1), "Contents").as_deref(),
        Some("The example paint page")
    );
    let corners = annotation(1).get::<Array<'_>>("Rect").expect("an area");
    let corners: Vec<f32> = corners.iter::<Number>().map(|n| n.as_f32()).collect();
    let expected = [72.0, A4.1 - 212.0, 172.0, A4.1 - 200.0];
    assert!(corners.iter().zip(expected).all(|(a, b)| (a - b).abs() < 0.01), "{corners:?}");
}

#[test]
fn paths_keep_their_shape_and_their_lines() {
    let faces = Faces::new();
    let mut s = Sample::new(&faces);
    s.page().text(Role::Artifact, (72.0, 40.0), "x");
    let at = |x, y| Point { x, y };
    let segments = vec![
        PathSegment::Move(at(100.0, 100.0)),
        PathSegment::Cubic(at(110.0, 90.0), at(130.0, 90.0), at(140.0, 100.0)),
        PathSegment::Line(at(120.0, 130.0)),
        PathSegment::Close,
        PathSegment::Move(at(200.0, 100.0)),
        PathSegment::Line(at(240.0, 100.0)),
        PathSegment::Line(at(240.0, 140.0)),
    ];
    let stroke = Some(Stroke { colour: INK, width: 0.8, dash: Dash::Dotted });
    s.mark(Role::Artifact, Shape::Path { segments, fill: Some(INK), stroke });
    let bytes = s.bytes();
    let read = sequences(&bytes, 0);
    // Filled together and stroked: one piece closed, one open.
    assert_eq!(read[0].paints, ["B"]);
    for &(x, y) in &read[0].points {
        let y = A4.1 - y;
        assert!((99.99..240.01).contains(&x) && (89.99..140.01).contains(&y), "{x} {y}");
    }
    assert_eq!(read[0].points.len(), 5 + 3);
}

#[test]
fn nothing_lies_outside_the_page() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    for page in 0..2 {
        for sequence in sequences(&bytes, page) {
            let corners = sequence.points.iter().copied();
            let glyphs = sequence.glyphs.iter().flat_map(|g| [(g.x, g.y), (g.end, g.y + g.size)]);
            for (x, y) in corners.chain(glyphs) {
                assert!((0.0..=A4.0).contains(&x) && (0.0..=A4.1).contains(&y), "{x} {y}");
            }
        }
    }
}

#[test]
fn the_same_pages_give_the_same_bytes_and_others_do_not() {
    let one = everything(&Faces::new()).bytes();
    assert!(one == everything(&Faces::new()).bytes(), "two runs differ");
    let faces = Faces::new();
    let mut other = everything(&faces);
    other.pages.title.push('!');
    let other = other.bytes();
    let id = |bytes: &[u8]| {
        let at = bytes.windows(4).rposition(|w| w == b"/ID[").expect("an identifier");
        bytes[at..at + 40].to_vec()
    };
    assert_ne!(id(&one), id(&other));
}

#[test]
fn the_file_says_what_it_is() {
    let faces = Faces::new();
    let bytes = everything(&faces).bytes();
    let pdf = reader::open(&bytes);
    let root = reader::root(&pdf);
    assert_eq!(reader::texts(&root, "Lang").as_deref(), Some("en-US"));
    let view = root.get::<Dict<'_>>("ViewerPreferences").expect("preferences");
    assert_eq!(view.get::<bool>("DisplayDocTitle"), Some(true));
    let about = pdf.metadata();
    assert_eq!(about.title.as_deref(), Some(b"Ring pour for eight".as_slice()));
    let date = about.creation_date.expect("a date");
    assert_eq!((date.year, date.month, date.day), (2026, 3, 14));
    assert!(root.get::<Name<'_>>("PageLayout").is_none());
}

#[test]
fn pages_that_contradict_themselves_are_refused() {
    let faces = Faces::new();
    let fault = |change: &dyn Fn(&mut Sample<'_>)| {
        let mut s = everything(&faces);
        change(&mut s);
        puddlebook::pdf::write(&s.pages, &faces).expect_err("a fault")
    };
    let bookmark = Bookmark { title: "Nowhere".to_owned(), level: 1, page: 7, y: 0.0 };
    assert_eq!(
        fault(&|s| s.pages.outline.push(bookmark.clone())),
        PdfError::NoSuchPage { page: 7, pages: 2 }
    );
    assert_eq!(
        fault(&|s| s.pages.pages[0].links[0].to = LinkTarget::Place { page: 2, y: 0.0 }),
        PdfError::NoSuchPage { page: 2, pages: 2 }
    );
    let tags = everything(&faces).pages.tags.len();
    assert_eq!(
        fault(&|s| s.pages.pages[1].marks[0].role = Role::Content(TagId(999))),
        PdfError::NoSuchTag { tag: 999, tags }
    );
    assert_eq!(
        fault(&|s| s.pages.tags[1].parent = Some(TagId(5))),
        PdfError::NoSuchTag { tag: 5, tags }
    );
    let cut = |s: &mut Sample<'_>| {
        if let Shape::Text(run) = &mut s.pages.pages[1].marks[0].shape {
            run.text.truncate(2);
        }
    };
    assert_eq!(fault(&cut), PdfError::TextRange { page: 1 });
}
