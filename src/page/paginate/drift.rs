//! Figures that have no room at the foot of a page let the paragraphs after them go first,
//! so that the page is filled.

use std::ops::Range;

use super::plan::{Plan, plan};
use crate::page::strip::{Drift, Joint, Strip};

/// A figure passes no more paragraphs than this: it is looked for near the words about it.
const FURTHEST: usize = 3;

/// Moving a figure must save so much, as it is better where the words about it are.
const WORTH: f64 = 15.0;

/// Moves figures down where that makes better pages, and returns the breaks.
pub(in crate::page) fn drift(strips: &mut [Strip<'_>], height: f32, grid: f32) -> Plan {
    let mut best = plan(strips, height, grid);
    for figure in (0..strips.len()).rev() {
        // Only a figure that starts a page may have left the one before it empty.
        let starts = best.pages.iter().skip(1).any(|page| page.strips.start == figure);
        let free = |strip: &Strip<'_>| {
            strip.drift == Drift::Figure && matches!(strip.joint, Joint::Open(_))
        };
        if !starts || !strips.get(figure).is_some_and(free) {
            continue;
        }
        let mut found = None;
        let mut least = best.cost - WORTH;
        let captions = strips.iter().skip(figure + 1);
        let captions = captions.take_while(|strip| strip.drift == Drift::Caption).count();
        let size = 1 + captions;
        for end in ends(strips, figure + size) {
            swap(strips, figure..end, size);
            let other = plan(strips, height, grid);
            swap_back(strips, figure..end, size);
            if other.cost < least {
                least = other.cost;
                found = Some((end, other));
            }
        }
        if let Some((end, other)) = found {
            swap(strips, figure..end, size);
            best = other;
        }
    }
    best
}

/// Ends of the paragraphs that a figure may pass; they start after it.
fn ends(strips: &[Strip<'_>], mut at: usize) -> Vec<usize> {
    let mut ends = Vec::new();
    for _ in 0..FURTHEST {
        let rest = strips.get(at..).unwrap_or_default();
        let lines = rest.iter().skip(1).take_while(|strip| strip.drift == Drift::Line).count();
        match rest.first() {
            Some(first) if first.drift == Drift::Paragraph && first.joint != Joint::Page => {}
            _ => break,
        }
        at += 1 + lines;
        // What is held by the paragraph would come to be held by the figure.
        if strips.get(at).is_none_or(|next| next.joint != Joint::Glued) {
            ends.push(at);
        }
    }
    ends
}

/// Puts the first strips of a range after the others.
fn swap(strips: &mut [Strip<'_>], range: Range<usize>, size: usize) {
    if let Some(part) = strips.get_mut(range) {
        part.rotate_left(size.min(part.len()));
    }
}

fn swap_back(strips: &mut [Strip<'_>], range: Range<usize>, size: usize) {
    if let Some(part) = strips.get_mut(range) {
        part.rotate_right(size.min(part.len()));
    }
}
