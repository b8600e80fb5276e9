//! The canvas with its sides folded out: worked, and asked.

use crate::handout::context::{operand_of, result_of, shape_word, size};
use crate::handout::document::{Outline, Picture, PictureKind, Unfolded};
use crate::handout::words::{Words, fill};
use crate::lesson::{Canvas, Edge, PolygonSize, Shape};
use crate::plan::{CanvasPlan, StepKind, WorkedExample};
use crate::quantity::Length;
use crate::quantity::show::Show;
use crate::quantity::units::in_mm;

/// Room to write a length in.
const BLANK_MM: f32 = 20.0;

/// With all sizes and areas written in.
pub(super) fn worked(
    canvas: &Canvas,
    plan: &CanvasPlan,
    sums: &WorkedExample,
    words: &Words,
    show: &Show,
) -> Picture {
    let texts = &words.pictures.unfolded;
    // The figures of the sums, so that the drawing and these say the same.
    let face = result_of(sums, &StepKind::Face, words);
    let labels = sizes(canvas, plan, show, |at| operand_of(sums, &StepKind::Face, at, words));
    let edge = || {
        let values = [
            ("length", &*operand_of(sums, &StepKind::EdgeArea, 0, words)),
            ("depth", &show.length(canvas.depth)),
            ("area", &result_of(sums, &StepKind::EdgeArea, words)),
        ];
        fill(&texts.edge, &values)
    };
    let (areas, edge) =
        if unfolds(canvas) { (&texts.areas, edge()) } else { (&texts.face, String::new()) };
    let mut areas = fill(areas, &[("face", &face), ("edge", &edge)]);
    if !labels.middle.is_empty() {
        let values = [("areas", &*areas), ("side", &labels.width), ("middle", &labels.middle)];
        areas = fill(&texts.sides, &values);
    }
    picture(canvas, words, show, &areas, labels, [face, edge])
}

/// With words on the dimension lines and lines for the figures.
pub(super) fn asked(canvas: &Canvas, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.unfolded;
    let (width, height, middle) = match canvas.shape {
        Shape::Rectangle { .. } | Shape::Oval { .. } => (&texts.width, &*texts.height, ""),
        Shape::Round { .. } => (&texts.across, &*texts.across, ""),
        Shape::Polygon { .. } => (&texts.side, "", &*texts.middle),
    };
    let labels = Labels {
        width: width.clone(),
        height: height.to_owned(),
        depth: texts.depth.clone(),
        middle: middle.to_owned(),
        blank_mm: BLANK_MM,
    };
    picture(canvas, words, show, &texts.asked, labels, [String::new(), String::new()])
}

/// Texts of the dimension lines.
struct Labels {
    /// Of a side, for a polygon.
    width: String,
    /// Empty for a polygon.
    height: String,
    depth: String,
    /// From the middle to a side, for a polygon.
    middle: String,
    blank_mm: f32,
}

fn picture(
    canvas: &Canvas,
    words: &Words,
    show: &Show,
    areas: &str,
    labels: Labels,
    [face_label, edge_label]: [String; 2],
) -> Picture {
    let texts = &words.pictures.unfolded;
    Picture {
        alt: fill(
            if unfolds(canvas) { &texts.alt } else { &texts.bare },
            &[
                ("shape", &shape_word(canvas, words)),
                ("canvas", &canvas.name),
                ("size", &size(canvas, words, show)),
                ("areas", areas),
            ],
        ),
        kind: PictureKind::Unfolded(Unfolded {
            outline: outline(canvas),
            depth: if unfolds(canvas) { in_mm(canvas.depth) } else { 0.0 },
            face_label,
            edge_label,
            width_label: labels.width,
            height_label: labels.height,
            depth_label: labels.depth,
            middle_label: labels.middle,
            blank_mm: labels.blank_mm,
        }),
    }
}

/// Whether there are painted sides to fold out.
fn unfolds(canvas: &Canvas) -> bool {
    canvas.edge == Edge::Painted && canvas.depth > Length::default()
}

/// Lengths as on a tape; one of a polygon that is worked out as `operand` has it in the sum of
/// the face: sides, side, distance from the middle.
fn sizes(
    canvas: &Canvas,
    plan: &CanvasPlan,
    show: &Show,
    operand: impl Fn(usize) -> String,
) -> Labels {
    let depth = show.length(canvas.depth);
    let (width, height, middle) = match canvas.shape {
        Shape::Rectangle { width, height } | Shape::Oval { width, height } => {
            (show.length(width), show.length(height), String::new())
        }
        Shape::Round { diameter } => (show.length(diameter), show.length(diameter), String::new()),
        // A polygon is as many triangles as it has sides, all as high as is asked here:
        // its face is half its perimeter times that height.
        Shape::Polygon { side, given, .. } => {
            let middle = || show.length(2.0 * plan.areas.face / plan.areas.perimeter);
            let (side, middle) = match given {
                PolygonSize::Side => (show.length(side), operand(2)),
                PolygonSize::AcrossFlats => (operand(1), middle()),
                PolygonSize::AcrossCorners => (operand(1), operand(2)),
            };
            (side, String::new(), middle)
        }
    };
    Labels { width, height, depth, middle, blank_mm: 0.0 }
}

fn outline(canvas: &Canvas) -> Outline {
    match canvas.shape {
        Shape::Rectangle { width, height } => {
            Outline::Rectangle { width: in_mm(width), height: in_mm(height) }
        }
        Shape::Round { diameter } => {
            Outline::Oval { width: in_mm(diameter), height: in_mm(diameter) }
        }
        Shape::Oval { width, height } => {
            Outline::Oval { width: in_mm(width), height: in_mm(height) }
        }
        Shape::Polygon { sides, side, .. } => Outline::Polygon { sides, side: in_mm(side) },
    }
}
