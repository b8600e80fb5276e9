use super::NEARLY_FULL;
use super::cell::Cell;
use crate::handout::{Align, Column};
use crate::page::style::MM;

/// Room that a column keeps beyond its content, against rounding.
const EASE: f32 = 0.2;

/// Room for a number or a word by hand.
const HANDWRITTEN: f32 = 26.0 * MM;

/// What a column needs.
struct Need {
    least: f32,
    most: f32,
    /// For all but its heading on one line.
    folded: f32,
    /// Whether it gains by being wider.
    flexible: bool,
}

/// Widest part of each column's numbers from the decimal mark on.
pub(super) fn after_marks(columns: usize, body: &[Vec<Cell<'_>>]) -> Vec<f32> {
    let widest = |index| {
        let cells = body.iter().filter_map(|row| row.get(index));
        cells.map(Cell::after_mark).fold(0.0, f32::max)
    };
    (0..columns).map(widest).collect()
}

/// Width of the whole table with no cell folded.
pub(super) fn natural(
    columns: &[Column],
    head: &[Cell<'_>],
    body: &[Vec<Cell<'_>>],
    gutter: f32,
) -> f32 {
    let needs = columns.iter().enumerate().map(|(index, column)| need(index, column, head, body));
    needs.map(|need| need.most + gutter).sum::<f32>() - gutter
}

/// Widths of the columns from their content.
pub(super) fn choose(
    columns: &[Column],
    head: &[Cell<'_>],
    body: &[Vec<Cell<'_>>],
    measure: f32,
    gutter: f32,
) -> Vec<f32> {
    let needs: Vec<Need> =
        columns.iter().enumerate().map(|(index, column)| need(index, column, head, body)).collect();
    let room = (measure - gutter * (columns.len().saturating_sub(1)) as f32).max(1.0);
    let most: f32 = needs.iter().map(|need| need.most).sum();
    let least: f32 = needs.iter().map(|need| need.least).sum();
    let written = body.iter().flatten().any(|cell| cell.blank);
    if most <= room {
        let spare = room - most;
        let flexible = needs.iter().filter(|need| need.flexible).count();
        // A table that nearly fills its column is made to fill it, by its text.
        let full = (most > NEARLY_FULL * room || written) && flexible > 0;
        let extra = if full { spare / flexible as f32 } else { 0.0 };
        return needs
            .iter()
            .map(|need| need.most + if need.flexible { extra } else { 0.0 })
            .collect();
    }
    // Headings fold before what stands below them.
    let folded: f32 = needs.iter().map(|need| need.folded).sum();
    if folded <= room {
        return fold_headings(&needs, room);
    }
    if least >= room {
        // Not even the longest words fit: all give in proportion.
        return needs.iter().map(|need| need.least * room / least).collect();
    }
    share(&needs, room)
}

/// A heading on so many lines is so much wider than its even share, as words differ.
const UNEVEN: f32 = 1.25;

/// Headings are tried on no more lines than this before they have a word to a line.
const MOST_HEADING_LINES: u8 = 5;

/// Widths for headings on as few lines as there is room for; where more is left, the
/// headings that need least of it are folded less or not at all.
fn fold_headings(needs: &[Need], room: f32) -> Vec<f32> {
    let folded = |lines: u8| {
        let width = move |need: &Need| {
            need.folded.max((need.most * UNEVEN / f32::from(lines)).min(need.most))
        };
        needs.iter().map(width).collect::<Vec<f32>>()
    };
    let fits = |widths: &Vec<f32>| widths.iter().sum::<f32>() <= room;
    let widths = (2..=MOST_HEADING_LINES).map(folded).find(fits);
    let mut widths = widths.unwrap_or_else(|| needs.iter().map(|need| need.folded).collect());
    let mut spare = room - widths.iter().sum::<f32>();
    let mut wishes: Vec<(usize, f32)> =
        needs.iter().zip(&widths).map(|(need, width)| need.most - width).enumerate().collect();
    wishes.sort_by(|a, b| a.1.total_cmp(&b.1));
    for (index, wish) in wishes {
        let given = wish.min(spare).max(0.0);
        spare -= given;
        if let Some(width) = widths.get_mut(index) {
            *width += given;
        }
    }
    widths
}

fn need(index: usize, column: &Column, head: &[Cell<'_>], body: &[Vec<Cell<'_>>]) -> Need {
    let (mut least, mut most, mut before, mut after) = (0.0_f32, 0.0_f32, 0.0_f32, 0.0_f32);
    for cell in body.iter().filter_map(|row| row.get(index)) {
        match cell.before_mark {
            Some(width) => {
                before = before.max(width);
                after = after.max(cell.after_mark());
            }
            None => {
                least = least.max(cell.least);
                most = most.max(cell.most);
            }
        }
    }
    let numbers = before + after;
    let mut folded = most;
    if let Some(head) = head.get(index) {
        least = least.max(head.least);
        most = most.max(head.most);
        folded = folded.max(head.least);
    }
    let written = body.iter().filter_map(|row| row.get(index)).any(|cell| cell.blank);
    if written {
        most = most.max(HANDWRITTEN);
        folded = folded.max(HANDWRITTEN);
    }
    let flexible = column.align == Align::Left || written;
    Need {
        least: least.max(numbers) + EASE,
        most: most.max(numbers) + EASE,
        folded: folded.max(numbers) + EASE,
        flexible,
    }
}

/// Shares room that is less than all columns want: narrow ones get what they want,
/// the others share what is left in proportion to their content.
fn share(needs: &[Need], room: f32) -> Vec<f32> {
    let mut widths: Vec<Option<f32>> = vec![None; needs.len()];
    loop {
        let taken: f32 = widths.iter().flatten().sum();
        let open = || needs.iter().zip(&widths).filter(|(_, width)| width.is_none());
        let wanted: f32 = open().map(|(need, _)| weight(need)).sum();
        let left = room - taken;
        // Settles the columns whose share is outside of what they need.
        let settled: Vec<Option<f32>> = needs
            .iter()
            .zip(&widths)
            .map(|(need, width)| {
                let share = left * weight(need) / wanted.max(1.0);
                match width {
                    Some(width) => Some(*width),
                    None if share >= need.most => Some(need.most),
                    None if share <= need.least => Some(need.least),
                    None => None,
                }
            })
            .collect();
        let changed = settled.iter().flatten().count() != widths.iter().flatten().count();
        let sum: f32 = settled.iter().flatten().sum();
        let all_settled = settled.iter().all(Option::is_some);
        if !changed || all_settled || sum > room {
            let share = |need: &Need| (left * weight(need) / wanted.max(1.0)).max(need.least);
            let widths: Vec<f32> = needs
                .iter()
                .zip(if sum > room { widths } else { settled })
                .map(|(need, width)| width.unwrap_or_else(|| share(need)))
                .collect();
            let total: f32 = widths.iter().sum();
            let factor = if total > room { room / total } else { 1.0 };
            return widths.into_iter().map(|width| width * factor).collect();
        }
        widths = settled;
    }
}

/// Long cells gain less from width than short ones: they fold.
fn weight(need: &Need) -> f32 {
    need.most.sqrt()
}
