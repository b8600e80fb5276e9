//! Page breaking by total fit: the breaks of the whole document are chosen so that
//! the sum of the costs of its pages is least.

use std::ops::Range;

use super::track::Track;
use crate::page::strip::{Joint, Strip};

/// Each page costs this, so that tightening one a little is worth saving a page.
const PAGE: f64 = 60.0;

/// A page that is not filled to its foot costs this times the part left empty, and
/// that times its square. Mostly in proportion: else emptiness would be shared out
/// among pages at the price of parting what could stay together.
const SHORTFALL: f64 = 150.0;
const GREAT_SHORTFALL: f64 = 300.0;

/// The last page of a chapter is no accident above this part of its height; below,
/// it costs up to `STRAY`.
const STRAY_BELOW: f64 = 0.33;
const STRAY: f64 = 90.0;

/// A chapter that may run on starts a page for nothing where the page before is filled to
/// this part; below, it costs up to `CHAPTER`.
const FILLED: f64 = 0.78;
const CHAPTER: f64 = 200.0;

/// Running on costs this; and more, where less than a part of the page is left for the
/// chapter from its heading on.
const RUN_ON: f64 = 15.0;
const OPENING: f32 = 0.32;
const LOW: f64 = 400.0;

/// Gaps may be made smaller down to this share of them, at a cost that grows with
/// the square of what was taken.
const TIGHTEST: f32 = 0.65;
const TIGHTEN: f64 = 55.0;

/// Parting what should stay together.
const PART: f64 = 10_000.0;

/// A strip that is higher than a page.
const OVERFULL: f64 = 1e7;

/// What stands on one page.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::page) struct PagePlan {
    pub strips: Range<usize>,
    /// Share of the gaps that is left; none for a page on the grid.
    pub tight: Option<f32>,
}

/// The pages of a document.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::page) struct Plan {
    pub pages: Vec<PagePlan>,
    /// Sum of what they cost.
    pub cost: f64,
}

#[derive(Clone, Copy)]
struct State {
    cost: f64,
    from: usize,
    tight: Option<f32>,
}

/// Chooses the breaks for pages of a height.
pub(in crate::page) fn plan(strips: &[Strip<'_>], height: f32, grid: f32) -> Plan {
    let unknown = State { cost: f64::INFINITY, from: 0, tight: None };
    let mut best = vec![unknown; strips.len() + 1];
    if let Some(first) = best.first_mut() {
        first.cost = 0.0;
    }
    for from in 0..strips.len() {
        let Some(State { cost: before, .. }) = best.get(from).copied() else { continue };
        if before.is_finite() {
            fill(strips, from, before, &mut best, height, grid);
        }
    }
    let cost = best.last().map_or(0.0, |state| state.cost);
    let mut pages = Vec::new();
    let mut end = strips.len();
    while end > 0 {
        let Some(state) = best.get(end) else { break };
        pages.push(PagePlan { strips: state.from..end, tight: state.tight });
        end = state.from;
    }
    pages.reverse();
    Plan { pages, cost }
}

/// Tries every end of a page that starts with a strip.
fn fill(
    strips: &[Strip<'_>],
    from: usize,
    before: f64,
    best: &mut [State],
    height: f32,
    grid: f32,
) {
    let mut snapped = Track::snapped(grid);
    let mut loose = Track::tight(grid, 1.0);
    let mut chapters = 0.0;
    for (index, strip) in strips.iter().enumerate().skip(from) {
        snapped.add(strip);
        let top = loose.add(strip);
        if strip.joint == Joint::Chapter && index > from {
            chapters += RUN_ON + if height - top < OPENING * height { LOW } else { 0.0 };
        }
        let end = index + 1;
        let fits = |track: &Track| track.y.max(track.packed) <= height + 0.1;
        let (cost, tight) = if fits(&snapped) {
            (0.0, None)
        } else if loose.packed <= height + 0.1
            && loose.y - loose.gaps * (1.0 - TIGHTEST) <= height + 0.1
        {
            let share = 1.0 - ((loose.y - height) / loose.gaps.max(0.1)).max(0.0);
            let taken = f64::from((1.0 - share) / (1.0 - TIGHTEST));
            (3.0 + TIGHTEN * taken * taken, Some(share))
        } else if index == from {
            (OVERFULL, None)
        } else {
            return;
        };
        let empty = f64::from(1.0 - loose.y.max(loose.packed) / height).clamp(0.0, 1.0);
        let (end_cost, stop) = match strips.get(end).map(|next| next.joint) {
            None | Some(Joint::Page) => (last(1.0 - empty), true),
            Some(Joint::Chapter) => (chapter_end(1.0 - empty), false),
            Some(Joint::Glued) => (PART + shortfall(empty), false),
            Some(Joint::Open(cost)) => (f64::from(cost) + shortfall(empty), false),
        };
        let cost = before + PAGE + cost + chapters + end_cost;
        if let Some(state) = best.get_mut(end)
            && cost < state.cost
        {
            *state = State { cost, from, tight };
        }
        if stop {
            return;
        }
    }
}

fn shortfall(empty: f64) -> f64 {
    SHORTFALL * empty + GREAT_SHORTFALL * empty * empty
}

fn last(full: f64) -> f64 {
    if full < STRAY_BELOW { STRAY * (STRAY_BELOW - full) / STRAY_BELOW } else { 0.0 }
}

fn chapter_end(full: f64) -> f64 {
    if full < FILLED { CHAPTER * (FILLED - full) / FILLED } else { 0.0 }
}
