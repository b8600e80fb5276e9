//! Where the values of a lesson stand, for whoever has something to say about one of them
//! later. In: the tree that the lesson was read from; out: places by paths of keys.

use super::source::{FileId, Place, Sources};
use super::tree::{NodeId, Stands, Tree};
use std::fmt;
use std::sync::Arc;

/// The files of a lesson and where its values stand in them; nothing for a lesson that was
/// not read from files.
#[derive(Clone, Default)]
pub struct Origins(Option<Arc<Kept>>);

struct Kept {
    sources: Sources,
    tree: Tree,
    root: NodeId,
    /// The files that somebody wrote; behind them come those that are built in.
    own: Vec<FileId>,
}

impl Origins {
    /// Keeps what a lesson was read from.
    pub(super) fn new(sources: Sources, (tree, root): (Tree, NodeId), own: Vec<FileId>) -> Self {
        Self(Some(Arc::new(Kept { sources, tree, root, own })))
    }

    /// The files that were read; `None` for a lesson that was made otherwise.
    pub fn sources(&self) -> Option<&Sources> {
        self.0.as_ref().map(|kept| &kept.sources)
    }

    /// Where the value at the end of a path stands in the lesson or one of its data files: keys
    /// from the top down, entries of lists as `no. 1`. `None` when nobody wrote it.
    pub fn place<S: AsRef<str>>(&self, path: &[S]) -> Option<Place> {
        let kept = self.0.as_ref()?;
        let node = path.iter().try_fold(kept.root, |node, step| kept.step(node, step.as_ref()))?;
        kept.tree.place(node).filter(|place| kept.own.contains(&place.file))
    }

    /// Where the name stands at the end of a path, such as that of a palette.
    pub fn name_place<S: AsRef<str>>(&self, path: &[S]) -> Option<Place> {
        let kept = self.0.as_ref()?;
        let node = path.iter().try_fold(kept.root, |node, step| kept.step(node, step.as_ref()))?;
        kept.tree.key_place(node).filter(|place| kept.own.contains(&place.file))
    }
}

/// Where something stands is no part of what it is.
impl fmt::Debug for Origins {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.debug_struct("Origins").finish_non_exhaustive()
    }
}

impl Kept {
    fn step(&self, node: NodeId, step: &str) -> Option<NodeId> {
        let mut children = self.tree.children(node).iter().copied();
        children.find(|child| match self.tree.get(*child).map(|node| &node.stands) {
            Some(Stands::UnderKey { key, .. }) => key == step,
            Some(Stands::InList(index)) => step == super::tree::in_list(*index),
            _ => false,
        })
    }
}
