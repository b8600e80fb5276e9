//! The units that people may write, each with its size in SI units, exact by
//! definition (NIST SP 811, 2008, Appendix B.8; NIST Handbook 44, Appendix C).

use super::misread::Dimension;
use super::units::{INCH_M, OUNCE_KG, US_FL_OZ_M3};
use std::collections::HashMap;
use std::sync::LazyLock;

/// A unit, how it is written, and how large it is.
#[derive(Debug)]
pub(super) struct Unit {
    /// The first spelling is the one that is recommended. Lower case.
    pub(super) spellings: &'static [&'static str],
    pub(super) dimension: Dimension,
    /// In metres, cubic metres, kilograms, kilograms per cubic metre, square
    /// metres, minutes, fractions of the whole, days or pieces.
    pub(super) size: f64,
}

const IMPERIAL_FL_OZ_M3: f64 = 28.413_062_5e-6;
const POUND_KG: f64 = 0.453_592_37;

const fn unit(spellings: &'static [&'static str], dimension: Dimension, size: f64) -> Unit {
    Unit { spellings, dimension, size }
}

/// All of them. A plain "oz" is a mass here; the reading refuses it where a volume
/// could be meant.
pub(super) const UNITS: &[Unit] = &[
    unit(
        &["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
        Dimension::Length,
        1e-3,
    ),
    unit(
        &["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
        Dimension::Length,
        1e-2,
    ),
    unit(&["m", "metre", "metres", "meter", "meters"], Dimension::Length, 1.0),
    unit(&["in", "inch", "inches", "\"", "″", "”"], Dimension::Length, INCH_M),
    unit(&["ft", "foot", "feet"], Dimension::Length, 12.0 * INCH_M),
    unit(
        &["mL", "millilitre", "millilitres", "milliliter", "milliliters"],
        Dimension::Volume,
        1e-6,
    ),
    unit(&["L", "litre", "litres", "liter", "liters"], Dimension::Volume, 1e-3),
    unit(
        &["fl oz", "fl. oz.", "fl. oz", "floz", "fluid ounce", "fluid ounces"],
        Dimension::Volume,
        US_FL_OZ_M3,
    ),
    unit(&["cup", "cups"], Dimension::Volume, 8.0 * US_FL_OZ_M3),
    unit(&["pt", "pint", "pints"], Dimension::Volume, 16.0 * US_FL_OZ_M3),
    unit(&["qt", "quart", "quarts"], Dimension::Volume, 32.0 * US_FL_OZ_M3),
    unit(&["gal", "gallon", "gallons"], Dimension::Volume, 128.0 * US_FL_OZ_M3),
    unit(
        &["imperial fl oz", "imperial fluid ounce", "imperial fluid ounces"],
        Dimension::Volume,
        IMPERIAL_FL_OZ_M3,
    ),
    unit(
        &["imperial pt", "imperial pint", "imperial pints"],
        Dimension::Volume,
        20.0 * IMPERIAL_FL_OZ_M3,
    ),
    unit(
        &["imperial gal", "imperial gallon", "imperial gallons"],
        Dimension::Volume,
        160.0 * IMPERIAL_FL_OZ_M3,
    ),
    unit(&["g", "gram", "grams", "gramme", "grammes"], Dimension::Mass, 1e-3),
    unit(&["kg", "kilogram", "kilograms", "kilo", "kilos"], Dimension::Mass, 1.0),
    unit(&["oz", "ounce", "ounces"], Dimension::Mass, OUNCE_KG),
    unit(
        &["oz weight", "oz by weight", "ounces weight", "ounces by weight"],
        Dimension::Mass,
        OUNCE_KG,
    ),
    unit(&["lb", "lbs", "pound", "pounds"], Dimension::Mass, POUND_KG),
    unit(&["g/mL", "g/cm³", "g/cm3", "grams per millilitre"], Dimension::Density, 1e3),
    unit(&["kg/L", "kilograms per litre"], Dimension::Density, 1e3),
    unit(&["g/L"], Dimension::Density, 1.0),
    unit(&["kg/m³", "kg/m3"], Dimension::Density, 1.0),
    unit(&["g/fl oz", "grams per fluid ounce"], Dimension::Density, 1e-3 / US_FL_OZ_M3),
    unit(&["lb/gal", "pounds per gallon"], Dimension::Density, POUND_KG / (128.0 * US_FL_OZ_M3)),
    unit(&["m²", "m2", "sq m", "square metres", "square meters"], Dimension::Area, 1.0),
    unit(&["cm²", "cm2", "sq cm", "square centimetres"], Dimension::Area, 1e-4),
    unit(&["ft²", "ft2", "sq ft", "square feet"], Dimension::Area, 144.0 * INCH_M * INCH_M),
    unit(&["in²", "in2", "sq in", "square inches"], Dimension::Area, INCH_M * INCH_M),
    unit(&["min", "minute", "minutes"], Dimension::Time, 1.0),
    unit(&["h", "hr", "hour", "hours"], Dimension::Time, 60.0),
    unit(&["%", "percent", "per cent"], Dimension::Share, 0.01),
    unit(&["days", "day", "d"], Dimension::Days, 1.0),
    unit(&["weeks", "week"], Dimension::Days, 7.0),
    unit(&["pieces", "piece", "pcs", "pc"], Dimension::Pieces, 1.0),
];

/// The unit that is written so, whatever its case and the spaces inside it.
pub(super) fn find(written: &str) -> Option<&'static Unit> {
    BY_SPELLING.get(&plain(written)).copied()
}

/// The units by their plain spellings: a lesson may hold tens of thousands of quantities.
static BY_SPELLING: LazyLock<HashMap<String, &Unit>> = LazyLock::new(|| {
    let spelt = UNITS.iter().flat_map(|unit| unit.spellings.iter().map(move |text| (text, unit)));
    // Of units that are written alike the first holds.
    spelt.rev().map(|(text, unit)| (plain(text), unit)).collect()
});

/// All spellings of the units of the `wanted` dimensions.
pub(super) fn spellings(wanted: &[Dimension]) -> impl Iterator<Item = &'static str> {
    UNITS
        .iter()
        .filter(move |unit| wanted.contains(&unit.dimension))
        .flat_map(|unit| unit.spellings.iter().copied())
}

fn plain(written: &str) -> String {
    written.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}
