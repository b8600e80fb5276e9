use crate::handout::Block;
use crate::page::desk::{Column, Desk};
use crate::page::galley::Galley;
use crate::page::strip::{Joint, Snap, Strip, height_of, stack};

/// A column is at least this many characters wide.
const NARROWEST: f32 = 24.0;

/// Between two columns, in steps of the grid.
const GUTTER: f32 = 3.0;

/// Blocks in columns of about the same height, read down each of them. They stay on one
/// page, unless they are higher than it.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    count: u32,
    body: &'a [Block],
    column: Column,
    galley: &mut Galley<'a>,
) {
    let grid = desk.style.grid();
    let gutter = GUTTER * grid;
    let room = (column.width + gutter) / (NARROWEST * column.text.character() + gutter);
    let count = (count as usize).clamp(1, (room as usize).max(1));
    let width = (column.width - gutter * (count - 1) as f32) / count as f32;
    let mut rest = desk.inner(body, column.inset(0.0, column.width - width));
    let page = desk.style.frame.height;
    while !rest.is_empty() {
        let mut limit = height_of(&rest) / count as f32;
        while filled(&rest, limit, count) < rest.len() && limit < page {
            limit += grid / 2.0;
        }
        let limit = limit.min(page);
        let gap = rest.first().map_or(0.0, |first| first.gap);
        let mut beside = Strip { gap, snap: Snap::Grid, ..Strip::default() };
        for index in 0..count {
            // At least one strip a page, also where it is higher than that.
            let taken = filled(&rest, limit, 1).max(usize::from(index == 0));
            let later = rest.split_off(taken.min(rest.len()));
            let mut one = stack(std::mem::replace(&mut rest, later));
            one.shift_right(index as f32 * (width + gutter));
            beside.height = beside.height.max(one.height);
            beside.add(one, 0.0);
        }
        galley.push(beside);
    }
    galley.leave(column.text.leading / 2.0);
}

/// How many strips so many columns of a height hold.
fn filled(strips: &[Strip<'_>], limit: f32, columns: usize) -> usize {
    let mut from = 0;
    for _ in 0..columns {
        let rest = strips.get(from..).unwrap_or_default();
        let fits = |end: &usize| {
            let open = rest.get(*end).is_none_or(|next| next.joint != Joint::Glued);
            open && rest.get(..*end).is_some_and(|part| height_of(part) <= limit + 0.1)
        };
        from += (0..=rest.len()).rev().find(fits).unwrap_or(0);
    }
    from
}
