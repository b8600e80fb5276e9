use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};
use std::sync::{Arc, PoisonError, RwLock};

use super::shaper::Shaper;
use super::{Colour, Face, Figures, Glyph, Metrics, Point, Shaped, TextRun};

type Memory = RwLock<HashMap<Box<str>, Arc<Shaped>, BuildHasherDefault<WordHasher>>>;

/// The faces, with a memory of every word shaped so far.
///
/// It can be shared between threads; each face and kind of figures has a memory
/// of its own, so that threads seldom meet.
pub struct Faces {
    shapers: [Shaper; 4],
    memories: [[Memory; 2]; 4],
}

impl Default for Faces {
    fn default() -> Self {
        Self::new()
    }
}

impl Faces {
    /// Reads the four faces that are compiled in.
    pub fn new() -> Self {
        Self { shapers: Face::ALL.map(Shaper::new), memories: Default::default() }
    }

    /// The TrueType file of a face.
    pub fn bytes(face: Face) -> &'static [u8] {
        face.bytes()
    }

    /// Vertical measures of a face in em.
    pub fn metrics(&self, face: Face) -> Metrics {
        self.shaper(face).metrics
    }

    /// A word, or any text without regard to lines, shaped. The same text is
    /// shaped once and remembered.
    pub fn shape(&self, face: Face, figures: Figures, text: &str) -> Arc<Shaped> {
        let memory = self.memory(face, figures);
        if let Some(shaped) = memory.read().unwrap_or_else(PoisonError::into_inner).get(text) {
            return Arc::clone(shaped);
        }
        let shaped = Arc::new(self.shaper(face).shape(figures, text));
        let mut memory = memory.write().unwrap_or_else(PoisonError::into_inner);
        Arc::clone(memory.entry(text.into()).or_insert(shaped))
    }

    /// Width of a line of text in points at a type size in points.
    pub fn measure(&self, face: Face, figures: Figures, size: f32, text: &str) -> f32 {
        let space = self.shape(face, figures, " ").width;
        let words: f32 = text.split(' ').map(|word| self.shape(face, figures, word).width).sum();
        (words + space * text.matches(' ').count() as f32) * size
    }

    /// A line of running text from its baseline's start; figures proportional.
    pub fn run(&self, face: Face, size: f32, colour: Colour, origin: Point, text: &str) -> TextRun {
        let glyphs = self.glyphs(face, Figures::Proportional, text);
        TextRun { face, size, colour, origin, glyphs, text: text.to_owned() }
    }

    /// The glyphs of a line of text, put together from its words.
    pub fn glyphs(&self, face: Face, figures: Figures, text: &str) -> Vec<Glyph> {
        let space = self.shape(face, figures, " ");
        let mut glyphs = Vec::with_capacity(text.len());
        let mut start = 0;
        for (index, word) in text.split(' ').enumerate() {
            if index > 0 {
                glyphs.extend(space.glyphs.iter().map(|glyph| moved(glyph, start)));
                start += 1;
            }
            let shaped = self.shape(face, figures, word);
            glyphs.extend(shaped.glyphs.iter().map(|glyph| moved(glyph, start)));
            start += word.len();
        }
        glyphs
    }

    fn shaper(&self, face: Face) -> &Shaper {
        let [regular, bold, italic, bold_italic] = &self.shapers;
        match face {
            Face::Regular => regular,
            Face::Bold => bold,
            Face::Italic => italic,
            Face::BoldItalic => bold_italic,
        }
    }

    fn memory(&self, face: Face, figures: Figures) -> &Memory {
        let [regular, bold, italic, bold_italic] = &self.memories;
        let [tabular, proportional] = match face {
            Face::Regular => regular,
            Face::Bold => bold,
            Face::Italic => italic,
            Face::BoldItalic => bold_italic,
        };
        match figures {
            Figures::Tabular => tabular,
            Figures::Proportional => proportional,
        }
    }
}

/// A glyph of a word, in a text in which the word starts at byte `start`.
fn moved(glyph: &Glyph, start: usize) -> Glyph {
    let start = start as u32;
    Glyph { text: glyph.text.start + start..glyph.text.end + start, ..glyph.clone() }
}

/// A quick hash for short words (FNV-1a, eight bytes at a time): the words come
/// from the lesson's own author, so there is no one to guard against.
#[derive(Default)]
struct WordHasher(u64);

impl Hasher for WordHasher {
    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            let word = chunk.iter().fold(0, |word, &b| (word << 8) | u64::from(b));
            self.0 = (self.0 ^ word).wrapping_mul(0x9E37_79B9_7F4A_7C15);
            self.0 ^= self.0 >> 32;
        }
    }

    fn finish(&self) -> u64 {
        self.0
    }
}
