//! Quantities as people read them, and the one place where they are rounded for
//! the page.
//!
//! Between a number and its unit stands a narrow no-break space, so that no line
//! ends between them. The words around numbers belong to the templates; unit
//! symbols are those of SI and of NIST Handbook 44.

use super::units::{
    in_degrees, in_g_per_ml, in_gram, in_inch, in_ml, in_mm, in_pascal_second, in_seconds,
    in_square_cm, in_square_inch, in_square_m, in_us_fl_oz, inch, ml, mm, us_fl_oz,
};
use super::{
    Angle, Area, Coin, Currency, Duration, DynamicViscosity, Length, Mass, MassDensity, Money,
    Notation, Share, UnitSystem, Volume,
};

/// Between number and unit.
const THIN: char = '\u{202F}';
/// Inside a unit of two words.
const NBSP: char = '\u{00A0}';
/// Most decimals of fluid ounces.
const US_DIGITS: usize = 2;
/// Most decimals of millilitres.
const METRIC_DIGITS: usize = 1;
/// Finest tape-measure fraction that is printed.
const SIXTEENTHS: i64 = 16;
/// How near a length must be to a sixteenth of an inch to be printed as one.
const FRACTION_TOLERANCE_IN: f64 = 0.002;

/// Turns quantities into text in the units of a lesson.
#[derive(Debug, Clone, Copy)]
pub struct Show {
    units: UnitSystem,
    currency: Currency,
    notation: Notation,
}

impl Show {
    /// For these units first and this currency, in the notation of English.
    pub fn new(units: UnitSystem, currency: Currency) -> Self {
        Self { units, currency, notation: Notation::default() }
    }

    /// In the notation of a language.
    pub fn written(self, notation: Notation) -> Self {
        Self { notation, ..self }
    }

    /// [`trimmed`] in the notation of the language.
    pub fn trimmed(&self, value: f64, decimals: usize) -> String {
        self.notation.decimal.put(trimmed(value, decimals))
    }

    /// [`fixed`] in the notation of the language.
    pub fn fixed(&self, value: f64, decimals: usize) -> String {
        self.notation.decimal.put(fixed(value, decimals))
    }

    /// [`by_size`] in the notation of the language.
    pub fn by_size(&self, value: f64, decimals: usize) -> String {
        self.notation.decimal.put(by_size(value, decimals))
    }

    /// Which units come first.
    pub fn units(&self) -> UnitSystem {
        self.units
    }

    /// `4.8 fl oz` or `142 mL`.
    pub fn volume(&self, volume: Volume) -> String {
        self.volume_in(self.units, volume)
    }

    /// An amount that was rounded to a step one can measure, with every digit of the
    /// step: `20.25 fl oz`.
    pub fn measured(&self, volume: Volume) -> String {
        match self.units {
            UnitSystem::Us => {
                with_unit(&self.trimmed(in_us_fl_oz(volume), 2), &format!("fl{NBSP}oz"))
            }
            UnitSystem::Metric => with_unit(&self.trimmed(in_ml(volume), 1), "mL"),
        }
    }

    /// `4.8 fl oz (142 mL)` or the reverse.
    pub fn volume_both(&self, volume: Volume) -> String {
        format!("{} ({})", self.volume(volume), self.volume_in(self.other(), volume))
    }

    /// [`Show::measured`] with the other unit: `20.25 fl oz (599 mL)`.
    pub fn measured_both(&self, volume: Volume) -> String {
        format!("{} ({})", self.measured(volume), self.volume_in(self.other(), volume))
    }

    /// A volume in the units named.
    pub fn volume_in(&self, units: UnitSystem, volume: Volume) -> String {
        match units {
            UnitSystem::Us => {
                with_unit(&self.by_size(in_us_fl_oz(volume), US_DIGITS), &format!("fl{NBSP}oz"))
            }
            UnitSystem::Metric => {
                let ml = in_ml(volume);
                if ml >= 9_999.5 {
                    with_unit(&self.by_size(ml / 1000.0, 1), "L")
                } else {
                    with_unit(&self.by_size(ml, METRIC_DIGITS), "mL")
                }
            }
        }
    }

    /// A volume as far as [`Show::volume`] prints it.
    pub fn printed_volume(&self, volume: Volume) -> Volume {
        let (number, decimals) = (self.volume_number(volume), self.volume_digits());
        let printed = rounded(number, decimals.saturating_sub(fewer_digits(number)));
        match self.units {
            UnitSystem::Us => us_fl_oz(printed),
            UnitSystem::Metric => ml(printed),
        }
    }

    /// The number of a volume in the unit of [`Show::volume_unit`], for charts.
    pub fn volume_number(&self, volume: Volume) -> f64 {
        match self.units {
            UnitSystem::Us => in_us_fl_oz(volume),
            UnitSystem::Metric => in_ml(volume),
        }
    }

    /// Most decimals of a volume in the unit of [`Show::volume_unit`].
    pub fn volume_digits(&self) -> usize {
        match self.units {
            UnitSystem::Us => US_DIGITS,
            UnitSystem::Metric => METRIC_DIGITS,
        }
    }

    /// `fl oz` or `mL`.
    pub fn volume_unit(&self) -> &'static str {
        match self.units {
            UnitSystem::Us => "fl oz",
            UnitSystem::Metric => "mL",
        }
    }

    /// `120 in²` or `774 cm²`.
    pub fn area(&self, area: Area) -> String {
        with_unit(&self.trimmed(self.area_number(area), 1), self.area_unit())
    }

    /// The number of an area in the unit of [`Show::area_unit`], for charts.
    pub fn area_number(&self, area: Area) -> f64 {
        match self.units {
            UnitSystem::Us => in_square_inch(area),
            UnitSystem::Metric => in_square_cm(area),
        }
    }

    /// `in²` or `cm²`.
    pub fn area_unit(&self) -> &'static str {
        match self.units {
            UnitSystem::Us => "in²",
            UnitSystem::Metric => "cm²",
        }
    }

    /// A surface of a room: `3.2 m²` or `34 ft²`.
    pub fn surface(&self, area: Area) -> String {
        match self.units {
            UnitSystem::Us => with_unit(&self.trimmed(in_square_inch(area) / 144.0, 1), "ft²"),
            UnitSystem::Metric => with_unit(&self.trimmed(in_square_m(area), 2), "m²"),
        }
    }

    /// Water by the bucket: `14.5 L` or `3.7 gal` (128 US fluid ounces).
    pub fn water(&self, volume: Volume) -> String {
        match self.units {
            UnitSystem::Us => with_unit(&self.trimmed(in_us_fl_oz(volume) / 128.0, 1), "gal"),
            UnitSystem::Metric => with_unit(&self.trimmed(in_ml(volume) / 1000.0, 1), "L"),
        }
    }

    /// The finest step of [`Show::water`].
    pub fn water_step(&self) -> Volume {
        match self.units {
            UnitSystem::Us => us_fl_oz(12.8),
            UnitSystem::Metric => ml(100.0),
        }
    }

    /// A distance that is kept by eye: `2 in`, `5 cm`, to the quarter inch or half centimetre.
    pub fn distance(&self, length: Length) -> String {
        let step = match self.units {
            UnitSystem::Us => inch(0.25),
            UnitSystem::Metric => mm(5.0),
        };
        let steps = (length / step).value.round();
        if steps < 1.0 { self.length(length) } else { self.length(step * steps) }
    }

    /// A length as it is read off a tape: `10½ in`, `30.5 cm`.
    pub fn length(&self, length: Length) -> String {
        match self.units {
            UnitSystem::Us => with_unit(&self.tape(in_inch(length)), "in"),
            UnitSystem::Metric => with_unit(&self.trimmed(in_mm(length) / 10.0, 1), "cm"),
        }
    }

    /// The number of a length without its unit, as [`Show::length`] prints it.
    pub fn length_figure(&self, length: Length) -> String {
        match self.units {
            UnitSystem::Us => self.tape(in_inch(length)),
            UnitSystem::Metric => self.trimmed(in_mm(length) / 10.0, 1),
        }
    }

    /// `in` or `cm`.
    pub fn length_unit(&self) -> &'static str {
        match self.units {
            UnitSystem::Us => "in",
            UnitSystem::Metric => "cm",
        }
    }

    /// Wet film, always in millimetres, to three digits: `1.83 mm`, `0.176 mm`, `0.47 mm`.
    pub fn film(&self, film: Length) -> String {
        let mm = in_mm(film);
        let fine = self.fixed(mm, 3);
        let number = match fine.strip_suffix('0') {
            Some(two_decimals) if mm < 1.0 => two_decimals.to_string(),
            None if mm < 1.0 => fine,
            _ => self.fixed(mm, 2),
        };
        with_unit(&number, "mm")
    }

    /// The area that a fluid ounce or 100 mL covers in a film: `22.7 in²`, `541 cm²`. Area
    /// per volume is the reciprocal of the film. `finer` digits are printed on top.
    pub fn covered(&self, film: Length, finer: usize) -> String {
        if film <= Length::default() {
            return "–".to_string();
        }
        let (paint, decimals) = match self.units {
            UnitSystem::Us => (us_fl_oz(1.0), 1),
            UnitSystem::Metric => (ml(100.0), 0),
        };
        with_unit(&self.trimmed(self.area_number(paint / film), decimals + finer), self.area_unit())
    }

    /// Grams, on either side of the sea: that is what the scale shows.
    pub fn mass(&self, mass: Mass) -> String {
        let grams = in_gram(mass);
        if grams >= 9_999.5 {
            with_unit(&self.by_size(grams / 1000.0, 2), "kg")
        } else {
            with_unit(&self.by_size(grams, 1), "g")
        }
    }

    /// What one unit of volume weighs: `33.12 g` (a fluid ounce) or `1.12 g` (a
    /// millilitre); enough digits for a cup to come out to the gram.
    pub fn density(&self, density: MassDensity) -> String {
        match self.units {
            UnitSystem::Us => with_unit(&self.trimmed(in_gram(density * us_fl_oz(1.0)), 2), "g"),
            UnitSystem::Metric => with_unit(&self.trimmed(in_g_per_ml(density), 3), "g"),
        }
    }

    /// `0.3 Pa·s`.
    pub fn viscosity(&self, viscosity: DynamicViscosity) -> String {
        with_unit(&self.trimmed(in_pascal_second(viscosity), 3), "Pa·s")
    }

    /// `30 s`, as a clock with a hand for seconds shows.
    pub fn seconds(&self, time: Duration) -> String {
        with_unit(&self.fixed(in_seconds(time), 0), "s")
    }

    /// `30°`, from the number without a space.
    pub fn angle(&self, angle: Angle) -> String {
        format!("{}°", self.trimmed(in_degrees(angle), 1))
    }

    /// `40 %`.
    pub fn share(&self, share: Share) -> String {
        let percent = share.percent().round_dp(2).normalize().to_string();
        with_unit(&self.notation.decimal.put(percent), "%")
    }

    /// A ratio in whole percent.
    pub fn percent(&self, ratio: f64) -> String {
        with_unit(&self.fixed(ratio * 100.0, 0), "%")
    }

    /// `$6.49` or `6,49 €`; the currency's code where its sign is letters or is missing. The
    /// number of decimals is the currency's own (ISO 4217).
    pub fn money(&self, money: Money) -> String {
        let decimals = u32::from(self.currency.exponent().unwrap_or(2));
        let amount = Coin::of(self.currency).nearest(money).amount();
        let amount = self.notation.decimal.put(format!("{amount:.*}", decimals as usize));
        let sign = self.currency.symbol().to_string();
        self.notation.currency.put(&amount, &sign, self.currency.code())
    }

    /// Inches as on a tape measure: whole number and fraction down to a sixteenth,
    /// decimals where no sixteenth is near.
    fn tape(&self, inches: f64) -> String {
        let sixteenths = (inches * SIXTEENTHS as f64).round();
        if (inches - sixteenths / SIXTEENTHS as f64).abs() > FRACTION_TOLERANCE_IN {
            return self.trimmed(inches, 2);
        }
        let sixteenths = sixteenths as i64;
        let (whole, rest) = (sixteenths / SIXTEENTHS, sixteenths % SIXTEENTHS);
        let fraction = match rest {
            0 => return whole.to_string(),
            2 => "⅛".to_string(),
            4 => "¼".to_string(),
            6 => "⅜".to_string(),
            8 => "½".to_string(),
            10 => "⅝".to_string(),
            12 => "¾".to_string(),
            14 => "⅞".to_string(),
            odd => format!("{odd}\u{2044}{SIXTEENTHS}"),
        };
        match (whole, rest % 2) {
            (0, _) => fraction,
            (_, 0) => format!("{whole}{fraction}"),
            _ => format!("{whole}{THIN}{fraction}"),
        }
    }

    fn other(&self) -> UnitSystem {
        match self.units {
            UnitSystem::Us => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Us,
        }
    }
}

/// A number and its unit, kept on one line.
pub fn with_unit(number: &str, unit: &str) -> String {
    format!("{number}{THIN}{unit}")
}

/// The number of an amount as [`with_unit`] made it: `10½` of `10½ in`. A figure without a
/// unit is its own number.
pub fn number_of(amount: &str) -> &str {
    // The same space stands between a whole number and a built fraction.
    let mut spaces = amount.match_indices(THIN);
    let unit = spaces.find(|(at, _)| {
        let behind = amount.get(at + THIN.len_utf8()..).unwrap_or_default();
        !behind.starts_with(|c: char| c.is_ascii_digit())
    });
    unit.and_then(|(at, _)| amount.get(..at)).unwrap_or(amount)
}

/// To `decimals` places, halves up. A value that misses a half by the noise of binary
/// arithmetic counts as the half, as on paper.
pub fn rounded(value: f64, decimals: usize) -> f64 {
    let ten = 10_f64.powi(i32::try_from(decimals).unwrap_or(i32::MAX));
    let scaled = value * ten;
    (scaled + scaled.abs() * 1e-13 + 1e-12).round() / ten
}

/// Exactly `decimals` places.
pub fn fixed(value: f64, decimals: usize) -> String {
    format!("{:.decimals$}", rounded(value, decimals)).replace('-', "\u{2212}")
}

/// Up to `decimals` places below 10, one fewer from 10, two fewer from 100; no
/// trailing zeros.
pub fn by_size(value: f64, decimals: usize) -> String {
    trimmed(value, decimals.saturating_sub(fewer_digits(value)))
}

/// How many decimals fewer a larger number gets.
pub fn fewer_digits(value: f64) -> usize {
    match value.abs() {
        v if v >= 99.95 => 2,
        v if v >= 9.995 => 1,
        _ => 0,
    }
}

/// Rounded to `decimals` places, without trailing zeros.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", rounded(value, decimals));
    let text = match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.'),
        false => text.as_str(),
    };
    match text {
        "-0" => "0".to_string(),
        _ => text.replace('-', "\u{2212}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::units::{inch, ml, mm, square_m, us_fl_oz};
    use crate::quantity::{CurrencySign, DecimalMark};

    fn us() -> Show {
        Show::new(UnitSystem::Us, Currency::USD)
    }

    #[test]
    fn amounts_read_as_people_say_them() {
        assert_eq!(us().volume(us_fl_oz(4.8)), "4.8\u{202F}fl\u{a0}oz");
        assert_eq!(us().volume_both(us_fl_oz(5.25)), "5.25\u{202F}fl\u{a0}oz (155\u{202F}mL)");
        assert_eq!(us().length(inch(10.5)), "10½\u{202F}in");
        assert_eq!(us().length(inch(0.1875)), "3⁄16\u{202F}in");
        assert_eq!(us().length(inch(9.84)), "9.84\u{202F}in");
        let rule = us_fl_oz(1.0) / crate::quantity::units::square_inch(25.0);
        assert_eq!(us().covered(rule, 0), "25\u{202F}in²");
        assert_eq!(us().film(mm(0.176)), "0.176\u{202F}mm");
        assert_eq!(us().film(mm(0.47)), "0.47\u{202F}mm");
        assert_eq!(us().film(mm(1.8336)), "1.83\u{202F}mm");
        let metric = Show::new(UnitSystem::Metric, Currency::EUR);
        assert_eq!(metric.volume(ml(142.4)), "142\u{202F}mL");
        assert_eq!(metric.length(inch(12.0)), "30.5\u{202F}cm");
    }

    /// A comma, the sign behind: Unicode CLDR, `es`. The code where the sign is letters.
    #[test]
    fn a_language_has_its_own_comma_and_place_for_the_sign() {
        let spanish = Notation { decimal: DecimalMark::Comma, currency: CurrencySign::After };
        let show = |currency| Show::new(UnitSystem::Metric, currency).written(spanish);
        let price = Money::new(rust_decimal::Decimal::new(6490, 3));
        assert_eq!(show(Currency::EUR).money(price), "6,49\u{a0}€");
        assert_eq!(show(Currency::PLN).money(price), "6,49\u{a0}PLN");
        let zloty = Show::new(UnitSystem::Metric, Currency::PLN);
        assert_eq!(zloty.money(price), "PLN\u{a0}6.49");
        assert_eq!(show(Currency::EUR).volume(ml(4.24)), "4,2\u{202F}mL");
        assert_eq!(show(Currency::EUR).film(mm(1.8336)), "1,83\u{202F}mm");
        let us = us().written(spanish);
        assert_eq!(us.volume_both(us_fl_oz(5.25)), "5,25\u{202F}fl\u{a0}oz (155\u{202F}mL)");
        assert_eq!(us.length(inch(10.5)), "10½\u{202F}in");
        assert_eq!(us.length(inch(9.84)), "9,84\u{202F}in");
        assert_eq!(number_of(&us.length(inch(9.84))), "9,84");
    }

    #[test]
    fn an_amount_has_a_number_before_its_unit() {
        assert_eq!(number_of(&us().length(inch(1.1875))), "1\u{202F}3⁄16");
        assert_eq!(number_of(&us().volume_both(us_fl_oz(5.25))), "5.25");
        assert_eq!(number_of("flat"), "flat");
    }

    #[test]
    fn halves_go_up_even_where_binary_arithmetic_falls_short_of_them() {
        // 1.005 is a little less in binary, and so is a sum of quarters after a change of unit.
        assert_eq!(trimmed(1.005, 2), "1.01");
        assert_eq!(fixed(0.125, 2), "0.13");
        assert_eq!(us().volume(us_fl_oz(53.75)), "53.8\u{202F}fl\u{a0}oz");
        assert_eq!(us().measured(us_fl_oz(53.75)), "53.75\u{202F}fl\u{a0}oz");
    }

    #[test]
    fn rooms_and_buckets_have_their_own_units() {
        let metric = Show::new(UnitSystem::Metric, Currency::EUR);
        assert_eq!(metric.surface(square_m(2.934)), "2.93\u{202F}m²");
        // 30 ft² are 30 x 0.3048² = 2.787 m²; 128 fl oz are a gallon, 3.785 L.
        assert_eq!(us().surface(square_m(2.787)), "30\u{202F}ft²");
        assert_eq!(metric.water(us_fl_oz(128.0)), "3.8\u{202F}L");
        assert_eq!(us().water(us_fl_oz(128.0)), "1\u{202F}gal");
        assert_eq!(us().distance(mm(50.0)), "2\u{202F}in");
        assert_eq!(metric.distance(inch(2.0)), "5\u{202F}cm");
        assert_eq!(metric.distance(mm(2.0)), "0.2\u{202F}cm");
    }

    #[test]
    fn money_has_the_decimals_of_its_currency() {
        let price = Money::new(rust_decimal::Decimal::new(6490, 3));
        assert_eq!(us().money(price), "$6.49");
        let yen = Show::new(UnitSystem::Metric, Currency::JPY);
        assert_eq!(yen.money(Money::new(rust_decimal::Decimal::from(800))), "¥800");
    }
}
