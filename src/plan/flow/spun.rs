use super::Fluid;
use crate::quantity::{AngularVelocity, Duration, Frequency, Length};

/// An even film on a level board that turns about its middle.
///
/// Emslie, Bonner and Peck, J. Appl. Phys. 29, 858 (1958): the outward pull thins an even
/// film alike everywhere, dh/dt = -2 rho w² h³ / (3 mu), so
///
/// h = h0 / sqrt(1 + 4 rho w² h0² t / (3 mu))
///
/// with h film (m), h0 film at the start, rho density (kg/m³), w angular velocity (rad/s),
/// t time (s), mu viscosity (Pa s). Holds where rho w h² / mu is far below 1; the bead along
/// the rim is left out. Long after the start h no longer depends on h0 and falls with
/// t^(-1/2).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpunFilm {
    pub fluid: Fluid,
    pub speed: AngularVelocity,
    /// When the turning begins.
    pub start: Length,
}

impl SpunFilm {
    /// The film after a time of turning; before the start it is what it was.
    pub fn left(&self, time: Duration) -> Length {
        let growth = (self.thinning() * time).value.max(0.0);
        self.start / (1.0 + growth).sqrt()
    }

    /// How long it takes until so much is left; more than any time without a turn, nothing for
    /// as much as there was.
    pub fn time_to(&self, film: Length) -> Duration {
        let grown = (self.start / film).value.powi(2) - 1.0;
        if grown > 0.0 { grown / self.thinning() } else { Duration::default() }
    }

    /// 4 rho w² h0² / (3 mu): by so much (start / film)² grows in a unit of time.
    pub fn thinning(&self) -> Frequency {
        let speed = Frequency::from(self.speed);
        let pull = 4.0 * self.fluid.density() * speed * speed * self.start * self.start;
        pull / (3.0 * self.fluid.viscosity())
    }
}
