//! Raw shape to checked lesson: every value read, every name resolved. In: the raw
//! types and the desk; out: the model, or problems in the log. Sections are checked
//! in the order in which they name each other; one that is wrong stops no other.

mod accepted;
mod canvas;
mod cautions;
mod exercises;
mod heading;
mod items;
mod layers;
mod materials;
mod mixes;
mod money;
mod outline;
mod palettes;
mod people;
mod reserve;
mod room;
mod shop;
mod sizes;
mod supplies;
mod techniques;
mod timetable;
mod unused;
mod weighed;

use super::desk::Desk;
use super::field::{Field, Items, Written};
use super::model::{Lesson, Practice, Print};
use super::origins::Origins;
use super::problem::ProblemKind;
use super::raw;
use super::tree::NodeId;
use crate::quantity::{Currency, UnitSystem};
use std::collections::BTreeMap;

/// The checked lesson; `None` when something is wrong.
pub(super) fn lesson(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<Lesson> {
    let heading = heading::heading(desk, root, raw);
    let choices = heading::choices(raw);
    let class = people::class(desk, root, raw);
    let materials = materials::materials(desk, raw);
    let colours = materials::colours(desk, raw, &materials);
    let mixes = mixes::mixes(desk, raw, &materials);
    let techniques = techniques::techniques(desk, raw);
    let finishes = techniques::finishes(desk, raw, &materials);
    let sizes = sizes::sizes(desk, root, raw);
    let palettes = palettes::palettes(desk, raw, &colours);
    let shelf = canvas::Shelf {
        techniques: &techniques,
        mixes: &mixes,
        palettes: &palettes,
        finishes: &finishes,
    };
    let canvases = canvas::canvases(desk, root, raw, &shelf);
    if let (Some(class), Some(canvases)) = (&class, &canvases) {
        people::bounded(desk, root, class, canvases);
    }
    let timetable = timetable::timetable(desk, raw);
    let exercises = exercises::exercises(desk, raw, heading.as_ref());
    let room = room::room(desk, root, raw);
    let washing = room::washing(desk, root, raw);
    let mixing = supplies::mixing(desk, root, raw);
    let reserve = reserve::reserve(desk, root, raw);
    let supplies = supplies::supplies(desk, raw);
    let items = items::items(desk, raw, &materials, &colours);
    let (shops, currency) = shop::shops(desk, raw, &items);
    let currency = match (&shops, &choices) {
        (Some(_), Some((units, ..))) => currency.or(Some(default_currency(*units))),
        _ => currency,
    };
    let charges = money::charges(desk, &raw.money, currency);
    let elsewhere = shop::elsewhere(desk, raw, &items);
    let stock = shop::stock(desk, raw, &items);
    let jars = shop::jars(desk, root, raw, &colours, &mixes);
    let practices = practices(desk, &raw.practices);
    let cautions = cautions::cautions(desk, raw);
    let accepted = accepted::accepted(desk, raw);
    if !desk.log.is_empty() {
        return None;
    }
    let (units, paper, edition) = choices?;
    let language = heading::language(raw)?;
    let canvases = canvases?;
    let jars = jars?;
    let unused = unused::unused(desk, root, raw, (&canvases, &jars));
    Some(Lesson {
        heading: heading?,
        print: Print { language, units, paper, edition, currency: currency? },
        class: class?,
        canvases,
        timetable: timetable?,
        exercises: exercises?,
        room: room?,
        washing: washing?,
        mixing: mixing?,
        reserve: reserve?,
        supplies,
        shops: shops?,
        charges: charges?,
        elsewhere: elsewhere?,
        stock,
        jars,
        practices: practices?,
        cautions,
        techniques: techniques.values().filter_map(|way| way.technique.clone()).collect(),
        sizes: sizes?,
        mixes: mixes.values().cloned().collect(),
        accepted: accepted?,
        unused,
        origins: Origins::default(),
    })
}

/// What prices are in when no price list says.
fn default_currency(units: UnitSystem) -> Currency {
    match units {
        UnitSystem::Us => Currency::USD,
        UnitSystem::Metric => Currency::EUR,
    }
}

/// A list of practices, none twice.
fn practices(desk: Desk<'_>, field: &Field<Items<Practice>>) -> Option<Vec<Practice>> {
    let Field::Present(items) = field else {
        return matches!(field, Field::Absent).then(Vec::new);
    };
    let mut first = BTreeMap::new();
    let mut practices = Vec::new();
    for item in &items.0 {
        let Some(practice) = item.value else { continue };
        match first.get(&practice) {
            Some(before) => {
                let name = desk.tree.text(item.node).to_owned();
                desk.fault_with(item.node, name_twice(name), *before);
            }
            None => {
                first.insert(practice, item.node);
                practices.push(practice);
            }
        }
    }
    Some(practices)
}

/// A list of texts, none twice.
fn texts(desk: Desk<'_>, field: &Field<Items<Written<String>>>) -> Option<Vec<String>> {
    match field {
        Field::Absent => Some(Vec::new()),
        Field::Broken => None,
        Field::Present(items) => {
            let texts = distinct(desk, items, name_twice, |written| desk.read(written));
            Some(texts.into_iter().map(|(_, text)| text).collect())
        }
    }
}

/// What the texts of a list lead to; the same text twice is a problem.
fn distinct<T>(
    desk: Desk<'_>,
    items: &Items<Written<String>>,
    twice: fn(String) -> ProblemKind,
    mut read: impl FnMut(&Written<String>) -> Option<T>,
) -> Vec<(NodeId, T)> {
    let mut first = BTreeMap::new();
    let mut values = Vec::new();
    for item in &items.0 {
        let Some(written) = &item.value else { continue };
        let name = written.text.trim();
        match first.get(name) {
            Some(before) => desk.fault_with(item.node, twice(name.to_owned()), *before),
            None => {
                first.insert(name, item.node);
                values.extend(read(written).map(|value| (item.node, value)));
            }
        }
    }
    values
}

fn name_twice(name: String) -> ProblemKind {
    ProblemKind::NameTwice { name }
}
