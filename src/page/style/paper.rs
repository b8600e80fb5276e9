use super::{MM, Type};
use crate::handout::Form;
use crate::handout::{Edition, Paper};

/// Left margin: holes punched 12 mm from the edge and 6 mm wide (ISO 838) end at
/// 15 mm; the rest is for the ring and the thumb.
const INNER: f32 = 24.0 * MM;

/// Right margin: clears the same holes on the back of a sheet printed on both sides.
const OUTER: f32 = 16.5 * MM;

/// Above the text, with the header in it; more where the header is larger.
const TOP: f32 = 20.5 * MM;
const TOP_LARGE_PRINT: f32 = 22.8 * MM;

/// Below the text at least, with the footer in it.
const BOTTOM: f32 = 18.5 * MM;
const BOTTOM_LARGE_PRINT: f32 = 21.2 * MM;

/// Edge to header, and footer to edge: most printers reach to 6 mm or less.
const FURNITURE: f32 = 12.0 * MM;

/// Characters in a full line of a book.
const BOOK_CHARACTERS: f32 = 71.0;

/// Between text and side column.
const GUTTER: f32 = 6.5 * MM;

/// Margin of half a leaf on all four sides, header and footer in it: it is folded and
/// stapled, and nobody punches it.
const BOOKLET: f32 = 13.0 * MM;
const BOOKLET_FURNITURE: f32 = 7.0 * MM;

/// What a page is of its paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Leaf {
    Whole,
    /// Half of it, folded along its shorter middle.
    Half,
}

/// Where things stand on a page, in points.
#[derive(Debug, Clone, PartialEq)]
pub struct Frame {
    /// Width and height of the paper.
    pub paper: (f32, f32),
    pub left: f32,
    pub top: f32,
    /// Of the text column.
    pub width: f32,
    /// Of the text area: a whole number of body lines.
    pub height: f32,
    /// Below the text area what is less than a line.
    pub spare: f32,
    /// Text column, gutter and side column together.
    pub full_width: f32,
    pub side: Option<SideColumn>,
    /// Baseline of the header.
    pub header: f32,
    /// Baseline of the footer's last line.
    pub footer: f32,
}

/// The margin for captions and notes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SideColumn {
    pub left: f32,
    pub width: f32,
}

impl Frame {
    /// Gives up lines of text for so many points more of footer.
    pub(in crate::page) fn give_to_footer(&mut self, room: f32, scale: &Type) {
        let leading = scale.body.leading;
        let lines = ((room - self.spare) / leading).ceil().max(0.0);
        self.height = (self.height - lines * leading).max(leading);
    }

    pub(super) fn of(leaf: Leaf, form: Form, paper: Paper, edition: Edition, scale: &Type) -> Self {
        let (width, height) = match paper {
            Paper::A4 => (210.0 * MM, 297.0 * MM),
            Paper::Letter => (8.5 * 72.0, 11.0 * 72.0),
        };
        let (page_width, page_height) = match leaf {
            Leaf::Whole => (width, height),
            Leaf::Half => (height / 2.0, width),
        };
        let (inner, outer) = match leaf {
            Leaf::Whole => (INNER, OUTER),
            Leaf::Half => (BOOKLET, BOOKLET),
        };
        let (top, bottom) = match (leaf, edition) {
            (Leaf::Whole, Edition::Standard) => (TOP, BOTTOM),
            (Leaf::Whole, Edition::LargePrint) => (TOP_LARGE_PRINT, BOTTOM_LARGE_PRINT),
            (Leaf::Half, _) => {
                let furniture = BOOKLET_FURNITURE + 1.5 * scale.small.leading;
                (furniture.max(BOOKLET), furniture.max(BOOKLET))
            }
        };
        let furniture = match leaf {
            Leaf::Whole => FURNITURE,
            Leaf::Half => BOOKLET_FURNITURE,
        };
        let full_width = page_width - inner - outer;
        let room = page_height - top - bottom;
        let height = (room / scale.body.leading).floor() * scale.body.leading;
        // Eighteen-point lines need all the width there is, and half a leaf has no more.
        let with_side = form == Form::Book && edition == Edition::Standard && leaf == Leaf::Whole;
        let side = with_side.then(|| {
            let width = full_width - BOOK_CHARACTERS * scale.body.character() - GUTTER;
            SideColumn { left: inner + full_width - width, width }
        });
        Self {
            paper: (page_width, page_height),
            left: inner,
            top,
            width: side.map_or(full_width, |side| full_width - GUTTER - side.width),
            height,
            spare: room - height,
            full_width,
            side,
            header: furniture + scale.small.size * 0.72,
            footer: page_height - furniture,
        }
    }
}
