use crate::ink::{Colour, Dash, PathSegment, Point, Shape, Stroke};
use crate::page::style::{MM, WRITING};
use crate::page::{Role, TagId, draw};

/// Something in a line that is not text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Object {
    /// A rule to write on.
    Blank { tag: TagId },
    /// A box to tick.
    Tick { tag: TagId },
    /// A patch of colour; its name stands beside it.
    Swatch(Colour),
}

impl Object {
    /// Width in points in text of a size, as wished.
    pub(super) fn tick_width(size: f32) -> f32 {
        (size * 0.95).max(3.6 * MM)
    }

    /// Height that the line needs at least.
    pub(super) fn line_height(self) -> f32 {
        match self {
            Self::Blank { .. } => WRITING,
            Self::Tick { .. } | Self::Swatch(_) => 0.0,
        }
    }

    /// Its shape with the baseline's start at (x, 0).
    pub(super) fn draw(self, x: f32, width: f32, size: f32, ink: Colour) -> (Shape, Role) {
        let stroke = Stroke { colour: ink, width: 0.6, dash: Dash::Solid };
        match self {
            Self::Blank { tag } => {
                let y = size * 0.22;
                let from = Point { x: x + 1.0, y };
                let to = Point { x: x + (width - 1.0).max(1.0), y };
                let segments = vec![PathSegment::Move(from), PathSegment::Line(to)];
                let shape = Shape::Path { segments, fill: None, stroke: Some(stroke) };
                (shape, Role::Field(tag))
            }
            Self::Tick { tag } => {
                let side = width - 2.0;
                // Centred on the capitals.
                let top = -size * 0.36 - side / 2.0;
                let stroke = Some(Stroke { width: 0.8, ..stroke });
                (draw::rectangle(x + 1.0, top, side, side, None, stroke), Role::Field(tag))
            }
            Self::Swatch(colour) => {
                let side = size * 0.82;
                let top = -size * 0.36 - side / 2.0;
                let stroke = Some(Stroke { width: 0.5, ..stroke });
                // A little room parts it from the name of its colour.
                let patch = width - size * 0.25;
                (draw::rectangle(x, top, patch, side, Some(colour), stroke), Role::Artifact)
            }
        }
    }
}
