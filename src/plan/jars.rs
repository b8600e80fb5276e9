//! Mixed paint in jars: what is left from before, and what will be left.

use super::batch::mix_density;
use super::{Batch, CanvasPlan, Cover, Leftover};
use crate::lesson::{Amount, Colour, Jar, Lesson, Mix};
use crate::quantity::{Date, Volume};
use jiff::ToSpan;
use std::sync::Arc;

/// What the jars hold of one colour and mix on the day of a lesson.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct InJars {
    pub volume: Volume,
    /// When the oldest of them was mixed.
    pub mixed: Option<Date>,
    /// The last day of the one that keeps least long.
    pub last_day: Option<Date>,
}

/// The jars that still keep on the day.
pub(super) fn in_jars(lesson: &Lesson, colour: &Colour, mix: &Mix) -> InJars {
    let fresh = lesson.jars.iter().filter(|jar| is_of(jar, colour, mix) && keeps(jar, lesson));
    fresh.fold(InJars::default(), |sum, jar| InJars {
        volume: sum.volume + volume(jar, colour, mix),
        mixed: earlier(sum.mixed, Some(jar.mixed)),
        last_day: earlier(sum.last_day, last_day_of(jar, lesson)),
    })
}

/// Whether no batch of a lesson is of this colour and mix.
pub(super) fn is_idle(jar: &Jar, mixing: &[Batch]) -> bool {
    !mixing.iter().any(|batch| is_of(jar, &batch.colour, &batch.mix))
}

fn is_of(jar: &Jar, colour: &Colour, mix: &Mix) -> bool {
    jar.colour == colour.name && jar.mix == mix.name
}

fn keeps(jar: &Jar, lesson: &Lesson) -> bool {
    match (lesson.heading.date, last_day_of(jar, lesson)) {
        (Some(day), Some(last)) => jar.mixed <= day && day <= last,
        // Without a date nobody can say how old it will be.
        _ => false,
    }
}

/// The earlier of two days, as far as they are known.
fn earlier(one: Option<Date>, other: Option<Date>) -> Option<Date> {
    one.into_iter().chain(other).min()
}

/// The last day on which what is in a jar can be used.
pub(super) fn last_day_of(jar: &Jar, lesson: &Lesson) -> Option<Date> {
    last_day(jar.mixed, jar.keeps.unwrap_or(lesson.mixing.keeps))
}

/// The last day on which paint can be used that was mixed that day and keeps so many days.
fn last_day(mixed: Date, keeps: u32) -> Option<Date> {
    mixed.checked_add(i64::from(keeps).days()).ok()
}

fn volume(jar: &Jar, colour: &Colour, mix: &Mix) -> Volume {
    match jar.amount {
        Amount::Volume(volume) => volume,
        Amount::Mass(mass) => mass / mix_density(colour, mix),
        // Refused when the lesson was checked.
        Amount::Pieces(_) => Volume::default(),
    }
}

/// What stays in jugs and jars when every cup is filled and the class uses what is expected.
pub(super) fn leftovers(lesson: &Lesson, mixing: &[Batch]) -> Vec<Leftover> {
    let left = mixing.iter().map(|batch| {
        let jars = in_jars(lesson, &batch.colour, &batch.mix);
        let volume =
            (jars.volume + batch.volume - batch.fills.max(batch.expected)).max(Volume::default());
        // Old paint in the jar makes all of it old.
        let mixed = jars.mixed.or(lesson.heading.date);
        let fresh = lesson.heading.date.and_then(|today| last_day(today, lesson.mixing.keeps));
        Leftover {
            colour: Arc::clone(&batch.colour),
            mix: Arc::clone(&batch.mix),
            volume,
            mass: volume * batch.density,
            mixed,
            last_day: earlier(jars.last_day, fresh),
        }
    });
    left.filter(|left| left.volume > Volume::default()).collect()
}

/// How many cups of each kind of canvas a leftover would fill, kind by kind.
pub(super) fn covers(left: &Leftover, canvases: &[CanvasPlan]) -> Vec<Cover> {
    let cups = canvases.iter().flat_map(|canvas| {
        canvas.layers.iter().flat_map(move |layer| {
            let layer_name = (canvas.layers.len() > 1).then_some(&layer.name);
            layer.cups.iter().map(move |cup| (canvas, layer_name, cup))
        })
    });
    cups.filter(|(.., cup)| {
        cup.colour.name == left.colour.name && cup.batch.mix.name == left.mix.name
    })
    .map(|(canvas, layer, cup)| Cover {
        canvas: canvas.name.clone(),
        layer: layer.cloned(),
        cups: super::count::whole((left.volume / cup.batch.volume).value.floor()).unwrap_or(0),
    })
    .filter(|cover| cover.cups > 0)
    .collect()
}
