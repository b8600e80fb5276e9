//! The outline of a canvas and the depth of its edge.

use super::super::desk::Desk;
use super::super::field::{Entry, Field, Written};
use super::super::limits;
use super::super::model::{PolygonSize, Shape};
use super::super::problem::ProblemKind;
use super::super::raw::{Canvas, Outline};
use super::super::tree::NodeId;
use crate::quantity::Length;
use std::f64::consts::PI;

/// Keys of sizes, and the shapes that have them.
const RECTANGLE: &[&str] = &["width", "height"];
const ROUND: &[&str] = &["diameter"];
const POLYGON: &[&str] = &["sides", "side", "across flats", "across corners"];

/// The face of a canvas.
pub(super) fn shape(desk: Desk<'_>, entry: &Entry<Canvas>, raw: &Canvas) -> Option<Shape> {
    // Each size can be read, whatever the shape.
    for written in lengths(raw).into_iter().filter_map(|(_, field)| written(field)) {
        desk.bounded(written, &limits::CANVAS_SIZE);
    }
    if let Field::Present(sides) = &raw.sides {
        desk.bounded(sides, &limits::SIDES);
    }
    let outline = desk.need(entry.node, "shape", &raw.shape)?.value;
    let (word, wanted) = match outline {
        Outline::Rectangle => ("rectangle", RECTANGLE),
        Outline::Oval => ("oval", RECTANGLE),
        Outline::Round => ("round", ROUND),
        Outline::Polygon => ("polygon", POLYGON),
    };
    for key in RECTANGLE.iter().chain(ROUND).chain(POLYGON) {
        if let (false, Some(node)) = (wanted.contains(key), desk.tree.under(entry.node, key)) {
            let kind = ProblemKind::NotForShape { key, shape: word, wanted };
            desk.fault_of_name(node, kind, None);
        }
    }
    let size = |key, field| desk.need_bounded(entry.node, key, field, &limits::CANVAS_SIZE);
    match outline {
        Outline::Rectangle => {
            let (width, height) = (size("width", &raw.width), size("height", &raw.height));
            Some(Shape::Rectangle { width: width?, height: height? })
        }
        Outline::Oval => {
            let (width, height) = (size("width", &raw.width), size("height", &raw.height));
            Some(Shape::Oval { width: width?, height: height? })
        }
        Outline::Round => Some(Shape::Round { diameter: size("diameter", &raw.diameter)? }),
        Outline::Polygon => polygon(desk, entry.node, raw),
    }
}

/// All lengths of a face, written or not.
fn lengths(raw: &Canvas) -> [(&'static str, &Field<Written<Length>>); 6] {
    [
        ("width", &raw.width),
        ("height", &raw.height),
        ("diameter", &raw.diameter),
        ("side", &raw.side),
        ("across flats", &raw.across_flats),
        ("across corners", &raw.across_corners),
    ]
}

fn written<T>(field: &Field<T>) -> Option<&T> {
    match field {
        Field::Present(value) => Some(value),
        _ => None,
    }
}

/// A regular polygon of n sides by its side s, by the distance f between opposite
/// sides, s = f tan(pi / n), or by the distance c between opposite corners,
/// s = c sin(pi / n); opposite sides and corners exist for even n only.
fn polygon(desk: Desk<'_>, node: NodeId, raw: &Canvas) -> Option<Shape> {
    let sides = desk.need_bounded(node, "sides", &raw.sides, &limits::SIDES);
    let sizes = lengths(raw).into_iter().filter(|(key, _)| POLYGON.contains(key));
    let given: Vec<_> =
        sizes.clone().filter(|(_, field)| !matches!(field, Field::Absent)).collect();
    let [(key, field)] = given.as_slice() else {
        let misspelt = sizes.into_iter().any(|(key, _)| desk.is_misspelt(node, key));
        if !given.is_empty() || !misspelt {
            desk.fault_of_name(node, ProblemKind::PolygonSize { given: given.len() }, None);
        }
        return None;
    };
    let Field::Present(written) = field else { return None };
    let size = desk.bounded(written, &limits::CANVAS_SIZE);
    let sides = sides?;
    if sides % 2 == 1 && *key != "side" {
        let size = desk.tree.under(node, key).unwrap_or(node);
        desk.fault_of_name(size, ProblemKind::OddAcross { key }, None);
        return None;
    }
    let angle = PI / f64::from(sides);
    let (side, given) = match *key {
        "across flats" => (size? * angle.tan(), PolygonSize::AcrossFlats),
        "across corners" => (size? * angle.sin(), PolygonSize::AcrossCorners),
        _ => (size?, PolygonSize::Side),
    };
    Some(Shape::Polygon { sides, side, given })
}

/// The depth of the edge, no deeper than the face is wide, as far as its width is known.
pub(super) fn depth(desk: Desk<'_>, raw: &Canvas, shape: Option<Shape>) -> Option<Length> {
    let written = match &raw.depth {
        Field::Absent => return Some(Length::default()),
        Field::Broken => return None,
        Field::Present(written) => written,
    };
    let depth = desk.bounded(written, &limits::DEPTH)?;
    match shape.map(narrowest).or_else(|| no_wider_than(desk, raw)) {
        Some(across) if depth > across => {
            desk.fault(written.node, ProblemKind::EdgeTooDeep { depth, across });
            None
        }
        _ => Some(depth),
    }
}

/// The least size of a face that is not known as a whole: it is no wider than any of
/// its sizes says, but for the side of a polygon. A size too many says nothing.
fn no_wider_than(desk: Desk<'_>, raw: &Canvas) -> Option<Length> {
    let wanted = match written(&raw.shape).map(|at| at.value) {
        Some(Outline::Rectangle | Outline::Oval) => RECTANGLE,
        Some(Outline::Round) => ROUND,
        Some(Outline::Polygon) => POLYGON,
        None => &["width", "height", "diameter", "across flats", "across corners"],
    };
    let sizes = lengths(raw).into_iter().filter(|(key, _)| wanted.contains(key));
    let sizes: Vec<_> = sizes.filter_map(|(key, field)| Some((key, written(field)?))).collect();
    if wanted == POLYGON && sizes.len() > 1 {
        return None;
    }
    let sizes = sizes.into_iter().filter(|(key, _)| *key != "side");
    sizes
        .filter_map(|(_, written)| desk.bounded(written, &limits::CANVAS_SIZE))
        .reduce(|least, size| if size < least { size } else { least })
}

/// The smallest width of a face. For a polygon the diameter 2 r of the inscribed
/// circle, r = s / (2 tan(pi / n)).
fn narrowest(shape: Shape) -> Length {
    match shape {
        Shape::Rectangle { width, height } | Shape::Oval { width, height } => {
            if width < height {
                width
            } else {
                height
            }
        }
        Shape::Round { diameter } => diameter,
        Shape::Polygon { sides, side, .. } => side / (PI / f64::from(sides)).tan(),
    }
}
