//! From one canvas to the whole class.

use super::batch::{Steps, potful};
use super::count::product;
use super::impossible::Counted;
use super::{Batch, CanvasPlan, Heads, Impossible, MaterialNeed};
use crate::lesson::{Canvas, Colour, Lesson, Material, Mix, Students};
use crate::quantity::{Mass, Spread, Volume};
use std::sync::Arc;

/// Counts who paints.
pub(super) fn heads(lesson: &Lesson) -> Result<Heads, Impossible> {
    let too_many = || Impossible::TooMany { what: Counted::Sets };
    let class = &lesson.class;
    let students = match &class.students {
        Students::Count(count) => count.get(),
        Students::Named(names) => u32::try_from(names.len()).map_err(|_| too_many())?,
    };
    let heads = Heads {
        students,
        demonstrations: class.demonstrations,
        spares: class.spares,
        tables: students.div_ceil(class.per_table.get()),
    };
    // Where the sum fits, every later use of it does.
    [class.demonstrations, class.spares]
        .into_iter()
        .try_fold(students, u32::checked_add)
        .ok_or_else(too_many)?;
    Ok(heads)
}

/// Mixed paint of one set (all canvases that one student paints), cup loss included.
pub(super) fn set_paint(lesson: &Lesson, canvases: &[CanvasPlan]) -> Spread<Volume> {
    lesson.canvases.iter().zip(canvases).fold(
        Spread::exactly(Volume::default()),
        |sum, (canvas, plan)| {
            let each = f64::from(canvas.each.get());
            let left_in_cups = plan.to_mix - plan.paint.typical();
            sum + plan.paint.map_rising(|paint| (paint + left_in_cups) * each)
        },
    )
}

/// What the teacher mixes: one batch for each colour and mix over all canvases and
/// layers, in the order in which they are first poured.
pub(super) fn class_batches(
    lesson: &Lesson,
    canvases: &[CanvasPlan],
    heads: Heads,
) -> Result<Vec<Batch>, Impossible> {
    let mut pots: Vec<Pot> = Vec::new();
    for (canvas, plan) in lesson.canvases.iter().zip(canvases) {
        let times = canvases_in_class(canvas, heads)?;
        for cup in plan.layers.iter().flat_map(|layer| &layer.cups) {
            // Cups are filled to whole steps of the scale, and every one of them must fill.
            let need = cup.batch.volume * f64::from(times);
            let pot = pots.iter_mut().find(|pot| {
                pot.colour.name == cup.colour.name && pot.mix.name == cup.batch.mix.name
            });
            match pot {
                Some(pot) => pot.add(times, need)?,
                None => pots.push(Pot {
                    colour: Arc::clone(&cup.colour),
                    mix: Arc::clone(&cup.batch.mix),
                    cups: times,
                    need,
                }),
            }
        }
    }
    let steps = Steps::of(lesson);
    pots.iter().map(|pot| potful(&pot.colour, &pot.mix, pot.cups, pot.need, steps)).collect()
}

/// A batch that is still being added up.
struct Pot {
    colour: Arc<Colour>,
    mix: Arc<Mix>,
    cups: u32,
    need: Volume,
}

impl Pot {
    fn add(&mut self, cups: u32, need: Volume) -> Result<(), Impossible> {
        self.cups =
            self.cups.checked_add(cups).ok_or(Impossible::TooMany { what: Counted::Cups })?;
        self.need += need;
        Ok(())
    }
}

/// How many canvases of one kind the class paints, demonstrations and spares included.
pub(super) fn canvases_in_class(canvas: &Canvas, heads: Heads) -> Result<u32, Impossible> {
    product([canvas.each.get(), heads.sets()]).ok_or(Impossible::TooMany { what: Counted::Cups })
}

/// What the finishes of the whole class take, one line a material.
pub(super) fn finishing(
    lesson: &Lesson,
    canvases: &[CanvasPlan],
    heads: Heads,
) -> Result<Vec<MaterialNeed>, Impossible> {
    let mut needs = Vec::new();
    for (canvas, plan) in lesson.canvases.iter().zip(canvases) {
        let times = f64::from(canvases_in_class(canvas, heads)?);
        for finish in &plan.finishes {
            let volume = finish.paint.typical() * times;
            let mass = volume * finish.finish.material.density;
            add_material(&mut needs, &finish.finish.material, volume, mass);
        }
    }
    Ok(needs)
}

/// Every material of the class: what all batches hold, and the finishes; one line a
/// material, in the order of `MaterialKind`.
pub(super) fn materials(mixing: &[Batch], finishing: &[MaterialNeed]) -> Vec<MaterialNeed> {
    let mut needs = Vec::new();
    for poured in mixing.iter().flat_map(|batch| &batch.ingredients) {
        add_material(&mut needs, &poured.material, poured.volume, poured.mass);
    }
    for need in finishing {
        add_material(&mut needs, &need.material, need.volume, need.mass);
    }
    needs.sort_by_key(|need| need.material.kind);
    needs
}

fn add_material(
    needs: &mut Vec<MaterialNeed>,
    material: &Arc<Material>,
    volume: Volume,
    mass: Mass,
) {
    match needs.iter_mut().find(|need| need.material.name == material.name) {
        Some(need) => {
            need.volume += volume;
            need.mass += mass;
        }
        None => needs.push(MaterialNeed { material: Arc::clone(material), volume, mass }),
    }
}
