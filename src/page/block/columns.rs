use crate::handout::{Block, Measure};
use crate::page::desk::{Column, Desk, Place};
use crate::page::galley::Galley;
use crate::page::strip::{Joint, Reach, Snap, Strip, height_of, stack};

/// A column of lines is at least this many characters wide, one of paragraphs over the page
/// as many as are read well.
const NARROWEST: f32 = 24.0;
const READ_WELL: f32 = 38.0;

/// As much of a page do columns fill at most before they go on: a heading stands over them.
const MOST_OF_A_PAGE: f32 = 0.76;

/// Between two columns, in steps of the grid.
const GUTTER: f32 = 3.0;

/// A column does not end where a page would end only at this cost, as behind the first item of
/// a list, unless it would have to be more than a few lines higher.
const DEAREST: f32 = 25.0;
const FEW_LINES: f32 = 2.0;

/// Blocks in columns of about the same height, read down each of them. They stay on one
/// page, unless they are higher than it. Inside another block they keep to its width.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    (count, measure): (u32, Measure),
    body: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let grid = desk.style.grid();
    let (width, reach, narrowest) = match (measure, column.place) {
        (Measure::Page, Place::Flow) => (desk.style.frame.full_width, Reach::Full, READ_WELL),
        _ => (column.width, Reach::Column, NARROWEST),
    };
    let column = Column { width, ..column };
    let gutter = GUTTER * grid;
    let room = (column.width + gutter) / (narrowest * column.text.character() + gutter);
    let count = (count as usize).clamp(1, (room as usize).max(1));
    if count == 1 {
        return desk.blocks(body, column, galley);
    }
    let width = (column.width - gutter * (count - 1) as f32) / count as f32;
    let mut rest = desk.inner(body, column.inset(0.0, column.width - width));
    let page = MOST_OF_A_PAGE * desk.style.frame.height;
    keep_tables(&mut rest, page);
    galley.glue();
    while !rest.is_empty() {
        let least = |dearest| {
            let mut limit = height_of(&rest) / count as f32;
            while filled(&rest, limit, count, dearest) < rest.len() && limit < page {
                limit += grid / 2.0;
            }
            limit.min(page)
        };
        // Columns end where little is lost by it, if that makes them a few lines higher.
        let anywhere = least(f32::INFINITY);
        let well = least(DEAREST);
        let (limit, dearest) = if well <= anywhere + FEW_LINES * column.text.leading && well < page
        {
            (well, DEAREST)
        } else {
            (anywhere, f32::INFINITY)
        };
        let gap = rest.first().map_or(0.0, |first| first.gap);
        let mut beside = Strip { gap, snap: Snap::Grid, reach, ..Strip::default() };
        for index in 0..count {
            // At least one strip a page, also where it is higher than that.
            let taken = filled(&rest, limit, 1, dearest).max(usize::from(index == 0));
            let later = rest.split_off(taken.min(rest.len()));
            let mut one = stack(std::mem::replace(&mut rest, later));
            one.shift_right(index as f32 * (width + gutter));
            // What keeps its size may need more room than its column: on the paper at least.
            let over = one.right() - (desk.style.frame.left + desk.style.frame.full_width);
            if over > 0.1 {
                one.shift_right(-over);
            }
            beside.height = beside.height.max(one.height);
            beside.add(one, 0.0);
        }
        galley.push(beside);
    }
    galley.leave(column.text.leading / 2.0);
}

/// Tables stay in one column if they are no higher: their heads would not come again.
fn keep_tables(strips: &mut [Strip<'_>], highest: f32) {
    // The first row is glued to the head.
    for table in strips.chunk_by_mut(|one, next| one.head.is_some() && next.head.is_some()) {
        if height_of(table) <= highest {
            for row in table.iter_mut().filter(|row| row.head.is_some()) {
                row.joint = Joint::Glued;
            }
        }
    }
}

/// How many strips so many columns of a height hold, when none ends at a dearer place.
fn filled(strips: &[Strip<'_>], limit: f32, columns: usize, dearest: f32) -> usize {
    let mut from = 0;
    for _ in 0..columns {
        let rest = strips.get(from..).unwrap_or_default();
        let fits = |end: &usize| {
            let open = rest.get(*end).is_none_or(|next| match next.joint {
                Joint::Glued => false,
                Joint::Open(cost) => cost < dearest,
                Joint::Page | Joint::Chapter => true,
            });
            open && rest.get(..*end).is_some_and(|part| height_of(part) <= limit + 0.1)
        };
        from += (0..=rest.len()).rev().find(fits).unwrap_or(0);
    }
    from
}
