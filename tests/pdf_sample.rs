//! Pages with one of everything that the PDF writer must write.

use puddlebook::ink::{
    Colour, Dash, Face, Faces, PathSegment, Point, Rect, Shape, Stroke, TextRun,
};
use puddlebook::page::{
    Bookmark, Link, LinkTarget, Mark, Page, Pages, Printing, Role, Tag, TagId, TagKind,
};

pub const INK: Colour = Colour::new(33, 36, 40);
pub const A4: (f32, f32) = (595.2756, 841.8898);

/// Pages under construction.
pub struct Sample<'f> {
    pub faces: &'f Faces,
    pub pages: Pages,
}

impl<'f> Sample<'f> {
    /// No page yet, one tag: the document.
    pub fn new(faces: &'f Faces) -> Self {
        let root = Tag { kind: TagKind::Document, parent: None, alt: None };
        let pages = Pages {
            title: "Ring pour for eight".to_owned(),
            author: Some("The example studio".to_owned()),
            language: "en-US".to_owned(),
            date: Some("2026-03-14".to_owned()),
            size: A4,
            pages: Vec::new(),
            outline: Vec::new(),
            tags: vec![root],
            missing: Vec::new(),
            printing: Printing::default(),
        };
        Self { faces, pages }
    }

    pub fn page(&mut self) -> &mut Self {
        self.pages.pages.push(Page::default());
        self
    }

    pub fn tag(&mut self, kind: TagKind, parent: TagId) -> TagId {
        self.pages.tags.push(Tag { kind, parent: Some(parent), alt: None });
        TagId(self.pages.tags.len() - 1)
    }

    /// A mark on the last page.
    pub fn mark(&mut self, role: Role, shape: Shape) -> &mut Self {
        self.pages.pages.last_mut().expect("a page").marks.push(Mark { shape, role });
        self
    }

    pub fn run(&self, face: Face, size: f32, at: (f32, f32), text: &str) -> TextRun {
        self.faces.run(face, size, INK, Point { x: at.0, y: at.1 }, text)
    }

    pub fn text(&mut self, role: Role, at: (f32, f32), text: &str) -> &mut Self {
        let run = self.run(Face::Regular, 10.5, at, text);
        self.mark(role, Shape::Text(run))
    }

    /// A text with a tag of its own below the document.
    pub fn tagged(&mut self, kind: TagKind, at: (f32, f32), text: &str) -> TagId {
        let tag = self.tag(kind, TagId(0));
        self.text(Role::Content(tag), at, text);
        tag
    }

    pub fn rule(&mut self, role: Role, from: (f32, f32), to: (f32, f32)) -> &mut Self {
        let segments = vec![
            PathSegment::Move(Point { x: from.0, y: from.1 }),
            PathSegment::Line(Point { x: to.0, y: to.1 }),
        ];
        let stroke = Stroke { colour: INK, width: 0.5, dash: Dash::Solid };
        self.mark(role, Shape::Path { segments, fill: None, stroke: Some(stroke) })
    }

    pub fn bytes(&self) -> Vec<u8> {
        puddlebook::pdf::write(&self.pages, self.faces).expect("pages that can be written")
    }
}

/// Two pages: heading, justified text with a link, list, table over both, figure,
/// note, header and footer.
pub fn everything(faces: &Faces) -> Sample<'_> {
    let mut s = Sample::new(faces);
    s.page().text(Role::Artifact, (72.0, 40.0), "Header").rule(
        Role::Artifact,
        (72.0, 46.0),
        (523.0, 46.0),
    );
    s.tagged(TagKind::Heading(1), (72.0, 80.0), "How much paint");
    let p = s.tag(TagKind::Paragraph, TagId(0));
    let lines =
        ["Weigh the first cup; the office scale shows", "AVATAR waves of fine fluid mixed "];
    for (line, y) in lines.into_iter().zip([110.0, 125.0]) {
        let mut run = s.run(Face::Regular, 10.5, (72.0, y), line);
        for glyph in run.glyphs.iter_mut().filter(|g| g.slice(&run.text) == Some(" ")) {
            glyph.advance += 0.137;
        }
        s.mark(Role::Content(p), Shape::Text(run));
    }
    let link = s.tag(TagKind::Link, p);
    let at = s.run(Face::Regular, 10.5, (72.0, 125.0), lines[1]).width() + 100.0;
    s.text(Role::Content(link), (at, 125.0), "see page 2");
    s.text(Role::Content(p), (at + 60.0, 125.0), " and stir.");
    let area = Rect { x: at, y: 115.0, width: 50.0, height: 13.0 };
    let to = LinkTarget::Place { page: 1, y: 60.0 };
    let description = "Table of paints on page 2".to_owned();
    s.pages.pages[0].links.push(Link { area, to, tag: link, description });

    let list = s.tag(TagKind::List, TagId(0));
    for (number, y) in [("1.", 160.0), ("2.", 175.0)] {
        let item = s.tag(TagKind::ListItem, list);
        let label = s.tag(TagKind::Label, item);
        let body = s.tag(TagKind::ListBody, item);
        s.text(Role::Content(label), (72.0, y), number);
        s.text(Role::Content(body), (90.0, y), "Stir slowly");
    }

    let figure = s.tag(TagKind::Figure, TagId(0));
    s.pages.tags[figure.0].alt = Some("A square of 10 \u{d7} 10 in".to_owned());
    let square = [(100.0, 300.0), (200.0, 300.0), (200.0, 400.0), (100.0, 400.0)];
    let mut segments = vec![PathSegment::Move(Point { x: 100.0, y: 300.0 })];
    segments.extend(square[1..].iter().map(|&(x, y)| PathSegment::Line(Point { x, y })));
    segments.push(PathSegment::Close);
    let stroke = Some(Stroke { colour: INK, width: 1.0, dash: Dash::Dashed });
    let fill = Some(Colour::new(0xF0, 0xE4, 0x42));
    s.mark(Role::Content(figure), Shape::Path { segments, fill, stroke });
    let caption = s.tag(TagKind::Caption, figure);
    s.text(Role::Content(caption), (100.0, 420.0), "The canvas");
    s.tagged(TagKind::Note, (72.0, 700.0), "A fluid ounce is no ounce.");

    let table = s.tag(TagKind::Table, TagId(0));
    for (row, page, y) in [(0, 0, 740.0), (1, 0, 760.0), (2, 1, 80.0)] {
        if s.pages.pages.len() == page {
            s.page().text(Role::Artifact, (72.0, 60.0), "Paint");
        }
        let tr = s.tag(TagKind::TableRow, table);
        for (column, text) in ["Paint", "12.5", ""].into_iter().enumerate() {
            let kind = match (row, column) {
                (0, _) => TagKind::ColumnHeader,
                (_, 0) => TagKind::RowHeader,
                _ => TagKind::TableCell,
            };
            let cell = s.tag(kind, tr);
            if !text.is_empty() {
                s.text(Role::Content(cell), (72.0 + 80.0 * column as f32, y), text);
            }
        }
    }
    s.tagged(TagKind::Heading(2), (72.0, 120.0), "What is left");
    s.tagged(TagKind::Heading(1), (72.0, 160.0), "Safety");
    let mark = |title: &str, level, page, y| Bookmark { title: title.to_owned(), level, page, y };
    s.pages.outline = vec![
        mark("How much paint", 1, 0, 70.0),
        mark("What is left \u{2014} and how long", 2, 1, 110.0),
        mark("Safety", 1, 1, 150.0),
    ];
    s
}
