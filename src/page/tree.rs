use super::{Answer, Tag, TagId, TagKind};

/// The structure tree while it grows, parents before children.
pub(super) struct Tree {
    tags: Vec<Tag>,
    /// Level of the heading before, so that none is skipped.
    level: u8,
}

impl Tree {
    /// The tag of the whole document.
    pub(super) const ROOT: TagId = TagId(0);

    pub(super) fn new() -> Self {
        Self { tags: vec![Tag { kind: TagKind::Document, parent: None, alt: None }], level: 0 }
    }

    pub(super) fn add(&mut self, kind: TagKind, parent: TagId) -> TagId {
        self.tags.push(Tag { kind, parent: Some(parent), alt: None });
        TagId(self.tags.len() - 1)
    }

    /// A picture, or anything drawn that has a meaning, with its words.
    pub(super) fn figure(&mut self, alt: &str, parent: TagId) -> TagId {
        let alt = Some(alt.to_owned());
        self.tags.push(Tag { kind: TagKind::Figure, parent: Some(parent), alt });
        TagId(self.tags.len() - 1)
    }

    /// A field of a form, with what belongs into it.
    pub(super) fn field(&mut self, answer: Answer, what: &str, parent: TagId) -> TagId {
        let alt = Some(what.to_owned());
        self.tags.push(Tag { kind: TagKind::Field(answer), parent: Some(parent), alt });
        TagId(self.tags.len() - 1)
    }

    /// A heading of the wished level, or of the deepest that does not skip one;
    /// gives that level too.
    pub(super) fn heading(&mut self, wished: u8, parent: TagId) -> (TagId, u8) {
        self.level = wished.min(self.level + 1);
        (self.add(TagKind::Heading(self.level), parent), self.level)
    }

    /// Where the tree stands, to come back to.
    pub(super) fn mark(&self) -> (usize, u8) {
        (self.tags.len(), self.level)
    }

    /// Forgets what was added since a mark.
    pub(super) fn rewind(&mut self, (length, level): (usize, u8)) {
        self.tags.truncate(length.max(1));
        self.level = level;
    }

    pub(super) fn finish(self) -> Vec<Tag> {
        self.tags
    }
}
