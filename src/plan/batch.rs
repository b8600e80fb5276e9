//! From mixed paint to what goes into the cup, ingredient by ingredient.

use super::impossible::Counted;
use super::rounding::{on_the_scale, up_to_scale, up_to_step};
use super::{Batch, Impossible, Poured};
use crate::lesson::{Colour, Drops, Ingredient, Lesson, Material, Mix, PartsBy};
use crate::quantity::units::ml;
use crate::quantity::{Mass, MassDensity, UnitSystem, Volume};
use std::sync::Arc;

/// What can be measured at the mixing table.
#[derive(Debug, Clone, Copy)]
pub(super) struct Steps {
    /// Amounts to mix are whole numbers of these.
    pub volume: Volume,
    /// The scale shows whole numbers of these.
    pub scale: Mass,
}

impl Steps {
    /// The steps of a lesson in its own units.
    pub(super) fn of(lesson: &Lesson) -> Self {
        let volume = match lesson.print.units {
            UnitSystem::Us => lesson.mixing.step_us,
            UnitSystem::Metric => lesson.mixing.step_metric,
        };
        Self { volume, scale: lesson.mixing.scale_step }
    }
}

/// What a batch has to hold.
#[derive(Debug, Clone, Copy)]
pub(super) struct Contents {
    pub expected: Volume,
    pub reserve: Volume,
}

impl Contents {
    fn need(self) -> Volume {
        self.expected + self.reserve
    }
}

/// The batch of the mixing table: at least the `contents` for `cups` cups, and at least
/// what all of them are filled with; less what is in jars, in whole steps of volume.
pub(super) fn potful(
    colour: &Arc<Colour>,
    mix: &Arc<Mix>,
    cups: u32,
    contents: Contents,
    at_hand: AtHand,
    steps: Steps,
) -> Result<Batch, Impossible> {
    let needed = contents.need().max(at_hand.fills);
    let from_jars = needed.min(at_hand.in_jars);
    let volume = up_to_step(needed - from_jars, steps.volume);
    let batch = mixed(colour, mix, Amounts { cups, contents, volume }, steps.scale)?;
    Ok(Batch { from_jars, fills: at_hand.fills, ..batch })
}

/// What a batch has to fill, and what there is already.
#[derive(Debug, Clone, Copy)]
pub(super) struct AtHand {
    pub fills: Volume,
    pub in_jars: Volume,
}

/// By its parts; drops are too few to tell.
pub(super) fn mix_density(colour: &Colour, mix: &Mix) -> MassDensity {
    let whole = ml(1.0);
    let parts = by_parts(colour, mix, whole);
    parts.iter().map(|(material, volume)| *volume * material.density).sum::<Mass>() / whole
}

/// One cup: what is filled into it, at least `need` in whole steps of the scale because cups
/// are filled by weight, and a batch of that much. The reserve is mixed once for the class,
/// not in every cup.
pub(super) fn cupful(
    colour: &Arc<Colour>,
    mix: &Arc<Mix>,
    need: Volume,
    scale: Mass,
) -> Result<(Mass, Batch), Impossible> {
    let contents = Contents { expected: need, reserve: Volume::default() };
    let exact = mixed(colour, mix, Amounts { cups: 1, contents, volume: need }, scale)?;
    let fill = up_to_scale(exact.mass, scale);
    let volume = need.max(fill / exact.density);
    Ok((fill, mixed(colour, mix, Amounts { cups: 1, contents, volume }, scale)?))
}

struct Amounts {
    cups: u32,
    contents: Contents,
    /// Never less than what is needed.
    volume: Volume,
}

/// Volumes and masses add up by ideal mixing: the volume of a mix is the sum of the volumes
/// that went into it.
fn mixed(
    colour: &Arc<Colour>,
    mix: &Arc<Mix>,
    Amounts { cups, contents: Contents { expected, reserve }, volume }: Amounts,
    scale: Mass,
) -> Result<Batch, Impossible> {
    if volume <= Volume::default() {
        return Ok(nothing_to_mix(colour, mix, cups, Contents { expected, reserve }));
    }
    let drops =
        mix.drops.iter().map(|drops| dropped(drops, mix, volume)).collect::<Result<Vec<_>, _>>()?;
    let by_drops: Volume = drops.iter().map(|(_, _, volume)| *volume).sum();
    if by_drops > Volume::default() && by_drops >= volume {
        return Err(Impossible::MoreDropsThanMix { mix: mix.name.clone() });
    }
    let parts = by_parts(colour, mix, volume - by_drops);
    let ingredients = in_the_cup(
        parts
            .into_iter()
            .map(|(material, volume)| (material, None, volume))
            .chain(
                drops.into_iter().map(|(material, count, volume)| (material, Some(count), volume)),
            )
            .collect(),
        scale,
    );
    let mass: Mass = ingredients.iter().map(|poured| poured.mass).sum();
    Ok(Batch {
        colour: Arc::clone(colour),
        mix: Arc::clone(mix),
        cups,
        expected,
        reserve,
        fills: volume,
        from_jars: Volume::default(),
        volume,
        mass,
        density: mass / volume,
        ingredients,
    })
}

fn nothing_to_mix(colour: &Arc<Colour>, mix: &Arc<Mix>, cups: u32, contents: Contents) -> Batch {
    Batch {
        colour: Arc::clone(colour),
        mix: Arc::clone(mix),
        cups,
        expected: contents.expected,
        reserve: contents.reserve,
        fills: Volume::default(),
        from_jars: Volume::default(),
        volume: Volume::default(),
        mass: Mass::default(),
        density: mix_density(colour, mix),
        ingredients: Vec::new(),
    }
}

/// The volumes of the parts that make `volume` together.
fn by_parts(colour: &Colour, mix: &Mix, volume: Volume) -> Vec<(Arc<Material>, Volume)> {
    let bulks: Vec<(Arc<Material>, f64)> = mix
        .parts
        .iter()
        .map(|part| {
            let material = match &part.what {
                Ingredient::ThePaint => Arc::clone(&colour.paint),
                Ingredient::Other(material) => Arc::clone(material),
            };
            // Parts by weight take up room in inverse proportion to their density.
            let bulk = match mix.by {
                PartsBy::Volume => part.parts,
                PartsBy::Weight => part.parts / material.density.value,
            };
            (material, bulk)
        })
        .collect();
    let all: f64 = bulks.iter().map(|(_, bulk)| bulk).sum();
    bulks.into_iter().map(|(material, bulk)| (material, volume * (bulk / all))).collect()
}

/// How many drops go into `volume`, to the nearest whole one and at least one where it is not
/// half of everything, and the room they take in it.
fn dropped(
    drops: &Drops,
    mix: &Mix,
    volume: Volume,
) -> Result<(Arc<Material>, u32, Volume), Impossible> {
    let one = drops.material.drop.unwrap_or_default();
    let least = if one * 2.0 < volume { 1.0 } else { 0.0 };
    let count = (drops.count * (volume / drops.per).value).round().max(least);
    let too_many = || Impossible::TooMany { what: Counted::Drops { mix: mix.name.clone() } };
    let count = super::count::whole(count).ok_or_else(too_many)?;
    Ok((Arc::clone(&drops.material), count, one * f64::from(count)))
}

fn in_the_cup(poured: Vec<(Arc<Material>, Option<u32>, Volume)>, scale: Mass) -> Vec<Poured> {
    let masses: Vec<Mass> =
        poured.iter().map(|(material, _, volume)| *volume * material.density).collect();
    let weighed = on_the_scale(&masses, scale);
    let mut reading = Mass::default();
    poured
        .into_iter()
        .zip(masses)
        .zip(weighed)
        .map(|(((material, drops, volume), mass), weighed)| {
            reading += weighed;
            Poured { material, volume, mass, weighed, reading, drops }
        })
        .collect()
}
