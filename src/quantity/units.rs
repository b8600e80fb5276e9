//! Constructors and read-outs in the units that the trade uses, exact by
//! definition (NIST SP 811, 2008, Appendix B.8; NIST Handbook 44, Appendix C).

use super::{
    Angle, AngularVelocity, Area, Duration, DynamicViscosity, Length, Mass, MassDensity, Volume,
};
use uom::si::{
    angle, angular_velocity, area, dynamic_viscosity, length, mass, mass_density, time, volume,
};

/// Metres in an inch.
pub const INCH_M: f64 = 0.0254;
/// Cubic metres in a US fluid ounce.
pub const US_FL_OZ_M3: f64 = 29.573_529_562_5e-6;
/// Kilograms in an avoirdupois ounce.
pub const OUNCE_KG: f64 = 0.028_349_523_125;

/// Millimetres.
pub fn mm(value: f64) -> Length {
    Length::new::<length::millimeter>(value)
}
/// Inches.
pub fn inch(value: f64) -> Length {
    Length::new::<length::meter>(value * INCH_M)
}
/// Millilitres.
pub fn ml(value: f64) -> Volume {
    Volume::new::<volume::milliliter>(value)
}
/// US fluid ounces (29.5735295625 mL).
pub fn us_fl_oz(value: f64) -> Volume {
    Volume::new::<volume::cubic_meter>(value * US_FL_OZ_M3)
}
/// Grams.
pub fn gram(value: f64) -> Mass {
    Mass::new::<mass::gram>(value)
}
/// Grams per millilitre.
pub fn g_per_ml(value: f64) -> MassDensity {
    MassDensity::new::<mass_density::gram_per_cubic_centimeter>(value)
}
/// Square inches.
pub fn square_inch(value: f64) -> Area {
    Area::new::<area::square_meter>(value * INCH_M * INCH_M)
}

/// Square centimetres.
pub fn square_cm(value: f64) -> Area {
    Area::new::<area::square_centimeter>(value)
}

/// Square metres.
pub fn square_m(value: f64) -> Area {
    Area::new::<area::square_meter>(value)
}

/// Pascal seconds.
pub fn pascal_second(value: f64) -> DynamicViscosity {
    DynamicViscosity::new::<dynamic_viscosity::pascal_second>(value)
}

/// Turns in a minute.
pub fn turns_a_minute(value: f64) -> AngularVelocity {
    AngularVelocity::new::<angular_velocity::revolution_per_minute>(value)
}

/// Degrees of an angle.
pub fn degrees(value: f64) -> Angle {
    Angle::new::<angle::degree>(value)
}

/// Seconds.
pub fn seconds(value: f64) -> Duration {
    Duration::new::<time::second>(value)
}

/// In millimetres.
pub fn in_mm(length: Length) -> f64 {
    length.get::<length::millimeter>()
}
/// In inches.
pub fn in_inch(length: Length) -> f64 {
    length.get::<length::meter>() / INCH_M
}
/// In millilitres.
pub fn in_ml(volume: Volume) -> f64 {
    volume.get::<volume::milliliter>()
}
/// In US fluid ounces.
pub fn in_us_fl_oz(volume: Volume) -> f64 {
    volume.get::<volume::cubic_meter>() / US_FL_OZ_M3
}
/// In grams.
pub fn in_gram(mass: Mass) -> f64 {
    mass.get::<mass::gram>()
}
/// In grams per millilitre.
pub fn in_g_per_ml(density: MassDensity) -> f64 {
    density.get::<mass_density::gram_per_cubic_centimeter>()
}
/// In square centimetres.
pub fn in_square_cm(area: Area) -> f64 {
    area.get::<area::square_centimeter>()
}
/// In square inches.
pub fn in_square_inch(area: Area) -> f64 {
    area.get::<area::square_meter>() / (INCH_M * INCH_M)
}
/// In square metres.
pub fn in_square_m(area: Area) -> f64 {
    area.get::<area::square_meter>()
}
/// In pascal seconds.
pub fn in_pascal_second(viscosity: DynamicViscosity) -> f64 {
    viscosity.get::<dynamic_viscosity::pascal_second>()
}
/// In turns a minute.
pub fn in_turns_a_minute(speed: AngularVelocity) -> f64 {
    speed.get::<angular_velocity::revolution_per_minute>()
}
/// In degrees.
pub fn in_degrees(angle: Angle) -> f64 {
    angle.get::<angle::degree>()
}
/// In seconds.
pub fn in_seconds(time: Duration) -> f64 {
    time.get::<time::second>()
}
