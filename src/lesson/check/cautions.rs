use super::super::desk::Desk;
use super::super::field::{At, Field};
use super::super::limits;
use super::super::model::{Caution, When};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;

/// The safety notes, in the order of the file.
pub(super) fn cautions(desk: Desk<'_>, raw: &raw::Lesson) -> Vec<Caution> {
    let Field::Present(entries) = &raw.cautions else { return Vec::new() };
    let cautions = entries.0.iter().filter_map(|entry| {
        let raw = entry.value.as_ref()?;
        let sign = desk.need(entry.node, "sign", &raw.sign).copied();
        let heading = desk.need_text(entry.node, "heading", &raw.heading);
        let reason = desk.need_text(entry.node, "reason", &raw.reason);
        let source = desk.need_text(entry.node, "source", &raw.source);
        let when = desk.need(entry.node, "when", &raw.when).and_then(|at| when(desk, at));
        Some(Caution {
            name: entry.name.clone(),
            sign: sign?,
            heading: heading?,
            reason: reason?,
            source: source?,
            when: when?,
        })
    });
    cautions.collect()
}

fn when(desk: Desk<'_>, at: &At<raw::When>) -> Option<When> {
    let occasion = match &at.value {
        raw::When::Word(raw::Always::Always) => return Some(When::Always),
        raw::When::Rule(occasion) => occasion,
    };
    let doing = super::practices(desk, &occasion.doing);
    let age = desk.bounded_or(&occasion.younger_than, &limits::AGE, 0);
    let pigments = super::texts(desk, &occasion.pigments);
    match (&occasion.doing, &occasion.younger_than, &occasion.pigments) {
        (Field::Present(_), Field::Absent, Field::Absent) => doing.map(When::Doing),
        (Field::Absent, Field::Present(_), Field::Absent) => {
            u8::try_from(age?).ok().map(When::YoungerThan)
        }
        (Field::Absent, Field::Absent, Field::Present(_)) => pigments.map(When::Pigments),
        (Field::Broken, ..) | (_, Field::Broken, _) | (.., Field::Broken) => None,
        (Field::Absent, Field::Absent, Field::Absent) if !is_bare(desk, at.node) => None,
        _ => {
            desk.fault(at.node, ProblemKind::WhenNotOne);
            None
        }
    }
}

/// Nothing is written there that was told already, and nothing more may be said.
fn is_bare(desk: Desk<'_>, node: NodeId) -> bool {
    let mut entries = desk.tree.children(node).iter();
    entries.all(|entry| desk.tree.is_empty(*entry)) && !desk.may_say_more(node)
}
