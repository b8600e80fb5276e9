//! How films of paint thin: the papers' formulas at points worked out elsewhere, their limits,
//! and the equations that they solve integrated by other means.

mod blob;
mod demonstration;
mod spun;
mod tilted;

use puddlebook::plan::flow::Fluid;
use puddlebook::quantity::MassDensity;
use puddlebook::quantity::units::{g_per_ml, pascal_second};

/// Standard acceleration of free fall in m/s² (NIST SP 811, 2008, App. B.8).
const GRAVITY: f64 = 9.80665;

/// Density of the fluid of the worked points, kg/m³.
const DENSITY: f64 = 1200.0;

fn density() -> MassDensity {
    g_per_ml(DENSITY / 1000.0)
}

/// Of 1200 kg/m³, and a viscosity in Pa s.
fn fluid(viscosity: f64) -> Fluid {
    Fluid::new(pascal_second(viscosity), density()).unwrap()
}

#[test]
fn a_fluid_has_a_viscosity_and_a_density() {
    for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(Fluid::new(pascal_second(wrong), density()).is_none(), "{wrong}");
        assert!(Fluid::new(pascal_second(1.0), g_per_ml(wrong)).is_none(), "{wrong}");
    }
}
