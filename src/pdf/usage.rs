//! Which glyphs a document uses, and for what text.

use std::borrow::Cow;

use super::PdfError;
use crate::ink::{Face, Glyph, Shape, TextRun, leaves_no_mark};
use crate::page::Pages;

/// Glyphs in use, by face.
#[derive(Default)]
pub(super) struct Usage {
    faces: [FaceUsage; 4],
}

/// Glyphs of one face in use.
#[derive(Default)]
pub(super) struct FaceUsage {
    /// By glyph.
    seen: Vec<Option<Seen>>,
}

/// The texts that one glyph stands for.
#[derive(Default)]
pub(super) struct Seen {
    texts: Vec<Box<str>>,
}

impl Usage {
    /// Looks through all runs of all pages.
    pub fn of_pages(pages: &Pages) -> Result<Self, PdfError> {
        let mut usage = Self::default();
        for (number, page) in pages.pages.iter().enumerate() {
            for mark in &page.marks {
                if let Shape::Text(run) = &mark.shape {
                    usage.add(run).ok_or(PdfError::TextRange { page: number })?;
                }
            }
        }
        Ok(usage)
    }

    /// What is in use of a face.
    pub fn of(&self, face: Face) -> &FaceUsage {
        let [regular, bold, italic, bold_italic] = &self.faces;
        match face {
            Face::Regular => regular,
            Face::Bold => bold,
            Face::Italic => italic,
            Face::BoldItalic => bold_italic,
        }
    }

    fn add(&mut self, run: &TextRun) -> Option<()> {
        let face = self.faces.get_mut(run.face as usize)?;
        for (index, glyph) in run.glyphs.iter().enumerate() {
            let text = glyph.slice(&run.text)?;
            let leads = run.glyphs.get(index + 1).is_none_or(|next| !next.text.is_empty());
            let text = if leads { visible(text) } else { Cow::Borrowed("") };
            face.note(glyph, &text);
        }
        Some(())
    }
}

impl FaceUsage {
    pub fn is_empty(&self) -> bool {
        self.seen.is_empty()
    }

    /// In ascending order.
    pub fn glyphs(&self) -> impl Iterator<Item = (u16, &Seen)> {
        (0..=u16::MAX).zip(&self.seen).filter_map(|(id, seen)| Some((id, seen.as_ref()?)))
    }

    fn note(&mut self, glyph: &Glyph, text: &str) {
        let index = usize::from(glyph.id);
        if self.seen.len() <= index {
            self.seen.resize_with(index + 1, || None);
        }
        if let Some(slot) = self.seen.get_mut(index) {
            slot.get_or_insert_default().note(text);
        }
    }
}

impl Seen {
    fn note(&mut self, text: &str) {
        if !self.texts.iter().any(|known| **known == *text) {
            self.texts.push(text.into());
        }
    }

    /// The text of the glyph by itself: the shortest, and of these the first in
    /// Unicode, so that a space is a space although it also stands for others.
    /// Where it stands for another text the content says so.
    pub fn text(&self) -> &str {
        let texts = self.texts.iter().map(|text| &**text).filter(|text| !text.is_empty());
        texts.min_by_key(|text| (text.len(), *text)).unwrap_or("\u{FFFD}")
    }
}

/// A text without the characters that only steer its setting, unless it is
/// nothing else: a hyphen at the end of a line stands for a soft hyphen.
pub(super) fn visible(text: &str) -> Cow<'_, str> {
    if text.is_ascii() || !text.chars().any(leaves_no_mark) {
        return Cow::Borrowed(text);
    }
    let rest: String = text.chars().filter(|&c| !leaves_no_mark(c)).collect();
    if rest.is_empty() { Cow::Borrowed(text) } else { Cow::Owned(rest) }
}
