use super::super::desk::Desk;
use super::super::field::Field;
use super::super::model::{Accepted, Concern};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use crate::quantity::nearest::nearest;

/// What is right all the same, each with its reason, in the order of the file.
pub(super) fn accepted(desk: Desk<'_>, raw: &raw::Lesson) -> Option<Vec<Accepted>> {
    let entries = match &raw.accepted {
        Field::Absent => return Some(Vec::new()),
        Field::Broken => return None,
        Field::Present(entries) => &entries.0,
    };
    let accepted: Vec<Option<Accepted>> = entries
        .iter()
        .map(|entry| {
            let concern = Concern::from_word(&entry.name);
            if concern.is_none() {
                let known = || Concern::ALL.into_iter().map(Concern::word);
                let kind = ProblemKind::UnknownName {
                    sort: Sort::Concern,
                    name: entry.name.clone(),
                    nearest: nearest(&entry.name, known()).map(str::to_owned),
                    known: known().map(str::to_owned).collect(),
                };
                desk.fault_of_name(entry.node, kind, None);
            }
            let reason = entry.value.as_ref().and_then(|written| desk.read(written));
            Some(Accepted { concern: concern?, reason: reason? })
        })
        .collect();
    accepted.into_iter().collect()
}
