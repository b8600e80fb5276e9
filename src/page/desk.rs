//! What every block needs at hand while it is set.

use std::collections::HashMap;

use super::inline::{
    self, Alignment, Collector, Dictionary, Division, Findings, Given, Line, Look, Paragraph,
};
use super::style::{Size, Style};
use super::tree::Tree;
use super::{TagId, TagKind};
use crate::handout::{DecimalMark, Inline};
use crate::ink::{Colour, Face, Faces, Figures};

/// A typesetter's desk.
pub(super) struct Desk<'a, 'd> {
    pub style: &'d Style,
    pub faces: &'d Faces,
    pub tree: Tree,
    pub findings: Findings,
    /// Page numbers of anchors as far as they are known, from 1.
    pub numbers: &'d HashMap<&'a str, usize>,
    /// In the numbers of tables and charts.
    pub decimal: DecimalMark,
    /// How words of running text may be divided.
    pub dictionary: &'d Dictionary,
    /// What follows the heading of a group of rows that goes on.
    pub continued: &'a str,
    /// What a box to tick is called.
    pub tick_box: &'a str,
    /// What a ruled line is called, by its number.
    pub ruled_line: &'a str,
    /// To which size pieces are cut.
    pub cut_to: &'a str,
}

/// Where a block stands and how its text looks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Column {
    /// Left edge on the page, in points.
    pub x: f32,
    pub width: f32,
    pub text: Size,
    pub colour: Colour,
    /// Parent of what is set.
    pub tag: TagId,
    pub place: Place,
}

/// What surrounds a block.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    /// The column of a page itself.
    Flow,
    /// Another block.
    Inside,
    /// The side column.
    Side,
}

impl Column {
    /// A column inside of this one, `left` and `right` narrower.
    pub(super) fn inset(self, left: f32, right: f32) -> Self {
        let place = match self.place {
            Place::Flow => Place::Inside,
            place => place,
        };
        Self { x: self.x + left, width: (self.width - left - right).max(24.0), place, ..self }
    }

    pub(super) fn tagged(self, tag: TagId) -> Self {
        Self { tag, ..self }
    }

    /// The look of its running text under a tag.
    pub(super) fn look(&self, tag: TagId) -> Look {
        Look::new(Face::Regular, self.text.size, self.colour, tag)
    }
}

/// How a text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Setting {
    pub measure: f32,
    pub alignment: Alignment,
    pub division: Division,
}

impl Setting {
    /// Ragged right, words whole if they can be.
    pub(super) fn ragged(measure: f32) -> Self {
        Self { measure, alignment: Alignment::Left, division: Division::Sparing }
    }

    pub(super) fn aligned(measure: f32, alignment: Alignment) -> Self {
        Self { measure, alignment, division: Division::Sparing }
    }
}

impl<'a> Desk<'a, '_> {
    /// The whole text column of a page.
    pub(super) fn column(&self) -> Column {
        let frame = &self.style.frame;
        Column {
            x: frame.left,
            width: frame.width,
            text: self.style.scale.body,
            colour: self.style.palette.ink,
            tag: Tree::ROOT,
            place: Place::Flow,
        }
    }

    /// Something to collect a paragraph with.
    pub(super) fn collector(&mut self) -> Collector<'a, '_> {
        let given = Given { link_colour: self.style.palette.accent, tick_box: self.tick_box };
        Collector::new(self.faces, &mut self.tree, &mut self.findings, self.numbers, given)
    }

    /// Inlines as lines.
    pub(super) fn lines(
        &mut self,
        inlines: &'a [Inline],
        look: Look,
        setting: Setting,
    ) -> Vec<Line<'a>> {
        let mut collector = self.collector();
        collector.inlines(inlines, look);
        let paragraph = collector.finish();
        self.set(&paragraph, setting)
    }

    /// A collected paragraph as lines.
    pub(super) fn set(&self, paragraph: &Paragraph<'a>, setting: Setting) -> Vec<Line<'a>> {
        let division = self.allowed(setting.division);
        let Setting { measure, alignment, .. } = setting;
        inline::set(paragraph, measure, alignment, division, self.dictionary)
    }

    /// Without patterns of the language no word is divided that fits a line.
    pub(super) fn allowed(&self, wished: Division) -> Division {
        if self.dictionary.divides() { wished } else { Division::Never }
    }

    /// Plain words as lines.
    pub(super) fn words(&mut self, text: &'a str, look: Look, setting: Setting) -> Vec<Line<'a>> {
        let mut collector = self.collector();
        collector.plain(text, look);
        let paragraph = collector.finish();
        self.set(&paragraph, setting)
    }

    /// Plain words as lines, apart from the words `after` them in the same element, if any.
    pub(super) fn words_before(
        &mut self,
        after: &str,
        text: &'a str,
        look: Look,
        setting: Setting,
    ) -> Vec<Line<'a>> {
        let mut collector = self.collector();
        collector.plain(text, look);
        if !text.is_empty() && !after.is_empty() {
            collector.apart(look);
        }
        let paragraph = collector.finish();
        self.set(&paragraph, setting)
    }

    /// A label that is made here, as one line.
    pub(super) fn label(&mut self, text: String, look: Look, setting: Setting) -> Option<Line<'a>> {
        let mut collector = self.collector();
        collector.made(text, look);
        let paragraph = collector.finish();
        let (_, most) = inline::extent(&paragraph);
        let measure = setting.measure.max(most + 0.1);
        self.set(&paragraph, Setting { measure, ..setting }).into_iter().next()
    }

    /// Width of plain words on one line, in points.
    pub(super) fn width(&self, face: Face, figures: Figures, size: f32, text: &str) -> f32 {
        self.faces.measure(face, figures, size, text)
    }

    /// A tag of a kind.
    pub(super) fn tag(&mut self, kind: TagKind, parent: TagId) -> TagId {
        self.tree.add(kind, parent)
    }
}
