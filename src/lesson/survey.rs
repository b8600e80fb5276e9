//! A look over one file before it is laid over others: a key of a lesson in a data file,
//! a section whose name is misspelt, a section that nobody knows.

use super::decode::unknown_key;
use super::limits;
use super::model::{Language, paint_of};
use super::problem::{Problem, ProblemKind};
use super::raw;
use super::tree::{Log, NodeId, Stands, Tree};
use super::unseen::{DataFiles, Unseen};
use crate::quantity::nearest::nearest;

/// Sections of named parts, each with entries of its own.
const OF_PARTS: [&str; 10] = [
    "canvases",
    "palettes",
    "colours",
    "materials",
    "mixes",
    "techniques",
    "finishes",
    "supplies",
    "shops",
    "cautions",
];

/// Sections of plain entries.
const OF_ENTRIES: [&str; 11] = [
    "class",
    "sizes",
    "mixing",
    "reserve",
    "stock",
    "timetable",
    "exercises",
    "room",
    "washing",
    "money",
    "accepted",
];

/// Looks over the file of this root, which may hold these keys, for what of it remains
/// unseen. A misspelt section is told and then read as the one that is meant: everything
/// in it is as right or wrong as if it had its name.
pub(super) fn survey(
    tree: &mut Tree,
    log: &Log,
    unseen: &mut Unseen,
    (root, may_hold): (NodeId, &[&str]),
) {
    for child in tree.children(root).to_vec() {
        let key = tree.key(child).unwrap_or_default().to_owned();
        if raw::KEYS.contains(&key.as_str()) {
            if !may_hold.contains(&key.as_str()) {
                let (place, path) = (tree.key_place(child), tree.path(child));
                let kind = ProblemKind::LessonKeyInData { key: key.clone() };
                log.add(Problem { place, path, kind, also: None });
                if key == "use" {
                    unseen.files = DataFiles::Lost;
                }
            }
        } else if tree.is_mapping(child) {
            match meant(tree, root, child).filter(|meant| may_hold.contains(meant)) {
                Some(meant) => {
                    unknown_key(tree, log, child, (Some(meant), &raw::KEYS));
                    rename(tree, child, meant);
                }
                None => names_of(tree, child).for_each(|name| unseen.add(name)),
            }
        } else if nearest(&key, ["use"]).is_some() || names_files(tree, child) {
            unseen.files = DataFiles::Lost;
        }
    }
}

/// The names in a section that nobody knows, and of paints that it may stand for.
fn names_of(tree: &Tree, section: NodeId) -> impl Iterator<Item = String> {
    tree.children(section).iter().flat_map(|part| {
        let name = tree.key(*part).unwrap_or_default();
        let paint = tree.under(*part, "paint").map(|paint| tree.text(paint).to_owned());
        let paints = match paint {
            Some(paint) => vec![paint],
            None => Language::ALL.iter().map(|language| paint_of(name, *language)).collect(),
        };
        paints.into_iter().chain([name.to_owned()])
    })
}

/// The section that a mapping of an unknown name was most likely meant to be: one of
/// nearly its name that is not there, and of its looks.
fn meant(tree: &Tree, root: NodeId, node: NodeId) -> Option<&'static str> {
    if tree.children(root).len() > limits::PROBLEMS {
        // Not by a slip of the finger.
        return None;
    }
    let meant = nearest(tree.key(node)?, raw::KEYS)?;
    let parts = || tree.children(node).iter().all(|part| tree.is_mapping(*part));
    let looks = OF_ENTRIES.contains(&meant) || (OF_PARTS.contains(&meant) && parts());
    (looks && tree.under(root, meant).is_none()).then_some(meant)
}

/// Whether a node is a file name or a list of them, as stand under "use".
fn names_files(tree: &Tree, node: NodeId) -> bool {
    let is_name =
        |node: &NodeId| [".yaml", ".yml"].iter().any(|end| tree.text(*node).ends_with(end));
    is_name(&node) || tree.children(node).iter().any(is_name)
}

fn rename(tree: &mut Tree, node: NodeId, name: &str) {
    if let Some(Stands::UnderKey { key, .. }) =
        tree.nodes.get_mut(node.0).map(|node| &mut node.stands)
    {
        name.clone_into(key);
    }
}
