//! What needs more care than a note on a sheet. The notes themselves are chosen in
//! `cautions`; labels and safety data sheets come before all of it.

use super::{Cause, Matter, Needy, Product, Warning, YOUNG, path, written};
use crate::lesson::{Canvas, Colour, Ingredient, Lesson, Material, Practice, When};
use crate::plan::cautions::{has_pigment, practices, telltales};

/// Tools that burn, the worse first.
const HOT: [Practice; 2] = [Practice::Torch, Practice::HeatGun];
/// What goes into a cup or over a canvas and is not for young hands.
const ADDED: [Practice; 3] = [Practice::Alcohol, Practice::Silicone, Practice::Resin];

/// What there is to say of flames, additives and products.
pub(super) fn warnings(lesson: &Lesson) -> Vec<Warning> {
    let done = practices(lesson);
    let young = lesson.class.youngest_age.filter(|age| *age < YOUNG);
    let found = |some: &'static [Practice]| {
        let some = some.iter().copied().filter(|practice| done.contains(practice));
        some.map(|practice| (practice, source(lesson, practice)))
    };
    let mut warnings = Vec::new();
    if let Some(age) = young {
        warnings.extend(found(&HOT).map(|(tool, (cause, path))| Warning {
            matter: Matter::HeatWithChildren { tool, age, cause },
            path,
        }));
        warnings.extend(found(&ADDED).map(|(practice, (cause, path))| Warning {
            matter: Matter::AdditivesWithChildren { practice, age, cause },
            path,
        }));
    }
    if done.contains(&Practice::Alcohol) {
        let (cause, _) = source(lesson, Practice::Alcohol);
        warnings.extend(found(&HOT).map(|(tool, (_, path))| Warning {
            matter: Matter::FlameAndAlcohol { tool, cause: cause.clone() },
            path,
        }));
    }
    warnings.extend(products(lesson, young));
    warnings
}

/// What brings a practice into the lesson, and where that stands.
fn source(lesson: &Lesson, practice: Practice) -> (Cause, Vec<String>) {
    if let Some(at) = lesson.practices.iter().position(|own| *own == practice) {
        return (Cause::Lesson, path(["practices", &format!("no. {}", at + 1)]));
    }
    let brings = |canvas: &&Canvas| canvas.technique.practices.contains(&practice);
    if let Some(canvas) = lesson.canvases.iter().find(brings) {
        let cause = Cause::Technique(canvas.technique.name.clone());
        return (cause, path(["canvases", &canvas.name, "technique"]));
    }
    let tells = |material: &Material| telltales(&material.name).any(|told| told == practice);
    let mut materials = materials(lesson);
    match materials.find(|(material, _)| tells(material)) {
        Some((material, path)) => (Cause::Material(material.name.clone()), path),
        None => (Cause::Lesson, path(["practices"])),
    }
}

/// What goes into cups besides paint and onto canvases, and where the lesson chooses it.
fn materials(lesson: &Lesson) -> impl Iterator<Item = (&Material, Vec<String>)> {
    lesson.canvases.iter().flat_map(move |canvas| {
        let mixes = canvas.layers.iter().map(|layer| &layer.mix);
        let mixed = mixes.flat_map(move |mix| {
            let parts = mix.parts.iter().filter_map(|part| match &part.what {
                Ingredient::ThePaint => None,
                Ingredient::Other(material) => Some((&**material, "parts")),
            });
            let drops = mix.drops.iter().map(|drops| (&*drops.material, "drops"));
            parts.chain(drops).map(move |(material, key)| {
                let of_mix = path(["mixes", &mix.name, key, &material.name]);
                let chosen = path(["canvases", &canvas.name, "consistency"]);
                (material, written(lesson, [of_mix, chosen]))
            })
        });
        let finishes = canvas
            .finishes
            .iter()
            .map(move |finish| (&*finish.material, path(["canvases", &canvas.name, "finishes"])));
        mixed.chain(finishes)
    })
}

/// Each colour and each material that calls for care, once.
fn products(lesson: &Lesson, young: Option<u8>) -> Vec<Warning> {
    let mut warnings: Vec<Warning> = Vec::new();
    let layers = lesson.canvases.iter().flat_map(|canvas| &canvas.layers);
    for (colour, _) in layers.flat_map(|layer| &layer.colours) {
        let why = colour.caution.clone().map(Needy::Label);
        let why = why.map(|why| (why, "caution"));
        let why = why.or_else(|| Some((pigments(lesson, colour, young?)?, "pigments")));
        if let Some((why, key)) = why {
            let name = colour.name.clone();
            let path = path(["colours", &name, key]);
            add(
                &mut warnings,
                Warning { matter: Matter::ColourCaution(Product { name, why }), path },
            );
        }
    }
    for (material, _) in materials(lesson) {
        if let Some(caution) = &material.caution {
            let (name, why) = (material.name.clone(), Needy::Label(caution.clone()));
            let path = path(["materials", &name, "caution"]);
            add(
                &mut warnings,
                Warning { matter: Matter::ColourCaution(Product { name, why }), path },
            );
        }
    }
    warnings
}

fn add(warnings: &mut Vec<Warning>, warning: Warning) {
    if !warnings.contains(&warning) {
        warnings.push(warning);
    }
}

/// The pigments of a colour that a safety note of the lesson names.
fn pigments(lesson: &Lesson, colour: &Colour, age: u8) -> Option<Needy> {
    let noted = lesson.cautions.iter().any(|caution| match &caution.when {
        When::Pigments(any) => has_pigment(colour, any),
        _ => false,
    });
    noted.then(|| Needy::Pigments { pigments: colour.pigments.clone(), age })
}
