//! One value of a lesson file changed, and nothing else: comments, quoting, order and line
//! ends stay as they are written.
//!
//! The tree knows where every value stands, so the change is made in the text. Whether it
//! says what was meant is not argued but read back: the new text must be the old tree with
//! the one value in its place.

use super::grow::grow;
use super::problem::Form;
use super::source::FileId;
use super::tree::{Content, Log, NodeId, Tree};
use std::fmt;
use std::ops::Range;

/// Why a value cannot be changed by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unplaced {
    /// The text is no lesson.
    NotALesson,
    /// Nothing stands under these keys in this text.
    NotThere,
    /// A list or a mapping stands there.
    NotOneValue,
    /// It is written once and used in several places, or in a way that goes over lines.
    Entangled,
}

/// A byte-order mark, which belongs to no value.
const MARK: char = '\u{feff}';

/// The form of what stands under these keys, from the root of the file down; `None` when
/// nothing does.
pub fn form_at(text: &str, path: &[&str]) -> Option<Form> {
    let written = Written::read(text)?;
    written.tree.form(written.find(path)?)
}

/// The text with the value under these keys changed to `value`, which is a word or a number
/// and never nothing.
///
/// # Errors
/// When the value cannot be changed without touching anything else.
pub fn edit(text: &str, path: &[&str], value: &str) -> Result<String, Unplaced> {
    let Some(text) = text.strip_prefix(MARK) else { return edit_bare(text, path, value) };
    edit_bare(text, path, value).map(|edited| format!("{MARK}{edited}"))
}

fn edit_bare(text: &str, path: &[&str], value: &str) -> Result<String, Unplaced> {
    let old = Written::read(text).ok_or(Unplaced::NotALesson)?;
    let target = old.find(path).ok_or(Unplaced::NotThere)?;
    let (span, quote) = match old.tree.get(target).map(|node| &node.content) {
        Some(Content::Text { text: now, verbatim: Some(start), empty: false }) => {
            stands(text, *start, now.len()).ok_or(Unplaced::Entangled)?
        }
        Some(Content::Text { .. }) => return Err(Unplaced::Entangled),
        _ => return Err(Unplaced::NotOneValue),
    };
    let (before, after) = (text.get(..span.start), text.get(span.end..));
    let (before, after) = before.zip(after).ok_or(Unplaced::Entangled)?;
    // As it was quoted; otherwise with the least that reads back right.
    let ways = [quote, Quote::None, Quote::Double];
    let fits = |quote: &Quote| !matches!(quote, Quote::None) || is_plain(value);
    let texts = ways.into_iter().filter(fits);
    let texts = texts.map(|quote| format!("{before}{}{after}", quote.around(value)));
    let mut right = texts
        .filter(|new| Written::read(new).is_some_and(|new| old.differs_only(target, value, &new)));
    right.next().ok_or(Unplaced::Entangled)
}

/// How a value is quoted.
#[derive(Debug, Clone, Copy)]
enum Quote {
    None,
    Single,
    Double,
}

impl Quote {
    fn around(self, value: &str) -> String {
        match self {
            Self::None => value.to_owned(),
            Self::Single => format!("'{}'", value.replace('\'', "''")),
            Self::Double => {
                format!("\"{}\"", value.replace('\\', "\\\\").replace('"', "\\\""))
            }
        }
    }
}

/// A word that no reader of YAML takes for anything else; others are quoted, even where ours
/// would not mind.
fn is_plain(value: &str) -> bool {
    let inner = |c: char| c.is_alphanumeric() || " -_./%()".contains(c);
    value.starts_with(char::is_alphanumeric) && value.chars().all(inner) && !value.ends_with(' ')
}

/// The stretch of a value with its quotes, and which they are.
fn stands(text: &str, start: usize, length: usize) -> Option<(Range<usize>, Quote)> {
    let end = start + length;
    let before = text.get(..start)?.chars().next_back();
    let quote = match (before, text.get(end..)?.chars().next()) {
        (Some('"'), Some('"')) => Quote::Double,
        (Some('\''), Some('\'')) => Quote::Single,
        _ => return Some((start..end, Quote::None)),
    };
    Some((start - 1..end + 1, quote))
}

/// A text and its tree.
struct Written {
    tree: Tree,
    root: NodeId,
}

impl Written {
    /// `None` when it is no lesson, or has any fault as a file.
    fn read(text: &str) -> Option<Self> {
        let (mut tree, log) = (Tree::default(), Log::default());
        let text = text.strip_prefix(MARK).unwrap_or(text);
        let root = grow(&mut tree, &log, FileId::default(), text)?;
        log.is_empty().then_some(Self { tree, root })
    }

    fn find(&self, path: &[&str]) -> Option<NodeId> {
        path.iter().try_fold(self.root, |node, key| self.tree.under(node, key))
    }

    /// Whether another text says the same, but for `value` in the place of `target`.
    fn differs_only(&self, target: NodeId, value: &str, other: &Self) -> bool {
        self.same(self.root, target, value, other, other.root)
    }

    fn same(&self, id: NodeId, target: NodeId, value: &str, other: &Self, new: NodeId) -> bool {
        let (Some(before), Some(after)) = (self.tree.get(id), other.tree.get(new)) else {
            return false;
        };
        match (&before.content, &after.content) {
            (_, Content::Text { text, empty, .. }) if id == target => text == value && !empty,
            (Content::Text { text: a, empty: b, .. }, Content::Text { text: c, empty: d, .. }) => {
                a == c && b == d
            }
            (Content::List(items), Content::List(others))
            | (Content::Mapping(items), Content::Mapping(others)) => {
                items.len() == others.len()
                    && items.iter().zip(others).all(|(item, other_item)| {
                        self.tree.key(*item) == other.tree.key(*other_item)
                            && self.same(*item, target, value, other, *other_item)
                    })
            }
            _ => false,
        }
    }
}

impl fmt::Display for Unplaced {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::NotALesson => "the file cannot be read as a lesson",
            Self::NotThere => "the value is not written in the lesson file itself",
            Self::NotOneValue => "a list stands where one value is expected",
            Self::Entangled => {
                "the value is written in a way that other values share (a name with & or *), or \
                 that goes over several lines"
            }
        })
    }
}

impl std::error::Error for Unplaced {}
