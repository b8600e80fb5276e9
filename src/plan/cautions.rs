//! Which safety notes this lesson needs.

use crate::lesson::{Caution, Colour, Ingredient, Lesson, Material, Practice, When};

/// Words in the name of a material that bring a practice with them; "alcohol", "isopropanol" and
/// "resin" are in the Spanish words too.
const TELLTALE: [(&str, Practice); 5] = [
    ("silicone", Practice::Silicone),
    ("silicona", Practice::Silicone),
    ("alcohol", Practice::Alcohol),
    ("isopropanol", Practice::Alcohol),
    ("resin", Practice::Resin),
];

/// The notes that apply, in the order of the lesson (worst first).
pub(super) fn cautions(lesson: &Lesson) -> Vec<Caution> {
    let practices = practices(lesson);
    lesson
        .cautions
        .iter()
        .filter(|caution| match &caution.when {
            When::Always => true,
            When::Doing(any) => any.iter().any(|practice| practices.contains(practice)),
            When::YoungerThan(age) => {
                lesson.class.youngest_age.is_some_and(|youngest| youngest < *age)
            }
            When::Pigments(any) => colours(lesson).any(|colour| has_pigment(colour, any)),
        })
        .cloned()
        .collect()
}

/// What is done in the lesson: by its own word, by its techniques, and by what goes into
/// its cups and onto its finishes. Each once, in the order of `Practice`.
pub fn practices(lesson: &Lesson) -> Vec<Practice> {
    let own = lesson.practices.iter().copied();
    let techniques = lesson.canvases.iter().flat_map(|canvas| &canvas.technique.practices).copied();
    let contents = materials(lesson).flat_map(|material| telltales(&material.name));
    let mut practices: Vec<Practice> = own.chain(techniques).chain(contents).collect();
    practices.sort_unstable();
    practices.dedup();
    practices
}

pub(super) fn telltales(name: &str) -> impl Iterator<Item = Practice> + use<> {
    let name = name.to_lowercase();
    TELLTALE.into_iter().filter(move |(word, _)| name.contains(word)).map(|(_, practice)| practice)
}

fn materials(lesson: &Lesson) -> impl Iterator<Item = &Material> {
    lesson.canvases.iter().flat_map(|canvas| {
        let mixes = canvas.layers.iter().map(|layer| &layer.mix);
        let parts = mixes.clone().flat_map(|mix| &mix.parts).filter_map(|part| match &part.what {
            Ingredient::ThePaint => None,
            Ingredient::Other(material) => Some(&**material),
        });
        let drops = mixes.flat_map(|mix| &mix.drops).map(|drops| &*drops.material);
        let finishes = canvas.finishes.iter().map(|finish| &*finish.material);
        parts.chain(drops).chain(finishes)
    })
}

fn colours(lesson: &Lesson) -> impl Iterator<Item = &Colour> {
    lesson
        .canvases
        .iter()
        .flat_map(|canvas| &canvas.layers)
        .flat_map(|layer| &layer.colours)
        .map(|(colour, _)| &**colour)
}

pub(super) fn has_pigment(colour: &Colour, any: &[String]) -> bool {
    colour.pigments.iter().any(|pigment| any.iter().any(|one| one.eq_ignore_ascii_case(pigment)))
}
