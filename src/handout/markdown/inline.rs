//! The pieces of a line; code spans are marks such as blanks and ticks.

use super::MarkdownFault;
use super::binding::{before_blank, behind_blank, bound, unit_at_end};
use super::reader::{Reader, fault};
use crate::handout::document::{Inline, Target};
use crate::handout::templates::BACKTICK;
use crate::ink::Colour;
use pulldown_cmark::{Event, Tag};

/// Widest blank that fits every page, in millimetres.
const MAX_BLANK_MM: f32 = 170.0;

/// What one event (with what it encloses) means.
pub(super) fn start<'a>(
    reader: &mut Reader<'a>,
    event: Event<'a>,
) -> Result<Vec<Inline>, MarkdownFault> {
    Ok(vec![match event {
        Event::Text(text) => Inline::Text(text.to_string()),
        Event::Code(code) => mark(&code)?,
        Event::SoftBreak => Inline::Text(" ".to_string()),
        Event::HardBreak => Inline::Break,
        Event::Start(Tag::Emphasis) => {
            Inline::Emphasis(reader.words(pulldown_cmark::TagEnd::Emphasis)?)
        }
        Event::Start(Tag::Strong) => Inline::Strong(reader.words(pulldown_cmark::TagEnd::Strong)?),
        Event::Start(Tag::Link { dest_url, .. }) => {
            let text = reader.words(pulldown_cmark::TagEnd::Link)?;
            let to = match dest_url.strip_prefix('#') {
                Some(anchor) => Target::Anchor(anchor.to_string()),
                None => Target::Web(dest_url.to_string()),
            };
            Inline::Link { to, text }
        }
        Event::InlineHtml(html) | Event::Html(html) => {
            return Err(fault("HTML is not understood; put a backslash before the \"<\"", &html));
        }
        Event::Start(Tag::Image { dest_url, .. }) => {
            return Err(fault("pictures are written as a `picture` directive", &dest_url));
        }
        _ => return Ok(Vec::new()),
    }])
}

/// The words without their dress.
pub(super) fn plain(words: &[Inline]) -> String {
    words
        .iter()
        .map(|word| match word {
            Inline::Text(text) => text.clone(),
            Inline::Emphasis(inner) | Inline::Strong(inner) | Inline::Link { text: inner, .. } => {
                plain(inner)
            }
            Inline::Break => " ".to_string(),
            Inline::PageOf(_)
            | Inline::Anchor(_)
            | Inline::Blank { .. }
            | Inline::Tick
            | Inline::Swatch(_) => String::new(),
        })
        .collect()
}

/// Neighbouring texts as one, since the parser splits them at every escape, with their
/// amounts bound.
pub(super) fn joined(words: Vec<Inline>) -> Vec<Inline> {
    let mut out: Vec<Inline> = Vec::with_capacity(words.len());
    for word in words {
        match (out.last_mut(), word) {
            (Some(Inline::Text(open)), Inline::Text(more)) => open.push_str(&more),
            (_, word) => out.push(word),
        }
    }
    for word in &mut out {
        if let Inline::Text(text) = word {
            *text = unit_at_end(&bound(text).replace("fl oz", "fl\u{A0}oz"));
        }
    }
    bind_blanks(&mut out);
    out
}

/// Binds blanks to the sign before them and to the unit behind them.
fn bind_blanks(words: &mut [Inline]) {
    for at in 1..words.len() {
        match words.get_mut(at - 1..=at) {
            Some([Inline::Text(text), Inline::Blank { .. }]) => *text = before_blank(text),
            Some([Inline::Blank { .. }, Inline::Text(text)]) => *text = behind_blank(text),
            _ => {}
        }
    }
}

/// `#RRGGBB`.
pub(super) fn colour(text: &str) -> Option<Colour> {
    let hex = text.trim().strip_prefix('#')?;
    if hex.len() != 6 || !hex.is_ascii() {
        return None;
    }
    let part = |at: usize| u8::from_str_radix(hex.get(at..at + 2)?, 16).ok();
    Some(Colour::new(part(0)?, part(2)?, part(4)?))
}

fn mark(code: &str) -> Result<Inline, MarkdownFault> {
    // Values arrive escaped for Markdown, which a code span does not undo.
    let code = code.replace('\\', "").replace(BACKTICK, "`");
    let (name, rest) = code.split_once(' ').unwrap_or((&code, ""));
    let rest = rest.trim();
    match name {
        "tick" => Ok(Inline::Tick),
        "page" => Ok(Inline::PageOf(rest.to_string())),
        "anchor" => Ok(Inline::Anchor(rest.to_string())),
        "swatch" => colour(rest)
            .map(Inline::Swatch)
            .ok_or_else(|| fault("a swatch is written `swatch #1F5A7A`", &code)),
        "blank" => {
            let (width, label) = rest.split_once(' ').unwrap_or((rest, ""));
            match width.parse::<f32>() {
                Ok(mm) if mm > 0.0 && mm <= MAX_BLANK_MM => {
                    Ok(Inline::Blank { width_mm: mm, label: label.to_string() })
                }
                _ => Err(fault("a blank has a width of 1 to 170 mm: `blank 40 area`", &code)),
            }
        }
        _ => Err(fault("inline marks are `blank`, `tick`, `swatch`, `page` and `anchor`", &code)),
    }
}
