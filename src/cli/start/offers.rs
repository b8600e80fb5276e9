//! What is offered in each language: names of our own, and colours to begin with.

use crate::lesson::Language;
use serde::Deserialize;

/// Swatches of colours whose names say nothing of the colour, one after the other.
const SWATCHES: [&str; 8] =
    ["#4E79A7", "#C47A3D", "#5B8F5B", "#8C5A8C", "#B0574F", "#3F8F93", "#A08A3C", "#7A6A5A"];

/// What is offered in one language.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct Offers {
    pub(super) title: String,
    pub(super) outlines: Vec<OutlineName>,
    pub(super) techniques: Vec<Spoken>,
    /// The first is offered.
    pub(super) consistencies: Vec<Spoken>,
    /// What the one layer of most techniques is called.
    pub(super) layer: String,
    /// The colour of a layer under another.
    pub(super) under: String,
    /// The palette of one’s own colours.
    pub(super) own: String,
    pub(super) palettes: Vec<OfferedPalette>,
    pub(super) colours: Vec<OfferedColour>,
}

/// What a canvas of an outline is called.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct OutlineName {
    pub(super) outline: String,
    pub(super) name: String,
}

/// A name and what it means, in a few words of English.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct Spoken {
    pub(super) name: String,
    pub(super) says: String,
}

/// Colours and their parts, as one would type them.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct OfferedPalette {
    pub(super) name: String,
    pub(super) parts: String,
}

/// How a colour looks and weighs.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct OfferedColour {
    pub(super) name: String,
    pub(super) swatch: String,
    pub(super) density: Option<String>,
}

impl Offers {
    /// Those of a language.
    ///
    /// # Errors
    /// What is wrong with the file that came with the program.
    pub(super) fn of(language: Language) -> Result<Self, serde_yaml::Error> {
        serde_yaml::from_str(match language {
            Language::English => include_str!("../../../lessons/start/en.yaml"),
            Language::Spanish => include_str!("../../../lessons/start/es.yaml"),
        })
    }

    /// What is known of a colour, or guessed from the words of its name; the `nth` of those
    /// that say nothing gets any swatch.
    pub(super) fn colour(&self, name: &str, nth: usize) -> OfferedColour {
        let lower = name.to_lowercase();
        let same = self.colours.iter().find(|colour| colour.name == lower);
        let by_word = || {
            lower.split(|c: char| !c.is_alphanumeric()).rev().find_map(|word| {
                let colour = self.colours.iter().find(|colour| colour.name == word)?;
                Some(OfferedColour { density: None, ..colour.clone() })
            })
        };
        same.cloned().or_else(by_word).unwrap_or_else(|| OfferedColour {
            name: name.to_owned(),
            swatch: SWATCHES.get(nth % SWATCHES.len()).copied().unwrap_or_default().to_owned(),
            density: None,
        })
    }
}
