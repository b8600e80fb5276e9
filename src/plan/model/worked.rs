//! Sums as a student works them, step by step.

use super::super::Formula;
use crate::quantity::show::rounded;

/// A sum worked step by step for one canvas.
#[derive(Debug, Clone)]
pub struct WorkedExample {
    pub canvas: String,
    pub steps: Vec<Step>,
}

/// One line of a worked example: what is worked out, from what, to what.
#[derive(Debug, Clone)]
pub struct Step {
    pub what: StepKind,
    /// How `gives` follows from `from`.
    pub formula: Formula,
    /// In the order of the formula.
    pub from: Vec<Figure>,
    pub gives: Figure,
}

/// What a step works out, from operands in the order given here.
#[derive(Debug, Clone, PartialEq)]
pub enum StepKind {
    /// Rectangle: width x height. Round: pi x half x half. Oval: pi x half width x half
    /// height. Polygon: sides x side x distance from the centre to a side / 2.
    Face,
    /// Rectangle: 2 x (width + height). Round: pi x diameter. Oval: pi x (half width +
    /// half height) x factor of its proportions. Polygon: sides x side. Left out, with
    /// the edge area, when the edge stays bare.
    Perimeter,
    /// perimeter x depth.
    EdgeArea,
    /// face + edge (zero when it stays bare).
    PaintedArea,
    /// painted / area that one unit of paint covers.
    LayerPaint { layer: String },
    /// layer paint x share.
    ColourPaint { layer: String, colour: String },
    /// (colour paint + cup loss) x density, rounded up to whole steps of the scale; the step
    /// is the fourth operand.
    ColourMass { layer: String, colour: String },
}

/// A quantity with the digits it is printed with; `shown` is what the pocket
/// calculator starts from, and reproduces `gives` from `from`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// In `unit`, rounded to `decimals`.
    pub shown: f64,
    pub decimals: u8,
    pub unit: FigureUnit,
}

impl Figure {
    /// Whether a pocket calculator that shows `result` agrees with this figure: rounded to
    /// its last digit, halves up, it is the figure.
    pub fn agrees_with(&self, result: f64) -> bool {
        // A calculator that shows an exact half is rounded up by whoever reads it.
        let read = rounded(result, usize::from(self.decimals));
        (read - self.shown).abs() <= read.abs() * 1e-12
    }
}

/// Units of worked examples.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FigureUnit {
    None,
    Percent,
    Inch,
    Centimetre,
    SquareInch,
    SquareCentimetre,
    FluidOunce,
    Millilitre,
    Gram,
    SquareInchPerFluidOunce,
    SquareCentimetrePerMillilitre,
    GramPerFluidOunce,
    GramPerMillilitre,
}
