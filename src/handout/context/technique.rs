//! Techniques, mixes and colours.

use super::batch::{consistency, hex};
use crate::handout::words::{Words, fill};
use crate::lesson::{Colour, Consistency, Ingredient, Mix, PartsBy, Technique, TechniqueLayer};
use crate::plan::{Plan, StepKind, rule_film};
use crate::quantity::show::Show;
use crate::quantity::{Length, UnitSystem};
use serde::Serialize;
use std::sync::Arc;

/// A way of pouring.
#[derive(Debug, Clone, Serialize)]
pub struct TechniqueText {
    pub name: String,
    pub summary: String,
    /// Whether the lesson uses it.
    pub used: bool,
    pub layers: Vec<TechniqueLayerText>,
}

/// One of its layers.
#[derive(Debug, Clone, Serialize)]
pub struct TechniqueLayerText {
    pub name: String,
    pub thin: FilmText,
    pub medium: FilmText,
    pub thick: FilmText,
    pub basis: String,
}

/// A film and what it means.
#[derive(Debug, Clone, Serialize)]
pub struct FilmText {
    pub film: String,
    pub coverage: String,
    /// Of the rule of thumb.
    pub share_of_rule: String,
}

/// A recipe.
#[derive(Debug, Clone, Serialize)]
pub struct MixText {
    pub name: String,
    pub consistency: String,
    pub by: String,
    pub parts: String,
    pub drops: String,
}

/// A colour of the lesson.
#[derive(Debug, Clone, Serialize)]
pub struct ColourText {
    pub name: String,
    pub paint: String,
    pub swatch: String,
    pub density: String,
    pub pigments: String,
}

pub(super) fn techniques(plan: &Plan, words: &Words, show: &Show) -> Vec<TechniqueText> {
    let used = |technique: &Technique| {
        plan.lesson.canvases.iter().any(|canvas| canvas.technique.name == technique.name)
    };
    plan.lesson
        .techniques
        .iter()
        .map(|technique| TechniqueText {
            name: technique.name.clone(),
            summary: technique.summary.clone(),
            used: used(technique),
            layers: technique
                .layers
                .iter()
                .map(|layer| layer_text(plan, technique, layer, words, show))
                .collect(),
        })
        .collect()
}

/// What a film covers, the way the trade says it: `25 in² per fl oz`, or
/// `545 cm² per 100 mL`.
pub(super) fn coverage(film: Length, words: &Words, show: &Show) -> String {
    finer_coverage(film, 0, words, show)
}

fn finer_coverage(film: Length, finer: usize, words: &Words, show: &Show) -> String {
    let pattern = match show.units() {
        UnitSystem::Us => &words.steps.per_fluid_ounce,
        UnitSystem::Metric => &words.steps.per_100_millilitres,
    };
    fill(pattern, &[("amount", &show.covered(film, finer))])
}

fn layer_text(
    plan: &Plan,
    technique: &Technique,
    layer: &TechniqueLayer,
    words: &Words,
    show: &Show,
) -> TechniqueLayerText {
    let film = |consistency| {
        let film = layer.films.of(consistency).typical();
        let finer = finer_digits(plan, technique, layer, consistency);
        FilmText {
            film: show.film(film),
            coverage: finer_coverage(film, finer, words, show),
            share_of_rule: show.percent((film / rule_film()).value),
        }
    };
    TechniqueLayerText {
        name: layer.name.clone(),
        thin: film(Consistency::Thin),
        medium: film(Consistency::Medium),
        thick: film(Consistency::Thick),
        basis: layer.basis.clone(),
    }
}

/// How many digits more than usual the worked sums of the lesson print of what a layer
/// covers, at most.
fn finer_digits(
    plan: &Plan,
    technique: &Technique,
    layer: &TechniqueLayer,
    consistency: Consistency,
) -> usize {
    let usual = match plan.lesson.print.units {
        UnitSystem::Us => 1,
        // Of a millilitre; tables print a hundred of them.
        UnitSystem::Metric => 2,
    };
    let poured = plan.lesson.canvases.iter().zip(&plan.canvases).zip(&plan.worked);
    poured
        .filter(|((canvas, _), _)| canvas.technique.name == technique.name)
        .filter(|((_, planned), _)| {
            let mut layers = planned.layers.iter();
            layers.any(|l| l.name == layer.name && l.layer.mix.consistency == consistency)
        })
        .flat_map(|(_, worked)| &worked.steps)
        .filter(|step| step.what == StepKind::LayerPaint { layer: layer.name.clone() })
        .filter_map(|step| step.from.get(1))
        .map(|covers| usize::from(covers.decimals).saturating_sub(usual))
        .max()
        .unwrap_or(0)
}

/// The mixes that the lesson's canvases use, each once.
pub(super) fn mixes(plan: &Plan, words: &Words, show: &Show) -> Vec<MixText> {
    let mut seen: Vec<&Arc<Mix>> = Vec::new();
    for layer in plan.lesson.canvases.iter().flat_map(|canvas| &canvas.layers) {
        if !seen.iter().any(|mix| mix.name == layer.mix.name) {
            seen.push(&layer.mix);
        }
    }
    seen.into_iter().map(|mix| mix_text(mix, words, show)).collect()
}

fn mix_text(mix: &Mix, words: &Words, show: &Show) -> MixText {
    let parts: Vec<String> = mix
        .parts
        .iter()
        .map(|part| {
            let what = match &part.what {
                Ingredient::ThePaint => words.mixes.paint.as_str(),
                Ingredient::Other(material) => material.name.as_str(),
            };
            let pattern = if part.parts > 1.0 { &words.mixes.parts } else { &words.mixes.one_part };
            fill(pattern, &[("count", &parts_count(part.parts, show)), ("what", what)])
        })
        .collect();
    let drops: Vec<String> = mix
        .drops
        .iter()
        .map(|drops| {
            fill(
                &words.mixes.drops,
                &[
                    ("count", &show.trimmed(drops.count, 1)),
                    ("what", &drops.material.name),
                    ("volume", &show.volume(drops.per)),
                ],
            )
        })
        .collect();
    MixText {
        name: mix.name.clone(),
        consistency: consistency(mix.consistency, words),
        by: match mix.by {
            PartsBy::Volume => words.mixes.by_volume.clone(),
            PartsBy::Weight => words.mixes.by_weight.clone(),
        },
        parts: parts.join(&words.mixes.between),
        drops: drops.join(&words.mixes.between),
    }
}

/// Parts as a cook says them: ½, 1, 1½, 2.
fn parts_count(parts: f64, show: &Show) -> String {
    let whole = parts.floor();
    let fraction = match parts - whole {
        f if (f - 0.25).abs() < 1e-9 => "¼",
        f if (f - 0.5).abs() < 1e-9 => "½",
        f if (f - 0.75).abs() < 1e-9 => "¾",
        f if (f - 1.0 / 3.0).abs() < 1e-3 => "⅓",
        f if (f - 2.0 / 3.0).abs() < 1e-3 => "⅔",
        _ => return show.trimmed(parts, 2),
    };
    if whole == 0.0 {
        fraction.to_string()
    } else {
        format!("{}{fraction}", show.trimmed(whole, 0))
    }
}

/// The colours of the lesson, each once, in the order they first appear.
pub(super) fn colours(plan: &Plan, show: &Show) -> Vec<ColourText> {
    let mut seen: Vec<&Arc<Colour>> = Vec::new();
    let layers = plan.lesson.canvases.iter().flat_map(|canvas| &canvas.layers);
    for (colour, _) in layers.flat_map(|layer| &layer.colours) {
        if !seen.iter().any(|known| known.name == colour.name) {
            seen.push(colour);
        }
    }
    seen.into_iter()
        .map(|colour| ColourText {
            name: colour.name.clone(),
            paint: colour.paint.name.clone(),
            swatch: hex(colour.swatch),
            density: show.density(colour.paint.density),
            pigments: colour.pigments.join(", "),
        })
        .collect()
}
