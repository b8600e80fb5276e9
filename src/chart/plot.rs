//! What the plotted charts share: the frame, its mesh, numbers on axes.

use std::cell::{Cell, RefCell};
use std::convert::Infallible;
use std::rc::Rc;

use plotters::chart::{ChartBuilder, ChartContext};
use plotters::coord::types::RangedCoordf64;
use plotters::prelude::{Cartesian2d, DrawingAreaErrorKind, IntoDrawingArea, RGBColor};
use plotters::style::{Color, IntoFont, ShapeStyle, TextStyle};

use super::backend::{Backend, FINE, point, steps};
use super::board::{Board, Type};
use super::style::{GRID, INK, LEADING, SMALL};
use crate::handout::DecimalMark;
use crate::ink::{Colour, Dash, Point, Rect};

/// A chart on our backend, both axes linear.
pub(super) type Chart<'a, 'f> =
    ChartContext<'a, Backend<'f>, Cartesian2d<RangedCoordf64, RangedCoordf64>>;

/// Plotters reports nothing but faults of the backend, and ours has none.
pub(super) type Plotted<T> = Result<T, DrawingAreaErrorKind<Infallible>>;

/// Where a chart draws and how its lines are broken.
pub(super) struct Plot<'f> {
    pub board: Rc<RefCell<Board<'f>>>,
    pub dash: Rc<Cell<Dash>>,
}

/// Length of ticks in points; numbers stand twice as far from the axis.
pub(super) const TICK: f32 = 2.5;

/// What stands below the field of a chart: numbers, then what they are.
pub(super) struct Foot {
    /// Top of the label of the lower axis.
    pub below: f32,
    pub x_label: Vec<String>,
    /// Height of the whole drawing.
    pub total: f32,
}

impl Foot {
    /// Below a field, in a drawing of some width.
    pub fn of(board: &Board<'_>, set: Type, field: Rect, (width, x_label): (f32, &str)) -> Self {
        let below = field.y + field.height + 2.0 * TICK + board.capitals(set) + 4.0;
        let x_label = board.wrap(set, width, x_label);
        let total = below + set.size * LEADING * x_label.len() as f32;
        Self { below, x_label, total }
    }
}

impl<'f> Plot<'f> {
    pub fn new(board: Board<'f>) -> Self {
        Self { board: Rc::new(RefCell::new(board)), dash: Rc::new(Cell::new(Dash::Solid)) }
    }

    /// Sets up axes from 0 to `ends` in `area` of a drawing of some size, runs `plot`,
    /// and returns where the corners 0 and `ends` have come to lie, with what `plot` says.
    pub fn chart<T>(
        &self,
        (width, height): (f32, f32),
        area: Rect,
        ends: (f64, f64),
        plot: impl FnOnce(&mut Chart<'_, 'f>) -> Plotted<T>,
    ) -> Plotted<(Scale, T)> {
        let backend = Backend::new(width, height, Rc::clone(&self.board), Rc::clone(&self.dash));
        let root = backend.into_drawing_area();
        let mut chart = ChartBuilder::on(&root)
            .margin_top(steps(area.y))
            .margin_right(steps(width - area.x - area.width))
            .x_label_area_size(steps(height - area.y - area.height))
            .y_label_area_size(steps(area.x))
            .build_cartesian_2d(0.0..ends.0, 0.0..ends.1)?;
        let said = plot(&mut chart)?;
        let place = |at: (f64, f64)| point(chart.plotting_area().map_coordinate(&at));
        Ok((Scale { ends, origin: place((0.0, 0.0)), end: place(ends) }, said))
    }

    /// The board, when the chart is done with it.
    pub fn into_board(self) -> Board<'f> {
        let faces = self.board.borrow().faces;
        let shapes = std::mem::take(&mut self.board.borrow_mut().shapes);
        let mut board = Board::new(faces);
        board.shapes = shapes;
        board
    }
}

/// Where values lie on the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scale {
    ends: (f64, f64),
    origin: Point,
    end: Point,
}

impl Scale {
    pub fn place(&self, x: f64, y: f64) -> Point {
        let along = |from: f32, to: f32, share: f64| from + (to - from) * share as f32;
        Point {
            x: along(self.origin.x, self.end.x, x / self.ends.0),
            y: along(self.origin.y, self.end.y, y / self.ends.1),
        }
    }

    /// The field between the axes.
    pub fn field(&self) -> Rect {
        Rect {
            x: self.origin.x,
            y: self.end.y,
            width: self.end.x - self.origin.x,
            height: self.origin.y - self.end.y,
        }
    }
}

/// A colour as plotters has it.
pub(super) fn rgb(colour: Colour) -> RGBColor {
    RGBColor(colour.r, colour.g, colour.b)
}

/// A line of some width in points.
pub(super) fn line(colour: Colour, width: f32) -> ShapeStyle {
    ShapeStyle::from(&rgb(colour)).stroke_width(steps(width) as u32)
}

/// Numbers on axes.
pub(super) fn numbers() -> TextStyle<'static> {
    let mut style = TextStyle::from(("sans-serif", f64::from(SMALL * FINE)).into_font());
    style.color = rgb(INK).to_backend_color();
    style
}

pub(super) fn grid() -> ShapeStyle {
    line(GRID, 0.5)
}

/// A number as short as it is exact to two places.
pub(super) fn number(value: f64, decimal: DecimalMark) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { decimal.put(text.to_owned()) }
}

/// As wide as any number on an axis that ends at `end`, with the places that its steps
/// may have.
pub(super) fn widest_number(end: f64) -> String {
    let places = if end < 2.0 { 2 } else { usize::from(end < 20.0) };
    let wide = |c: char| if c.is_ascii_digit() { '0' } else { c };
    format!("{end:.places$}").chars().map(wide).collect()
}

/// The end of an axis that shows `values`: the largest with a little air.
pub(super) fn end(values: impl IntoIterator<Item = f64>, air: f64) -> f64 {
    let largest = values.into_iter().filter(|v| v.is_finite()).fold(0.0, f64::max);
    if largest > 0.0 { largest * air } else { 1.0 }
}

/// Axes with numbers, about so many of them along x, and level grid lines.
pub(super) fn mesh(
    chart: &mut Chart<'_, '_>,
    x_labels: usize,
    decimal: DecimalMark,
) -> Plotted<()> {
    chart
        .configure_mesh()
        .disable_x_mesh()
        .x_labels(x_labels)
        .y_labels(5)
        .max_light_lines(1)
        .light_line_style(plotters::style::TRANSPARENT)
        .bold_line_style(grid())
        .axis_style(line(INK, 0.6))
        .label_style(numbers())
        .set_all_tick_mark_size(steps(TICK))
        .x_label_formatter(&|value| number(*value, decimal))
        .y_label_formatter(&|value| number(*value, decimal))
        .draw()
}
