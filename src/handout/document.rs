//! A handout as a plain value: blocks of words, tables and pictures, with no
//! coordinates in it. Every number is text already.

use super::labels::CupLabel;
use super::paper_tools::{CheckLength, EdgeGauge, Nomogram, SpreadRings};
use super::sketch::Sketch;
use crate::ink::Colour;
pub use crate::lesson::{Edition, Paper, Sign};
pub use crate::quantity::DecimalMark;

/// One handout.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// For the title bar of a reader and the header of the page.
    pub title: String,
    pub author: Option<String>,
    /// BCP 47.
    pub language: String,
    /// In its numbers.
    pub decimal: DecimalMark,
    /// ISO 8601 date of the lesson, for the file's own date; none leaves it out.
    pub date: Option<String>,
    pub form: Form,
    pub paper: Paper,
    pub edition: Edition,
    /// At the top of each page but the first of the document or of a section: left, right.
    pub header: (String, String),
    /// At the foot, left of "page x of y".
    pub footer: String,
    /// "Page {page} of {pages}" in the language of the handout.
    pub folio: String,
    /// What follows the heading of a group of rows where a table goes on with the group on
    /// another page: ", continued".
    pub continued: String,
    /// What a box to tick is called, for those who hear the page.
    pub tick_box: String,
    /// What a ruled line to write on is called: "line {line} of {lines}".
    pub ruled_line: String,
    /// To which size cards and labels are cut: "{width} × {height} mm".
    pub cut_to: String,
    pub blocks: Vec<Block>,
}

/// The shape of a handout.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// One text column over the full measure: orders, worksheets.
    Sheet,
    /// A text column with a side margin for notes and captions: the guide.
    Book,
    /// Cards with cutting marks.
    Cards,
}

/// A piece of a handout that stands on lines of its own.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// Head of a sheet: kind of sheet, title, and facts in a row.
    Masthead {
        kind: String,
        title: String,
        facts: Vec<Fact>,
    },
    /// A page of its own.
    TitlePage {
        title: String,
        subtitle: String,
        lines: Vec<String>,
        picture: Option<Picture>,
    },
    /// Table of contents over headings of level 1 and 2.
    Contents {
        title: String,
    },
    /// Level 1 starts a page in a book.
    Heading {
        level: HeadingLevel,
        text: Vec<Inline>,
        anchor: String,
    },
    Paragraph(Vec<Inline>),
    /// Quiet small print.
    SmallPrint(Vec<Inline>),
    List {
        start: Option<u32>,
        items: Vec<Vec<Block>>,
    },
    Table(Table),
    Figure {
        picture: Picture,
        caption: Vec<Inline>,
    },
    Notice {
        kind: NoticeKind,
        heading: Vec<Inline>,
        body: Vec<Block>,
    },
    /// In the side margin of a book, beside the block that follows; inset elsewhere.
    Aside(Vec<Block>),
    /// Big numbers where a decision hangs on them.
    KeyFigures(Vec<Fact>),
    /// A numbered step of a worksheet, its number in the margin.
    Step {
        number: u32,
        heading: Vec<Inline>,
        body: Vec<Block>,
    },
    /// Empty ruled lines for handwriting, 8 mm apart at least.
    Ruled {
        lines: u32,
    },
    /// Short lines side by side, read down each column: at most so many columns, fewer
    /// where they would be narrow.
    Columns {
        count: u32,
        measure: Measure,
        body: Vec<Block>,
    },
    /// Cut-out cards in a grid.
    Cards(Vec<Card>),
    /// Labels for cups in a grid, cut to one size.
    CupLabels(Vec<CupLabel>),
    PageBreak,
    /// Starts a page and a set of pages that may be parted from the others: they carry
    /// this header, left and right, instead of the document's, and are counted anew.
    Section {
        header: (String, String),
    },
}

/// Over which width a block may go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// That of the text around it.
    Text,
    /// That of the page, over its side column too.
    Page,
}

/// Ranks of headings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeadingLevel {
    One,
    Two,
    Three,
}

/// A labelled value.
#[derive(Debug, Clone, PartialEq)]
pub struct Fact {
    pub label: String,
    pub value: String,
    /// Quiet words below; may be empty.
    pub note: String,
}

/// Kinds of boxes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoticeKind {
    /// Warm accent and a drawn sign.
    Caution(Sign),
    /// "Check yourself" and "try it" boxes.
    Practice,
    /// A worked example.
    Example,
    /// A plain remark.
    Remark,
}

/// A card to cut out: name and swatch, then a running list, then small print.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    pub swatch: Option<Colour>,
    pub title: String,
    pub subtitle: String,
    /// Label, big reading, quiet note; each with a box to tick.
    pub lines: Vec<Fact>,
    pub foot: String,
}

/// A table; every row has as many cells as there are columns.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    pub caption: Vec<Inline>,
    pub columns: Vec<Column>,
    pub rows: Vec<Row>,
}

/// A column of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    pub heading: Vec<Inline>,
    pub align: Align,
}

/// How the cells of a column stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    Left,
    Centre,
    /// Numbers, on the decimal mark.
    Decimal,
}

/// A row of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    pub kind: RowKind,
    pub cells: Vec<Vec<Inline>>,
}

/// Kinds of rows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowKind {
    Body,
    /// Set apart at the end.
    Total,
    /// A heading over the rows that follow; only its first cell has text.
    Group,
}

/// A piece of a line.
#[derive(Debug, Clone, PartialEq)]
pub enum Inline {
    Text(String),
    Emphasis(Vec<Inline>),
    Strong(Vec<Inline>),
    Link {
        to: Target,
        text: Vec<Inline>,
    },
    /// The page number on which an anchor stands. Of two with a comma between them that come
    /// to the same number, as in an index, the second is left out with the comma.
    PageOf(String),
    /// A place in the text by name; nothing is seen of it.
    Anchor(String),
    /// A ruled blank to write on, in millimetres; `label` says what belongs there.
    Blank {
        width_mm: f32,
        label: String,
    },
    /// A box to tick.
    Tick,
    /// A patch of colour.
    Swatch(Colour),
    Break,
}

/// Where a link leads.
#[derive(Debug, Clone, PartialEq)]
pub enum Target {
    Anchor(String),
    Web(String),
}

/// What is drawn in a figure: data, not shapes. `alt` says in words what it shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    pub alt: String,
    pub kind: PictureKind,
}

/// Kinds of pictures.
#[derive(Debug, Clone, PartialEq)]
pub enum PictureKind {
    Coverage(Coverage),
    Bars(Bars),
    Shares(Shares),
    Fees(FeeCurve),
    Weighed(WeighedChart),
    FilmLeft(FilmLeft),
    Nomogram(Nomogram),
    EdgeGauge(EdgeGauge),
    SpreadRings(SpreadRings),
    CheckLength(CheckLength),
    Unfolded(Unfolded),
    Sketch(Sketch),
    /// The cover picture: rings of a ring pour, drawn from a seed.
    Rings {
        colours: Vec<Colour>,
    },
}

/// Lines of mixed paint against painted area, one a technique, canvases marked.
#[derive(Debug, Clone, PartialEq)]
pub struct Coverage {
    pub title: String,
    pub x_label: String,
    pub y_label: String,
    /// Says what the bands around strong lines are.
    pub band_label: String,
    /// End of the x axis, in its unit.
    pub x_max: f64,
    pub lines: Vec<CoverageLine>,
    pub marks: Vec<CoverageMark>,
}

/// A straight line through the origin with a band around it.
#[derive(Debug, Clone, PartialEq)]
pub struct CoverageLine {
    pub label: String,
    /// y per x: low, typical, high.
    pub slope: [f64; 3],
    /// Whether the lesson uses it: drawn strong, with its band; others are context.
    pub emphasis: Weight,
}

/// How strongly something is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    Strong,
    Quiet,
}

/// A canvas of the lesson on its line.
#[derive(Debug, Clone, PartialEq)]
pub struct CoverageMark {
    pub label: String,
    pub x: f64,
    pub y: f64,
}

/// Bars, each of one or more parts, labelled directly.
#[derive(Debug, Clone, PartialEq)]
pub struct Bars {
    pub title: String,
    /// Axis title with its unit.
    pub axis: String,
    pub bars: Vec<Bar>,
}

/// One horizontal bar (with `parts` end to end) and, if any, a second mark to compare.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    pub label: String,
    pub parts: Vec<BarPart>,
    /// A tick across the bar, such as what is needed of what is bought.
    pub mark: Option<BarPart>,
}

/// A part of a bar; `label` is written in or beside it, `value` in the axis unit.
#[derive(Debug, Clone, PartialEq)]
pub struct BarPart {
    pub label: String,
    pub value: f64,
    /// The paint's own colour; hatching or tint by position otherwise.
    pub swatch: Option<Colour>,
}

/// Wholes of one length, each split into the same kinds of parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Shares {
    pub title: String,
    /// What the parts are.
    pub parts: Vec<String>,
    pub rows: Vec<ShareRow>,
}

/// One whole, with a size for each kind of part.
#[derive(Debug, Clone, PartialEq)]
pub struct ShareRow {
    pub name: String,
    /// What the whole is.
    pub amount: String,
    pub sizes: Vec<f64>,
}

/// The fee at which a class pays for itself, against the number of students.
#[derive(Debug, Clone, PartialEq)]
pub struct FeeCurve {
    pub title: String,
    pub x_label: String,
    pub y_label: String,
    /// Written at the end of the curve.
    pub line_label: String,
    /// Says what filled and open dots are; empty where all are alike.
    pub dot_label: String,
    /// By number of students.
    pub dots: Vec<FeeDot>,
    /// A level line with its label, in the unit of the dots.
    pub asked: Option<(f64, String)>,
    /// Which of the dots is this class, and what is written by it.
    pub here: Option<(usize, String)>,
}

/// One class of the curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FeeDot {
    pub students: u32,
    /// In the currency of the axis.
    pub fee: f64,
    pub fill: DotFill,
}

/// Whether a dot is filled or open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DotFill {
    Filled,
    Open,
}

/// Used paint against planned paint, a point a canvas.
#[derive(Debug, Clone, PartialEq)]
pub struct WeighedChart {
    pub title: String,
    pub x_label: String,
    pub y_label: String,
    /// Written at the end of the line on which as much is used as is planned.
    pub even_label: String,
    /// What the trade's rule of thumb would give.
    pub rules: Vec<RuleLine>,
    /// What the markers of the points stand for, each another shape.
    pub groups: Vec<String>,
    pub points: Vec<WeighedPoint>,
}

/// A straight line through the origin.
#[derive(Debug, Clone, PartialEq)]
pub struct RuleLine {
    pub label: String,
    /// y per x.
    pub slope: f64,
}

/// One canvas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeighedPoint {
    /// Place in `WeighedChart::groups`.
    pub group: usize,
    /// Planned.
    pub x: f64,
    /// Used: as little as the scale allows, as it shows, as much as it allows.
    pub y: [f64; 3],
}

/// The film that is left on a board against time, one line a paint.
#[derive(Debug, Clone, PartialEq)]
pub struct FilmLeft {
    pub title: String,
    pub x_label: String,
    pub y_label: String,
    pub lines: Vec<FilmLine>,
}

/// One paint; the lines of a chart end at the same time.
#[derive(Debug, Clone, PartialEq)]
pub struct FilmLine {
    /// Written at its end.
    pub label: String,
    /// Time and film, in the units of the axes, by time.
    pub points: Vec<(f64, f64)>,
}

/// A canvas with its side strips folded out, to scale, with dimension lines.
#[derive(Debug, Clone, PartialEq)]
pub struct Unfolded {
    pub outline: Outline,
    /// Edge depth in the unit of the outline; zero for none.
    pub depth: f64,
    /// Written in the face, such as "100 in²"; empty on a sheet where it is asked.
    pub face_label: String,
    pub edge_label: String,
    /// Texts of the dimension lines.
    pub width_label: String,
    pub height_label: String,
    pub depth_label: String,
    /// Of the line from the centre to a side of a polygon; empty for other outlines.
    pub middle_label: String,
    /// Millimetres of a line to write on after each of these texts; 0 for none.
    pub blank_mm: f32,
}

/// Outline of a face, in any one unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outline {
    Rectangle { width: f64, height: f64 },
    Oval { width: f64, height: f64 },
    Polygon { sides: u32, side: f64 },
}
