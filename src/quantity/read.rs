//! Quantities as people write them: a number, then a unit. A misreading says which
//! bytes are to blame and what would be right.

use super::misread::{Dimension, Misread, MisreadKind};
use super::nearest::nearest;
use super::number::{self, Number};
use super::unit::{self, Unit};
use super::{Area, Length, Mass, MassDensity, Money, Share, Time, Volume};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use uom::si::{area, length, mass, mass_density, volume};

/// An amount of something that may be poured, weighed or counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measured {
    Volume(Volume),
    Mass(Mass),
    Pieces(u32),
}

/// `12 in`, `3/4 in`, `1½"`, `30 cm`. Zero needs no unit.
pub fn length(text: &str) -> Result<Length, Misread> {
    Ok(Length::new::<length::meter>(Reading::of(text, &[Dimension::Length])?.base()?))
}

/// `3 m²`, `30 ft²`, `30 sq ft`.
pub fn area(text: &str) -> Result<Area, Misread> {
    Ok(Area::new::<area::square_meter>(Reading::of(text, &[Dimension::Area])?.base()?))
}

/// `250 mL`, `8 fl oz`, `1 qt`. A plain "oz" is refused.
pub fn volume(text: &str) -> Result<Volume, Misread> {
    Ok(Volume::new::<volume::cubic_meter>(Reading::of(text, &[Dimension::Volume])?.base()?))
}

/// `40 g`, `2 lb`, `8 oz`.
pub fn mass(text: &str) -> Result<Mass, Misread> {
    Ok(Mass::new::<mass::kilogram>(Reading::of(text, &[Dimension::Mass])?.base()?))
}

/// `1.2 g/mL`, `1.2 kg/L`, `35 g/fl oz`.
pub fn density(text: &str) -> Result<MassDensity, Misread> {
    let base = Reading::of(text, &[Dimension::Density])?.base()?;
    Ok(MassDensity::new::<mass_density::kilogram_per_cubic_meter>(base))
}

/// `8 fl oz`, `1 kg`, `100 pieces`. A plain "oz" is refused, for it may be either.
pub fn amount(text: &str) -> Result<Measured, Misread> {
    let wanted = [Dimension::Volume, Dimension::Mass, Dimension::Pieces];
    let reading = Reading::of(text, &wanted)?;
    let base = reading.base()?;
    match reading.unit.dimension {
        Dimension::Mass => Ok(Measured::Mass(Mass::new::<mass::kilogram>(base))),
        Dimension::Pieces => Ok(Measured::Pieces(reading.whole()?)),
        _ => Ok(Measured::Volume(Volume::new::<volume::cubic_meter>(base))),
    }
}

/// `40 %`, `12.5%`; exact.
pub fn share(text: &str) -> Result<Share, Misread> {
    let reading = Reading::of(text, &[Dimension::Share])?;
    let fraction = reading.exact()?.checked_div(Decimal::ONE_HUNDRED);
    fraction.and_then(Share::new).ok_or_else(|| reading.fault(MisreadKind::MoreThanWhole))
}

/// `15 %`, `120 %`: the number of percent, exact.
pub fn percent(text: &str) -> Result<Decimal, Misread> {
    Reading::of(text, &[Dimension::Share])?.exact()
}

/// `14 days`, `2 weeks`.
pub fn days(text: &str) -> Result<u32, Misread> {
    Reading::of(text, &[Dimension::Days])?.whole()
}

/// `15 min`, `1 h`, `1½ h`, `1 h 30 min`: whole minutes.
pub fn minutes(text: &str) -> Result<u32, Misread> {
    let part = |text: &str| {
        let reading = Reading::of(text, &[Dimension::Time])?;
        let minutes = reading.base()?;
        let whole = minutes.round();
        if (minutes - whole).abs() > 1e-9 {
            return Err(reading.fault(MisreadKind::NotWhole));
        }
        whole.to_u32().ok_or_else(|| reading.fault(MisreadKind::TooLarge))
    };
    let Some(at) = second_number(text) else { return part(text) };
    let (hours, minutes) = text.split_at(at);
    let minutes = part(minutes).map_err(|misread| misread.shifted(at))?;
    let total = part(hours)?.checked_add(minutes);
    total.ok_or_else(|| Misread::new(trimmed(text, 0), MisreadKind::TooLarge))
}

/// Where a number follows a unit: `1 h 30 min`, `1h30min`.
fn second_number(text: &str) -> Option<usize> {
    let letter = text.find(char::is_alphabetic)?;
    let after = text.get(letter..)?;
    after.find(|c: char| c.is_ascii_digit()).map(|digit| letter + digit)
}

/// `18:30`, `6:30 pm`, `6 pm`; `None` when it is no time of the day.
pub fn time_of_day(text: &str) -> Option<Time> {
    super::time::time_of_day(text)
}

/// A price in the currency of the price list: `6.49`. No unit and no sign.
pub fn money(text: &str) -> Result<Money, Misread> {
    Reading::plain(text, Dimension::Money)?.exact().map(Money::new)
}

/// `8`.
pub fn count(text: &str) -> Result<u32, Misread> {
    Reading::plain(text, Dimension::Number)?.whole()
}

/// `2`, `0.5`, `1/2`, `1½`.
pub fn number(text: &str) -> Result<f64, Misread> {
    Reading::plain(text, Dimension::Number)?.base()
}

/// A number with its unit, and the bytes of the number.
struct Reading {
    number: Number,
    unit: &'static Unit,
    start: usize,
    end: usize,
}

/// The unit of numbers that stand alone.
const ALONE: Unit = Unit { spellings: &[], dimension: Dimension::Number, size: 1.0 };

impl Reading {
    /// A number with a unit of one of the `wanted` dimensions.
    fn of(text: &str, wanted: &[Dimension]) -> Result<Self, Misread> {
        let first = named(wanted);
        let (number, start, end) = take(text, first)?;
        let unit = unit_of(text, end, number, wanted)?;
        Ok(Self { number, unit, start, end })
    }

    /// A number alone.
    fn plain(text: &str, wanted: Dimension) -> Result<Self, Misread> {
        let (number, start, end) = take(text, wanted)?;
        let rest = text.get(end..).unwrap_or_default();
        let unit = rest.trim();
        if unit.is_empty() {
            return Ok(Self { number, unit: &ALONE, start, end });
        }
        let number = text.get(start..end).unwrap_or_default().to_owned();
        let kind = MisreadKind::UnitNotWanted { unit: unit.to_owned(), number };
        Err(Misread::new(trimmed(text, end), kind))
    }

    fn base(&self) -> Result<f64, Misread> {
        let base = self.number.as_f64() * self.unit.size;
        if base.is_finite() { Ok(base) } else { Err(self.fault(MisreadKind::TooLarge)) }
    }

    fn exact(&self) -> Result<Decimal, Misread> {
        self.number.exact().ok_or_else(|| self.fault(MisreadKind::NotExact))
    }

    fn whole(&self) -> Result<u32, Misread> {
        let exact = self.number.exact().filter(|value| value.fract().is_zero());
        let exact = exact.ok_or_else(|| self.fault(MisreadKind::NotWhole))?;
        let size = Decimal::from(self.unit.size as u32);
        let times = exact.checked_mul(size).and_then(|value| value.to_u32());
        times.ok_or_else(|| self.fault(MisreadKind::TooLarge))
    }

    fn fault(&self, kind: MisreadKind) -> Misread {
        Misread::new(self.start..self.end, kind)
    }
}

/// The one word for what is wanted.
fn named(wanted: &[Dimension]) -> Dimension {
    match wanted {
        [one] => *one,
        _ => Dimension::Amount,
    }
}

/// The number at the start of a text, where it starts and where it ends.
fn take(text: &str, wanted: Dimension) -> Result<(Number, usize, usize), Misread> {
    let start = text.len() - text.trim_start().len();
    let from = text.get(start..).unwrap_or_default();
    let (number, length) = number::take(from, wanted).map_err(|misread| misread.shifted(start))?;
    Ok((number, start, start + length))
}

/// The bytes from `start` on without the space around them.
fn trimmed(text: &str, start: usize) -> std::ops::Range<usize> {
    let rest = text.get(start..).unwrap_or_default();
    let from = start + rest.len() - rest.trim_start().len();
    from..from + rest.trim().len()
}

fn unit_of(
    text: &str,
    end: usize,
    number: Number,
    wanted: &[Dimension],
) -> Result<&'static Unit, Misread> {
    let first = named(wanted);
    let span = trimmed(text, end);
    let written = text.get(span.clone()).unwrap_or_default();
    let digits = || text.get(..end).unwrap_or_default().trim().to_owned();
    if written.is_empty() {
        // Nothing is nothing in every unit.
        let zero = unit::UNITS.iter().find(|unit| wanted.contains(&unit.dimension));
        return zero.filter(|_| number.as_f64() == 0.0).ok_or_else(|| {
            let kind = MisreadKind::MissingUnit { number: digits(), wanted: first };
            Misread::new(trimmed(text, 0), kind)
        });
    }
    if written.starts_with(|c: char| c.is_ascii_digit() || c == ',' || c == '.') {
        return Err(Misread::new(trimmed(text, 0), MisreadKind::NotANumber { wanted: first }));
    }
    let Some(unit) = unit::find(written) else {
        let nearest = nearest(written, unit::spellings(wanted));
        let kind = MisreadKind::UnknownUnit { unit: written.to_owned(), nearest, wanted: first };
        return Err(Misread::new(span, kind));
    };
    if unit.spellings.contains(&"oz") && wanted.contains(&Dimension::Volume) {
        return Err(Misread::new(span, MisreadKind::BareOunce { number: digits() }));
    }
    if !wanted.contains(&unit.dimension) {
        let (unit, found) = (written.to_owned(), unit.dimension);
        let kind = MisreadKind::WrongDimension { unit, found, wanted: first };
        return Err(Misread::new(span, kind));
    }
    Ok(unit)
}
