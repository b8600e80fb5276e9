use super::{Blob, Fluid};
use crate::lesson::Consistency;
use crate::quantity::units::{ml, pascal_second, seconds, us_fl_oz};
use crate::quantity::{Duration, DynamicViscosity, Length, Mass, UnitSystem, Volume};

/// Paint for one blob. Thirty millilitres of thin paint would run over the edge of the paper;
/// a half fluid ounce, or a tablespoon of 15 mL, stays on it. Chosen.
const US_FL_OZ: f64 = 0.5;
const METRIC_ML: f64 = 15.0;

/// When the blob is read. Chosen: long enough that how it was poured is forgotten.
const SECONDS: f64 = 60.0;

/// Rings that are drawn, in pascal seconds: round figures over the range of the three
/// consistencies.
const RINGS: [f64; 5] = [5.0, 2.0, 1.0, 0.5, 0.2];

/// Between which of them paint of a consistency stops, runniest and stiffest: around the
/// viscosities that stand for the consistencies, which lie near the middle of the ratio.
const THIN: (f64, f64) = (0.2, 0.5);
const MEDIUM: (f64, f64) = (0.5, 2.0);
const THICK: (f64, f64) = (2.0, 5.0);

/// Rings on paper over which a measured blob spreads: how far it should have come in a time, by
/// viscosity (Huppert 1982, see [`Blob`]). They compare batches; paint is not Newtonian.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpreadTarget {
    pub volume: Volume,
    pub time: Duration,
    fluid: Fluid,
}

/// How far a blob of one viscosity comes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ring {
    pub viscosity: DynamicViscosity,
    pub radius: Length,
}

/// The rings between which paint of one consistency stops.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    pub consistency: Consistency,
    /// Of its stiffest paint, and of its runniest.
    pub inner: Length,
    pub outer: Length,
}

impl SpreadTarget {
    /// With a volume that can be measured in these units.
    pub fn of(units: UnitSystem) -> Self {
        let volume = match units {
            UnitSystem::Us => us_fl_oz(US_FL_OZ),
            UnitSystem::Metric => ml(METRIC_ML),
        };
        Self { volume, time: seconds(SECONDS), fluid: Fluid::standing_for(Consistency::Medium) }
    }

    /// What the blob weighs, to be poured off on the scale.
    pub fn mass(&self) -> Mass {
        self.volume * self.fluid.density()
    }

    /// How far paint of a viscosity comes; nothing where there is no such fluid.
    pub fn radius(&self, viscosity: DynamicViscosity) -> Length {
        let fluid = Fluid::new(viscosity, self.fluid.density());
        fluid.map_or_else(Length::default, |fluid| {
            Blob { fluid, volume: self.volume }.radius(self.time)
        })
    }

    /// From the stiffest to the runniest.
    pub fn rings(&self) -> [Ring; 5] {
        RINGS.map(|viscosity| {
            let viscosity = pascal_second(viscosity);
            Ring { viscosity, radius: self.radius(viscosity) }
        })
    }

    /// From the outermost to the innermost, edge to edge.
    pub fn bands(&self) -> [Band; 3] {
        let band = |consistency, (runniest, stiffest)| Band {
            consistency,
            inner: self.radius(pascal_second(stiffest)),
            outer: self.radius(pascal_second(runniest)),
        };
        [
            band(Consistency::Thin, THIN),
            band(Consistency::Medium, MEDIUM),
            band(Consistency::Thick, THICK),
        ]
    }
}
