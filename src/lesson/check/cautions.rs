use super::super::desk::Desk;
use super::super::field::{At, Field};
use super::super::limits;
use super::super::model::{Caution, When};
use super::super::problem::ProblemKind;
use super::super::raw;

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
    match (&occasion.doing, &occasion.younger_than, &occasion.pigments) {
        (Field::Present(_), Field::Absent, Field::Absent) => {
            super::practices(desk, &occasion.doing).map(When::Doing)
        }
        (Field::Absent, Field::Present(written), Field::Absent) => {
            let age = desk.bounded(written, &limits::AGE)?;
            u8::try_from(age).ok().map(When::YoungerThan)
        }
        (Field::Absent, Field::Absent, Field::Present(_)) => {
            super::texts(desk, &occasion.pigments).map(When::Pigments)
        }
        (Field::Broken, ..) | (_, Field::Broken, _) | (.., Field::Broken) => None,
        _ => {
            desk.fault(at.node, ProblemKind::WhenNotOne);
            None
        }
    }
}
