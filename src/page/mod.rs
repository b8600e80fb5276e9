//! Typesetting: a document becomes pages.
//!
//! Stages: `block` and `table` set blocks as strips (through `inline`, which breaks
//! paragraphs into lines), `paginate` puts strips on pages, `furniture` adds header
//! and footer. `style` holds the visual system. In: a document and the faces. Out:
//! marks in their places, with structure. Must not know: what the text means, PDF.

mod block;
mod desk;
mod draw;
mod furniture;
mod galley;
mod inline;
mod model;
mod paginate;
mod strip;
pub mod style;
mod table;
mod tree;

use std::collections::HashMap;

pub use model::{
    Answer, Bookmark, Link, LinkTarget, Mark, Page, Pages, Printing, Role, Tag, TagId, TagKind,
};

use crate::handout::Document;
use crate::ink::Faces;
use desk::Desk;
use inline::{Dictionary, Findings};
use paginate::Numbers;
use style::Style;
use tree::Tree;

/// Most pages of a document: twenty reams of paper. A longer one is cut off behind one page
/// more, and is not written.
pub const MOST_PAGES: usize = 10_000;

/// Page numbers in the text may move the text and so the pages; it settles at once
/// as a rule, and is left as it is after so many rounds.
const ROUNDS: usize = 4;

/// Lays a document out on pages.
///
/// Everything can be laid out: a word wider than its column is broken, a box higher
/// than a page is divided, a character that no face has is replaced by a square and
/// named in [`Pages::missing`].
pub fn lay_out(document: &Document, faces: &Faces) -> Pages {
    lay_out_in(document, Style::new(document.form, document.paper, document.edition), faces)
}

/// Lays a document out in a style that need not be the one of its form.
pub fn lay_out_in(document: &Document, mut style: Style, faces: &Faces) -> Pages {
    let footer = furniture::Footer::of(document, &style, faces);
    style.frame.give_to_footer(footer.above(), &style.scale);
    let (height, grid, top) = (style.frame.height, style.snap(), style.frame.top);
    let dictionary = Dictionary::of(&document.language);
    let mut numbers = HashMap::new();
    let mut round = 1;
    loop {
        let mut desk = Desk {
            style: &style,
            faces,
            tree: Tree::new(),
            findings: Findings::default(),
            numbers: &numbers,
            decimal: document.decimal,
            dictionary: &dictionary,
            continued: &document.continued,
            tick_box: &document.tick_box,
            ruled_line: &document.ruled_line,
            cut_to: &document.cut_to,
        };
        let mut strips = desk.document(&document.blocks);
        let (mut tree, mut findings) = (desk.tree, desk.findings);
        let plan = paginate::drift(&mut strips, height, grid);
        let placed = paginate::place(&strips, &plan.pages, height, grid);
        let places = Numbers::of(&strips, &placed, top);
        let found = places.numbers();
        if round < ROUNDS && findings.page_numbers > 0 && found != numbers {
            round += 1;
            numbers = found;
            continue;
        }
        let sections = furniture::Sections::of(&strips, &placed, &document.header);
        let (mut pages, outline) = paginate::press(strips, &placed, &places, faces, top);
        let lines = furniture::Lines { sections: &sections, footer: &footer, tree: &mut tree };
        furniture::add(&mut pages, document, lines, &style, faces, &mut findings);
        return Pages {
            title: document.title.clone(),
            author: document.author.clone(),
            language: document.language.clone(),
            date: document.date.clone(),
            size: style.frame.paper,
            pages,
            outline,
            tags: tree.finish(),
            missing: findings.missing,
            printing: findings.printing,
        };
    }
}
