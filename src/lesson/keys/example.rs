//! Lines of a file by example in which a key stands, with what they need to stand alone.

use super::super::grow::grow;
use super::super::schema::FileKind;
use super::super::source::Sources;
use super::super::tree::{Log, NodeId, Tree};
use super::atlas::{Known, Step};
use serde_json::Value;
use std::collections::BTreeSet;

const LESSON: &str = include_str!("lesson.yaml");
const WEIGHINGS: &str = include_str!("weighings.yaml");

/// What is around a key is shown whole up to so many lines.
const AROUND: usize = 14;
/// A section is shown whole up to so many lines, else its first part.
const SECTION: usize = 24;

/// A file that has every key of its kind.
pub(in crate::lesson) struct Examples {
    text: &'static str,
    tree: Tree,
    root: Option<NodeId>,
    /// All of it, as editors see it.
    pub(in crate::lesson) value: Value,
}

impl Examples {
    /// The file by example of a kind.
    pub(in crate::lesson) fn of(kind: FileKind) -> Self {
        let text = match kind {
            FileKind::Lesson | FileKind::Data => LESSON,
            FileKind::Weighings => WEIGHINGS,
        };
        let (mut tree, log) = (Tree::default(), Log::default());
        let file = Sources::default().add(String::new(), text.to_owned());
        let root = grow(&mut tree, &log, file, text);
        let value = serde_yaml::from_str(text).unwrap_or_default();
        Self { text, tree, root, value }
    }

    /// The lines of a key: its own, those around it, and of what it belongs to those that must
    /// be there. `None` when the file lacks the key.
    pub(super) fn excerpt(&self, known: &Known, all: &[Known]) -> Option<String> {
        let chain = self.chain(self.root?, &known.path)?;
        let mut lines = BTreeSet::new();
        for node in &chain {
            lines.insert(self.first_line(*node));
        }
        let target = *chain.last()?;
        let own = self.lines(target);
        let is_section = chain.len() == 1;
        match self.tree.children(target).first() {
            Some(first) if is_section && own.len() > SECTION => lines.extend(self.lines(*first)),
            _ => lines.extend(own),
        }
        if let [.., parent, _] = chain.as_slice() {
            let around = self.lines(*parent);
            if around.len() <= AROUND {
                lines.extend(around);
            }
        }
        for (depth, node) in chain.iter().enumerate() {
            let above = known.path.get(..=depth)?;
            for needed in all.iter().filter(|other| other.is_needed()) {
                if let Some((Step::Key(key), place)) = needed.path.split_last()
                    && place == above
                    && depth + 1 < chain.len()
                    && let Some(child) = self.tree.under(*node, key)
                {
                    lines.extend(self.lines(child));
                }
            }
        }
        let all: Vec<&str> = self.text.lines().collect();
        let shown = lines.into_iter().filter_map(|line| all.get(line));
        Some(shown.map(|line| format!("{line}\n")).collect())
    }

    /// The nodes of the first place that a path leads to.
    fn chain(&self, node: NodeId, path: &[Step]) -> Option<Vec<NodeId>> {
        let Some((step, rest)) = path.split_first() else { return Some(Vec::new()) };
        let below: Vec<NodeId> = match step {
            Step::Key(key) => self.tree.under(node, key).into_iter().collect(),
            Step::Name | Step::Item => self.tree.children(node).to_vec(),
        };
        below.into_iter().find_map(|child| {
            let mut chain = vec![child];
            chain.extend(self.chain(child, rest)?);
            Some(chain)
        })
    }

    /// The line of its key, or of itself in a list; counted from 0.
    fn first_line(&self, node: NodeId) -> usize {
        let start = self.tree.key_place(node).map_or(0, |place| place.span.start);
        self.line(start)
    }

    /// All lines of a node and what is in it.
    fn lines(&self, node: NodeId) -> BTreeSet<usize> {
        let first = self.first_line(node);
        let own = self.tree.get(node).map_or(0, |node| node.place.span.start);
        let mut lines: BTreeSet<usize> = [first, self.line(own)].into_iter().collect();
        for child in self.tree.children(node) {
            lines.extend(self.lines(*child));
        }
        lines
    }

    fn line(&self, byte: usize) -> usize {
        self.text.get(..byte).unwrap_or_default().matches('\n').count()
    }
}
