//! Typesetting: a document becomes pages.

mod model;

pub use model::{Bookmark, Link, LinkTarget, Mark, Page, Pages, Role, Tag, TagId, TagKind};
