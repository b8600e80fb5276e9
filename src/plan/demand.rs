//! What a class is expected to use, and how far that may be off.
//!
//! The use of one pour is film x area x (1 + C + S): C is one draw for the whole class (the
//! paint came out a little thick that day), S one draw for every canvas that somebody pours,
//! demonstrations and spares among them. Both are normal with mean 0, independent of each
//! other; all colours and layers of one canvas share its S. For a colour of which kind k of
//! canvas, poured n_k times, takes x_k:
//!
//! ```text
//! mean     = sum(n_k x_k)
//! variance = (class sd x mean)^2 + (student sd)^2 x sum(n_k x_k^2)
//! ```
//!
//! (variances of independent parts add up, and a sum of normals is normal). What stays in
//! cups and on sticks is the same whatever is poured. The model is common practice for sums
//! of many small uses; no source for pouring.

use super::class::canvases_in_class;
use super::impossible::Counted;
use super::{CanvasPlan, CupPlan, Heads, Impossible};
use crate::lesson::{Colour, Lesson, Material, Mix, ReserveRule};
use crate::quantity::Volume;
use std::sync::Arc;

/// Use of one thing by the whole class.
#[derive(Debug, Default)]
pub(super) struct Demand {
    /// One for each kind of canvas that takes of it.
    pours: Vec<Pour>,
    /// What stays in cups and on sticks.
    left_in_cups: Volume,
}

/// What each canvas of one kind takes, over all its layers and coats.
#[derive(Debug)]
struct Pour {
    /// Place of the kind in the lesson.
    kind: usize,
    times: f64,
    paint: Volume,
}

impl Demand {
    /// Adds a layer or coat of a kind of canvas that is painted so many times. Kinds come
    /// one after the other.
    fn pour(&mut self, kind: usize, times: u32, paint: Volume) {
        match self.pours.last_mut().filter(|pour| pour.kind == kind) {
            Some(pour) => pour.paint += paint,
            None => self.pours.push(Pour { kind, times: f64::from(times), paint }),
        }
    }

    fn poured(&self) -> Volume {
        self.pours.iter().map(|pour| pour.paint * pour.times).sum()
    }

    /// The mean, with what stays in cups.
    pub(super) fn expected(&self) -> Volume {
        self.poured() + self.left_in_cups
    }

    /// The standard deviation.
    pub(super) fn deviation(&self, rule: &ReserveRule) -> Volume {
        let together = self.poured() * rule.class_varies.as_f64();
        self.pours
            .iter()
            .map(|pour| pour.paint * pour.times.sqrt() * rule.students_vary.as_f64())
            .fold(together, |sum, part| sum.hypot(part))
    }
}

/// Everything that varies in a class.
#[derive(Debug, Default)]
pub(super) struct ClassDemand {
    /// One for each colour and mix, in the order in which they are first poured.
    pub pots: Vec<Pot>,
    /// One for each material of the finishes.
    pub finishes: Vec<(Arc<Material>, Demand)>,
    /// All mixed paint as if it were one.
    pub paint: Demand,
}

/// One colour in one mix.
#[derive(Debug)]
pub(super) struct Pot {
    pub colour: Arc<Colour>,
    pub mix: Arc<Mix>,
    pub cups: u32,
    /// What all cups are filled with, each to a whole step of the scale.
    pub fills: Volume,
    pub demand: Demand,
}

/// Adds up all canvases of a class.
pub(super) fn of_class(
    lesson: &Lesson,
    canvases: &[CanvasPlan],
    heads: Heads,
) -> Result<ClassDemand, Impossible> {
    let mut class = ClassDemand::default();
    for (kind, (canvas, plan)) in lesson.canvases.iter().zip(canvases).enumerate() {
        let times = canvases_in_class(canvas, heads)?;
        for cup in plan.layers.iter().flat_map(|layer| &layer.cups) {
            let left = lesson.mixing.cup_loss * f64::from(times);
            class.paint.pour(kind, times, cup.paint);
            class.paint.left_in_cups += left;
            let pot = class.pot(cup);
            pot.demand.pour(kind, times, cup.paint);
            pot.demand.left_in_cups += left;
            pot.fills += cup.batch.volume * f64::from(times);
            pot.cups =
                pot.cups.checked_add(times).ok_or(Impossible::TooMany { what: Counted::Cups })?;
        }
        for finish in &plan.finishes {
            let demand = class.finish(&finish.finish.material);
            demand.pour(kind, times, finish.paint.typical());
        }
    }
    Ok(class)
}

impl ClassDemand {
    fn pot(&mut self, cup: &CupPlan) -> &mut Pot {
        let (colour, mix) = (&cup.colour, &cup.batch.mix);
        let is_it = |pot: &Pot| pot.colour.name == colour.name && pot.mix.name == mix.name;
        found_or_added(&mut self.pots, is_it, || Pot {
            colour: Arc::clone(colour),
            mix: Arc::clone(mix),
            cups: 0,
            fills: Volume::default(),
            demand: Demand::default(),
        })
    }

    fn finish(&mut self, material: &Arc<Material>) -> &mut Demand {
        let is_it = |(known, _): &(Arc<Material>, Demand)| known.name == material.name;
        let new = || (Arc::clone(material), Demand::default());
        &mut found_or_added(&mut self.finishes, is_it, new).1
    }
}

/// The first of a list that fits, or a new one at its end.
fn found_or_added<T>(
    list: &mut Vec<T>,
    fits: impl Fn(&T) -> bool,
    new: impl FnOnce() -> T,
) -> &mut T {
    let at = list.iter().position(fits).unwrap_or(list.len());
    if at == list.len() {
        list.push(new());
    }
    &mut list[at]
}
