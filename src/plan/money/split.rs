//! What is used up, by what it went into.
//!
//! Each item is shared out once, in whole coins, over all cups and finishes that it goes into,
//! in proportion to the volume in each; sums over cups are then sums of coins, so that layers,
//! canvases and colours each add up to what was shared out. A batch goes to its cups in
//! proportion to what they are expected to use, its reserve and what it is rounded up by with
//! them. What comes out of jars was paid for when it was mixed, and costs nothing here.

use crate::lesson::{Colour, Lesson, Material};
use crate::plan::class::canvases_in_class;
use crate::plan::{Batch, CanvasPlan, CupPlan, Heads, Impossible, OrderItem, OrderLine};
use crate::quantity::{Coin, Money, Volume};
use std::sync::Arc;

/// What a class uses up, by what it went into; all parts add up to it.
#[derive(Debug, Clone)]
pub struct Split {
    /// One for each canvas of the lesson, in its order.
    pub canvases: Vec<CanvasCost>,
    /// What is used up besides paint and finishes.
    pub supplies: Money,
    /// All of it shared by the students, to the nearest coin.
    pub per_student: Money,
}

/// What all canvases of one kind take, demonstrations and spares included.
#[derive(Debug, Clone)]
pub struct CanvasCost {
    pub name: String,
    /// How many of them are painted.
    pub count: u32,
    /// In the order of the work.
    pub layers: Vec<LayerCost>,
    /// One for each of the canvas, in its order.
    pub finishes: Vec<Money>,
    /// All of it for one of them, to the nearest coin.
    pub per_canvas: Money,
}

/// What one layer takes on all canvases of a kind.
#[derive(Debug, Clone)]
pub struct LayerCost {
    pub name: String,
    /// One for each colour, in its order.
    pub cups: Vec<ColourCost>,
}

/// What one colour takes: in one layer of all canvases of a kind, or in all.
#[derive(Debug, Clone)]
pub struct ColourCost {
    pub colour: Arc<Colour>,
    /// Out of the bottle of the colour.
    pub paint: Money,
    /// Medium, water and additives.
    pub added: Money,
}

impl Split {
    /// Everything: what is used up.
    pub fn total(&self) -> Money {
        self.canvases.iter().map(CanvasCost::total).sum::<Money>() + self.supplies
    }

    /// All finishes.
    pub fn finishes(&self) -> Money {
        self.canvases.iter().flat_map(|canvas| &canvas.finishes).copied().sum()
    }

    /// By colour, in the order in which they are first poured.
    pub fn colours(&self) -> Vec<ColourCost> {
        let mut colours: Vec<ColourCost> = Vec::new();
        let layers = self.canvases.iter().flat_map(|canvas| &canvas.layers);
        for cup in layers.flat_map(|layer| &layer.cups) {
            match colours.iter_mut().find(|known| known.colour.name == cup.colour.name) {
                Some(known) => {
                    known.paint += cup.paint;
                    known.added += cup.added;
                }
                None => colours.push(cup.clone()),
            }
        }
        colours
    }
}

impl CanvasCost {
    /// All layers and finishes.
    pub fn total(&self) -> Money {
        let layers = self.layers.iter().map(LayerCost::total);
        layers.chain(self.finishes.iter().copied()).sum()
    }
}

impl LayerCost {
    /// All colours.
    pub fn total(&self) -> Money {
        self.cups.iter().map(ColourCost::total).sum()
    }
}

impl ColourCost {
    /// Paint and what goes into it.
    pub fn total(&self) -> Money {
        self.paint + self.added
    }
}

/// Shares out what is used up of each line.
pub(super) fn split<'a>(
    lesson: &Lesson,
    heads: Heads,
    (canvases, mixing): (&[CanvasPlan], &[Batch]),
    lines: impl Iterator<Item = (&'a OrderLine, Money)>,
) -> Result<Split, Impossible> {
    let coin = Coin::of(lesson.print.currency);
    let mut kinds = Vec::with_capacity(canvases.len());
    for (canvas, plan) in lesson.canvases.iter().zip(canvases) {
        let count = canvases_in_class(canvas, heads)?;
        kinds.push(Kind { plan, count, cost: nothing_yet(plan, count) });
    }
    let mut supplies = Money::ZERO;
    for (line, used) in lines {
        match &line.what {
            OrderItem::Supply(_) => supplies += used,
            OrderItem::Material(material) => share_out(material, used, coin, &mut kinds, mixing),
        }
    }
    let canvases = kinds.into_iter().map(|kind| {
        let per_canvas = shared(kind.cost.total(), kind.count, coin);
        CanvasCost { per_canvas, ..kind.cost }
    });
    let mut split = Split { canvases: canvases.collect(), supplies, per_student: Money::ZERO };
    split.per_student = shared(split.total(), heads.students, coin);
    Ok(split)
}

/// An amount for each of some, to the nearest coin.
pub(super) fn shared(amount: Money, heads: u32, coin: Coin) -> Money {
    coin.nearest(amount.per_head(heads).unwrap_or(amount))
}

/// A kind of canvas: what it takes, how often, and what that has cost so far.
struct Kind<'a> {
    plan: &'a CanvasPlan,
    count: u32,
    cost: CanvasCost,
}

fn nothing_yet(plan: &CanvasPlan, count: u32) -> CanvasCost {
    let cup = |cup: &CupPlan| ColourCost {
        colour: Arc::clone(&cup.colour),
        paint: Money::ZERO,
        added: Money::ZERO,
    };
    let layers = plan.layers.iter().map(|layer| LayerCost {
        name: layer.name.clone(),
        cups: layer.cups.iter().map(cup).collect(),
    });
    CanvasCost {
        name: plan.name.clone(),
        count,
        layers: layers.collect(),
        finishes: vec![Money::ZERO; plan.finishes.len()],
        per_canvas: Money::ZERO,
    }
}

/// Shares one material out over everything that it goes into.
fn share_out(material: &Material, used: Money, coin: Coin, kinds: &mut [Kind], mixing: &[Batch]) {
    let mut places: Vec<(&mut Money, u64)> = Vec::new();
    for Kind { plan, count, cost } in kinds {
        let times = f64::from(*count);
        for (layer, cost) in plan.layers.iter().zip(&mut cost.layers) {
            for (cup, cost) in layer.cups.iter().zip(&mut cost.cups) {
                let volume = in_batch(cup, material, mixing) * times;
                let is_paint = cup.colour.paint.name == material.name;
                let place = if is_paint { &mut cost.paint } else { &mut cost.added };
                places.push((place, weight(volume)));
            }
        }
        for (finish, cost) in plan.finishes.iter().zip(&mut cost.finishes) {
            if finish.finish.material.name == material.name {
                places.push((cost, weight(finish.paint.typical() * times)));
            }
        }
    }
    places.retain(|(_, weight)| *weight > 0);
    let weights: Vec<u64> = places.iter().map(|(_, weight)| *weight).collect();
    for ((place, _), part) in places.into_iter().zip(coin.split(used, &weights)) {
        *place += part;
    }
}

/// What one cup takes of a material, by its share of what its batch is expected to give.
fn in_batch(cup: &CupPlan, material: &Material, mixing: &[Batch]) -> Volume {
    let is_it = |batch: &&Batch| {
        batch.colour.name == cup.colour.name && batch.mix.name == cup.batch.mix.name
    };
    let Some(batch) = mixing.iter().find(is_it) else { return Volume::default() };
    if batch.expected <= Volume::default() {
        return Volume::default();
    }
    let poured = batch.ingredients.iter().filter(|it| it.material.name == material.name);
    let poured: Volume = poured.map(|it| it.volume).sum();
    poured * (cup.batch.expected / batch.expected).value
}

/// A volume in whole nanolitres, far finer than anything that is measured.
fn weight(volume: Volume) -> u64 {
    // A float-to-integer cast stops at the bounds.
    (volume.value * 1e12).round() as u64
}
