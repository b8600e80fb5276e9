use std::ops::Range;

/// Why a text is not the quantity that was asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct Misread {
    /// The bytes of the text that are to blame; may be empty, for something that
    /// is missing.
    pub span: Range<usize>,
    pub kind: MisreadKind,
}

impl Misread {
    /// A misreading of `span`.
    pub fn new(span: Range<usize>, kind: MisreadKind) -> Self {
        Self { span, kind }
    }

    /// The same, in a longer text that starts `by` bytes earlier.
    pub(super) fn shifted(mut self, by: usize) -> Self {
        self.span = self.span.start + by..self.span.end + by;
        self
    }
}

/// What is wrong with the text of a quantity.
#[derive(Debug, Clone, PartialEq)]
pub enum MisreadKind {
    /// Nothing is written.
    Empty { wanted: Dimension },
    /// It does not start with a number.
    NotANumber { wanted: Dimension },
    /// `1,5`: the whole text with a point instead.
    DecimalComma { corrected: String },
    /// `1,000`: may be a thousand or one with three decimals; the whole text both ways.
    ThousandsComma { thousands: String, decimal: String },
    /// A number alone where a unit is needed; the first is the number as written.
    MissingUnit { number: String, wanted: Dimension },
    /// No such unit.
    UnknownUnit { unit: String, nearest: Option<&'static str>, wanted: Dimension },
    /// `oz`, where it could mean a volume or a weight.
    BareOunce { number: String },
    /// A unit of another dimension.
    WrongDimension { unit: String, found: Dimension, wanted: Dimension },
    /// A unit or word after a number that stands alone.
    UnitNotWanted { unit: String, number: String },
    /// Below zero.
    Negative,
    /// `3/0`.
    ZeroDenominator,
    /// More digits, or a larger number, than can be kept.
    TooLarge,
    /// A part of a thing that is counted whole.
    NotWhole,
    /// A third of a hundred, which no decimal says exactly.
    NotExact,
    /// More than the whole.
    MoreThanWhole,
}

/// Kinds of quantity.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dimension {
    Length,
    Volume,
    Mass,
    Density,
    Area,
    /// Minutes and hours.
    Time,
    Share,
    Days,
    Pieces,
    /// A volume, a weight or a number of pieces.
    Amount,
    Number,
    Money,
}
