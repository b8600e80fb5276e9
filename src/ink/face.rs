use std::ops::Range;
use std::sync::Arc;

/// A face of the type family.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Face {
    Regular,
    Bold,
    Italic,
    BoldItalic,
}

impl Face {
    /// All faces.
    pub const ALL: [Self; 4] = [Self::Regular, Self::Bold, Self::Italic, Self::BoldItalic];
}

/// Which figures a text is set in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Figures {
    /// All of one width, for columns.
    Tabular,
    /// Each of its own width, for running text.
    Proportional,
}

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
#[derive(Debug, Clone, PartialEq)]
pub struct Shaped {
    pub glyphs: Vec<Glyph>,
    /// Em.
    pub width: f32,
    /// Characters that the face lacks (set as a visible replacement).
    pub missing: Vec<char>,
}

/// Vertical measures of a face in em, upwards positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Metrics {
    pub ascender: f32,
    pub descender: f32,
    pub cap_height: f32,
    pub x_height: f32,
}

/// The faces, with a memory of every word shaped so far.
pub struct Faces {
    _todo: Arc<()>,
}
