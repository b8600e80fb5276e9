//! Names that the lesson's own file gives and that nothing uses. What stands in data files is
//! shared with other lessons and is no one's leftover.

use super::super::desk::Desk;
use super::super::field::{Entries, Field};
use super::super::model::{Canvas, Jar, Unused};
use super::super::problem::Sort;
use super::super::raw;
use super::super::tree::NodeId;
use std::collections::BTreeSet;

/// In the order of the sections, and in each in that of the file.
pub(super) fn unused(
    desk: Desk<'_>,
    root: NodeId,
    raw: &raw::Lesson,
    (canvases, jars): (&[Canvas], &[Jar]),
) -> Vec<Unused> {
    let lesson = desk.tree.file(root);
    let mut unused = Vec::new();
    let mut look = |sort, section, names: Vec<(&str, NodeId)>, used: BTreeSet<&str>| {
        for (name, node) in names {
            if desk.tree.file(node) == lesson && !used.contains(name) {
                unused.push(Unused { sort, section, name: name.to_owned() });
            }
        }
    };
    let layers = || canvases.iter().flat_map(|canvas| &canvas.layers);
    let mixes = layers().map(|layer| layer.mix.name.as_str());
    let mixes = mixes.chain(jars.iter().map(|jar| jar.mix.as_str()));
    let techniques = canvases.iter().map(|canvas| canvas.technique.name.as_str());
    let finishes = canvases.iter().flat_map(|canvas| &canvas.finishes);
    let finishes = finishes.map(|finish| finish.name.as_str());
    look(Sort::Palette, "palettes", names(&raw.palettes), palettes(raw));
    look(Sort::Colour, "colours", names(&raw.colours), colours(raw, jars));
    look(Sort::Mix, "mixes", names(&raw.mixes), mixes.collect());
    look(Sort::Technique, "techniques", names(&raw.techniques), techniques.collect());
    look(Sort::Finish, "finishes", names(&raw.finishes), finishes.collect());
    unused
}

fn names<T>(field: &Field<Entries<T>>) -> Vec<(&str, NodeId)> {
    match field {
        Field::Present(entries) => {
            entries.0.iter().map(|entry| (entry.name.as_str(), entry.node)).collect()
        }
        _ => Vec::new(),
    }
}

/// Palettes that a canvas names.
fn palettes(raw: &raw::Lesson) -> BTreeSet<&str> {
    let Field::Present(canvases) = &raw.canvases else { return BTreeSet::new() };
    let canvases = canvases.0.iter().filter_map(|entry| entry.value.as_ref());
    let palettes = canvases.filter_map(|canvas| match &canvas.palette {
        Field::Present(written) => Some(written.text.as_str()),
        _ => None,
    });
    palettes.collect()
}

/// Colours of palettes, poured or not (one leftover is told once), and of jars.
fn colours<'a>(raw: &'a raw::Lesson, jars: &'a [Jar]) -> BTreeSet<&'a str> {
    let mut colours: BTreeSet<&str> = jars.iter().map(|jar| jar.colour.as_str()).collect();
    if let Field::Present(palettes) = &raw.palettes {
        let layers = palettes.0.iter().filter_map(|palette| palette.value.as_ref());
        let layers = layers.flat_map(|layers| &layers.0).filter_map(|layer| layer.value.as_ref());
        colours.extend(layers.flat_map(|shares| &shares.0).map(|entry| entry.name.as_str()));
    }
    colours
}
