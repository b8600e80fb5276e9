//! Palette and consistency held against the layers of a technique.

use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::{At, Entries, Written};
use super::super::model::{CanvasLayer, Mix, Technique};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use super::palettes::Palette;
use super::techniques::Way;
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

/// One mix for each layer of the technique. Mixes are known by name even where the
/// technique is not.
pub(super) fn mixes(
    desk: Desk<'_>,
    way: Option<&Way>,
    choice: &At<raw::MixChoice>,
    known: &Catalogue<Arc<Mix>>,
) -> Option<Vec<Arc<Mix>>> {
    match &choice.value {
        raw::MixChoice::One(written) => {
            let mix = known.find(desk, written)?;
            Some(way?.layers.iter().map(|_| Arc::clone(&mix)).collect())
        }
        raw::MixChoice::ByLayer(entries) => by_layer(desk, way, choice.node, entries, known),
    }
}

fn by_layer(
    desk: Desk<'_>,
    way: Option<&Way>,
    node: NodeId,
    entries: &Entries<Written<String>>,
    known: &Catalogue<Arc<Mix>>,
) -> Option<Vec<Arc<Mix>>> {
    let mut found = Vec::new();
    for entry in &entries.0 {
        let mix = entry.value.as_ref().and_then(|written| known.find(desk, written));
        found.push((entry.name.as_str(), mix));
        if let Some(way) = way {
            refuse_unknown(desk, way, &entry.name, entry.node);
        }
    }
    let way = way?;
    let mixes: Vec<Option<Arc<Mix>>> = way
        .layers
        .iter()
        .map(|layer| match found.iter().find(|(name, _)| name == layer) {
            Some((_, mix)) => mix.clone(),
            None => {
                missing_layer(desk, way, layer, node, None);
                None
            }
        })
        .collect();
    mixes.into_iter().collect()
}

/// Logs each layer of the technique that the palette lacks at `node`, where the canvas
/// names the palette.
pub(super) fn covers(
    desk: Desk<'_>,
    way: &Way,
    palette: &Palette,
    node: NodeId,
    palette_node: Option<NodeId>,
) {
    for layer in &way.layers {
        if !palette.layers.iter().any(|(name, ..)| name == layer) {
            missing_layer(desk, way, layer, node, palette_node);
        }
    }
}

/// Layers of a palette that none of the techniques poured with it has.
pub(super) fn leftovers(desk: Desk<'_>, palette: &Palette, ways: &[&Way]) {
    let Some(first) = ways.first() else { return };
    for (name, node, _) in &palette.layers {
        if !ways.iter().any(|way| may_have(desk, way, name)) {
            refuse_unknown(desk, first, name, *node);
        }
    }
}

/// Whether a technique has a layer, or may have it for all that is known.
fn may_have(desk: Desk<'_>, way: &Way, layer: &str) -> bool {
    let is_unsure =
        way.layers.is_empty() || desk.unseen.hides("techniques") || desk.unseen.holds(&way.name);
    is_unsure || way.layers.iter().any(|name| name == layer)
}

fn refuse_unknown(desk: Desk<'_>, way: &Way, layer: &str, node: NodeId) {
    if may_have(desk, way, layer) || desk.log.is_full() {
        return;
    }
    let known = way.layers.clone();
    let nearest = nearest(layer, known.iter().map(String::as_str)).map(str::to_owned);
    let (technique, layer) = (way.name.clone(), layer.to_owned());
    let kind = ProblemKind::LayerUnknown { technique, layer, nearest, known };
    desk.fault_of_name(node, kind, None);
}

fn missing_layer(desk: Desk<'_>, way: &Way, layer: &str, node: NodeId, palette: Option<NodeId>) {
    // A slip of the finger is told once: as the layer that is not known.
    let inside = desk.tree.path(palette.unwrap_or(node));
    let misspelt = desk.log.any(|problem| match &problem.kind {
        ProblemKind::LayerUnknown { nearest, .. } => {
            nearest.as_deref() == Some(layer)
                && problem.path.split_last().is_some_and(|(_, above)| *above == inside)
        }
        _ => false,
    });
    if misspelt {
        return;
    }
    let (technique, layer) = (way.name.clone(), layer.to_owned());
    let kind = ProblemKind::LayerMissing { technique, layer };
    match palette {
        Some(palette) => desk.fault_with(node, kind, palette),
        None => desk.fault(node, kind),
    }
}
