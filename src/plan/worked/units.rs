//! The units and digits of worked examples.

use super::draft::{Draft, FigureId};
use crate::lesson::Lesson;
use crate::plan::FigureUnit;
use crate::quantity::units::{
    in_g_per_ml, in_gram, in_inch, in_ml, in_mm, in_square_cm, in_square_inch, in_us_fl_oz, ml,
    us_fl_oz,
};
use crate::quantity::{Area, Length, Mass, MassDensity, Share, UnitSystem, Volume};
use rust_decimal::prelude::ToPrimitive;

/// Digits wanted for a figure; the draft adds more where a sum would not come out.
struct Digits {
    /// Lengths as a person gives them: a sixteenth of an inch has four, and nobody
    /// measures a tenth of a millimetre.
    given_length: u8,
    computed_length: u8,
    area: u8,
    volume: u8,
    coverage: u8,
    /// Enough for a cup to come out to the gram.
    density: u8,
}

const US: Digits =
    Digits { given_length: 4, computed_length: 2, area: 1, volume: 2, coverage: 1, density: 2 };
const METRIC: Digits =
    Digits { given_length: 2, computed_length: 1, area: 1, volume: 1, coverage: 2, density: 3 };

/// The units of a lesson, putting quantities into a draft.
#[derive(Clone, Copy)]
pub(super) struct Units(UnitSystem);

impl Units {
    pub(super) fn of(lesson: &Lesson) -> Self {
        Self(lesson.print.units)
    }

    fn digits(self) -> &'static Digits {
        match self.0 {
            UnitSystem::Us => &US,
            UnitSystem::Metric => &METRIC,
        }
    }

    /// A length that somebody measured.
    pub(super) fn given_length(self, draft: &mut Draft, length: Length) -> FigureId {
        self.length(draft, length, self.digits().given_length)
    }

    /// A length that was worked out.
    pub(super) fn computed_length(self, draft: &mut Draft, length: Length) -> FigureId {
        self.length(draft, length, self.digits().computed_length)
    }

    fn length(self, draft: &mut Draft, length: Length, decimals: u8) -> FigureId {
        match self.0 {
            UnitSystem::Us => draft.figure(in_inch(length), FigureUnit::Inch, decimals),
            UnitSystem::Metric => {
                draft.figure(in_mm(length) / 10.0, FigureUnit::Centimetre, decimals)
            }
        }
    }

    pub(super) fn area(self, draft: &mut Draft, area: Area) -> FigureId {
        let decimals = self.digits().area;
        match self.0 {
            UnitSystem::Us => draft.figure(in_square_inch(area), FigureUnit::SquareInch, decimals),
            UnitSystem::Metric => {
                draft.figure(in_square_cm(area), FigureUnit::SquareCentimetre, decimals)
            }
        }
    }

    pub(super) fn volume(self, draft: &mut Draft, volume: Volume) -> FigureId {
        let decimals = self.digits().volume;
        match self.0 {
            UnitSystem::Us => draft.figure(in_us_fl_oz(volume), FigureUnit::FluidOunce, decimals),
            UnitSystem::Metric => draft.figure(in_ml(volume), FigureUnit::Millilitre, decimals),
        }
    }

    /// The area that one unit of paint covers in a film.
    pub(super) fn coverage(self, draft: &mut Draft, film: Length) -> FigureId {
        let decimals = self.digits().coverage;
        match self.0 {
            UnitSystem::Us => {
                let area = in_square_inch(us_fl_oz(1.0) / film);
                draft.figure(area, FigureUnit::SquareInchPerFluidOunce, decimals)
            }
            UnitSystem::Metric => {
                let area = in_square_cm(ml(1.0) / film);
                draft.figure(area, FigureUnit::SquareCentimetrePerMillilitre, decimals)
            }
        }
    }

    pub(super) fn density(self, draft: &mut Draft, density: MassDensity) -> FigureId {
        let decimals = self.digits().density;
        match self.0 {
            UnitSystem::Us => {
                let grams = in_gram(us_fl_oz(1.0) * density);
                draft.figure(grams, FigureUnit::GramPerFluidOunce, decimals)
            }
            UnitSystem::Metric => {
                draft.figure(in_g_per_ml(density), FigureUnit::GramPerMillilitre, decimals)
            }
        }
    }

    /// Grams with the digits that the scale shows.
    pub(super) fn mass(self, draft: &mut Draft, mass: Mass, lesson: &Lesson) -> FigureId {
        let step = in_gram(lesson.mixing.scale_step);
        let decimals = (0..=2_u8).find(|decimals| step >= 10_f64.powi(-i32::from(*decimals)));
        draft.figure(in_gram(mass), FigureUnit::Gram, decimals.unwrap_or(3))
    }
}

/// A share as it was written, all of its digits.
pub(super) fn percent(draft: &mut Draft, share: Share) -> FigureId {
    let percent = share.percent();
    let decimals = u8::try_from(percent.scale()).unwrap_or(u8::MAX).min(6);
    draft.figure(percent.to_f64().unwrap_or_default(), FigureUnit::Percent, decimals)
}
