//! Safety notes.

use crate::lesson::{Caution, Ingredient, Lesson};
use serde::Serialize;

/// A safety note as text.
#[derive(Debug, Clone, Serialize)]
pub struct CautionText {
    /// Its key in the data file.
    pub name: String,
    /// Word of the drawn sign.
    pub sign: &'static str,
    pub heading: String,
    pub reason: String,
    pub source: String,
}

pub(super) fn caution(caution: &Caution) -> CautionText {
    CautionText {
        name: caution.name.clone(),
        sign: caution.sign.word(),
        heading: caution.heading.clone(),
        reason: caution.reason.clone(),
        source: caution.source.clone(),
    }
}

/// What the label of a product warns of, as the lesson says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LabelText {
    /// The colour or material.
    pub name: String,
    pub caution: String,
}

/// Of every colour and material of a lesson that carries a caution, once.
pub(super) fn labels(lesson: &Lesson) -> Vec<LabelText> {
    let mut labels: Vec<LabelText> = Vec::new();
    let layers = || lesson.canvases.iter().flat_map(|canvas| &canvas.layers);
    let colours = layers().flat_map(|layer| &layer.colours);
    let colours = colours.map(|(colour, _)| (colour.name.as_str(), &colour.caution));
    let parts = layers().flat_map(|layer| &layer.mix.parts).filter_map(|part| match &part.what {
        Ingredient::ThePaint => None,
        Ingredient::Other(material) => Some(&**material),
    });
    let drops = layers().flat_map(|layer| &layer.mix.drops).map(|drops| &*drops.material);
    let finishes = lesson.canvases.iter().flat_map(|canvas| &canvas.finishes);
    let materials = parts.chain(drops).chain(finishes.map(|finish| &*finish.material));
    let materials = materials.map(|material| (material.name.as_str(), &material.caution));
    for (name, caution) in colours.chain(materials) {
        let label = label(name, caution.as_deref());
        labels.extend(label.filter(|label| !labels.contains(label)));
    }
    labels
}

/// What there is to say of one product, if its label warns of something.
pub(super) fn label(name: &str, caution: Option<&str>) -> Option<LabelText> {
    Some(LabelText { name: name.to_owned(), caution: sentence(caution?) })
}

/// A text with a stop at its end, as another sentence may follow.
pub(super) fn sentence(text: &str) -> String {
    let text = text.trim_end();
    let stop = if text.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{text}{stop}")
}
