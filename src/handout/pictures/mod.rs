//! What is drawn on the handouts, as data: charts and the canvas unfolded.

mod bars;
mod coverage;
mod days;
mod fees;
mod film_left;
mod nomogram;
mod sketches;
mod tools;
mod unfolded;

use super::document::{Picture, PictureKind};
use super::markdown::Pictures;
use super::words::Words;
use crate::ink::Colour;
use crate::lesson::Rgb;
use crate::plan::Plan;
pub(super) use bars::bought;
pub(super) use fees::fees;
pub(super) use film_left::{spun, tilted};
pub(super) use tools::tools;

/// Every picture that the plan has, by the name that templates use.
pub(super) fn pictures(plan: &Plan, words: &Words) -> Pictures {
    let print = &plan.lesson.print;
    let show = words.show(print);
    let mut pictures = Pictures::new();
    pictures.insert("coverage".to_string(), coverage::coverage(plan, words, &show));
    pictures.insert("colour-bars".to_string(), bars::colours(plan, words, &show));
    pictures.insert("need-bought".to_string(), bars::bought(&plan.order, words, &show));
    pictures.insert("cover".to_string(), cover(plan, words));
    pictures.insert("days".to_string(), days::days(plan, words));
    let sketches = sketches::sketches(words).into_iter();
    pictures.extend(sketches.map(|(name, picture)| (name.to_string(), picture)));
    let canvases = plan.lesson.canvases.iter().zip(&plan.canvases).zip(&plan.worked);
    for (at, ((canvas, worked_out), sums)) in canvases.enumerate() {
        let name = canvas_name(at);
        pictures.insert(format!("{name}-blank"), unfolded::asked(canvas, words, &show));
        pictures.insert(name, unfolded::worked(canvas, worked_out, sums, words, &show));
    }
    pictures
}

/// The name of the picture of a canvas, counted from 0.
pub(super) fn canvas_name(at: usize) -> String {
    format!("canvas-{}", at + 1)
}

fn cover(plan: &Plan, words: &Words) -> Picture {
    let mut colours: Vec<Colour> = Vec::new();
    let layers = plan.lesson.canvases.iter().flat_map(|canvas| &canvas.layers);
    for (colour, _) in layers.flat_map(|layer| &layer.colours) {
        let swatch = ink(colour.swatch);
        if !colours.contains(&swatch) {
            colours.push(swatch);
        }
    }
    Picture { alt: words.pictures.cover.alt.clone(), kind: PictureKind::Rings { colours } }
}

/// A swatch as ink.
fn ink(swatch: Rgb) -> Colour {
    Colour::new(swatch.0, swatch.1, swatch.2)
}
