//! How use varies, from whole canvases.
//!
//! The reserve takes the use of a canvas as film x area x (1 + class + student), one draw each
//! for a class and for a canvas. So what is looked at is the film of all layers of a canvas
//! together over the mean of its cell: canvases poured in one technique with the same
//! consistencies. Only canvases count of which every layer was weighed.
//!
//! What to plan with puts the two variances that were seen together with those that were planned
//! with before, by degrees of freedom, as [`super::shrink`] does for the scatter of a mean: three
//! classes that happen to agree do not make the reserve forget that classes differ.
//!
//! What the scale leaves open stays in the students' part, where it makes the reserve a little
//! larger.

use super::cups::{CanvasKey, count};
use super::effects::{Observation, OneWay, one_way};
use super::layers::WeighedLayer;
use super::mean::Varies;
use super::shrink::pooled;
use super::{LearnedSpread, Method, SpreadPart};
use crate::lesson::{Consistency, WeighedClass};
use crate::quantity::units::in_mm;

/// What was planned with before anything was weighed: the reserve of the class that stands last.
pub(super) fn planned(classes: &[WeighedClass]) -> Varies {
    classes.last().map_or(Varies { class: 0.0, student: 0.0 }, |class| {
        let rule = &class.lesson.reserve;
        let (class, students) = match &rule.weighed {
            Some(weighed) => (weighed.class_varied, weighed.students_varied),
            None => (rule.class_varies, rule.students_vary),
        };
        Varies { class: class.as_f64(), student: students.as_f64() }
    })
}

/// The two parts, or what was planned with where there are too few canvases to tell.
pub(super) fn spread(layers: &[WeighedLayer<'_>], planned: Varies) -> LearnedSpread {
    let values = relative(&whole_canvases(layers));
    let mut classes: Vec<usize> = values.iter().map(|value| value.class).collect();
    classes.sort_unstable();
    classes.dedup();
    let (class, student, method, raw_class) = match one_way(&values) {
        Some(OneWay { class, error, raw_class, method }) => {
            let class = match class {
                0.0 => SpreadPart::NothingSeen,
                variance => SpreadPart::Weighed(variance.sqrt()),
            };
            (class, SpreadPart::Weighed(error.sqrt()), method, raw_class)
        }
        None => {
            let kept = (SpreadPart::TooFew(planned.class), SpreadPart::TooFew(planned.student));
            (kept.0, kept.1, Method::None, None)
        }
    };
    let from_now_on = Varies {
        class: together(planned.class, class, classes.len().saturating_sub(1)),
        student: together(planned.student, student, values.len().saturating_sub(classes.len())),
    };
    let (canvases, classes) = (count(values.len()), count(classes.len()));
    LearnedSpread {
        canvases,
        classes,
        class,
        student,
        method,
        raw_class,
        from_now_on,
        before: planned,
    }
}

/// Standard deviation of what was planned with and what was seen with so many degrees of freedom.
fn together(planned: f64, seen: SpreadPart, df: usize) -> f64 {
    let variance = match seen {
        SpreadPart::TooFew(kept) => return kept,
        SpreadPart::Weighed(deviation) => deviation.powi(2),
        SpreadPart::NothingSeen => 0.0,
    };
    pooled(planned.powi(2), variance * df as f64, df as f64).sqrt()
}

/// A technique with the consistency of each of its layers.
#[derive(Debug, PartialEq)]
struct Cell<'a> {
    technique: &'a str,
    consistencies: Vec<Consistency>,
}

/// The film of all its layers together, millimetres.
struct WholeCanvas<'a> {
    class: usize,
    cell: Cell<'a>,
    film: f64,
}

fn whole_canvases<'a>(layers: &[WeighedLayer<'a>]) -> Vec<WholeCanvas<'a>> {
    let mut by_canvas: Vec<(usize, CanvasKey<'a>, Vec<&WeighedLayer<'a>>)> = Vec::new();
    for layer in layers {
        let is_its =
            |(class, canvas, layers): &&mut (usize, CanvasKey<'_>, Vec<&WeighedLayer<'_>>)| {
                let technique = layers.first().map(|first| first.film.technique);
                *class == layer.class
                    && *canvas == layer.canvas
                    && technique == Some(layer.film.technique)
            };
        match by_canvas.iter_mut().rev().find(is_its) {
            Some((_, _, layers)) => layers.push(layer),
            None => by_canvas.push((layer.class, layer.canvas, vec![layer])),
        }
    }
    by_canvas.iter().filter_map(|(class, _, layers)| whole(*class, layers)).collect()
}

/// `None` unless each layer of the technique is there once.
fn whole<'a>(class: usize, layers: &[&WeighedLayer<'a>]) -> Option<WholeCanvas<'a>> {
    let technique = &layers.first()?.cups.first()?.technique;
    if layers.len() != technique.layers.len() {
        return None;
    }
    let in_order = technique
        .layers
        .iter()
        .map(|wanted| layers.iter().find(|layer| layer.film.layer == wanted.name));
    let in_order = in_order.collect::<Option<Vec<_>>>()?;
    let consistencies = in_order.iter().map(|layer| layer.film.consistency).collect();
    Some(WholeCanvas {
        class,
        cell: Cell { technique: layers.first()?.film.technique, consistencies },
        film: layers.iter().map(|layer| in_mm(layer.thickness())).sum(),
    })
}

/// Films over the mean of their cell. A cell of which nothing was used at all has no mean to
/// compare with.
fn relative(canvases: &[WholeCanvas<'_>]) -> Vec<Observation> {
    let mut cells: Vec<(&Cell<'_>, Vec<&WholeCanvas<'_>>)> = Vec::new();
    for canvas in canvases {
        match cells.iter_mut().find(|(cell, _)| **cell == canvas.cell) {
            Some((_, canvases)) => canvases.push(canvas),
            None => cells.push((&canvas.cell, vec![canvas])),
        }
    }
    let of_cell = |(cell, (_, canvases)): (usize, &(&Cell<'_>, Vec<&WholeCanvas<'_>>))| {
        let mean = canvases.iter().map(|canvas| canvas.film).sum::<f64>() / canvases.len() as f64;
        let some = canvases.iter().filter(|_| mean > 0.0);
        some.map(|canvas| Observation { class: canvas.class, cell, value: canvas.film / mean })
            .collect::<Vec<_>>()
    };
    cells.iter().enumerate().flat_map(of_cell).collect()
}
