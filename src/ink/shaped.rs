use std::ops::Range;

/// One glyph of a shaped text; lengths in em (1 = the type size).
#[derive(Debug, Clone, PartialEq)]
pub struct Glyph {
    pub id: u16,
    pub advance: f32,
    pub x_offset: f32,
    pub y_offset: f32,
    /// The bytes of the text that it stands for; empty for a follower in a cluster. No line
    /// has 4 GB, and pages have many glyphs.
    pub text: Range<u32>,
}

impl Glyph {
    /// What it stands for in its text.
    pub fn slice<'a>(&self, text: &'a str) -> Option<&'a str> {
        text.get(self.start()..self.text.end as usize)
    }

    /// Where in its text it starts, in bytes.
    pub fn start(&self) -> usize {
        self.text.start as usize
    }
}

/// A shaped text.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Shaped {
    pub glyphs: Vec<Glyph>,
    /// Em.
    pub width: f32,
    /// Characters that the face lacks (set as a visible replacement).
    pub missing: Vec<char>,
}
