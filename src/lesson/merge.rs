use super::tree::{Content, NodeId, Stands, Tree};
use std::collections::BTreeMap;

impl Tree {
    /// Lays one mapping over another: mappings merge key by key at any depth, lists
    /// and texts replace; a section with nothing in it changes nothing. Each node keeps its own file and span; a mapping that was
    /// written twice counts as standing where it was written last.
    pub(super) fn lay_over(&mut self, base: NodeId, over: NodeId) {
        let mut children = self.children(base).to_vec();
        let is_root = matches!(self.get(base).map(|node| &node.stands), Some(Stands::Root));
        let known: BTreeMap<String, usize> = children
            .iter()
            .enumerate()
            .filter_map(|(index, child)| Some((self.key(*child)?.to_owned(), index)))
            .collect();
        for child in self.children(over).to_vec() {
            let index = self.key(child).and_then(|key| known.get(key).copied());
            match index.and_then(|index| children.get_mut(index)) {
                Some(below) if self.is_mapping(*below) && self.is_mapping(child) => {
                    self.lay_over(*below, child);
                    continue;
                }
                Some(below) if is_root && self.is_mapping(*below) && self.is_empty(child) => {
                    continue;
                }
                Some(below) => *below = child,
                None => children.push(child),
            }
            if let Some(node) = self.nodes.get_mut(child.0) {
                node.parent = Some(base);
            }
        }
        let last = self.get(over).map(|node| (node.place.clone(), node.stands.clone()));
        if let (Some((place, stands)), Some(node)) = (last, self.nodes.get_mut(base.0)) {
            node.place = place;
            if !matches!(node.stands, Stands::Root) {
                node.stands = stands;
            }
            node.content = Content::Mapping(children);
        }
    }
}
