use crate::page::inline::{self, Paragraph};

/// A cell before its column's width is known.
pub(super) struct Cell<'a> {
    pub paragraph: Paragraph<'a>,
    /// Width of its longest word, and of all on one line, in points.
    pub least: f32,
    pub most: f32,
    /// Of a number: width up to its decimal mark, in points.
    pub before_mark: Option<f32>,
    /// Whether it is left empty to be filled by hand.
    pub blank: bool,
}

impl<'a> Cell<'a> {
    pub(super) fn new(paragraph: Paragraph<'a>, before_mark: Option<f32>) -> Self {
        let (least, most) = inline::extent(&paragraph);
        let blank = false;
        Self { paragraph, least, most, before_mark, blank }
    }

    /// Whether something is written into it by hand.
    pub(super) fn is_by_hand(&self) -> bool {
        self.blank || self.paragraph.has_blank()
    }

    /// Width from the decimal mark on.
    pub(super) fn after_mark(&self) -> f32 {
        self.before_mark.map_or(0.0, |before| self.most - before)
    }
}
