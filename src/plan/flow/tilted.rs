use super::Fluid;
use super::fluid::gravity;
use crate::quantity::{Angle, Duration, Length, Velocity};
use uom::si::angle::degree;

/// How steep a board stands: more than level, at most upright.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tilt(Angle);

impl Tilt {
    /// `None` unless the angle is more than 0° and at most 90°.
    pub fn new(angle: Angle) -> Option<Self> {
        let degrees = angle.get::<degree>();
        // An upright board may miss 90 by the noise of a change of unit.
        (degrees > 0.0 && degrees <= 90.0 + 1e-9).then_some(Self(angle))
    }

    /// 30°, of which the sine is a half: the upper rim rises by half the length of the board.
    pub fn by_half_the_board() -> Self {
        Self(Angle::new::<degree>(30.0))
    }

    /// From the level.
    pub fn angle(self) -> Angle {
        self.0
    }

    /// How much higher the upper rim of a board stands than the lower one.
    pub fn rise(self, board: Length) -> Length {
        board * self.sine()
    }

    fn sine(self) -> f64 {
        self.0.sin().value
    }
}

/// An even film on a board that is tilted all at once and runs off at the lower rim.
///
/// Jeffreys, Proc. Camb. Phil. Soc. 26, 204 (1930): so far as the thinning has come down from
/// the upper rim,
///
/// h(x, t) = sqrt(mu x / (rho g sin(a) t)) for x < x* = rho g sin(a) h0² t / mu,
///
/// and below x* the film is still h0; x distance from the upper rim (m), a tilt, g gravity, the
/// rest as in [`super::SpunFilm`]. No yield stress, no surface tension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TiltedFilm {
    pub fluid: Fluid,
    pub tilt: Tilt,
    /// When the board is tilted.
    pub start: Length,
}

impl TiltedFilm {
    /// x*: how far from the upper rim the film has begun to thin.
    pub fn thinned_to(&self, time: Duration) -> Length {
        let down: Length = self.surface_speed() * time;
        down.max(Length::default())
    }

    /// The film at a distance from the upper rim.
    pub fn left(&self, from_top: Length, time: Duration) -> Length {
        let front = self.thinned_to(time);
        if from_top < front {
            self.start * (from_top.max(Length::default()) / front).value.sqrt()
        } else {
            self.start
        }
    }

    /// The mean film of a board of some length from its upper to its lower rim. Down to x* it
    /// is two thirds of the film there, as under any parabola on its side.
    pub fn mean(&self, board: Length, time: Duration) -> Length {
        let front = self.thinned_to(time);
        if board < front {
            self.left(board, time) * 2.0 / 3.0
        } else {
            let thinned = if board > Length::default() { (front / board).value } else { 0.0 };
            self.start * (1.0 - thinned / 3.0)
        }
    }

    /// rho g sin(a) h0² / mu: with this speed the thinning comes down the board, twice that of
    /// the paint's surface.
    fn surface_speed(&self) -> Velocity {
        let weight = self.fluid.density() * gravity() * self.tilt.sine();
        weight * self.start * self.start / self.fluid.viscosity()
    }
}
