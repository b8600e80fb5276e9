//! Where films and spreads come from that have been weighed.
//!
//! What a later file says itself is not weighed, though the file under it was: the origin
//! counts only beside the values that it came with.

use super::super::desk::Desk;
use super::super::field::{At, Field, Written};
use super::super::limits;
use super::super::model::{WeighedFilm, WeighedSpread};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use super::reserve::part;
use super::techniques;

/// `Some(None)` when the film was not weighed, `None` when its origin is wrong.
pub(super) fn film(desk: Desk<'_>, film: &At<raw::LayerFilm>) -> Option<Option<WeighedFilm>> {
    let At { node, value: raw } = match &film.value.weighed {
        Field::Absent => return Some(None),
        Field::Broken => return None,
        Field::Present(at) => at,
    };
    let counts = counts(
        desk,
        *node,
        [("classes", &raw.classes), ("canvases", &raw.canvases), ("cups", &raw.cups)],
    );
    let mean = desk.need_bounded(*node, "mean", &raw.mean, &limits::FILM);
    let own_weight = desk.need(*node, "own weight", &raw.own_weight);
    let own_weight = own_weight.and_then(|written| desk.read(written));
    let instead_of = desk.need(*node, "instead of", &raw.instead_of);
    let instead_of = instead_of.and_then(|at| techniques::film(desk, at));
    let [classes, canvases, cups] = counts?;
    let (mean, own_weight, instead_of) = (mean?, own_weight?, instead_of?);
    let weighed = WeighedFilm { cups, canvases, classes, mean, instead_of, own_weight };
    Some(came_with(desk, film.node, *node, &["low", "typical", "high"]).then_some(weighed))
}

/// As [`film`], for the spreads of the reserve, of which one is enough.
pub(super) fn spread(
    desk: Desk<'_>,
    reserve: NodeId,
    field: &Field<At<raw::WeighedSpread>>,
) -> Option<Option<WeighedSpread>> {
    let At { node, value: raw } = match field {
        Field::Absent => return Some(None),
        Field::Broken => return None,
        Field::Present(at) => at,
    };
    let parts = [("classes", &raw.classes), ("canvases", &raw.canvases)];
    let counts = counts(desk, *node, parts);
    let before = desk.need(*node, "instead of", &raw.instead_of).and_then(|before| {
        let part = |key, field| part(desk, before.node, (key, field), &limits::VARIATION);
        let class = part("class varies by", &before.value.class_varies);
        let students = part("students vary by", &before.value.students_vary);
        Some((class?, students?))
    });
    let ([classes, canvases], (class_varied, students_varied)) = (counts?, before?);
    let with = |key: &str| came_with(desk, reserve, *node, &[key]);
    let with_one = with("class varies by") || with("students vary by");
    let weighed = WeighedSpread { class_varied, students_varied, canvases, classes };
    Some(with_one.then_some(weighed))
}

/// Counts of which each is of parts of the one before: a class has a canvas at least, a canvas
/// a cup.
fn counts<const N: usize>(
    desk: Desk<'_>,
    node: NodeId,
    parts: [(&'static str, &Field<Written<u32>>); N],
) -> Option<[u32; N]> {
    let read = parts.map(|(key, field)| {
        let count = desk.need_bounded(node, key, field, &limits::WEIGHED);
        (key, desk.tree.under(node, key).unwrap_or(node), count)
    });
    for ((whole, before, some), (part, at, more)) in read.iter().zip(read.iter().skip(1)) {
        if some.zip(*more).is_some_and(|(some, more)| more < some) {
            desk.fault_with(*at, ProblemKind::FewerThan { part, whole }, *before);
            return None;
        }
    }
    let mut counts = [0; N];
    for (slot, (.., count)) in counts.iter_mut().zip(read) {
        *slot = count?;
    }
    Some(counts)
}

/// Whether the values of these keys stand in the file in which their origin stands.
fn came_with(desk: Desk<'_>, parent: NodeId, origin: NodeId, keys: &[&str]) -> bool {
    // A mapping that a later file repeats is laid over this one entry by entry, so its own
    // place says nothing.
    let first = desk.tree.children(origin).first().and_then(|entry| desk.tree.file(*entry));
    keys.iter().all(|key| {
        let value = desk.tree.under(parent, key);
        value.and_then(|value| desk.tree.file(value)) == first
    })
}
