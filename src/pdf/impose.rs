//! Which pages stand on which side of a sheet.

use crate::page::Pages;

/// One side of a sheet.
pub(super) struct Side {
    /// Pages by number with the place of their left edge in points, from left to right.
    pub pages: Vec<(usize, f32)>,
}

/// How all pages stand on sheets.
pub(super) struct Imposition {
    pub sides: Vec<Side>,
    /// Width and height of a side in points.
    pub size: (f32, f32),
}

impl Imposition {
    /// Every page on a side of its own.
    pub fn single(pages: &Pages) -> Self {
        let sides = (0..pages.pages.len()).map(|page| Side { pages: vec![(page, 0.0)] });
        Self { sides: sides.collect(), size: pages.size }
    }

    /// Two pages beside each other, in such an order that the sheets, printed on both sides,
    /// laid on each other and folded in the middle, are a booklet. Four pages make a sheet;
    /// what is missing at the end stays empty.
    pub fn folded(pages: &Pages) -> Self {
        let count = pages.pages.len();
        let all = count.next_multiple_of(4);
        let (width, height) = pages.size;
        let sides = (0..all / 2).map(|side| {
            let (early, late) = (side, all - 1 - side);
            // The outer side of a sheet has the later page on the left, the inner one on the
            // right.
            let [left, right] = if side % 2 == 0 { [late, early] } else { [early, late] };
            let pages = [(left, 0.0), (right, width)];
            Side { pages: pages.into_iter().filter(|(page, _)| *page < count).collect() }
        });
        Self { sides: sides.collect(), size: (2.0 * width, height) }
    }

    /// Side and left edge of every page.
    pub fn places(&self) -> Vec<(usize, f32)> {
        let mut places: Vec<(usize, usize, f32)> = Vec::new();
        for (at, side) in self.sides.iter().enumerate() {
            places.extend(side.pages.iter().map(|&(page, left)| (page, at, left)));
        }
        places.sort_unstable_by_key(|&(page, ..)| page);
        places.into_iter().map(|(_, side, left)| (side, left)).collect()
    }
}
