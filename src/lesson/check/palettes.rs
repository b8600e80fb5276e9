use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::{Entries, Entry, Written};
use super::super::legible::Portion;
use super::super::limits;
use super::super::model::Colour;
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use super::super::tree::NodeId;
use crate::quantity::{Decimal, Share};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Colours of one layer with their shares.
pub(super) type Shares = Vec<(Arc<Colour>, Share)>;

/// Layers by name; one that is wrong is `None`.
#[derive(Debug)]
pub(super) struct Palette {
    pub(super) layers: Vec<(String, NodeId, Option<Shares>)>,
}

/// The palettes.
pub(super) fn palettes(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    colours: &Catalogue<Arc<Colour>>,
) -> Catalogue<Arc<Palette>> {
    Catalogue::of(desk, Sort::Palette, ("palettes", &raw.palettes), |_, raw| {
        let layers = raw.0.iter().map(|entry| {
            let shares = entry.value.as_ref();
            let shares = shares.and_then(|entries| shares_of(desk, entry, entries, colours));
            (entry.name.clone(), entry.node, shares)
        });
        Some(Arc::new(Palette { layers: layers.collect() }))
    })
}

/// A colour with its portion, while the rest is not known yet.
struct Line {
    node: NodeId,
    colour: Option<Arc<Colour>>,
    portion: Portion,
}

fn shares_of(
    desk: Desk<'_>,
    layer: &Entry<Entries<Written<Portion>>>,
    entries: &Entries<Written<Portion>>,
    colours: &Catalogue<Arc<Colour>>,
) -> Option<Shares> {
    let count = entries.0.len();
    if count == 0 || count > limits::COLOURS {
        let kind = if count == 0 { ProblemKind::NoColours } else { ProblemKind::TooManyColours };
        desk.fault_of_name(layer.node, kind, None);
    }
    let lines: Vec<Line> = entries
        .0
        .iter()
        .filter_map(|entry| {
            let colour = colours.find_key(desk, entry);
            let portion = portion(desk, entry.value.as_ref()?)?;
            Some(Line { node: entry.node, colour, portion })
        })
        .collect();
    let names: BTreeSet<&str> = entries.0.iter().map(|entry| entry.name.as_str()).collect();
    if names.is_empty() || names.len() < count {
        return None;
    }
    let rest = rest(desk, layer.node, &lines, count - lines.len())?;
    lines
        .into_iter()
        .map(|line| match line.portion {
            Portion::Share(share) => Some((line.colour?, share)),
            Portion::TheRest => Some((line.colour?, rest)),
        })
        .collect()
}

/// A portion of more than nothing.
fn portion(desk: Desk<'_>, written: &Written<Portion>) -> Option<Portion> {
    let portion = desk.read(written)?;
    if portion == Portion::Share(Share::NOTHING) {
        desk.fault(written.node, ProblemKind::Zero { allowed: "more than 0 %, up to 100 %" });
        return None;
    }
    Some(portion)
}

/// What the shares leave for "the rest"; nothing is left when no colour asks for it. With
/// `unread` further portions only that is told which none of them can mend.
fn rest(desk: Desk<'_>, layer: NodeId, lines: &[Line], unread: usize) -> Option<Share> {
    let mut rests = lines.iter().filter(|line| line.portion == Portion::TheRest);
    let (first, second) = (rests.next(), rests.next());
    if let (Some(first), Some(second)) = (first, second) {
        desk.fault_with(second.node, ProblemKind::RestTwice, first.node);
        return None;
    }
    let sum = lines.iter().fold(Decimal::ZERO, |sum, line| match line.portion {
        Portion::Share(share) => sum + share.fraction(),
        Portion::TheRest => sum,
    });
    let percent = (sum * Decimal::ONE_HUNDRED).normalize();
    let left = Decimal::ONE - sum;
    match first {
        Some(line) if left <= Decimal::ZERO => {
            desk.fault(line.node, ProblemKind::RestLeavesNothing { percent });
            None
        }
        _ if unread > 0 => None,
        None if !left.is_zero() => {
            desk.fault_of_name(layer, ProblemKind::SharesNotWhole { percent }, None);
            None
        }
        _ => Share::new(left),
    }
}
