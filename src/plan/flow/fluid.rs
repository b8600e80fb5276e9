use crate::lesson::Consistency;
use crate::quantity::units::{g_per_ml, pascal_second};
use crate::quantity::{Acceleration, DynamicViscosity, MassDensity};
use uom::si::acceleration::standard_gravity;

/// Viscosities that stand for the three consistencies, in pascal seconds. Round figures chosen
/// for teaching, each about three times the one before; not measured on any paint, no source.
const THIN: f64 = 0.3;
const MEDIUM: f64 = 1.0;
const THICK: f64 = 3.0;

/// Of all three, in grams for a millilitre: in the middle of what mixes weigh (common practice,
/// no source).
const DENSITY: f64 = 1.15;

/// A Newtonian fluid: as stiff when it is moved fast as when it is moved slowly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fluid {
    viscosity: DynamicViscosity,
    density: MassDensity,
}

impl Fluid {
    /// `None` unless both are more than nothing and finite.
    pub fn new(viscosity: DynamicViscosity, density: MassDensity) -> Option<Self> {
        let real = |value: f64| value > 0.0 && value.is_finite();
        (real(viscosity.value) && real(density.value)).then_some(Self { viscosity, density })
    }

    /// The fluid that stands for paint of a consistency where flow is explained: figures to
    /// compare with each other, not what any paint has.
    pub fn standing_for(consistency: Consistency) -> Self {
        let viscosity = match consistency {
            Consistency::Thin => THIN,
            Consistency::Medium => MEDIUM,
            Consistency::Thick => THICK,
        };
        Self { viscosity: pascal_second(viscosity), density: g_per_ml(DENSITY) }
    }

    /// How stiff it is.
    pub fn viscosity(&self) -> DynamicViscosity {
        self.viscosity
    }

    /// What a volume of it weighs.
    pub fn density(&self) -> MassDensity {
        self.density
    }
}

/// Water at room temperature to one digit, from memory.
pub fn water_viscosity() -> DynamicViscosity {
    pascal_second(0.001)
}

/// Standard acceleration of free fall, 9.80665 m/s² exactly (NIST SP 811, 2008, App. B.8).
pub(super) fn gravity() -> Acceleration {
    Acceleration::new::<standard_gravity>(1.0)
}
