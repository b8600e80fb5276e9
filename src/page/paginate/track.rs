use crate::page::strip::{Give, Reach, Snap, Strip};

/// Room between two notes in the side column, in parts of the grid.
const BETWEEN_NOTES: f32 = 1.0;

/// The filling of a page, strip by strip.
#[derive(Debug, Clone, Copy)]
pub(super) struct Track {
    grid: f32,
    /// Whether strips that wish it stand on the grid.
    snapped: bool,
    /// How much of each gap is left, 0 to 1.
    gap_share: f32,
    /// Bottom of the last strip.
    pub y: f32,
    /// Sum of the gaps that could still be made smaller.
    pub gaps: f32,
    /// Bottom of the last note in the side column.
    side: f32,
    /// The same, were all notes moved up as far as they go.
    pub packed: f32,
    empty: bool,
}

/// Where a strip came to stand.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stand {
    pub top: f32,
    /// Tops of the notes beside it.
    pub notes: Vec<f32>,
}

impl Track {
    /// An empty page on the grid.
    pub(super) fn snapped(grid: f32) -> Self {
        Self {
            grid,
            snapped: true,
            gap_share: 1.0,
            y: 0.0,
            gaps: 0.0,
            side: 0.0,
            packed: 0.0,
            empty: true,
        }
    }

    /// An empty page whose gaps are tightened to a share.
    pub(super) fn tight(grid: f32, gap_share: f32) -> Self {
        Self { snapped: false, gap_share, ..Self::snapped(grid) }
    }

    /// Adds a strip without noting where its notes stand.
    pub(super) fn add(&mut self, strip: &Strip<'_>) -> f32 {
        let top = self.enter(strip);
        for note in &strip.beside {
            self.note(note, top);
        }
        self.y = top + strip.height;
        top
    }

    /// Adds a strip.
    pub(super) fn stand(&mut self, strip: &Strip<'_>) -> Stand {
        let top = self.enter(strip);
        let notes = strip.beside.iter().map(|note| self.note(note, top)).collect();
        self.y = top + strip.height;
        Stand { top, notes }
    }

    fn enter(&mut self, strip: &Strip<'_>) -> f32 {
        let mut top = self.y;
        if self.empty {
            top += strip.head.as_ref().map_or(0.0, |head| head.height);
            self.empty = false;
        } else {
            match strip.give {
                Give::Gives => {
                    top += strip.gap * self.gap_share;
                    self.gaps += strip.gap;
                }
                Give::Firm => top += strip.gap,
            }
        }
        if self.snapped && strip.snap == Snap::Grid {
            top = ((top - 0.05) / self.grid).ceil().max(0.0) * self.grid;
        }
        if strip.reach == Reach::Full {
            if self.side > top {
                top = self.side + self.grid;
                // Tightening what is above would not move it.
                self.gaps = 0.0;
            }
            (self.side, self.packed) = (0.0, top + strip.height);
        }
        top
    }

    fn note(&mut self, note: &Strip<'_>, top: f32) -> f32 {
        let between = self.grid * BETWEEN_NOTES;
        let at = if self.side > 0.0 { top.max(self.side + between) } else { top };
        self.side = at + note.height;
        self.packed += note.height + if self.packed > 0.0 { between } else { 0.0 };
        at
    }
}
