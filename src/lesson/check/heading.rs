use super::super::desk::{Desk, word_or};
use super::super::model::{Edition, Heading, Language, Paper};
use super::super::raw;
use super::super::tree::NodeId;
use crate::quantity::UnitSystem;

/// The title block.
pub(super) fn heading(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<Heading> {
    let title = desk.need_text(root, "title", &raw.title);
    let subtitle = desk.optional(&raw.subtitle);
    let teacher = desk.optional(&raw.teacher);
    let place = desk.optional(&raw.place);
    let date = desk.optional(&raw.date);
    let note = desk.optional(&raw.note);
    Some(Heading {
        title: title?,
        subtitle: subtitle?,
        teacher: teacher?,
        place: place?,
        date: date?,
        note: note?,
    })
}

/// The language of the handouts; `None` when the lesson names one that nobody knows.
pub(super) fn language(raw: &raw::Lesson) -> Option<Language> {
    word_or(&raw.language, Language::English)
}

/// Units, paper and size of print.
pub(super) fn choices(raw: &raw::Lesson) -> Option<(UnitSystem, Paper, Edition)> {
    let units = word_or(&raw.units, UnitSystem::Metric)?;
    let paper = word_or(&raw.paper, Paper::A4)?;
    Some((units, paper, word_or(&raw.print, Edition::Standard)?))
}
