use crate::chart::{self, Room, Sizing};
use crate::handout::{Edition, Inline, Picture, PictureKind};
use crate::ink::Face;
use crate::page::desk::{Column, Desk, Place, Setting};
use crate::page::galley::Galley;
use crate::page::inline::Look;
use crate::page::strip::{Drift, Joint, Snap, Strip, stack};
use crate::page::{Answer, Mark, Printing, Role, TagId, TagKind, draw};

use super::aside::side_column;
use super::{Joints, text_strips};

/// A figure takes no more than this part of a page's height, to leave room for its
/// caption.
const MOST_OF_PAGE: f32 = 0.8;

/// A canvas is drawn no higher than this part of a page, so that the steps that measure it
/// can stand below it.
const CANVAS: f32 = 0.42;
const CANVAS_LARGE_PRINT: f32 = 0.37;

/// A nomogram is read the better the higher it is; the rest of the page says how.
const NOMOGRAM: f32 = 0.72;
const NOMOGRAM_LARGE_PRINT: f32 = MOST_OF_PAGE;

/// A figure with its caption: beside it in a book, below it elsewhere.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    made: &'a Picture,
    caption: &'a [Inline],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let grid = desk.style.grid();
    let tag = desk.tree.figure(&made.alt, column.tag);
    let mut strip = picture(desk, made, column, desk.style.frame.height * MOST_OF_PAGE, tag);
    strip.gap = 1.5 * grid;
    strip.snap = Snap::Grid;
    if caption.is_empty() {
        galley.push(strip);
        galley.leave(grid);
        return;
    }
    if column.place == Place::Flow {
        strip.drift = Drift::Figure;
    }
    let tag = desk.tag(TagKind::Caption, column.tag);
    match desk.style.frame.side {
        Some(side) if column.place == Place::Flow => {
            let narrow = side_column(desk, side, column);
            let mut beside = stack(self::caption(desk, caption, narrow, tag));
            beside.drift = Drift::Caption;
            strip.beside.push(beside);
            galley.push(strip);
        }
        _ => {
            galley.push(strip);
            let mut strips = self::caption(desk, caption, column, tag);
            if let Some(first) = strips.first_mut() {
                first.joint = Joint::Glued;
                first.gap = grid * 0.6;
                first.snap = Snap::Free;
            }
            for strip in &mut strips {
                strip.drift = Drift::Caption;
            }
            galley.extend(strips);
        }
    }
    galley.leave(grid);
}

/// A picture across a column, as large as its height allows.
pub(super) fn picture<'a>(
    desk: &mut Desk<'a, '_>,
    made: &Picture,
    column: Column,
    height: f32,
    tag: TagId,
) -> Strip<'a> {
    let small_print = desk.style.scale.small.size;
    let mut room = Room { width: column.width, small_print, decimal: desk.decimal };
    let mut drawing = chart::draw(made, room, desk.faces);
    let (canvas, nomogram) = match desk.style.edition {
        Edition::Standard => (CANVAS, NOMOGRAM),
        Edition::LargePrint => (CANVAS_LARGE_PRINT, NOMOGRAM_LARGE_PRINT),
    };
    let wished = match made.kind {
        PictureKind::Unfolded(_) => height.min(desk.style.frame.height * canvas),
        PictureKind::Nomogram(_) => height.min(desk.style.frame.height * nomogram),
        PictureKind::Coverage(_)
        | PictureKind::Bars(_)
        | PictureKind::Shares(_)
        | PictureKind::Fees(_)
        | PictureKind::Weighed(_)
        | PictureKind::FilmLeft(_)
        | PictureKind::EdgeGauge(_)
        | PictureKind::SpreadRings(_)
        | PictureKind::CheckLength(_)
        | PictureKind::Sketch(_)
        | PictureKind::Rings { .. } => height,
    };
    let may_shrink = drawing.size == Sizing::ToRoom;
    if may_shrink && drawing.height > wished {
        room.width *= wished / drawing.height;
        drawing = chart::draw(made, room, desk.faces);
    }
    // Lettering keeps its size, so a narrower drawing may still be too high.
    let fit = if may_shrink { (height / drawing.height).min(1.0) } else { 1.0 };
    // What keeps its size and needs more room than the column has stays on the paper at least.
    let edge = desk.style.frame.left + desk.style.frame.full_width;
    let x = column.x.min(edge - drawing.width).max(0.0);
    if drawing.size == Sizing::True {
        desk.findings.printing = Printing::AtItsSize;
    }
    let mut strip = Strip { height: drawing.height * fit, ..Strip::default() };
    let paragraph = (!drawing.blanks.is_empty()).then(|| desk.tag(TagKind::Paragraph, column.tag));
    let mut blanks = drawing.blanks.into_iter().peekable();
    let mut fields = Vec::new();
    for (place, mut shape) in drawing.shapes.into_iter().enumerate() {
        if fit < 1.0 {
            draw::scale(&mut shape, fit);
        }
        draw::shift(&mut shape, x, 0.0);
        match (blanks.next_if(|(blank, _)| *blank == place), paragraph) {
            (Some((_, what)), Some(paragraph)) => {
                let field = desk.tree.field(Answer::Written, &what, paragraph);
                fields.push(Mark { shape, role: Role::Field(field) });
            }
            _ => strip.marks.push(Mark { shape, role: Role::Content(tag) }),
        }
    }
    strip.marks.append(&mut fields);
    strip
}

/// A caption in quiet note size.
pub(super) fn caption<'a>(
    desk: &mut Desk<'a, '_>,
    caption: &'a [Inline],
    column: Column,
    tag: TagId,
) -> Vec<Strip<'a>> {
    let size = desk.style.scale.note;
    let look = Look::new(Face::Regular, size.size, desk.style.palette.quiet, tag);
    let measure = column.width.min(80.0 * size.character());
    let lines = desk.lines(caption, look, Setting::ragged(measure));
    text_strips(lines, column.x, size, 0.0, Joints::Whole)
}
