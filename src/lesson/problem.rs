use super::slip::YamlSlip;
use super::source::{Place, Unread};
use crate::quantity::{Decimal, Dimension, Length, Mass, MisreadKind};

/// One thing that is wrong, where it is, and what it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// `None` when the file itself could not be read.
    pub place: Option<Place>,
    /// Keys from the top of the file down: `canvases`, `square`, `depth`.
    pub path: Vec<String>,
    pub kind: ProblemKind,
    /// Another place that belongs to it, such as where a name stands first.
    pub also: Option<Place>,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq)]
pub enum ProblemKind {
    // The file.
    Unread {
        name: String,
        why: Unread,
    },
    /// What the parser says, and what it most likely means.
    NotYaml {
        said: String,
        slip: YamlSlip,
    },
    SeveralDocuments,
    NotALesson,
    TooDeep,
    TooManyValues,
    /// In tables of weighings.
    TooManyRows,
    StrangeKey,
    KeyTooLong,
    Tagged,
    AliasInItself,
    DuplicateKey {
        key: String,
    },
    LessonKeyInData {
        key: String,
    },
    TooManyFiles,
    FileTwice {
        name: String,
    },
    /// A lesson that names itself among its data files.
    UsesItself,

    // The shape of an entry.
    UnknownKey {
        key: String,
        nearest: Option<String>,
        known: &'static [&'static str],
    },
    /// `keys` are those of the mapping that is wanted, if it has keys of its own.
    WrongForm {
        key: String,
        wanted: Vec<Form>,
        found: Form,
        keys: &'static [&'static str],
    },
    UnknownWord {
        word: String,
        nearest: Option<String>,
        known: &'static [&'static str],
    },
    /// In the part of this name, or in the lesson itself.
    Missing {
        key: &'static str,
        part: Option<String>,
    },
    Empty {
        key: String,
        keys: &'static [&'static str],
    },

    // A value alone.
    Misread(MisreadKind),
    /// Zero, where something is needed.
    Zero {
        allowed: &'static str,
    },
    OutOfRange {
        allowed: &'static str,
    },
    NotADate,
    NotATime,
    /// Where a length of time is wanted.
    TimeOfDay,
    NotACurrency {
        nearest: Option<String>,
    },
    NotASwatch,
    NotADropRate,
    NotAPercentage,
    NotALevel,
    /// More decimals than can be kept.
    LevelTooFine,
    /// Fewer than half of the classes would have enough.
    LevelTooLow,
    /// More than 999 classes out of 1000.
    LevelTooHigh,
    BlankText,
    TextTooLong,
    ControlCharacter,

    // Names.
    UnknownName {
        sort: Sort,
        name: String,
        nearest: Option<String>,
        known: Vec<String>,
    },
    NameTwice {
        name: String,
    },
    NameTaken {
        name: String,
    },

    // Values together.
    NoCanvases,
    TooManyCanvases,
    NoStudents,
    StudentTwice {
        name: String,
    },
    TooManyStudents,
    /// Of all students, demonstrations and spares.
    TooManyCups {
        cups: u64,
    },
    /// One for each named student and kind of canvas.
    TooManySheets {
        sheets: usize,
    },
    NoColours,
    TooManyColours,
    /// The sum in percent.
    SharesNotWhole {
        percent: Decimal,
    },
    RestLeavesNothing {
        percent: Decimal,
    },
    RestTwice,
    LayerMissing {
        technique: String,
        layer: String,
    },
    LayerUnknown {
        technique: String,
        layer: String,
        nearest: Option<String>,
        known: Vec<String>,
    },
    NotForShape {
        key: &'static str,
        shape: &'static str,
        wanted: &'static [&'static str],
    },
    PolygonSize {
        given: usize,
    },
    OddAcross {
        key: &'static str,
    },
    EdgeTooDeep {
        depth: Length,
        across: Length,
    },
    SpreadOrder,
    /// Counts of what was weighed: fewer cups than canvases, say.
    FewerThan {
        part: &'static str,
        whole: &'static str,
    },
    NoLayers,
    PaintIsAColour,
    NoPaintInMix,
    NotAnIngredient {
        name: String,
    },
    NoDropSize {
        material: String,
    },
    NotAFinish {
        material: String,
    },
    PaintDensities {
        paint: String,
    },
    TooManyShops,
    TwoCurrencies,
    JarFromTheFuture,
    MoneyDecimals {
        currency: &'static str,
        decimals: u16,
    },
    NotComparable {
        item: String,
        sold: Sold,
        found: Dimension,
    },
    TooManySizes,
    NoTimedSteps,
    TooManyTimedSteps,
    /// The step ends at midnight or later.
    PastMidnight,
    BookedBeforeStart,
    WhenNotOne,

    // Weighings.
    WeighingsUnread {
        name: String,
        why: Unread,
    },
    /// Where weighings name a lesson.
    LessonUnread {
        name: String,
        why: Unread,
    },
    /// A file of weighings with nothing in it.
    NoWeighings,
    SeveralClasses,
    /// A lesson where weighings are wanted.
    ALesson,
    /// A key of the file or a column of the table that must be there.
    NotSaid {
        key: &'static str,
    },
    /// A table whose columns are set apart by something else.
    NotCommas,
    /// A cell that starts with a quotation mark and does not end.
    OpenCell,
    /// A row of more or fewer cells than the table has columns.
    CellCount {
        found: usize,
        columns: usize,
    },
    NoCups,
    NoScale,
    LayerNeeded {
        technique: String,
        known: Vec<String>,
    },
    MixNeeded {
        technique: String,
    },
    /// Fewer alike canvases are painted than the row says.
    NoSuchPiece {
        pieces: u32,
    },
    /// A cup of which one of the two weights is missing, or both where a tray was weighed.
    HalfWeighed {
        missing: &'static [&'static str],
    },
    NotOfCanvas {
        colour: String,
        part: Box<PartOfCanvas>,
        nearest: Option<String>,
        known: Vec<String>,
    },
    AfterHeavier,
    CupTwice {
        colour: String,
    },
    TrayTwice,
    /// More ran off than was in the cups.
    TrayHeavier {
        used: Mass,
    },
    /// Two rows of one canvas say different techniques or mixes.
    PouredTwoWays,
    /// About 28 times too light: ounces read as grams.
    OuncesAsGrams {
        weighed: Mass,
        planned: Mass,
    },
    /// About 28 times too heavy: grams read as ounces.
    GramsAsOunces {
        weighed: Mass,
        planned: Mass,
    },
    /// Something could not be read although nothing above was found.
    Unexplained,
}

/// A canvas, and its layer where it has several.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartOfCanvas {
    pub canvas: String,
    pub layer: Option<String>,
}

/// Forms that a value can have in a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    Text,
    List,
    Mapping,
}

/// Sorts of named things.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    Technique,
    Mix,
    Palette,
    Finish,
    Colour,
    Material,
    Supply,
    /// Paint, material or supply.
    Item,
    Canvas,
    /// A student of the class, or the teacher.
    Painter,
    /// What a colleague would say.
    Concern,
}

/// How an item is sold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sold {
    ByVolumeOrWeight,
    ByThePiece,
}
