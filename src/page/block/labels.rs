use crate::handout::{CupLabel, Edition};
use crate::ink::{Dash, Face, Stroke};
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::Look;
use crate::page::strip::{Strip, stack};
use crate::page::style::MM;
use crate::page::{Mark, Role, TagKind, draw};

use super::cut::{self, Piece};

/// Width and least height of a label in millimetres: three beside each other across both
/// papers, two in large print, and room for a line to write on.
const LABEL: (f32, f32) = (56.0, 32.0);
const LABEL_LARGE_PRINT: (f32, f32) = (84.0, 45.0);

/// Within the edges, and the side of the swatch.
const PADDING: f32 = 2.0 * MM;
const SWATCH: f32 = 6.5 * MM;

/// Labels in a grid, all of one size.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    labels: &'a [CupLabel],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let (width, least) = match desk.style.edition {
        Edition::Standard => LABEL,
        Edition::LargePrint => LABEL_LARGE_PRINT,
    };
    let width = width * MM;
    let count = ((column.width / width + 0.01) as usize).max(1);
    // What is said of the size stands, and is heard, before the labels.
    let tag = desk.tag(TagKind::Paragraph, column.tag);
    let mut made: Vec<Strip<'a>> = Vec::with_capacity(labels.len());
    for label in labels {
        made.push(one(desk, label, column, width));
    }
    let heights = made.iter().map(|label| cut::up_to_mm(label.height));
    let height = heights.fold(least * MM, f32::max);
    let piece = Piece { width, height };
    let said = cut::said(desk, piece, column, tag);
    galley.extend(said);
    let mut rows = Vec::with_capacity(labels.len().div_ceil(count));
    let mut made = made.into_iter().peekable();
    while made.peek().is_some() {
        let mut row = Strip { height, ..Strip::default() };
        for (index, mut made) in made.by_ref().take(count).enumerate() {
            let x = index as f32 * width;
            made.shift_right(x);
            row.marks.extend(cut::lines(desk, column.x + x, piece));
            row.add(made, 0.0);
        }
        rows.push(row);
    }
    galley.leave(cut::BELOW);
    galley.extend(rows);
    galley.leave(desk.style.grid());
}

/// One label at the left edge of the column, as high as it needs.
fn one<'a>(desk: &mut Desk<'a, '_>, label: &'a CupLabel, column: Column, width: f32) -> Strip<'a> {
    let (scale, palette) = (desk.style.scale.clone(), desk.style.palette);
    let division = desk.tag(TagKind::Division, column.tag);
    let cell = Column { width, ..column };
    let inner = Column { text: scale.small, ..cell.inset(PADDING, PADDING).tagged(division) };
    let mut strip = Strip { height: PADDING, ..Strip::default() };
    let mut text_x = inner.x;
    if let Some(colour) = label.swatch {
        let edge = Some(Stroke { colour: palette.ink, width: 0.5, dash: Dash::Solid });
        let shape = draw::rectangle(inner.x, PADDING, SWATCH, SWATCH, Some(colour), edge);
        strip.marks.push(Mark { shape, role: Role::Artifact });
        text_x += SWATCH + PADDING;
    }
    let size = scale.body;
    let tag = desk.tag(TagKind::Paragraph, division);
    let look = Look::new(Face::Bold, size.size, palette.ink, tag);
    let lines = desk.words(&label.title, look, Setting::ragged(inner.x + inner.width - text_x));
    let head = size.leading * lines.len() as f32;
    // A single line stands at the middle of the swatch.
    let mut y = PADDING + ((SWATCH - head) / 2.0).max(0.0);
    for line in lines {
        strip.add_line(line, text_x, y + size.leading / 2.0 + size.size * 0.36);
        y += size.leading;
    }
    let body = stack(desk.inner(&label.body, inner));
    let top = y.max(PADDING + SWATCH) + PADDING / 2.0;
    strip.height = top + body.height + PADDING;
    strip.add(body, top);
    strip
}
