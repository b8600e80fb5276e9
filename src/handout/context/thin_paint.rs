//! Why thin paint goes further: boards, times and films of the demonstration.

use super::batch::consistency as word;
use crate::handout::words::Words;
use crate::lesson::Consistency;
use crate::plan::Plan;
use crate::plan::flow::{Demonstration, Fluid, water_viscosity};
use crate::quantity::Length;
use crate::quantity::show::Show;
use crate::quantity::units::in_turns_a_minute;
use serde::Serialize;

/// What is shown with boards, in the units of the lesson.
#[derive(Debug, Clone, Serialize)]
pub struct ThinPaintText {
    /// Side of a square board.
    pub board: String,
    /// The even film at the start, and the paint that makes it.
    pub start: String,
    pub paint: String,
    pub mass: String,
    /// Of the spun board: turns in a minute, and how long.
    pub turns: String,
    pub spun_for: String,
    /// Of the tilted board: its angle, how high its upper rim stands, and how long.
    pub tilt: String,
    pub rise: String,
    pub tilted_for: String,
    /// How long a blob spreads.
    pub spread_for: String,
    pub density: String,
    pub water: String,
    pub thin: FlowText,
    pub medium: FlowText,
    pub thick: FlowText,
    /// Viscosity of thin paint against medium, the film that is left of it in the long run, and
    /// the paint for the same blob.
    pub viscosity_share: String,
    pub film_share: String,
    pub spread_share: String,
}

/// The paint of one consistency.
#[derive(Debug, Clone, Serialize)]
pub struct FlowText {
    pub name: String,
    pub viscosity: String,
    /// How many times as stiff as water.
    pub times_water: String,
    /// (Start / film)² begins at 1 and grows by so much each second; what it has come to, and
    /// the root of that.
    pub each_second: String,
    pub grown: String,
    pub root: String,
    /// After which half of the film is gone.
    pub half_after: String,
    /// Film that is left on the spun board, and its weight.
    pub spun: String,
    pub spun_mass: String,
    /// The same film on the face of the first canvas.
    pub spun_canvas: String,
    /// Mean film that is left on the tilted board, and its weight.
    pub tilted: String,
    pub tilted_mass: String,
    /// For a blob as wide as the board.
    pub spread: String,
    pub spread_mass: String,
}

/// The demonstration as text.
pub(in crate::handout) fn thin_paint(plan: &Plan, words: &Words, show: &Show) -> ThinPaintText {
    let shown = Demonstration::of(show.units());
    let flow = |consistency| flow(plan, &shown, consistency, words, show);
    let [thin, medium] = [Consistency::Thin, Consistency::Medium].map(Fluid::standing_for);
    let viscosity = (thin.viscosity() / medium.viscosity()).value;
    let [less, more] =
        [Consistency::Thin, Consistency::Medium].map(|paint| shown.spread_paint(paint));
    let (paint, mass) = shown.on_board(shown.start, Consistency::Medium);
    ThinPaintText {
        board: show.length(shown.board),
        start: show.film(shown.start),
        paint: show.volume(paint),
        mass: show.mass(mass),
        turns: show.trimmed(in_turns_a_minute(shown.speed), 0),
        spun_for: show.seconds(shown.spun_for),
        tilt: show.angle(shown.tilt.angle()),
        rise: show.length(shown.tilt.rise(shown.board)),
        tilted_for: show.seconds(shown.tilted_for),
        spread_for: show.seconds(shown.spread_for),
        density: show.density(medium.density()),
        water: show.viscosity(water_viscosity()),
        thin: flow(Consistency::Thin),
        medium: flow(Consistency::Medium),
        thick: flow(Consistency::Thick),
        viscosity_share: show.percent(viscosity),
        // Long after the start films go with the root of viscosity, spun or tilted.
        film_share: show.percent(viscosity.sqrt()),
        spread_share: show.percent((less / more).value),
    }
}

fn flow(
    plan: &Plan,
    shown: &Demonstration,
    consistency: Consistency,
    words: &Words,
    show: &Show,
) -> FlowText {
    let fluid = Fluid::standing_for(consistency);
    let spun = shown.spun_film(consistency);
    let tilted = shown.tilted_film(consistency);
    let spread = shown.spread_paint(consistency);
    let mass = |film: Length| show.mass(shown.on_board(film, consistency).1);
    let spinning = shown.spun(consistency);
    let thinning = spinning.thinning();
    let grown = 1.0 + (thinning * shown.spun_for).value;
    let face = plan.canvases.first().map(|canvas| canvas.areas.face).unwrap_or_default();
    FlowText {
        name: word(consistency, words),
        viscosity: show.viscosity(fluid.viscosity()),
        times_water: show.fixed((fluid.viscosity() / water_viscosity()).value, 0),
        // Enough digits for the sums on paper to come out to the last digit of the film.
        each_second: show.trimmed(thinning.value, 4),
        grown: show.trimmed(grown, 3),
        root: show.trimmed(grown.sqrt(), 3),
        half_after: show.seconds(spinning.time_to(shown.start / 2.0)),
        spun: show.film(spun),
        spun_mass: mass(spun),
        spun_canvas: show.volume(face * spun),
        tilted: show.film(tilted),
        tilted_mass: mass(tilted),
        spread: show.volume(spread),
        spread_mass: show.mass(spread * fluid.density()),
    }
}
