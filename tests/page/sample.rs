//! Documents to lay out, and ways to look at pages.

use puddlebook::handout::*;
use puddlebook::ink::{Colour, Faces, Point, Rect, Shape, TextRun};
use puddlebook::lesson::{Edition, Paper, Sign};
use puddlebook::page::{Mark, Page, Pages, Role, TagId, TagKind, lay_out};

pub const PROSE: &str = "Consequently, a confident learner clarifies the relationship between \
    value and chroma before the second observation, and the neighbouring colour deepens the \
    overall effect. In practice the mixture softens when the light is diffuse; an earthy orange \
    influences the saturation of its neighbour under an office lamp. Nevertheless, a sufficient \
    amount of white flattens the finished surface in a comparatively thin film.";

pub fn text(words: &str) -> Inline {
    Inline::Text(words.to_owned())
}

pub fn paragraph(words: &str) -> Block {
    Block::Paragraph(vec![text(words)])
}

pub fn heading(level: HeadingLevel, words: &str, anchor: &str) -> Block {
    Block::Heading { level, text: vec![text(words)], anchor: anchor.to_owned() }
}

pub fn fact(label: &str, value: &str, note: &str) -> Fact {
    Fact { label: label.to_owned(), value: value.to_owned(), note: note.to_owned() }
}

/// A table of texts; its first column is of words, the others of numbers.
pub fn table(heads: &[&str], rows: &[&[&str]]) -> Table {
    let cell = |words: &&str| if words.is_empty() { Vec::new() } else { vec![text(words)] };
    Table {
        caption: vec![text("What was counted")],
        columns: heads
            .iter()
            .enumerate()
            .map(|(index, head)| Column {
                heading: cell(head),
                align: if index == 0 { Align::Left } else { Align::Decimal },
            })
            .collect(),
        rows: rows
            .iter()
            .map(|cells| Row { kind: RowKind::Body, cells: cells.iter().map(cell).collect() })
            .collect(),
    }
}

/// A table of so many rows of invented numbers.
pub fn long_table(rows: usize) -> Table {
    let amounts: Vec<String> =
        (0..rows).map(|i| format!("{}", (i * 37 % 400) as f64 / 8.0)).collect();
    let names: Vec<String> = (0..rows).map(|i| format!("Mix {i}")).collect();
    let cells: Vec<[&str; 2]> =
        names.iter().zip(&amounts).map(|(name, amount)| [name.as_str(), amount.as_str()]).collect();
    let rows: Vec<&[&str]> = cells.iter().map(<[&str; 2]>::as_slice).collect();
    table(&["Trial", "Amount, g"], &rows)
}

pub fn document(form: Form, blocks: Vec<Block>) -> Document {
    Document {
        title: "Sample".to_owned(),
        author: None,
        language: "en-GB".to_owned(),
        decimal: DecimalMark::Point,
        date: None,
        form,
        paper: Paper::A4,
        edition: Edition::Standard,
        header: ("Two Ways to Pour".to_owned(), "14 March 2026".to_owned()),
        footer: String::new(),
        folio: "Page {page} of {pages}".to_owned(),
        continued: ", continued".to_owned(),
        tick_box: "Box to tick".to_owned(),
        ruled_line: "Line {line} of {lines}".to_owned(),
        cut_to: "Every piece is {width} × {height} mm.".to_owned(),
        blocks,
    }
}

pub fn pages(form: Form, blocks: Vec<Block>) -> Pages {
    lay_out(&document(form, blocks), &Faces::new())
}

/// One of each kind of block.
pub fn everything(form: Form) -> Vec<Block> {
    let rings = Picture {
        alt: "Rings of paint".to_owned(),
        kind: PictureKind::Rings {
            colours: vec![Colour::new(30, 90, 120), Colour::new(230, 220, 200)],
        },
    };
    let mut blocks = match form {
        Form::Book => vec![
            Block::TitlePage {
                title: "Pouring Paint".to_owned(),
                subtitle: "A guide".to_owned(),
                lines: vec!["M. Invented".to_owned(), "2026".to_owned()],
                picture: Some(rings.clone()),
            },
            Block::Contents { title: "Contents".to_owned() },
        ],
        Form::Sheet | Form::Cards => vec![Block::Masthead {
            kind: "Supply order".to_owned(),
            title: "Two Ways to Pour".to_owned(),
            facts: vec![
                fact("Date", "14 March 2026", ""),
                fact("Place", "The Old Boathouse", "invented"),
            ],
        }],
    };
    blocks.extend([
        heading(HeadingLevel::One, "Measuring a canvas", "measuring"),
        paragraph(PROSE),
        Block::Aside(vec![paragraph("Count the sides too: they take as much paint as the face.")]),
        Block::Paragraph(vec![
            text("See "),
            Inline::Link {
                to: Target::Anchor("mixing".to_owned()),
                text: vec![text("the next chapter")],
            },
            text(" on page "),
            Inline::PageOf("mixing".to_owned()),
            text(", "),
            Inline::Emphasis(vec![text("slanted words")]),
            text(" and "),
            Inline::Strong(vec![text("strong ones")]),
            text(", a patch "),
            Inline::Swatch(Colour::new(30, 90, 120)),
            text(" of blue. "),
            text(PROSE),
        ]),
        Block::KeyFigures(vec![
            fact("Paint per student", "9.6\u{202F}fl\u{202F}oz", "284 mL"),
            fact("To buy", "$123.40", ""),
        ]),
        heading(HeadingLevel::Two, "The sides count", "sides"),
        Block::List {
            start: None,
            items: vec![vec![paragraph("One.")], vec![paragraph(PROSE)], vec![paragraph("Three.")]],
        },
        Block::List {
            start: Some(9),
            items: vec![vec![paragraph("Nine.")], vec![paragraph("Ten.")]],
        },
        Block::List {
            start: None,
            items: vec![vec![Block::Paragraph(vec![Inline::Tick, text(" Ticked off")])]],
        },
        Block::Table(long_table(60)),
        Block::Notice {
            kind: NoticeKind::Caution(Sign::Flame),
            heading: vec![text("Keep the flame away from alcohol")],
            body: vec![
                paragraph("Its vapour lights at room temperature."),
                Block::SmallPrint(vec![text("A source.")]),
            ],
        },
        Block::Notice {
            kind: NoticeKind::Practice,
            heading: vec![text("Try it")],
            body: vec![paragraph(PROSE), Block::Ruled { lines: 3 }],
        },
        Block::Notice {
            kind: NoticeKind::Example,
            heading: vec![text("Worked")],
            body: vec![paragraph("10 in × 10 in = 100 in²")],
        },
        Block::Notice {
            kind: NoticeKind::Remark,
            heading: vec![text("By the way")],
            body: vec![paragraph(PROSE)],
        },
        Block::Figure { picture: rings, caption: vec![text("Rings, as a ring pour leaves them.")] },
        heading(HeadingLevel::One, "Mixing by weight", "mixing"),
        heading(HeadingLevel::Two, "Steps", "steps"),
        heading(HeadingLevel::Three, "On the scale", "scale"),
        paragraph(PROSE),
        Block::Step {
            number: 1,
            heading: vec![text("Measure the face")],
            body: vec![Block::Paragraph(vec![
                text("Face: "),
                Inline::Blank { width_mm: 30.0, label: "width".to_owned() },
                text(" in × "),
                Inline::Blank { width_mm: 30.0, label: "height".to_owned() },
                text(" in"),
            ])],
        },
        Block::Cards(
            (1..8)
                .map(|number| Card {
                    swatch: Some(Colour::new(30, 90, 120)),
                    title: format!("Blue {number}"),
                    subtitle: "thin, 4 cups".to_owned(),
                    lines: vec![fact("paint", "120 g", "tare first"), fact("medium", "240 g", "")],
                    foot: "Stir slowly.".to_owned(),
                })
                .collect(),
        ),
    ]);
    blocks
}

/// The text runs of a page with their roles.
pub fn runs(page: &Page) -> impl Iterator<Item = (&TextRun, Role)> {
    page.marks.iter().filter_map(|Mark { shape, role }| match shape {
        Shape::Text(run) => Some((run, *role)),
        Shape::Path { .. } => None,
    })
}

/// The box of a run's capitals, without the space at its end.
pub fn capitals(run: &TextRun) -> Rect {
    let width = run.width();
    Rect { x: run.origin.x, y: run.origin.y - 0.7 * run.size, width, height: 0.7 * run.size }
}

/// Every point of a shape.
pub fn points(shape: &Shape) -> Vec<Point> {
    use puddlebook::ink::PathSegment::{Close, Cubic, Line, Move};
    match shape {
        Shape::Text(run) => {
            let end = run.origin.x + run.width();
            vec![
                Point { x: run.origin.x, y: run.origin.y - 0.75 * run.size },
                Point { x: end, y: run.origin.y + 0.22 * run.size },
            ]
        }
        Shape::Path { segments, .. } => segments
            .iter()
            .flat_map(|segment| match *segment {
                Move(p) | Line(p) => vec![p],
                Cubic(a, b, c) => vec![a, b, c],
                Close => vec![],
            })
            .collect(),
    }
}

/// Whether a tag or one above it is of a kind.
pub fn within(pages: &Pages, role: Role, is: impl Fn(TagKind) -> bool) -> bool {
    let Role::Content(TagId(mut at)) = role else { return false };
    loop {
        if is(pages.tags[at].kind) {
            return true;
        }
        match pages.tags[at].parent {
            Some(TagId(parent)) => at = parent,
            None => return false,
        }
    }
}

/// What a reader who listens hears of pages, words apart by one space.
pub fn heard(pages: &Pages) -> String {
    let (mut heard, mut before) = (String::new(), None);
    for page in &pages.pages {
        for (run, role) in runs(page) {
            if let Role::Content(tag) = role {
                let element = element(pages, tag);
                if before.is_some_and(|before| before != element) {
                    heard.push(' ');
                }
                before = Some(element);
                heard.push_str(&run.text);
            }
        }
    }
    plain(&heard)
}

/// The element that a tag stands in: a link is part of its paragraph.
fn element(pages: &Pages, TagId(mut at): TagId) -> usize {
    while let (TagKind::Link, Some(TagId(parent))) = (pages.tags[at].kind, pages.tags[at].parent) {
        at = parent;
    }
    at
}

/// Text without soft hyphens and with single spaces.
pub fn plain(text: &str) -> String {
    let text = text.replace(['\u{AD}', '\u{2060}', '\u{200B}'], "").replace('\u{A0}', " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
