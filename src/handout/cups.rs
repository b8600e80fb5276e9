//! The cups of a class in the order in which they are weighed.

use crate::lesson::{Canvas, Students};
use crate::plan::{CupPlan, LayerPlan, Plan};

/// Who pours; the sets of the teacher are poured by "demonstration" and "spare".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Painter<'a> {
    Named(&'a str),
    /// Counted from 1.
    Numbered(u32),
    Demonstration,
    Spare,
}

/// A painter and how many sets of the lesson's canvases are his or hers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sitter<'a> {
    pub painter: Painter<'a>,
    pub sets: u32,
}

/// One cup to weigh.
#[derive(Debug, Clone, Copy)]
pub(super) struct Weighing<'a> {
    pub canvas: &'a Canvas,
    /// Which of several alike canvases of one painter, from 1.
    pub piece: u32,
    /// How many alike canvases the painter has.
    pub pieces: u32,
    pub layer: &'a LayerPlan,
    /// Place among the cups of its layer.
    pub at: usize,
    pub cup: &'a CupPlan,
}

/// Students in the order of the lesson, then what is shown, then what is spare.
pub(super) fn sitters(plan: &Plan) -> Vec<Sitter<'_>> {
    let students: Vec<Painter<'_>> = match &plan.lesson.class.students {
        Students::Named(names) => names.iter().map(|name| Painter::Named(name)).collect(),
        Students::Count(count) => (1..=count.get()).map(Painter::Numbered).collect(),
    };
    let own = students.into_iter().map(|painter| Sitter { painter, sets: 1 });
    let teacher = [
        Sitter { painter: Painter::Demonstration, sets: plan.heads.demonstrations },
        Sitter { painter: Painter::Spare, sets: plan.heads.spares },
    ];
    own.chain(teacher.into_iter().filter(|sitter| sitter.sets > 0)).collect()
}

/// The cups of a painter: canvas by canvas, piece by piece, layer by layer. Alike canvases
/// of several sets are counted on.
pub(super) fn cups<'a>(plan: &'a Plan, sitter: Sitter<'a>) -> impl Iterator<Item = Weighing<'a>> {
    let canvases = plan.lesson.canvases.iter().zip(&plan.canvases);
    canvases.flat_map(move |(canvas, worked_out)| {
        let pieces = canvas.each.get().saturating_mul(sitter.sets);
        (1..=pieces).flat_map(move |piece| {
            worked_out.layers.iter().flat_map(move |layer| {
                let cups = layer.cups.iter().enumerate();
                cups.map(move |(at, cup)| Weighing { canvas, piece, pieces, layer, at, cup })
            })
        })
    })
}
