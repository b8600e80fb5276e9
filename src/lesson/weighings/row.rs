//! One row: its weights, and what of the lesson it names.

use super::super::desk::Desk;
use super::super::field::{Field, Written};
use super::super::limits;
use super::super::model::{Canvas, Colour, Lesson, Mix, Students, Technique, Trust, WeighedCup};
use super::super::problem::{PartOfCanvas, ProblemKind, Sort};
use super::super::source::Place;
use super::super::tree::NodeId;
use super::{Given, raw};
use crate::quantity::nearest::nearest;
use crate::quantity::{Date, Mass, read};
use std::sync::Arc;

/// Who pours in front of the class.
const DEMONSTRATION: &str = "demonstration";
/// A set that was kept ready.
const SPARE: &str = "spare";

/// A cup that was weighed, and the nodes that it came from.
#[derive(Clone)]
pub(super) struct Row {
    pub(super) node: NodeId,
    pub(super) date: Option<Date>,
    pub(super) cup: WeighedCup,
    pub(super) colour: NodeId,
    pub(super) technique: NodeId,
    pub(super) mix: NodeId,
    pub(super) tray: Option<NodeId>,
}

/// A value that the file must say.
pub(super) fn say<'a, T>(
    desk: Desk<'_>,
    root: NodeId,
    key: &'static str,
    field: &'a Field<T>,
) -> Option<&'a T> {
    let is_there = desk.tree.under(root, key).is_some() || desk.is_misspelt(root, key);
    if matches!(field, Field::Absent) && !is_there {
        desk.fault(root, ProblemKind::NotSaid { key });
        return None;
    }
    desk.need(root, key, field)
}

/// The rows of a class that are right. Weights are checked even where the lesson is wrong.
pub(super) fn rows(
    desk: Desk<'_>,
    root: NodeId,
    raw: &raw::Class,
    given: Option<&Given>,
) -> Vec<Row> {
    let date = desk.optional(&raw.date);
    let scale = match &raw.scale {
        Field::Present(written) => desk.bounded(written, &limits::SCALE_STEP),
        _ => None,
    };
    let Some(at) = say(desk, root, "cups", &raw.cups) else { return Vec::new() };
    let weighed: Vec<_> =
        at.value.0.iter().filter(|item| item.value.as_ref().is_none_or(is_weighed)).collect();
    if weighed.is_empty() {
        let cups = desk.tree.under(root, "cups").unwrap_or(root);
        desk.fault(cups, ProblemKind::NoCups);
    }
    let cups = || weighed.iter().filter_map(|item| Some((item.node, item.value.as_ref()?)));
    let is_told = !matches!(raw.scale, Field::Absent) || desk.is_misspelt(root, "scale");
    let no_scale = |cup: &raw::Cup| matches!(cup.scale, Field::Absent);
    if let Some((node, _)) = cups().find(|(_, cup)| !is_told && no_scale(cup)) {
        let place = desk.tree.under(node, "scale").unwrap_or(node);
        desk.fault(place, ProblemKind::NoScale);
    }
    let mut rows = Vec::new();
    for (node, cup) in cups() {
        let weights = weights(desk, node, cup, scale);
        let trust = match cup.checked {
            Field::Absent | Field::Present(raw::Checked::No) => Some(Trust::Plain),
            Field::Present(raw::Checked::Yes) => Some(Trust::Checked),
            Field::Broken => None,
        };
        let note = desk.optional(&cup.note);
        let names = names(desk, node, cup, given);
        let date =
            date.map(|date| date.or_else(|| given.and_then(|given| given.lesson.heading.date)));
        rows.extend((|| {
            let (names, weights) = (names?, weights?);
            Some(Row {
                node,
                date: date?,
                colour: names.colour_node,
                technique: desk.tree.under(node, "technique").unwrap_or(names.canvas_node),
                mix: desk.tree.under(node, "consistency").unwrap_or(names.canvas_node),
                tray: weights.tray.and(desk.tree.under(node, "tray")),
                cup: WeighedCup {
                    student: names.student,
                    canvas: names.canvas,
                    piece: names.piece,
                    technique: names.technique,
                    layer: names.layer,
                    mix: names.mix,
                    colour: names.colour,
                    before: weights.before,
                    after: weights.after,
                    tray: weights.tray,
                    step: weights.step,
                    trust: trust?,
                    note: note?,
                    place: weights.place,
                },
            })
        })());
    }
    rows
}

/// A row in which no weight is written is a cup that nobody weighed.
fn is_weighed(cup: &raw::Cup) -> bool {
    [&cup.before, &cup.after, &cup.tray].iter().any(|weight| !matches!(weight, Field::Absent))
}

struct Weights {
    before: Mass,
    after: Mass,
    tray: Option<Mass>,
    step: Mass,
    /// Of the weight before, which is what may be doubted later.
    place: Place,
}

fn weights(desk: Desk<'_>, node: NodeId, cup: &raw::Cup, scale: Option<Mass>) -> Option<Weights> {
    half_weighed(desk, node, cup);
    let weight = |field: &Field<Written<Mass>>, bounds| match field {
        Field::Present(written) => desk.bounded(written, bounds),
        _ => None,
    };
    let before = weight(&cup.before, &limits::FULL_CUP);
    let after = weight(&cup.after, &limits::EMPTIED);
    let tray = match &cup.tray {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(written) => desk.bounded(written, &limits::EMPTIED).map(Some),
    };
    let step = match &cup.scale {
        Field::Absent => scale,
        Field::Broken => None,
        Field::Present(written) => desk.bounded(written, &limits::SCALE_STEP),
    };
    let under = |key| desk.tree.under(node, key).unwrap_or(node);
    let (before, after) = (before?, after?);
    if after > before {
        desk.fault_with(under("after"), ProblemKind::AfterHeavier, under("before"));
        return None;
    }
    let place = desk.tree.place(under("before"))?;
    Some(Weights { before, after, tray: tray?, step: step?, place })
}

/// Tells which of the weights is missing.
fn half_weighed(desk: Desk<'_>, node: NodeId, cup: &raw::Cup) {
    let is_missing = |key, field: &Field<Written<Mass>>| {
        matches!(field, Field::Absent) && !desk.is_misspelt(node, key)
    };
    let missing: &'static [&'static str] =
        match (is_missing("before", &cup.before), is_missing("after", &cup.after)) {
            (true, true) => &["before", "after"],
            (true, false) => &["before"],
            (false, true) => &["after"],
            (false, false) => return,
        };
    let there = ["after", "before", "tray"]
        .into_iter()
        .find_map(|key| desk.tree.under(node, key).filter(|weight| !desk.tree.is_empty(*weight)));
    desk.fault(there.unwrap_or(node), ProblemKind::HalfWeighed { missing });
}

struct Names {
    student: String,
    canvas: Arc<Canvas>,
    canvas_node: NodeId,
    piece: u32,
    technique: Arc<Technique>,
    layer: String,
    mix: Arc<Mix>,
    colour: Arc<Colour>,
    colour_node: NodeId,
}

fn names(desk: Desk<'_>, node: NodeId, cup: &raw::Cup, given: Option<&Given>) -> Option<Names> {
    let student = desk.need(node, "student", &cup.student);
    let canvas = desk.need(node, "canvas", &cup.canvas);
    let colour = desk.need(node, "colour", &cup.colour);
    let given = given?;
    let lesson = given.lesson.as_ref();
    let student = student.and_then(|written| painter(desk, lesson, written));
    let canvas_node = canvas.map(|written| written.node);
    let canvases = given.canvases.iter().map(|canvas| (canvas.name.as_str(), canvas));
    let canvas = canvas.and_then(|written| find(desk, Sort::Canvas, written, canvases));
    let technique = said(&cup.technique, |written| {
        let known = lesson.techniques.iter().map(|technique| (technique.name.as_str(), technique));
        find(desk, Sort::Technique, written, known)
    });
    let mix = said(&cup.consistency, |written| {
        find(desk, Sort::Mix, written, lesson.mixes.iter().map(|mix| (mix.name.as_str(), mix)))
    });
    let canvas = canvas?;
    let piece = student.as_ref().and_then(|(_, sets)| piece(desk, &cup.piece, &canvas, *sets));
    let own = technique.as_ref().is_some_and(|said| {
        said.as_ref().is_none_or(|technique| technique.name == canvas.technique.name)
    });
    let technique = technique?.unwrap_or_else(|| Arc::clone(&canvas.technique));
    let layer = layer(desk, node, &cup.layer, &technique);
    let mix = match mix? {
        Some(mix) => Some(mix),
        None => {
            layer.as_ref().and_then(|layer| planned_mix(desk, node, (&canvas, &technique), layer))
        }
    };
    let colour_node = colour.map(|written| written.node);
    let colour = colour
        .zip(layer.as_deref())
        .and_then(|(written, layer)| find_colour(desk, written, &canvas, own.then_some(layer)));
    Some(Names {
        student: student?.0,
        canvas,
        canvas_node: canvas_node?,
        piece: piece?,
        technique,
        layer: layer?,
        mix: mix?,
        colour: colour?,
        colour_node: colour_node?,
    })
}

/// What a row may say: `Some(None)` when it does not, `None` when it is wrong.
fn said<T, U>(field: &Field<T>, find: impl Fn(&T) -> Option<U>) -> Option<Option<U>> {
    match field {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(written) => find(written).map(Some),
    }
}

/// The thing that a text names.
fn find<'a, T: Clone + 'a>(
    desk: Desk<'_>,
    sort: Sort,
    written: &Written<String>,
    known: impl Iterator<Item = (&'a str, &'a T)> + Clone,
) -> Option<T> {
    let name = desk.read(written)?;
    if let Some((_, found)) = known.clone().find(|(known, _)| *known == name) {
        return Some(found.clone());
    }
    unknown(desk, sort, written, name, &known.map(|(name, _)| name).collect::<Vec<_>>());
    None
}

fn unknown(desk: Desk<'_>, sort: Sort, written: &Written<String>, name: String, known: &[&str]) {
    if desk.log.is_full() {
        return;
    }
    let nearest = nearest(&name, known.iter().copied()).map(str::to_owned);
    let known = known.iter().map(|name| (*name).to_owned()).collect();
    desk.fault(written.node, ProblemKind::UnknownName { sort, name, nearest, known });
}

/// Who poured, and how many sets of canvases are his or hers.
fn painter(desk: Desk<'_>, lesson: &Lesson, written: &Written<String>) -> Option<(String, u32)> {
    let name = desk.read(written)?;
    let class = &lesson.class;
    let teacher = [(DEMONSTRATION, class.demonstrations), (SPARE, class.spares)];
    let teacher = teacher.into_iter().filter(|(_, sets)| *sets > 0);
    if let Some((who, sets)) = teacher.clone().find(|(who, _)| *who == name) {
        return Some((who.to_owned(), sets));
    }
    let numbers = match &class.students {
        Students::Named(names) => {
            if names.contains(&name) {
                return Some((name, 1));
            }
            None
        }
        Students::Count(count) => {
            let number = read::count(&name).ok();
            if let Some(number) = number.filter(|number| (1..=count.get()).contains(number)) {
                return Some((number.to_string(), 1));
            }
            Some(format!("1 to {count}"))
        }
    };
    let named = match &class.students {
        Students::Named(names) => names.as_slice(),
        Students::Count(_) => &[],
    };
    let known: Vec<&str> = named
        .iter()
        .map(String::as_str)
        .chain(numbers.as_deref())
        .chain(teacher.map(|(who, _)| who))
        .collect();
    unknown(desk, Sort::Painter, written, name, &known);
    None
}

/// Which of the alike canvases of a painter who has so many sets.
fn piece(desk: Desk<'_>, field: &Field<Written<u32>>, canvas: &Canvas, sets: u32) -> Option<u32> {
    let pieces = canvas.each.get().saturating_mul(sets);
    let piece = desk.bounded_or(field, &limits::PIECE, 1)?;
    if piece > pieces {
        if let Field::Present(written) = field {
            desk.fault(written.node, ProblemKind::NoSuchPiece { pieces });
        }
        return None;
    }
    Some(piece)
}

/// The layer that a row names, or the only one there is.
fn layer(
    desk: Desk<'_>,
    node: NodeId,
    field: &Field<Written<String>>,
    technique: &Technique,
) -> Option<String> {
    let known = || technique.layers.iter().map(|layer| layer.name.clone()).collect::<Vec<_>>();
    match (field, technique.layers.as_slice()) {
        (Field::Broken, _) => None,
        (Field::Absent, [only]) => Some(only.name.clone()),
        (Field::Absent, _) => {
            if !desk.is_misspelt(node, "layer") {
                let at = desk.tree.under(node, "layer").unwrap_or(node);
                let technique = technique.name.clone();
                desk.fault(at, ProblemKind::LayerNeeded { technique, known: known() });
            }
            None
        }
        (Field::Present(written), layers) => {
            let name = desk.read(written)?;
            if layers.iter().any(|layer| layer.name == name) {
                return Some(name);
            }
            if desk.log.is_full() {
                return None;
            }
            let known = known();
            let nearest = nearest(&name, known.iter().map(String::as_str)).map(str::to_owned);
            let (technique, layer) = (technique.name.clone(), name);
            desk.fault(
                written.node,
                ProblemKind::LayerUnknown { technique, layer, nearest, known },
            );
            None
        }
    }
}

/// The mix that the lesson says for a layer, also of another technique: that of the layer of
/// this name, or the only one of the canvas.
fn planned_mix(
    desk: Desk<'_>,
    node: NodeId,
    (canvas, technique): (&Canvas, &Technique),
    layer: &str,
) -> Option<Arc<Mix>> {
    let mut named = canvas.technique.layers.iter().zip(&canvas.layers);
    if let Some((_, planned)) = named.find(|(known, _)| known.name == layer) {
        return Some(Arc::clone(&planned.mix));
    }
    let mut mixes: Vec<&Arc<Mix>> = canvas.layers.iter().map(|layer| &layer.mix).collect();
    mixes.dedup_by(|one, other| one.name == other.name);
    if let [only] = mixes.as_slice() {
        return Some(Arc::clone(only));
    }
    if !desk.is_misspelt(node, "consistency") {
        let at = desk.tree.under(node, "consistency").unwrap_or(node);
        desk.fault(at, ProblemKind::MixNeeded { technique: technique.name.clone() });
    }
    None
}

/// A colour of one layer of a canvas, or of all where it was poured otherwise.
fn find_colour(
    desk: Desk<'_>,
    written: &Written<String>,
    canvas: &Canvas,
    layer: Option<&str>,
) -> Option<Arc<Colour>> {
    let colour = desk.read(written)?;
    let colours = colours(canvas, layer);
    if let Some(found) = colours.iter().find(|known| known.name == colour) {
        return Some(Arc::clone(found));
    }
    if desk.log.is_full() {
        return None;
    }
    let known: Vec<String> = colours.iter().map(|colour| colour.name.clone()).collect();
    let nearest = nearest(&colour, known.iter().map(String::as_str)).map(str::to_owned);
    let layer = layer.filter(|_| canvas.layers.len() > 1).map(str::to_owned);
    let part = Box::new(PartOfCanvas { canvas: canvas.name.clone(), layer });
    let kind = ProblemKind::NotOfCanvas { colour, part, nearest, known };
    desk.fault(written.node, kind);
    None
}

/// The colours of one layer of a canvas, or of all where it was poured otherwise.
fn colours<'a>(canvas: &'a Canvas, layer: Option<&str>) -> Vec<&'a Arc<Colour>> {
    let layers = canvas.technique.layers.iter().zip(&canvas.layers);
    let mut colours: Vec<&Arc<Colour>> = Vec::new();
    for (_, planned) in layers.filter(|(known, _)| layer.is_none_or(|layer| known.name == layer)) {
        for (colour, _) in &planned.colours {
            if !colours.iter().any(|known| known.name == colour.name) {
                colours.push(colour);
            }
        }
    }
    colours
}
