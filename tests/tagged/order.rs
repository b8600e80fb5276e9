//! The words of a handout are whole and in order: in the structure tree as in the document,
//! and in the content stream as in the tree.

use super::handouts::Handout;
use super::said::{Kind, Piece, pieces};
use super::wished::wished;
use super::{all_keep, ensure};
use crate::pdf_tree::{Element, Kid};

#[test]
fn every_word_of_the_document_is_heard_in_order() {
    all_keep(words);
}

#[test]
fn the_content_stream_has_the_order_of_the_tree() {
    all_keep(stream);
}

/// Paragraphs that a figure may pass where it has no room at the foot of a page.
const PASSED: usize = 3;

pub fn words(handout: &Handout) -> Result<(), String> {
    let (said, wished) = (pieces(handout), wished(handout));
    let ((text, figures), (wished_text, wished_figures)) = (parted(said), parted(wished));
    same(&text, &wished_text)?;
    let only = |figures: &[(usize, Piece)]| -> Vec<Piece> {
        figures.iter().map(|(_, piece)| piece.clone()).collect()
    };
    same(&only(&figures), &only(&wished_figures))?;
    for ((at, figure), (wished, _)) in figures.iter().zip(&wished_figures) {
        ensure((*wished..=wished + PASSED).contains(at), || {
            format!("{figure:?} is heard after {at} pieces, not {wished}")
        })?;
    }
    Ok(())
}

/// Pieces of running text; figures with their fields and captions, each with how much text
/// comes before.
fn parted(pieces: Vec<Piece>) -> (Vec<Piece>, Vec<(usize, Piece)>) {
    let (mut text, mut figures) = (Vec::new(), Vec::new());
    let mut after_figure = false;
    for piece in pieces {
        let kind = piece.kind;
        match kind {
            Kind::Figure => figures.push((text.len(), piece)),
            Kind::Caption if after_figure => figures.push((text.len(), piece)),
            Kind::Fields if after_figure => figures.push((text.len(), sorted(&piece))),
            _ => text.push(piece),
        }
        after_figure = kind == Kind::Figure || (after_figure && kind == Kind::Fields);
    }
    (text, figures)
}

/// The fields of a drawing have no order.
fn sorted(Piece { kind, words }: &Piece) -> Piece {
    let mut names: Vec<&str> = words.split(['[', ']']).filter(|it| !it.trim().is_empty()).collect();
    names.sort_unstable();
    Piece { kind: *kind, words: names.join(", ") }
}

fn same(said: &[Piece], wished: &[Piece]) -> Result<(), String> {
    let differ = said.iter().zip(wished).find(|(said, wished)| said != wished);
    if let Some((said, wished)) = differ {
        return Err(format!("heard {said:?} instead of {wished:?}"));
    }
    ensure(said.len() == wished.len(), || {
        format!("{} pieces are heard of {}", said.len(), wished.len())
    })
}

pub fn stream(handout: &Handout) -> Result<(), String> {
    let mut before = None;
    for (page, mcid) in sequences(&handout.file.tree) {
        let place = page.zip(handout.file.place(page, mcid));
        ensure(place.is_some() && place > before, || {
            format!("sequence {mcid} of page {page:?} is drawn before what is heard before it")
        })?;
        before = place;
    }
    Ok(())
}

/// Marked sequences in the order in which the tree has them.
fn sequences(element: &Element) -> Vec<(Option<usize>, i64)> {
    let kid = |kid: &Kid| match kid {
        Kid::Element(element) => sequences(element),
        Kid::Sequence(page, mcid) => vec![(*page, *mcid)],
        Kid::Annotation(_) => Vec::new(),
    };
    element.kids.iter().flat_map(kid).collect()
}
