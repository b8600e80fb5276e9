use super::plan::PagePlan;
use super::track::{Stand, Track};
use crate::page::strip::{Reach, Strip};

/// Where a strip stands.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::page) struct Placed {
    /// From 0.
    pub page: usize,
    /// From the top of the text area, in points.
    pub top: f32,
    /// Tops of the notes beside it.
    pub notes: Vec<f32>,
    /// Whether its page starts with it.
    pub first: bool,
}

/// Places the strips of all pages.
pub(in crate::page) fn place(
    strips: &[Strip<'_>],
    pages: &[PagePlan],
    height: f32,
    grid: f32,
) -> Vec<Placed> {
    let mut placed = Vec::with_capacity(strips.len());
    for (page, plan) in pages.iter().enumerate() {
        let mut track = match plan.tight {
            None => Track::snapped(grid),
            Some(share) => Track::tight(grid, share),
        };
        let strips = strips.get(plan.strips.clone()).unwrap_or_default();
        let mut stands: Vec<Stand> = strips.iter().map(|strip| track.stand(strip)).collect();
        raise_notes(strips, &mut stands, height, grid);
        for (index, Stand { top, notes }) in stands.into_iter().enumerate() {
            placed.push(Placed { page, top, notes, first: index == 0 });
        }
    }
    placed
}

/// Moves notes up that would reach below the page.
fn raise_notes(strips: &[Strip<'_>], stands: &mut [Stand], height: f32, grid: f32) {
    let mut floor = height;
    for (strip, stand) in strips.iter().zip(stands).rev() {
        if strip.reach == Reach::Full {
            floor = floor.min(stand.top);
        }
        for (note, top) in strip.beside.iter().zip(&mut stand.notes).rev() {
            *top = top.min(floor - note.height).max(0.0);
            floor = *top - grid;
        }
    }
}
