use super::Fluid;
use super::fluid::gravity;
use crate::quantity::{Area, Duration, Length, MassDensity, Volume};
use std::f64::consts::PI;
use uom::typenum::{P3, P8};

/// A measured blob, poured at once on a level sheet, that spreads by its own weight.
///
/// Huppert, J. Fluid Mech. 121, 43 (1982):
///
/// R = xi (g V³ / (3 nu))^(1/8) t^(1/8), xi = (2^10 / (3^4 pi³))^(1/8) = 0.894,
/// h(r) = hc (1 - r²/R²)^(1/3), hc = 4 V / (3 pi R²)
///
/// with R radius (m), V volume (m³), nu = viscosity / density (m²/s), t time (s), g gravity,
/// h depth at a distance r from the middle, hc depth in the middle. Holds late, when R is far
/// larger than the depth and than the capillary length (about 2 mm); paint with a yield stress
/// stops earlier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blob {
    pub fluid: Fluid,
    pub volume: Volume,
}

impl Blob {
    /// From the middle to the rim, some time after pouring; nothing before that.
    pub fn radius(&self, time: Duration) -> Length {
        let time = time.max(Duration::default());
        let spread = xi_8() * gravity() * self.volume.powi(P3::new()) * time * self.fluid.density()
            / (3.0 * self.fluid.viscosity());
        // The eighth root of a length to the eighth.
        spread.sqrt().sqrt().sqrt()
    }

    /// The depth at a distance from the middle.
    pub fn depth(&self, from_middle: Length, time: Duration) -> Length {
        let radius = self.radius(time);
        if from_middle >= radius {
            return Length::default();
        }
        let inside = (from_middle / radius).value;
        self.volume / face(radius) * (4.0 / 3.0) * (1.0 - inside * inside).cbrt()
    }
}

/// The fluid of some density of which a blob comes to a radius in a time; `None` where there is
/// none, as for a blob that has not spread or no time.
pub fn fluid_that_reaches(
    radius: Length,
    time: Duration,
    volume: Volume,
    density: MassDensity,
) -> Option<Fluid> {
    let spread = xi_8() * gravity() * volume.powi(P3::new()) * time * density;
    Fluid::new(spread / (3.0 * radius.powi(P8::new())), density)
}

/// The volume of a fluid that comes to a radius in a time, which is more than none.
pub fn volume_that_reaches(radius: Length, time: Duration, fluid: Fluid) -> Volume {
    let cube = 3.0 * fluid.viscosity() * radius.powi(P8::new())
        / (xi_8() * gravity() * time * fluid.density());
    cube.cbrt()
}

fn face(radius: Length) -> Area {
    PI * radius * radius
}

/// xi to the eighth, 2^10 / (3^4 pi³).
fn xi_8() -> f64 {
    1024.0 / (81.0 * PI.powi(3))
}
