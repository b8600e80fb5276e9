//! YAML text to nodes. Tags, complex keys and several documents are refused: a
//! painter needs none of them, and each is a slip when it stands there. Where what
//! follows can still be understood, it is read on.

use super::limits;
use super::problem::{Form, Problem, ProblemKind};
use super::slip::slip;
use super::source::{FileId, Place};
use super::tree::{Content, Log, Node, NodeId, Stands, Tree};
use saphyr_parser::{Event, Parser, ScalarStyle, Span};
use std::collections::BTreeMap;

/// Adds the nodes of a file to the tree and gives its root: a mapping. `None` when
/// the text is no such thing; the log then says why.
pub(super) fn grow(tree: &mut Tree, log: &Log, file: FileId, text: &str) -> Option<NodeId> {
    let mut growing = Growing {
        tree,
        log,
        text,
        marks: Marks::of(text),
        file,
        open: Vec::new(),
        anchors: BTreeMap::new(),
        root: None,
    };
    growing.run().ok()?;
    let written = growing.root;
    let root = written.filter(|root| tree.is_mapping(*root));
    if root.is_none() && written.is_none_or(|root| tree.form(root).is_some()) {
        log.at(Some(Place { file, span: 0..0 }), ProblemKind::NotALesson);
    }
    root
}

/// The text cannot be read to its end; the log says why.
struct Stopped;

/// Byte offsets of characters, for the parser counts characters.
enum Marks {
    Ascii(usize),
    Starts(Vec<usize>),
}

impl Marks {
    fn of(text: &str) -> Self {
        if text.is_ascii() {
            return Self::Ascii(text.len());
        }
        let starts = text.char_indices().map(|(at, _)| at);
        Self::Starts(starts.chain([text.len()]).collect())
    }

    fn byte(&self, character: usize) -> usize {
        match self {
            Self::Ascii(length) => character.min(*length),
            Self::Starts(starts) => {
                starts.get(character).or(starts.last()).copied().unwrap_or_default()
            }
        }
    }
}

/// A list or mapping that has not ended yet.
struct Open {
    id: NodeId,
    anchor: usize,
    /// The key that waits for its value.
    key: Option<(String, Place)>,
    /// Where each key of a mapping stands, and its value; `None` for a list.
    seen: Option<BTreeMap<String, (Place, NodeId)>>,
}

struct Growing<'a> {
    tree: &'a mut Tree,
    log: &'a Log,
    text: &'a str,
    marks: Marks,
    file: FileId,
    open: Vec<Open>,
    anchors: BTreeMap<usize, NodeId>,
    root: Option<NodeId>,
}

impl Growing<'_> {
    fn run(&mut self) -> Result<(), Stopped> {
        let mut documents = 0;
        let mut parser = Parser::new_from_str(self.text);
        while let Some(event) = parser.next_event() {
            let (event, span) = event.map_err(|error| {
                let at = self.marks.byte(error.marker().index());
                self.not_yaml(at, error.info().to_owned())
            })?;
            match event {
                Event::DocumentStart(_) => {
                    documents += 1;
                    if documents > 1 {
                        return Err(self.stop(self.place(span), ProblemKind::SeveralDocuments));
                    }
                }
                Event::Scalar(_, _, anchor, Some(_)) => {
                    let id = self.refuse(self.place(span), ProblemKind::Tagged)?;
                    self.remember(anchor, id);
                }
                Event::Scalar(text, style, anchor, None) => {
                    self.text_node(&text, style, anchor, span)?;
                }
                Event::SequenceStart(anchor, tag) => {
                    self.refuse_tag(tag.map(|_| span));
                    self.start(Content::List(Vec::new()), None, anchor, span)?;
                }
                Event::MappingStart(anchor, tag) => {
                    self.refuse_tag(tag.map(|_| span));
                    let seen = Some(BTreeMap::new());
                    self.start(Content::Mapping(Vec::new()), seen, anchor, span)?;
                }
                Event::SequenceEnd | Event::MappingEnd => self.end(),
                Event::Alias(anchor) => self.alias(anchor, span)?,
                _ => {}
            }
        }
        Ok(())
    }

    fn text_node(
        &mut self,
        text: &str,
        style: ScalarStyle,
        anchor: usize,
        span: Span,
    ) -> Result<(), Stopped> {
        let mut place = self.place(span);
        let quoted = matches!(style, ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted);
        let start = place.span.start + usize::from(quoted);
        let stands = self.text.get(start..start + text.len()) == Some(text);
        if stands && !quoted {
            place.span.end = start + text.len();
        }
        if self.awaits_key() {
            if text.chars().count() > limits::NAME_LETTERS {
                self.tell(place.clone(), ProblemKind::KeyTooLong);
            }
            if let Some(open) = self.open.last_mut() {
                open.key = Some((text.to_owned(), place));
            }
            return Ok(());
        }
        let plain = style == ScalarStyle::Plain;
        let empty = plain && matches!(text, "" | "~" | "null");
        let verbatim = stands.then_some(start);
        let content = Content::Text { text: text.to_owned(), verbatim, empty };
        let id = self.add(content, place)?;
        self.remember(anchor, id);
        Ok(())
    }

    fn start(
        &mut self,
        content: Content,
        seen: Option<BTreeMap<String, (Place, NodeId)>>,
        anchor: usize,
        span: Span,
    ) -> Result<(), Stopped> {
        let place = self.place(span);
        if self.open.len() >= limits::NESTING {
            return Err(self.stop(place, ProblemKind::TooDeep));
        }
        let id = self.add(content, place)?;
        self.open.push(Open { id, anchor, key: None, seen });
        Ok(())
    }

    fn end(&mut self) {
        if let Some(open) = self.open.pop() {
            self.remember(open.anchor, open.id);
        }
    }

    fn alias(&mut self, anchor: usize, span: Span) -> Result<(), Stopped> {
        let place = self.place(span);
        let Some(original) = self.anchors.get(&anchor).copied() else {
            return self.refuse(place, ProblemKind::AliasInItself).map(|_| ());
        };
        let Some(node) = self.tree.get(original) else { return Ok(()) };
        let content = match &node.content {
            Content::Text { text, empty, .. } => {
                Content::Text { text: text.clone(), verbatim: None, empty: *empty }
            }
            Content::List(_) => Content::List(Vec::new()),
            Content::Mapping(_) => Content::Mapping(Vec::new()),
            Content::Refused => Content::Refused,
        };
        let copy = self.add(content, place)?;
        self.copy_children(original, copy, self.open.len() + 1)
    }

    /// Copies what hangs on `original` to `copy`, keeping where it was written.
    fn copy_children(
        &mut self,
        original: NodeId,
        copy: NodeId,
        depth: usize,
    ) -> Result<(), Stopped> {
        for child in self.tree.children(original).to_vec() {
            let Some(mut node) = self.tree.get(child).cloned() else { continue };
            if depth >= limits::NESTING {
                return Err(self.stop(node.place, ProblemKind::TooDeep));
            }
            node.parent = Some(copy);
            match &mut node.content {
                Content::List(items) | Content::Mapping(items) => items.clear(),
                Content::Text { .. } | Content::Refused => {}
            }
            let id = self.push(node)?;
            self.hang(copy, id);
            self.copy_children(child, id, depth + 1)?;
        }
        Ok(())
    }

    /// Adds a node where the parser stands now. What stands under a key for the second
    /// time is read as well; two sections of one name become one.
    fn add(&mut self, content: Content, place: Place) -> Result<NodeId, Stopped> {
        let Some(open) = self.open.last_mut() else {
            let node = Node { place, parent: None, stands: Stands::Root, content };
            let id = self.push(node)?;
            self.root = Some(id);
            return Ok(id);
        };
        let parent = open.id;
        let stands = match &mut open.seen {
            None => Stands::InList(self.tree.children(parent).len()),
            Some(seen) => {
                let Some((key, key_place)) = open.key.take() else {
                    return Err(self.stop(place, ProblemKind::StrangeKey));
                };
                if let Some((first, value)) = seen.get(&key).cloned() {
                    let mut path = self.tree.path(parent);
                    path.push(key.clone());
                    let kind = ProblemKind::DuplicateKey { key: key.clone() };
                    let (place, also) = (Some(key_place.clone()), Some(first));
                    self.log.add(Problem { place, path, kind, also });
                    if self.is_section(value, &content) {
                        return Ok(value);
                    }
                } else {
                    let value = NodeId(self.tree.nodes.len());
                    seen.insert(key.clone(), (key_place.clone(), value));
                }
                Stands::UnderKey { key, place: key_place }
            }
        };
        let id = self.push(Node { place, parent: Some(parent), stands, content })?;
        self.hang(parent, id);
        Ok(id)
    }

    /// Whether a node and what comes for its key again are both sections of the file.
    fn is_section(&self, first: NodeId, again: &Content) -> bool {
        let parent = self.tree.get(first).and_then(|node| node.parent);
        parent == self.root && self.tree.is_mapping(first) && again.form() == Some(Form::Mapping)
    }

    /// The next value is the key of an entry.
    fn awaits_key(&self) -> bool {
        self.open.last().is_some_and(|open| open.seen.is_some() && open.key.is_none())
    }

    /// Puts what cannot be used in the place of a value, so that the rest can be read;
    /// a key that cannot be used ends the reading.
    fn refuse(&mut self, place: Place, kind: ProblemKind) -> Result<NodeId, Stopped> {
        if self.awaits_key() {
            return Err(self.stop(place, kind));
        }
        self.tell(place.clone(), kind);
        self.add(Content::Refused, place)
    }

    fn push(&mut self, node: Node) -> Result<NodeId, Stopped> {
        if self.tree.is_full() {
            return Err(self.stop(node.place, ProblemKind::TooManyValues));
        }
        self.tree.nodes.push(node);
        Ok(NodeId(self.tree.nodes.len() - 1))
    }

    fn hang(&mut self, parent: NodeId, child: NodeId) {
        if let Some(Content::List(items) | Content::Mapping(items)) =
            self.tree.nodes.get_mut(parent.0).map(|node| &mut node.content)
        {
            items.push(child);
        }
    }

    fn remember(&mut self, anchor: usize, id: NodeId) {
        if anchor > 0 {
            self.anchors.insert(anchor, id);
        }
    }

    /// A tag before a list or mapping, which can be read without it.
    fn refuse_tag(&self, tagged: Option<Span>) {
        if let Some(span) = tagged {
            self.tell(self.place(span), ProblemKind::Tagged);
        }
    }

    fn place(&self, span: Span) -> Place {
        let start = self.marks.byte(span.start.index());
        let end = self.marks.byte(span.end.index()).max(start);
        Place { file: self.file, span: start..end }
    }

    fn stop(&self, place: Place, kind: ProblemKind) -> Stopped {
        self.tell(place, kind);
        Stopped
    }

    /// Logs a problem of what is open.
    fn tell(&self, place: Place, kind: ProblemKind) {
        let path = self.open.last().map(|open| self.tree.path(open.id)).unwrap_or_default();
        self.log.add(Problem { place: Some(place), path, kind, also: None });
    }

    fn not_yaml(&self, at: usize, said: String) -> Stopped {
        let (slip, at) = slip(&said, self.text, at);
        let place = Place { file: self.file, span: at..at };
        self.stop(place, ProblemKind::NotYaml { said, slip })
    }
}
