//! What the file of a handout says by its structure tree: pieces of text that stand alone.

use super::handouts::Handout;
use crate::pdf_tree::{Element, Kid};

/// What a piece of text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    Heading,
    Paragraph,
    /// Nothing but fields.
    Fields,
    Label,
    Cell,
    Caption,
    /// Its words are what stands for it.
    Figure,
    /// Of the table of contents.
    Entry,
}

/// A piece of text that stands alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece {
    pub kind: Kind,
    pub words: String,
}

impl Piece {
    pub fn new(kind: Kind, words: &str) -> Self {
        Self { kind, words: plain(words) }
    }
}

/// Text without what only steers its setting and with single spaces.
pub fn plain(text: &str) -> String {
    let text = text.replace(['\u{AD}', '\u{2060}', '\u{200B}'], "");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A field among words: a box to tick, a line to write on.
pub fn field(what: &str) -> String {
    format!(" [{what}] ")
}

/// The pieces of a file, in the order of its structure tree, those without words left out.
pub fn pieces(handout: &Handout) -> Vec<Piece> {
    let found = leaves(&handout.file.tree);
    let found = found.into_iter().map(|(kind, element)| match kind {
        Kind::Figure => Piece::new(kind, element.alt.as_deref().unwrap_or_default()),
        _ => Piece::new(kind, &words(handout, element)),
    });
    found.filter(|piece| !piece.words.is_empty()).collect()
}

/// The elements that hold text, and the figures between them, in order.
pub fn leaves(element: &Element) -> Vec<(Kind, &Element)> {
    let kind = match element.kind.as_str() {
        "H1" | "H2" | "H3" => Kind::Heading,
        "P" if element.kids.iter().all(is_field) => Kind::Fields,
        "P" => Kind::Paragraph,
        "Lbl" => Kind::Label,
        "TH" | "TD" => Kind::Cell,
        "Caption" => Kind::Caption,
        "Figure" => Kind::Figure,
        "TOCI" => Kind::Entry,
        _ => return element.elements().flat_map(leaves).collect(),
    };
    vec![(kind, element)]
}

fn is_field(kid: &Kid) -> bool {
    matches!(kid, Kid::Element(form) if form.kind == "Form")
}

/// The words of an element, with those of the fields among them.
pub fn words(handout: &Handout, element: &Element) -> String {
    let kid = |kid: &Kid| match kid {
        Kid::Element(form) if form.kind == "Form" => {
            let widget = form.annotation().and_then(|id| handout.file.touched.get(&id));
            field(widget.map_or("", |widget| &widget.text))
        }
        Kid::Element(element) => words(handout, element),
        Kid::Sequence(page, mcid) => {
            handout.file.sequence(*page, *mcid).map(|found| found.text.clone()).unwrap_or_default()
        }
        Kid::Annotation(_) => String::new(),
    };
    plain(&element.kids.iter().map(kid).collect::<String>())
}
