//! Canvases with all their layers that were weighed.

use crate::lesson::Consistency;
use crate::plan::learn::Learned;
use crate::plan::rule_film;
use crate::quantity::{Spread, Volume};

/// One canvas of one class.
#[derive(Debug, Clone)]
pub(super) struct Painted<'a> {
    /// Place in `Learned::classes`.
    pub class: usize,
    student: &'a str,
    canvas: &'a str,
    piece: u32,
    pub technique: &'a str,
    /// How each of its layers was poured.
    pub consistencies: Vec<Consistency>,
    /// How many layers the technique has.
    layers: usize,
    pub planned: Volume,
    pub used: Spread<Volume>,
    /// What the rule of thumb gives for its painted area.
    rule: Volume,
}

impl Painted<'_> {
    /// The rule of thumb as a part of what was planned; none where not all layers were weighed,
    /// for the rule gives paint for all of them.
    pub(super) fn rule(&self) -> Option<f64> {
        let whole = self.consistencies.len() == self.layers && self.planned > Volume::default();
        whole.then(|| (self.rule / self.planned).value)
    }
}

/// The canvases in the order of their classes, and in these as they were learned from.
pub(super) fn painted(learned: &Learned) -> Vec<Painted<'_>> {
    let mut all: Vec<Painted<'_>> = Vec::new();
    for film in &learned.films {
        let technique = film.technique.name.as_str();
        for use_ in &film.canvases {
            let known = all.iter_mut().find(|known| {
                known.class == use_.class
                    && known.piece == use_.piece
                    && known.student == use_.student
                    && known.canvas == use_.canvas
                    && known.technique == technique
            });
            match known {
                Some(known) => {
                    known.planned += use_.planned;
                    known.used = known.used + use_.used;
                    known.consistencies.push(film.consistency);
                }
                None => all.push(Painted {
                    class: use_.class,
                    student: &use_.student,
                    canvas: &use_.canvas,
                    piece: use_.piece,
                    technique,
                    consistencies: vec![film.consistency],
                    layers: film.technique.layers.len(),
                    planned: use_.planned,
                    used: use_.used,
                    rule: use_.area * rule_film(),
                }),
            }
        }
    }
    all.sort_by_key(|painted| painted.class);
    all
}
