//! The cups to weigh, painter by painter.

use super::batch::hex;
use super::canvas::used;
use crate::handout::cups::{Painter, Sitter, Weighing, cups, sitters};
use crate::handout::words::{Words, fill};
use crate::plan::Plan;
use crate::quantity::show::Show;
use serde::Serialize;

/// What the weigh sheet asks for.
#[derive(Debug, Clone, Serialize)]
pub struct WeighText {
    /// What the scale shows in steps of.
    pub scale: String,
    pub cups: String,
    pub canvases: String,
    /// Whether a canvas has several layers.
    pub layered: bool,
    pub sitters: Vec<SitterText>,
}

/// A painter.
#[derive(Debug, Clone, Serialize)]
pub struct SitterText {
    pub who: String,
    pub cups: Vec<WeighingText>,
}

/// One cup.
#[derive(Debug, Clone, Serialize)]
pub struct WeighingText {
    /// With its number among alike canvases, and its layer where the technique has several.
    pub canvas: String,
    pub colour: String,
    /// `#RRGGBB`.
    pub swatch: String,
    /// What the cup should lose.
    pub planned: String,
    /// Whether what ran off is asked here: once for each layer of a canvas.
    pub tray: bool,
}

/// All cups of a class.
pub(in crate::handout) fn weigh(plan: &Plan, words: &Words, show: &Show) -> WeighText {
    let sitters = sitters(plan);
    let canvases = plan.lesson.canvases.iter().map(|canvas| u64::from(canvas.each.get()));
    let sets: u64 = sitters.iter().map(|sitter| u64::from(sitter.sets)).sum();
    let canvases = canvases.sum::<u64>().saturating_mul(sets).to_string();
    let sitters: Vec<SitterText> =
        sitters.into_iter().map(|sitter| sitter_text(plan, sitter, words, show)).collect();
    WeighText {
        scale: show.mass(plan.lesson.mixing.scale_step),
        cups: sitters.iter().map(|sitter| sitter.cups.len()).sum::<usize>().to_string(),
        canvases,
        layered: plan.lesson.canvases.iter().any(|canvas| canvas.technique.layers.len() > 1),
        sitters,
    }
}

fn sitter_text(plan: &Plan, sitter: Sitter<'_>, words: &Words, show: &Show) -> SitterText {
    SitterText {
        who: who(sitter.painter, words),
        cups: cups(plan, sitter).map(|weighing| weighing_text(weighing, words, show)).collect(),
    }
}

/// What a painter is called.
pub(super) fn who(painter: Painter<'_>, words: &Words) -> String {
    let texts = &words.weigh;
    match painter {
        Painter::Named(name) => name.to_owned(),
        Painter::Numbered(number) => fill(&texts.student, &[("number", &number.to_string())]),
        Painter::Demonstration => texts.demonstration.clone(),
        Painter::Spare => texts.spare.clone(),
    }
}

/// What the canvas of a cup is called: with its number among alike ones, and its layer where
/// the technique has several.
pub(super) fn named(weighing: &Weighing<'_>, words: &Words) -> String {
    let texts = &words.weigh;
    let Weighing { canvas, piece, pieces, layer, .. } = *weighing;
    let numbered = match pieces {
        1 => canvas.name.clone(),
        _ => fill(&texts.piece, &[("canvas", &canvas.name), ("piece", &piece.to_string())]),
    };
    match canvas.technique.layers.len() {
        1 => numbered,
        _ => fill(&texts.layer, &[("canvas", &numbered), ("layer", &layer.name)]),
    }
}

fn weighing_text(weighing: Weighing<'_>, words: &Words, show: &Show) -> WeighingText {
    let name = named(&weighing, words);
    let Weighing { plan, on, at, cup, .. } = weighing;
    // The grams of the answer copies.
    let (_, grams) = used(plan, show);
    let planned = grams.get(on).and_then(|cups| cups.get(at)).cloned();
    WeighingText {
        canvas: name,
        colour: cup.colour.name.clone(),
        swatch: hex(cup.colour.swatch),
        planned: planned.unwrap_or_default(),
        tray: at == 0,
    }
}
