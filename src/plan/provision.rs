//! What a class mixes and buys when so much is kept on top of what it is expected to use.

use super::batch::{AtHand, Contents, Steps, potful};
use super::demand::{ClassDemand, Demand};
use super::jars::in_jars;
use super::order::Needs;
use super::reserve::Margin;
use super::{Batch, Heads, Impossible, MaterialNeed, SupplyNeed, supplies};
use crate::lesson::{Lesson, Material};
use crate::quantity::Volume;
use std::sync::Arc;

/// What is mixed, what goes over the dry canvases, what else is needed, and what is bought.
pub(super) struct Provision {
    pub mixing: Vec<Batch>,
    pub finishing: Vec<MaterialNeed>,
    pub supplies: Vec<SupplyNeed>,
    /// What batches and finishes take together, one line a material.
    pub materials: Vec<MaterialNeed>,
}

impl Provision {
    pub(super) fn needs(&self) -> Needs<'_> {
        Needs { materials: &self.materials, supplies: &self.supplies }
    }
}

/// Provides for the demand of a class and a margin on each of its colours and finishes.
pub(super) fn provision(
    lesson: &Lesson,
    heads: Heads,
    demand: &ClassDemand,
    margin: Margin,
) -> Result<Provision, Impossible> {
    let contents =
        |demand: &Demand| Contents { expected: demand.expected(), reserve: margin.on(demand) };
    let steps = Steps::of(lesson);
    let mixing = demand
        .pots
        .iter()
        .map(|pot| {
            let in_jars = in_jars(lesson, &pot.colour, &pot.mix).volume;
            let at_hand = AtHand { fills: pot.fills, in_jars };
            potful(&pot.colour, &pot.mix, pot.cups, contents(&pot.demand), at_hand, steps)
        })
        .collect::<Result<Vec<_>, _>>()?;
    let finishing: Vec<MaterialNeed> = demand
        .finishes
        .iter()
        .map(|(material, demand)| finish(material, contents(demand)))
        .collect();
    let supplies = supplies::supplies(lesson, &mixing, heads)?;
    let materials = materials(&mixing, &finishing);
    Ok(Provision { mixing, finishing, supplies, materials })
}

/// Finishes come straight from their bottle, so nothing is rounded.
fn finish(material: &Arc<Material>, Contents { expected, reserve }: Contents) -> MaterialNeed {
    let volume = expected + reserve;
    let mass = volume * material.density;
    MaterialNeed { material: Arc::clone(material), expected, reserve, volume, mass }
}

/// Every material of the class: what all batches hold, and the finishes; one line a
/// material, in the order of `MaterialKind`.
fn materials(mixing: &[Batch], finishing: &[MaterialNeed]) -> Vec<MaterialNeed> {
    let mut needs = Vec::new();
    for need in mixing.iter().flat_map(ingredients).chain(finishing.iter().cloned()) {
        add(&mut needs, need);
    }
    needs.sort_by_key(|need| need.material.kind);
    needs
}

/// What goes into a batch; of each, the same part is in reserve as of the batch.
fn ingredients(batch: &Batch) -> impl Iterator<Item = MaterialNeed> {
    batch.ingredients.iter().map(|poured| {
        let part = |of: Volume| of * (poured.volume / batch.volume).value;
        MaterialNeed {
            material: Arc::clone(&poured.material),
            expected: part(batch.expected),
            reserve: part(batch.reserve),
            volume: poured.volume,
            mass: poured.mass,
        }
    })
}

fn add(needs: &mut Vec<MaterialNeed>, more: MaterialNeed) {
    match needs.iter_mut().find(|need| need.material.name == more.material.name) {
        Some(need) => {
            need.expected += more.expected;
            need.reserve += more.reserve;
            need.volume += more.volume;
            need.mass += more.mass;
        }
        None => needs.push(more),
    }
}
