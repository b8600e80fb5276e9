//! Blocks become strips, one file a kind of block.
//!
//! In: blocks and the column they stand in. Out: strips on a galley. Must not
//! know: pages (beyond how high one is) and what comes before or after.

mod aside;
mod cards;
mod columns;
mod contents;
mod cut;
mod facts;
mod figure;
mod frame;
mod heading;
mod labels;
mod list;
mod masthead;
mod notice;
mod pictogram;
mod ruled;
mod sign;
mod step;
mod text;
mod title_page;

pub(super) use text::{Joints, text_strips};

use super::desk::{Column, Desk, Place};
use super::galley::Galley;
use super::strip::Strip;
use super::table;
use crate::handout::Block;

impl<'a> Desk<'a, '_> {
    /// Sets blocks in a column one below the other.
    pub(super) fn blocks(&mut self, blocks: &'a [Block], column: Column, galley: &mut Galley<'a>) {
        for block in blocks {
            self.block(block, column, galley);
        }
    }

    /// Sets blocks inside of another block.
    fn inner(&mut self, blocks: &'a [Block], column: Column) -> Vec<Strip<'a>> {
        let mut galley = Galley::default();
        self.blocks(blocks, column, &mut galley);
        galley.finish()
    }

    pub(super) fn block(&mut self, block: &'a Block, column: Column, galley: &mut Galley<'a>) {
        match block {
            Block::Masthead { kind, title, facts } => {
                masthead::set(self, kind, title, facts, column, galley);
            }
            Block::TitlePage { title, subtitle, lines, picture } => {
                let page =
                    title_page::TitlePage { title, subtitle, lines, picture: picture.as_ref() };
                title_page::set(self, &page, column, galley);
            }
            // Its entries are the headings of the document: see `contents`.
            Block::Contents { .. } => {}
            Block::Heading { level, text, anchor } => {
                heading::set(self, *level, text, anchor, column, galley);
            }
            Block::Paragraph(inlines) => text::paragraph(self, inlines, column, galley),
            Block::SmallPrint(inlines) => text::small_print(self, inlines, column, galley),
            Block::List { start, items } => list::set(self, *start, items, column, galley),
            Block::Table(made) => table::set(self, made, column, galley),
            Block::Figure { picture, caption } => {
                figure::set(self, picture, caption, column, galley);
            }
            Block::Notice { kind, heading, body } => {
                notice::set(self, *kind, heading, body, column, galley);
            }
            Block::Aside(blocks) => aside::set(self, blocks, column, galley),
            Block::KeyFigures(facts) => facts::key_figures(self, facts, column, galley),
            Block::Step { number, heading, body } => {
                step::set(self, *number, heading, body, column, galley);
            }
            Block::Ruled { lines } => ruled::set(self, *lines, column, galley),
            Block::Columns { count, measure, body } => {
                columns::set(self, (*count, *measure), body, column, galley);
            }
            Block::Cards(cards) => cards::set(self, cards, column, galley),
            Block::CupLabels(made) => labels::set(self, made, column, galley),
            Block::PageBreak => {
                if column.place == Place::Flow {
                    galley.page();
                }
            }
            Block::Section { header } => {
                if column.place == Place::Flow {
                    galley.section(header);
                }
            }
        }
    }

    /// Sets the blocks of a document.
    pub(super) fn document(&mut self, blocks: &'a [Block]) -> Vec<Strip<'a>> {
        let mut galley = Galley::default();
        let column = self.column();
        for block in blocks {
            match block {
                Block::Contents { title } => {
                    contents::set(self, title, blocks, column, &mut galley);
                }
                _ => self.block(block, column, &mut galley),
            }
        }
        galley.finish()
    }
}
