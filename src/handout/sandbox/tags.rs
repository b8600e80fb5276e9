//! Where the tags of a template are, as the engine finds them.

use super::Refused;
use std::ops::Range;

/// What a tag is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PieceKind {
    /// `{{ … }}`
    Variable,
    /// `{% … %}`
    Tag,
}

/// A tag of a template, in bytes.
#[derive(Debug, Clone)]
pub(super) struct Piece {
    pub(super) kind: PieceKind,
    /// With its braces.
    pub(super) outer: Range<usize>,
    /// What stands in it.
    pub(super) inner: Range<usize>,
    /// It swallows the white space behind it.
    pub(super) trims: bool,
}

/// What the engine takes for white space in a tag.
pub(super) const SPACE: [char; 4] = [' ', '\t', '\r', '\n'];

/// The tags in their order; comments and what stands between `raw` and `endraw` are none.
pub(super) fn pieces(text: &str) -> Result<Vec<Piece>, Refused> {
    let mut pieces = Vec::new();
    let mut at = 0;
    while let Some(open) = next_brace(text, at) {
        let end = match text.as_bytes().get(open + 1) {
            Some(b'#') => comment_end(text, open)?,
            Some(b'{') => {
                let piece = piece(text, open, PieceKind::Variable)?;
                let end = piece.outer.end;
                pieces.push(piece);
                end
            }
            _ => {
                let piece = piece(text, open, PieceKind::Tag)?;
                let end = piece.outer.end;
                match text.get(piece.inner.clone()).map(|inner| inner.trim_matches(SPACE)) {
                    Some("raw") => raw_end(text, &piece)?,
                    _ => {
                        pieces.push(piece);
                        end
                    }
                }
            }
        };
        at = end;
    }
    Ok(pieces)
}

/// The next place where a tag or a comment begins.
fn next_brace(text: &str, from: usize) -> Option<usize> {
    let rest = text.get(from..)?;
    let found = rest
        .match_indices('{')
        .find(|(at, _)| matches!(rest.as_bytes().get(at + 1), Some(b'{' | b'%' | b'#')));
    found.map(|(at, _)| from + at)
}

fn comment_end(text: &str, open: usize) -> Result<usize, Refused> {
    let rest = text.get(open + 2..).unwrap_or_default();
    let end = rest.find("#}").map(|at| open + 2 + at + 2);
    end.ok_or_else(|| {
        Refused::new(
            open..open + 2,
            "this comment has no end",
            "end it with #}; an anchor behind a heading takes a blank after the brace: { #name }",
        )
    })
}

/// The tag that begins at `open`.
fn piece(text: &str, open: usize, kind: PieceKind) -> Result<Piece, Refused> {
    let close: &[u8] = if kind == PieceKind::Variable { b"}}" } else { b"%}" };
    let bytes = text.as_bytes();
    let start = open + 2 + usize::from(bytes.get(open + 2) == Some(&b'-'));
    let mut quote = None;
    let mut at = start;
    while let Some(byte) = bytes.get(at) {
        match (quote, byte) {
            (Some(open), _) if byte == open => quote = None,
            (Some(_), _) => {}
            (None, b'"' | b'\'' | b'`') => quote = Some(byte),
            (None, _) if bytes.get(at..at + 2) == Some(close) => {
                let trims = at > start && bytes.get(at - 1) == Some(&b'-');
                let inner = start..at - usize::from(trims);
                return Ok(Piece { kind, outer: open..at + 2, inner, trims });
            }
            (None, _) => {}
        }
        at += 1;
    }
    let close = String::from_utf8_lossy(close);
    Err(Refused::new(open..open + 2, "this tag has no end", format!("end it with {close}")))
}

/// Where what follows a `raw` tag ends.
fn raw_end(text: &str, raw: &Piece) -> Result<usize, Refused> {
    let mut from = raw.outer.end;
    while let Some(at) = text.get(from..).and_then(|rest| rest.find("{%")) {
        let open = from + at;
        let rest = text.get(open + 2..).unwrap_or_default();
        let rest = rest.strip_prefix('-').unwrap_or(rest).trim_start_matches(SPACE);
        if let Some(rest) = rest.strip_prefix("endraw") {
            let rest = rest.trim_start_matches(SPACE);
            let rest = rest.strip_prefix('-').unwrap_or(rest);
            if let Some(rest) = rest.strip_prefix("%}") {
                return Ok(text.len() - rest.len());
            }
        }
        from = open + 2;
    }
    Err(Refused::new(raw.outer.clone(), "this raw has no end", "end it with {% endraw %}"))
}
