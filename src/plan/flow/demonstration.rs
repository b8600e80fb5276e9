use super::{Fluid, SpunFilm, Tilt, TiltedFilm, volume_that_reaches};
use crate::lesson::Consistency;
use crate::quantity::units::{inch, mm, seconds, turns_a_minute};
use crate::quantity::{AngularVelocity, Duration, Length, Mass, UnitSystem, Volume};

/// The even film that the boards start with, in millimetres; so much stays on a board without
/// running off (judgement, no source).
const START: f64 = 1.5;

/// What a hand keeps up, and how long: a turn in a second for half a minute. All chosen.
const TURNS_A_MINUTE: f64 = 60.0;
const SPUN_SECONDS: f64 = 30.0;
const TILTED_SECONDS: f64 = 60.0;
const SPREAD_SECONDS: f64 = 60.0;

/// Pieces of a curve; enough for its steep beginning.
const PIECES: u32 = 60;

/// Boards and times with which a teacher shows why thin paint goes further.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demonstration {
    /// The side of a square board; a blob spreads to a circle as wide.
    pub board: Length,
    /// The even film at the start.
    pub start: Length,
    pub speed: AngularVelocity,
    pub tilt: Tilt,
    /// How long a board is spun, another is tilted, and a blob spreads.
    pub spun_for: Duration,
    pub tilted_for: Duration,
    pub spread_for: Duration,
}

impl Demonstration {
    /// With a board in a round size of these units.
    pub fn of(units: UnitSystem) -> Self {
        Self {
            board: match units {
                UnitSystem::Us => inch(8.0),
                UnitSystem::Metric => mm(200.0),
            },
            start: mm(START),
            speed: turns_a_minute(TURNS_A_MINUTE),
            tilt: Tilt::by_half_the_board(),
            spun_for: seconds(SPUN_SECONDS),
            tilted_for: seconds(TILTED_SECONDS),
            spread_for: seconds(SPREAD_SECONDS),
        }
    }

    /// The film of the spun board.
    pub fn spun(&self, consistency: Consistency) -> SpunFilm {
        let fluid = Fluid::standing_for(consistency);
        SpunFilm { fluid, speed: self.speed, start: self.start }
    }

    /// What is left on it at the end.
    pub fn spun_film(&self, consistency: Consistency) -> Length {
        self.spun(consistency).left(self.spun_for)
    }

    /// The mean film of the tilted board at the end.
    pub fn tilted_film(&self, consistency: Consistency) -> Length {
        self.tilted(consistency).mean(self.board, self.tilted_for)
    }

    /// The film of the spun board from the start to the end.
    pub fn spun_curve(&self, consistency: Consistency) -> Vec<(Duration, Length)> {
        let film = self.spun(consistency);
        curve(self.spun_for, |time| film.left(time))
    }

    /// The mean film of the tilted board from the start to the end.
    pub fn tilted_curve(&self, consistency: Consistency) -> Vec<(Duration, Length)> {
        let film = self.tilted(consistency);
        curve(self.tilted_for, |time| film.mean(self.board, time))
    }

    /// The paint of a blob that spreads as wide as the board in the time it is given.
    pub fn spread_paint(&self, consistency: Consistency) -> Volume {
        let fluid = Fluid::standing_for(consistency);
        volume_that_reaches(self.board / 2.0, self.spread_for, fluid)
    }

    /// What a board holds in a film, and what that weighs.
    pub fn on_board(&self, film: Length, consistency: Consistency) -> (Volume, Mass) {
        let paint: Volume = self.board * self.board * film;
        (paint, paint * Fluid::standing_for(consistency).density())
    }

    fn tilted(&self, consistency: Consistency) -> TiltedFilm {
        let fluid = Fluid::standing_for(consistency);
        TiltedFilm { fluid, tilt: self.tilt, start: self.start }
    }
}

fn curve(until: Duration, film: impl Fn(Duration) -> Length) -> Vec<(Duration, Length)> {
    let times = (0..=PIECES).map(|at| until * f64::from(at) / f64::from(PIECES));
    times.map(|time| (time, film(time))).collect()
}
