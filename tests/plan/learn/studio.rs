//! Invented classes whose cups were weighed.

use crate::plan::studio::*;
use puddlebook::lesson::*;
use puddlebook::plan::learn::{Learned, learn};
use puddlebook::quantity::units::{g_per_ml, gram, ml};
use puddlebook::quantity::{Length, Mass};
use std::sync::Arc;

pub fn learned(classes: &[WeighedClass]) -> Learned {
    learn(classes).unwrap()
}

/// One canvas of 10 x 10 in without an edge, one layer, one colour, of a mix that weighs
/// 1 g/mL, so that 64.516 g are a millimetre; planned with `film`, class varies by 8 % and
/// students by 15 %; nothing stays in cups.
pub fn plain(film: Length) -> Lesson {
    let mut lesson = lesson();
    lesson.mixing.cup_loss = ml(0.0);
    let canvas = &mut lesson.canvases[0];
    canvas.edge = Edge::Bare;
    canvas.technique = one_film("plain pour", film);
    canvas.layers = vec![CanvasLayer { mix: one_gram_mix(), colours: one_colour("slate") }];
    lesson
}

/// Grams on a plain canvas for a millimetre of film.
pub const GRAMS_A_MM: f64 = 64.516;

pub fn one_colour(name: &str) -> Vec<(Arc<Colour>, puddlebook::quantity::Share)> {
    vec![(light(name), percent(100))]
}

/// A colour whose paint weighs 1 g/mL.
fn light(name: &str) -> Arc<Colour> {
    let paint = Material { density: g_per_ml(1.0), ..(*colour(name).paint).clone() };
    Arc::new(Colour { paint: Arc::new(paint), ..(*colour(name)).clone() })
}

fn one_gram_mix() -> Arc<Mix> {
    let part = Part { what: Ingredient::ThePaint, parts: 1.0 };
    Arc::new(Mix { parts: vec![part], ..(*medium()).clone() })
}

/// A class in which each canvas of the lesson's first kind took so many grams of its first
/// colour; the cup stands in both readings with 20 g more.
pub fn class(lesson: &Arc<Lesson>, used: &[f64]) -> WeighedClass {
    let cups = used.iter().enumerate().map(|(at, used)| cup(lesson, at, (20.0 + used, 20.0)));
    WeighedClass { lesson: Arc::clone(lesson), date: None, cups: cups.collect() }
}

/// The first colour of the first layer of the first canvas, by student so and so.
pub fn cup(lesson: &Arc<Lesson>, student: usize, (before, after): (f64, f64)) -> WeighedCup {
    let canvas = Arc::new(lesson.canvases[0].clone());
    let layer = &canvas.layers[0];
    WeighedCup {
        student: format!("{}", student + 1),
        piece: 1,
        technique: Arc::clone(&canvas.technique),
        layer: canvas.technique.layers[0].name.clone(),
        mix: Arc::clone(&layer.mix),
        colour: Arc::clone(&layer.colours[0].0),
        before: gram(before),
        after: gram(after),
        tray: None,
        step: gram(1e-6),
        trust: Trust::Checked,
        note: None,
        place: Place { file: FileId::default(), span: student..student },
        canvas,
    }
}

/// Cups of every colour of every layer of the first canvas, by one student, each with what
/// `used` says of layer and colour.
pub fn canvas_of(
    lesson: &Arc<Lesson>,
    student: usize,
    used: impl Fn(&str, &str) -> Mass,
) -> Vec<WeighedCup> {
    let canvas = &lesson.canvases[0];
    let mut cups = Vec::new();
    for (technique, layer) in canvas.technique.layers.iter().zip(&canvas.layers) {
        for (colour, _) in &layer.colours {
            let mut one = cup(lesson, student, (0.0, 20.0));
            one.layer.clone_from(&technique.name);
            one.mix = Arc::clone(&layer.mix);
            one.colour = Arc::clone(colour);
            one.before = one.after + used(&technique.name, &colour.name);
            cups.push(one);
        }
    }
    cups
}
