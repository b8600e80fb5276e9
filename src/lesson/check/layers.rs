//! Palette and consistency held against the layers of a technique.

use super::super::desk::{Catalogue, Desk};
use super::super::field::{At, Entries, Written};
use super::super::model::{CanvasLayer, Mix, Technique};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use super::palettes::Palette;
use crate::quantity::nearest::nearest;
use std::sync::Arc;

/// The layers of a canvas: the technique says which, the palette their colours, the
/// consistency their mix.
pub(super) fn layers(
    technique: &Technique,
    palette: &Palette,
    mixes: Vec<Arc<Mix>>,
) -> Option<Vec<CanvasLayer>> {
    let layers = technique.layers.iter().zip(mixes).map(|(layer, mix)| {
        let (.., shares) = palette.layers.iter().find(|(name, ..)| *name == layer.name)?;
        Some(CanvasLayer { mix, colours: shares.clone()? })
    });
    layers.collect()
}

/// One mix for each layer of the technique.
pub(super) fn mixes(
    desk: Desk<'_>,
    technique: &Technique,
    choice: &At<raw::MixChoice>,
    known: &Catalogue<Arc<Mix>>,
) -> Option<Vec<Arc<Mix>>> {
    match &choice.value {
        raw::MixChoice::One(written) => {
            let mix = known.find(desk, written)?;
            Some(technique.layers.iter().map(|_| Arc::clone(&mix)).collect())
        }
        raw::MixChoice::ByLayer(entries) => by_layer(desk, technique, choice.node, entries, known),
    }
}

fn by_layer(
    desk: Desk<'_>,
    technique: &Technique,
    node: NodeId,
    entries: &Entries<Written<String>>,
    known: &Catalogue<Arc<Mix>>,
) -> Option<Vec<Arc<Mix>>> {
    let mut found = Vec::new();
    for entry in &entries.0 {
        let mix = entry.value.as_ref().and_then(|written| known.find(desk, written));
        if has_layer(technique, &entry.name) {
            found.push((entry.name.as_str(), mix));
        } else {
            unknown_layer(desk, technique, &entry.name, entry.node);
        }
    }
    let mixes: Vec<Option<Arc<Mix>>> = technique
        .layers
        .iter()
        .map(|layer| match found.iter().find(|(name, _)| *name == layer.name) {
            Some((_, mix)) => mix.clone(),
            None => {
                missing_layer(desk, technique, &layer.name, node, None);
                None
            }
        })
        .collect();
    mixes.into_iter().collect()
}

/// Whether the palette has all layers of the technique; logs each that is missing at
/// `node`, where the canvas names the palette.
pub(super) fn covers(
    desk: Desk<'_>,
    technique: &Technique,
    palette: &Palette,
    node: NodeId,
    palette_node: Option<NodeId>,
) -> bool {
    let missing: Vec<_> = technique
        .layers
        .iter()
        .filter(|layer| !palette.layers.iter().any(|(name, ..)| *name == layer.name))
        .collect();
    for layer in &missing {
        missing_layer(desk, technique, &layer.name, node, palette_node);
    }
    missing.is_empty()
}

/// Layers of a palette that none of the techniques poured with it has.
pub(super) fn leftovers(desk: Desk<'_>, palette: &Palette, techniques: &[Arc<Technique>]) {
    let Some(first) = techniques.first() else { return };
    for (name, node, _) in &palette.layers {
        if !techniques.iter().any(|technique| has_layer(technique, name)) {
            unknown_layer(desk, first, name, *node);
        }
    }
}

fn has_layer(technique: &Technique, name: &str) -> bool {
    technique.layers.iter().any(|layer| layer.name == name)
}

fn unknown_layer(desk: Desk<'_>, technique: &Technique, layer: &str, node: NodeId) {
    let known: Vec<String> = technique.layers.iter().map(|layer| layer.name.clone()).collect();
    let nearest = nearest(layer, known.iter().map(String::as_str)).map(str::to_owned);
    let (technique, layer) = (technique.name.clone(), layer.to_owned());
    let kind = ProblemKind::LayerUnknown { technique, layer, nearest, known };
    desk.fault_of_name(node, kind, None);
}

fn missing_layer(
    desk: Desk<'_>,
    technique: &Technique,
    layer: &str,
    node: NodeId,
    palette: Option<NodeId>,
) {
    // A slip of the finger is told once: as the layer that is not known.
    let misspelt = desk.log.any(|problem| match &problem.kind {
        ProblemKind::LayerUnknown { nearest, technique: of, .. } => {
            nearest.as_deref() == Some(layer) && *of == technique.name
        }
        _ => false,
    });
    if misspelt {
        return;
    }
    let (technique, layer) = (technique.name.clone(), layer.to_owned());
    let kind = ProblemKind::LayerMissing { technique, layer };
    match palette {
        Some(palette) => desk.fault_with(node, kind, palette),
        None => desk.fault(node, kind),
    }
}
