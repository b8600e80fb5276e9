//! What plotters draws on.

use std::cell::{Cell, RefCell};
use std::convert::Infallible;
use std::rc::Rc;

use plotters_backend::text_anchor::{HPos, VPos};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
    FontStyle,
};

use super::board::{Anchor, Board, Type};
use super::outline::ellipse;
use super::style::tint;
use crate::ink::{Colour, Dash, Face, PathSegment, Point, Stroke};

/// Steps of the backend in a point: plotters counts in whole steps.
pub(super) const FINE: f32 = 100.0;

/// Points as steps.
pub(super) fn steps(points: f32) -> i32 {
    (points * FINE).round() as i32
}

/// A place in steps as points.
pub(super) fn point((x, y): BackendCoord) -> Point {
    Point { x: x as f32 / FINE, y: y as f32 / FINE }
}

/// Emits shapes onto a board that the chart keeps a hold of.
pub(super) struct Backend<'f> {
    size: (u32, u32),
    board: Rc<RefCell<Board<'f>>>,
    dash: Rc<Cell<Dash>>,
}

type Done = Result<(), DrawingErrorKind<Infallible>>;

impl<'f> Backend<'f> {
    /// A backend of some size in points. What is drawn while `dash` holds a pattern is
    /// broken by it: plotters has no word for that.
    pub fn new(
        width: f32,
        height: f32,
        board: Rc<RefCell<Board<'f>>>,
        dash: Rc<Cell<Dash>>,
    ) -> Self {
        Self { size: (steps(width) as u32, steps(height) as u32), board, dash }
    }

    fn stroke<S: BackendStyle>(&self, style: &S) -> Option<Stroke> {
        let width = style.stroke_width() as f32 / FINE;
        Some(Stroke { colour: colour(style.color())?, width, dash: self.dash.get() })
    }

    fn add(&self, segments: Vec<PathSegment>, fill: Option<Colour>, stroke: Option<Stroke>) {
        if fill.is_some() || stroke.is_some() {
            self.board.borrow_mut().path(segments, fill, stroke);
        }
    }

    fn shape<S: BackendStyle>(&self, segments: Vec<PathSegment>, style: &S, fill: bool) {
        if fill {
            self.add(segments, colour(style.color()), None);
        } else {
            self.add(segments, None, self.stroke(style));
        }
    }
}

impl DrawingBackend for Backend<'_> {
    type ErrorType = Infallible;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Done {
        Ok(())
    }

    fn present(&mut self) -> Done {
        Ok(())
    }

    fn draw_pixel(&mut self, at: BackendCoord, color: BackendColor) -> Done {
        self.draw_rect(at, (at.0 + 1, at.1 + 1), &color, true)
    }

    fn draw_line<S: BackendStyle>(
        &mut self,
        from: BackendCoord,
        to: BackendCoord,
        style: &S,
    ) -> Done {
        self.draw_path([from, to], style)
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        (left, top): BackendCoord,
        (right, bottom): BackendCoord,
        style: &S,
        fill: bool,
    ) -> Done {
        let corners = [(left, top), (right, top), (right, bottom), (left, bottom)].map(point);
        self.shape(super::board::closed(&corners), style, fill);
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Done {
        let mut places = path.into_iter().map(point);
        let segments = places.next().map(PathSegment::Move).into_iter();
        let segments = segments.chain(places.map(PathSegment::Line)).collect();
        self.shape(segments, style, false);
        Ok(())
    }

    fn draw_circle<S: BackendStyle>(
        &mut self,
        centre: BackendCoord,
        radius: u32,
        style: &S,
        fill: bool,
    ) -> Done {
        let radius = radius as f32 / FINE;
        self.shape(ellipse(point(centre), radius, radius), style, fill);
        Ok(())
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        corners: I,
        style: &S,
    ) -> Done {
        let corners: Vec<Point> = corners.into_iter().map(point).collect();
        self.shape(super::board::closed(&corners), style, true);
        Ok(())
    }

    fn draw_text<S: BackendTextStyle>(&mut self, text: &str, style: &S, at: BackendCoord) -> Done {
        let Some(colour) = colour(style.color()) else { return Ok(()) };
        let set = Type { face: face(style), size: style.size() as f32 / FINE, colour };
        let mut board = self.board.borrow_mut();
        let capitals = board.capitals(set);
        let mut at = point(at);
        at.y += match style.anchor().v_pos {
            VPos::Top => capitals,
            VPos::Center => capitals / 2.0,
            VPos::Bottom => 0.0,
        };
        let anchor = match style.anchor().h_pos {
            HPos::Left => Anchor::Start,
            HPos::Center => Anchor::Middle,
            HPos::Right => Anchor::End,
        };
        board.text(set, at, anchor, text);
        Ok(())
    }

    fn estimate_text_size<S: BackendTextStyle>(
        &self,
        text: &str,
        style: &S,
    ) -> Result<(u32, u32), DrawingErrorKind<Infallible>> {
        let set =
            Type { face: face(style), size: style.size() as f32 / FINE, colour: super::style::INK };
        let board = self.board.borrow();
        let size = [board.measure(set, text), board.capitals(set)];
        let [width, height] = size.map(|points| steps(points) as u32);
        Ok((width, height))
    }
}

fn face<S: BackendTextStyle>(style: &S) -> Face {
    match style.style() {
        FontStyle::Normal => Face::Regular,
        FontStyle::Bold => Face::Bold,
        FontStyle::Italic | FontStyle::Oblique => Face::Italic,
    }
}

/// Paper is white and there is no transparency: what shines through is mixed.
fn colour(color: BackendColor) -> Option<Colour> {
    let (r, g, b) = color.rgb;
    (color.alpha > 0.0).then(|| tint(Colour::new(r, g, b), color.alpha as f32))
}
