use std::ops::Range;

/// One glyph of a shaped text; lengths in em (1 = the type size).
#[derive(Debug, Clone, PartialEq)]
pub struct Glyph {
    pub id: u16,
    pub advance: f32,
    pub x_offset: f32,
    pub y_offset: f32,
    /// The bytes of the text that it stands for; empty for a follower in a cluster.
    pub text: Range<usize>,
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
