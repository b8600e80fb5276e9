//! One cup after the other.

use super::reading::{Difference, difference};
use super::{CupUse, LearnedClass};
use crate::lesson::{CanvasLayer, Consistency, TechniqueLayer, WeighedClass, WeighedCup};
use std::sync::Arc;

/// Which canvas a cup was poured on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct CanvasKey<'a> {
    pub student: &'a str,
    pub canvas: &'a str,
    pub piece: u32,
}

/// Which film it belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct FilmKey<'a> {
    pub technique: &'a str,
    pub layer: &'a str,
    pub consistency: Consistency,
}

pub(super) fn canvas_key(cup: &WeighedCup) -> CanvasKey<'_> {
    CanvasKey { student: &cup.student, canvas: &cup.canvas.name, piece: cup.piece }
}

pub(super) fn film_key(cup: &WeighedCup) -> FilmKey<'_> {
    FilmKey { technique: &cup.technique.name, layer: &cup.layer, consistency: cup.mix.consistency }
}

/// The layer of the technique that the cup was poured for.
pub(super) fn technique_layer(cup: &WeighedCup) -> Option<&TechniqueLayer> {
    cup.technique.layers.iter().find(|layer| layer.name == cup.layer)
}

/// The colours that the lesson wants in this layer. A canvas that was poured in another way
/// than the lesson says keeps its colours: those of the layer of the same name, or else of the
/// layer in the same place. `None` when there is none: then nobody knows of cups that lack.
pub(super) fn palette(cup: &WeighedCup) -> Option<&CanvasLayer> {
    let named = |layers: &[TechniqueLayer]| layers.iter().position(|one| one.name == cup.layer);
    let at = named(&cup.canvas.technique.layers).or_else(|| named(&cup.technique.layers))?;
    cup.canvas.layers.get(at)
}

/// What its two readings say.
pub(super) fn used(cup: &WeighedCup) -> Difference {
    difference(cup.before, cup.after, cup.step)
}

/// All cups of a class for its table, those that teach nothing among them.
pub(super) fn class(class: &WeighedClass) -> LearnedClass {
    let mut canvases: Vec<CanvasKey<'_>> = Vec::new();
    for key in class.cups.iter().map(canvas_key) {
        if !canvases.contains(&key) {
            canvases.push(key);
        }
    }
    let heading = &class.lesson.heading;
    LearnedClass {
        title: heading.title.clone(),
        date: class.date.or(heading.date),
        canvases: count(canvases.len()),
        cups: class.cups.iter().map(cup_use).collect(),
    }
}

fn cup_use(cup: &WeighedCup) -> CupUse {
    CupUse {
        student: cup.student.clone(),
        canvas: cup.canvas.name.clone(),
        piece: cup.piece,
        layer: cup.layer.clone(),
        colour: Arc::clone(&cup.colour),
        before: cup.before,
        after: cup.after,
        used: used(cup).limits,
    }
}

/// Nobody weighs four thousand million cups.
pub(super) fn count(of: usize) -> u32 {
    u32::try_from(of).unwrap_or(u32::MAX)
}
