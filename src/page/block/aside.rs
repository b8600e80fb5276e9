use crate::handout::Block;
use crate::page::desk::{Column, Desk, Place};
use crate::page::galley::Galley;
use crate::page::strip::{Drift, Snap, Strip, stack};
use crate::page::style::SideColumn;
use crate::page::{Mark, Role, TagKind, draw};

use super::frame::Box;

/// A note takes no more than this part of a page's height in the side column.
const MOST_OF_SIDE: f32 = 0.55;

/// A note: in the side column of a book beside what follows, inset elsewhere.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    blocks: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let tag = desk.tag(TagKind::Note, column.tag);
    match (column.place, desk.style.frame.side) {
        (Place::Flow, Some(side)) => {
            let narrow = side_column(desk, side, column).tagged(tag);
            let mark = desk.tree.mark();
            let strips = desk.inner(blocks, narrow);
            let height = desk.style.frame.height * MOST_OF_SIDE;
            let note = stack(strips);
            if galley.height_beside() + note.height <= height {
                let mut ruled = rule(desk, side);
                let top = ruled.height;
                ruled.height += note.height;
                ruled.add(note, top);
                galley.set_beside(ruled);
                return;
            }
            // Too long for the side column, so it is set anew in the text.
            desk.tree.rewind(mark);
            inset(desk, blocks, column.tagged(tag), galley);
        }
        (Place::Side, _) => desk.blocks(blocks, column.tagged(tag), galley),
        _ => inset(desk, blocks, column.tagged(tag), galley),
    }
}

/// The side column for notes and captions.
pub(super) fn side_column(desk: &Desk<'_, '_>, side: SideColumn, column: Column) -> Column {
    Column {
        x: side.left,
        width: side.width,
        text: desk.style.scale.note,
        place: Place::Side,
        ..column
    }
}

/// The rule over a note.
fn rule<'a>(desk: &Desk<'a, '_>, side: SideColumn) -> Strip<'a> {
    let colour = desk.style.palette.accent;
    let shape = draw::line((side.left, 1.5), (side.left + side.width, 1.5), colour, 0.75);
    Strip { height: 4.5, marks: vec![Mark { shape, role: Role::Artifact }], ..Default::default() }
}

fn inset<'a>(
    desk: &mut Desk<'a, '_>,
    blocks: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let grid = desk.style.grid();
    let indent = 1.6 * grid;
    let inner = Column { text: desk.style.scale.note, ..column.inset(indent, 0.0) };
    let strips = desk.inner(blocks, inner);
    let frame = Box {
        x: column.x,
        width: column.width,
        ground: None,
        bar: Some((desk.style.palette.rule, 1.5)),
        rules: None,
        padding: 0.0,
        gap: grid,
    };
    for (index, mut strip) in frame.around(strips, desk.style.frame.height).into_iter().enumerate()
    {
        strip.snap = Snap::Free;
        if column.place == Place::Flow {
            strip.drift = if index == 0 { Drift::Paragraph } else { Drift::Line };
        }
        galley.push(strip);
    }
    galley.leave(grid);
}
