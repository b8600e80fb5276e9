use crate::handout::{Form, Inline};
use crate::ink::Face;
use crate::page::TagKind;
use crate::page::desk::{Column, Desk, Place, Setting};
use crate::page::galley::Galley;
use crate::page::inline::{Alignment, Division, Line, Look};
use crate::page::strip::{Drift, Joint, Snap, Strip};
use crate::page::style::{Edges, Size};

/// Ending a page within a paragraph.
const WITHIN: f32 = 4.0;

/// And that in the middle of a word.
const AT_HYPHEN: f32 = 30.0;

/// Narrower columns are set ragged: their spaces would gape.
const NARROW: f32 = 45.0;

/// How the lines of a text hold together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::page) enum Joints {
    /// At least two lines on each page.
    Flowing,
    /// All on one page.
    Whole,
}

/// Lines as strips; the first has a gap before it.
pub(in crate::page) fn text_strips<'a>(
    lines: Vec<Line<'a>>,
    x: f32,
    size: Size,
    gap: f32,
    joints: Joints,
) -> Vec<Strip<'a>> {
    let count = lines.len();
    let mut strips = Vec::with_capacity(count);
    let mut after_hyphen = 0.0;
    for (index, line) in lines.into_iter().enumerate() {
        let cost = WITHIN + after_hyphen;
        after_hyphen = if line.divided { AT_HYPHEN } else { 0.0 };
        let mut strip = Strip::of_line(line, x, size);
        let inner = index > 1 && index + 1 < count && joints == Joints::Flowing;
        match index {
            0 => {
                strip.gap = gap;
                strip.snap = Snap::Grid;
            }
            _ => strip.joint = if inner { Joint::Open(cost) } else { Joint::Glued },
        }
        strips.push(strip);
    }
    strips
}

/// How running text is set in a column.
pub(super) fn running(desk: &Desk<'_, '_>, column: Column) -> Setting {
    let running = desk.style.running;
    let measure = column.width.min(running.longest * column.text.character());
    let wide = measure > NARROW * column.text.character();
    let alignment = match running.edges {
        Edges::Justified if wide && column.place == Place::Flow => Alignment::Justified,
        Edges::Justified | Edges::Ragged => Alignment::Left,
    };
    // Ragged lines of some width need no hyphens.
    let division = match alignment {
        Alignment::Left if wide => Division::Sparing,
        _ => desk.allowed(Division::Freely),
    };
    Setting { measure, alignment, division }
}

/// A paragraph of running text.
pub(super) fn paragraph<'a>(
    desk: &mut Desk<'a, '_>,
    inlines: &'a [Inline],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let tag = desk.tag(TagKind::Paragraph, column.tag);
    let mut setting = running(desk, column);
    if inlines.iter().any(|inline| matches!(inline, Inline::Blank { .. })) {
        // Spaces beside blanks would gape, and blanks need the whole width.
        setting = Setting::ragged(column.width);
    }
    let lines = desk.lines(inlines, column.look(tag), setting);
    let gap = column.text.leading / 2.0;
    let joints = match desk.style.form {
        // What is said before cards is read before cutting any.
        Form::Cards => Joints::Whole,
        Form::Book | Form::Sheet => Joints::Flowing,
    };
    let mut strips = text_strips(lines, column.x, column.text, gap, joints);
    if column.place == Place::Flow {
        for (index, strip) in strips.iter_mut().enumerate() {
            strip.drift = if index == 0 { Drift::Paragraph } else { Drift::Line };
        }
    }
    galley.extend(strips);
    galley.leave(gap);
    // Bold words alone are the heading of what follows.
    if matches!(inlines, [Inline::Strong(_)]) {
        galley.glue();
    }
}

/// Quiet small print.
pub(super) fn small_print<'a>(
    desk: &mut Desk<'a, '_>,
    inlines: &'a [Inline],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let tag = desk.tag(TagKind::Paragraph, column.tag);
    let size = desk.style.scale.small;
    let look = Look::new(Face::Regular, size.size, desk.style.palette.quiet, tag);
    let measure = column.width.min(84.0 * size.character());
    let setting = Setting { measure, alignment: Alignment::Left, division: Division::Sparing };
    let lines = desk.lines(inlines, look, setting);
    let gap = size.leading / 2.0;
    galley.extend(text_strips(lines, column.x, size, gap, Joints::Flowing));
    galley.leave(gap);
}
