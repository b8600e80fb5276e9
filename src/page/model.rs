//! Pages: every mark in its place, with what it is for a reader who listens.

use crate::ink::{Rect, Shape};

/// A laid-out handout.
#[derive(Debug, Clone, PartialEq)]
pub struct Pages {
    pub title: String,
    pub author: Option<String>,
    /// BCP 47.
    pub language: String,
    /// ISO 8601.
    pub date: Option<String>,
    /// Width and height of every page in points.
    pub size: (f32, f32),
    pub pages: Vec<Page>,
    /// In document order; levels start at 1 and never skip downwards.
    pub outline: Vec<Bookmark>,
    /// The structure tree, parents before children; the first is the document.
    pub tags: Vec<Tag>,
    /// Characters that no face has, in order of appearance, each once.
    pub missing: Vec<char>,
    pub printing: Printing,
}

/// How a reader's program should offer to print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Printing {
    #[default]
    AsItLikes,
    /// Something on the pages is measured with, or cut to a size.
    AtItsSize,
}

/// One page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Page {
    /// In reading order.
    pub marks: Vec<Mark>,
    pub links: Vec<Link>,
}

/// A shape with its place in the structure.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    pub shape: Shape,
    pub role: Role,
}

/// What a mark is to a reader who listens.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Content of this tag.
    Content(TagId),
    /// Headers, footers, rules, tints, repeated table heads.
    Artifact,
    /// Shows where this tag, a field of a form, is to be filled; the field speaks for itself.
    Field(TagId),
}

/// Index into [`Pages::tags`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct TagId(pub usize);

/// A node of the structure tree.
#[derive(Debug, Clone, PartialEq)]
pub struct Tag {
    pub kind: TagKind,
    pub parent: Option<TagId>,
    /// Alternative text of a figure; what belongs into a field.
    pub alt: Option<String>,
}

/// Standard structure types (ISO 32000-1, 14.8.4).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TagKind {
    Document,
    Heading(u8),
    Paragraph,
    List,
    ListItem,
    Label,
    ListBody,
    Table,
    TableRow,
    ColumnHeader,
    RowHeader,
    TableCell,
    Figure,
    /// A field of a form.
    Field(Answer),
    Caption,
    Link,
    Note,
    Division,
    Contents,
    ContentsItem,
}

/// How a field is filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Words or figures over a rule.
    Written,
    /// A tick in a box.
    Ticked,
}

/// A sensitive area.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    pub area: Rect,
    pub to: LinkTarget,
    pub tag: TagId,
    /// What it leads to, in words.
    pub description: String,
}

/// Where a link leads.
#[derive(Debug, Clone, PartialEq)]
pub enum LinkTarget {
    /// Page index from 0 and height from the top in points.
    Place {
        page: usize,
        y: f32,
    },
    Web(String),
}

/// An entry of the outline.
#[derive(Debug, Clone, PartialEq)]
pub struct Bookmark {
    pub title: String,
    pub level: u8,
    /// Page index from 0.
    pub page: usize,
    /// From the top in points.
    pub y: f32,
}
