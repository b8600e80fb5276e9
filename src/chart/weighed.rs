//! Used paint against planned paint: a point a canvas with what the scale leaves open, the line
//! on which both are equal, and what the rule of thumb would give.

use plotters::series::LineSeries;

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::ending::{self, AIR, Ending};
use super::labels::{Field, overlap};
use super::marker::{self, MARKER};
use super::plot::{self, Foot, Plot, Scale, TICK};
use super::style::{HAIRLINE, INK, LABEL, LEADING, QUIET_LINE, QUIET_TEXT, SMALL, TITLE};
use crate::handout::{DecimalMark, WeighedChart};
use crate::ink::{Dash, Face, Faces, Point, Rect, Stroke};

const HEADING: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const AXIS: Type = Type { face: Face::Regular, size: SMALL, colour: INK };
const NAME: Type = Type { face: Face::Bold, size: LABEL, colour: INK };
const QUIET: Type = Type { face: Face::Regular, size: SMALL, colour: QUIET_TEXT };

/// Points that would hide each other stand so far apart.
const BESIDE: f32 = 2.0 * MARKER + 1.2;

/// A rule of thumb that lies higher above what was used leaves the chart at its top.
const REACH: f64 = 1.25;

/// A line through the origin with its name.
struct Ray<'a> {
    label: &'a str,
    slope: f64,
    dash: Dash,
    set: Type,
}

pub(super) fn draw(
    data: &WeighedChart,
    width: f32,
    decimal: DecimalMark,
    faces: &Faces,
) -> Drawing {
    let mut board = Board::new(faces);
    let title = board.wrap(HEADING, width, &data.title);
    let heading = board.lines(HEADING, 0.0, 0.0, Anchor::Start, &title) + 4.0;

    let x_end = plot::end(data.points.iter().map(|point| point.x), 1.12);
    let rays = rays(data);
    let y_end = top(data, x_end);
    let left = board.measure(AXIS, &plot::widest_number(y_end)) + 2.0 * TICK;
    let labels = rays.iter().map(|ray| board.widest(ray.set, &wrapped(&board, ray, width)));
    let right = labels.fold(0.0, f32::max) + AIR;
    let mut said = heading + key(&mut board, data, width, heading);
    let y_label = board.wrap(AXIS, width, &data.y_label);
    said += board.lines(AXIS, 0.0, said, Anchor::Start, &y_label);
    let height = (width * 0.52).clamp(130.0, 260.0);
    let area = Rect { x: left, y: said + 5.0, width: width - left - right, height };
    let Foot { below, x_label, total } = Foot::of(&board, AXIS, area, (width, &data.x_label));

    let plot = Plot::new(board);
    let plotted = plot.chart((width, total), area, (x_end, y_end), |chart| {
        plot::mesh(chart, 6, decimal)?;
        for ray in &rays {
            plot.dash.set(ray.dash);
            let colour = if ray.set == NAME { INK } else { QUIET_LINE };
            let ends = [(0.0, 0.0), end(ray, x_end, y_end)];
            chart.draw_series(LineSeries::new(ends, plot::line(colour, 1.0)))?;
        }
        plot.dash.set(Dash::Solid);
        Ok(())
    });
    let mut board = plot.into_board();
    if let Ok((scale, ())) = plotted {
        board.lines(AXIS, area.x + area.width, below, Anchor::End, &x_label);
        let places = points(&mut board, data, scale);
        let ends = (x_end, y_end);
        name_at_right(&mut board, &rays, scale, ends, (said, total, width));
        name_at_top(&mut board, &rays, scale, ends, (width, places));
    }
    board.finish(width, total)
}

/// As planned in ink, rules of thumb quietly.
fn rays(data: &WeighedChart) -> Vec<Ray<'_>> {
    let even = Ray { label: &data.even_label, slope: 1.0, dash: Dash::Dashed, set: NAME };
    let dashes = [Dash::Solid, Dash::DashDot, Dash::Dotted].into_iter().cycle();
    let rules = data.rules.iter().zip(dashes).map(|(rule, dash)| Ray {
        label: &rule.label,
        slope: rule.slope,
        dash,
        set: QUIET,
    });
    std::iter::once(even).chain(rules).collect()
}

/// The end of the upright axis: everything that was used and planned, and of a rule of thumb as
/// much as is not far above.
fn top(data: &WeighedChart, x_end: f64) -> f64 {
    let used = data.points.iter().map(|point| point.y[2]);
    let matters = plot::end(used.chain([x_end]), 1.03);
    let rules = data.rules.iter().map(|rule| rule.slope * x_end);
    rules.filter(|height| *height <= matters * REACH).fold(matters, f64::max)
}

/// Where a line leaves the chart.
fn end(ray: &Ray<'_>, x_end: f64, y_end: f64) -> (f64, f64) {
    if rises_out(ray, x_end, y_end) {
        (y_end / ray.slope, y_end)
    } else {
        (x_end, ray.slope * x_end)
    }
}

fn rises_out(ray: &Ray<'_>, x_end: f64, y_end: f64) -> bool {
    ray.slope * x_end > y_end * (1.0 + 1e-9)
}

fn wrapped(board: &Board<'_>, ray: &Ray<'_>, width: f32) -> Vec<String> {
    board.wrap(ray.set, width * 0.22, ray.label)
}

/// Which marker stands for which group, as many in a line as it holds; the height of it all.
fn key(board: &mut Board<'_>, data: &WeighedChart, width: f32, top: f32) -> f32 {
    let step = SMALL * LEADING + 1.0;
    let before = 2.0 * MARKER + 4.0;
    let (mut x, mut y) = (0.0, top);
    for (group, name) in data.groups.iter().enumerate() {
        let lines = board.wrap(AXIS, width - before, name);
        let wide = before + board.widest(AXIS, &lines);
        if x > 0.0 && x + wide > width {
            (x, y) = (0.0, y + step);
        }
        let middle = Point { x: x + MARKER + 1.0, y: y + SMALL * LEADING / 2.0 };
        marker::draw(board, group, middle);
        board.lines(AXIS, x + before, y, Anchor::Start, &lines);
        x += wide + 14.0;
        if lines.len() > 1 {
            (x, y) = (0.0, y + step * lines.len() as f32);
        }
    }
    if x > 0.0 {
        y += step;
    }
    y - top + 3.0
}

/// Draws every canvas; where the markers have come to lie.
fn points(board: &mut Board<'_>, data: &WeighedChart, scale: Scale) -> Vec<Rect> {
    let places = beside(data, scale);
    let thin = Stroke { width: 0.7, ..HAIRLINE };
    for (point, x) in data.points.iter().zip(&places) {
        let [low, _, high] = point.y.map(|y| Point { x: *x, y: scale.place(0.0, y).y });
        board.line(low, high, thin);
        for stop in [low, high] {
            let ends = [-1.6, 1.6].map(|by| Point { x: stop.x + by, ..stop });
            board.line(ends[0], ends[1], thin);
        }
    }
    let mut taken = Vec::new();
    for (point, x) in data.points.iter().zip(places) {
        let at = Point { x, y: scale.place(0.0, point.y[1]).y };
        marker::draw(board, point.group, at);
        let side = 2.0 * MARKER + 2.0;
        taken.push(Rect { x: at.x - side / 2.0, y: at.y - side / 2.0, width: side, height: side });
    }
    taken
}

/// Across the chart, each point where its plan is; one that would hide another as near to that
/// as it has room.
fn beside(data: &WeighedChart, scale: Scale) -> Vec<f32> {
    let field = scale.field();
    let mut order: Vec<usize> = (0..data.points.len()).collect();
    order.sort_by_key(|at| data.points.get(*at).map(|point| point.group));
    let mut places = vec![0.0; order.len()];
    let mut taken: Vec<Rect> = Vec::new();
    for at in order {
        let (Some(point), Some(place)) = (data.points.get(at), places.get_mut(at)) else {
            continue;
        };
        let [low, _, high] = point.y.map(|y| scale.place(point.x, y));
        let tall = low.y - high.y + 2.0 * MARKER;
        let reach = |x: f32| Rect {
            x: x - BESIDE / 2.0,
            y: high.y - MARKER,
            width: BESIDE - 0.1,
            height: tall,
        };
        let inside = |x: &f32| *x >= field.x + MARKER && *x <= field.x + field.width - MARKER;
        let steps = (0_u8..60).map(|step| f32::from(step.div_ceil(2)) * BESIDE);
        let mut tries = steps.enumerate().map(|(turn, by)| match turn % 2 {
            0 => low.x - by,
            _ => low.x + by,
        });
        let free = |x: &f32| inside(x) && taken.iter().all(|other| !overlap(reach(*x), *other));
        let x = tries.find(free).unwrap_or(low.x);
        taken.push(reach(x));
        *place = x;
    }
    places
}

fn name_at_right(
    board: &mut Board<'_>,
    rays: &[Ray<'_>],
    scale: Scale,
    (x_end, y_end): (f64, f64),
    (low, high, width): (f32, f32, f32),
) {
    let named = rays.iter().filter(|ray| !rises_out(ray, x_end, y_end));
    let ending = |ray: &Ray<'_>| Ending {
        name: wrapped(board, ray, width),
        set: ray.set,
        at: scale.place(x_end, ray.slope * x_end),
    };
    let endings: Vec<Ending> = named.map(ending).collect();
    ending::name(board, &endings, (low, high));
}

/// Lines that rise out of the chart are named where they leave it.
fn name_at_top(
    board: &mut Board<'_>,
    rays: &[Ray<'_>],
    scale: Scale,
    (x_end, y_end): (f64, f64),
    (width, taken): (f32, Vec<Rect>),
) {
    let place = |ray: &Ray<'_>| {
        let (x, y) = end(ray, x_end, y_end);
        scale.place(x, y)
    };
    let origin = scale.place(0.0, 0.0);
    let lines = rays.iter().map(|ray| (origin, place(ray), 26.0)).collect();
    let mut field = Field { area: scale.field(), taken, lines };
    for ray in rays.iter().filter(|ray| rises_out(ray, x_end, y_end)) {
        let label = wrapped(board, ray, width);
        let tall = ray.set.size * LEADING * label.len() as f32;
        let Some(room) = field.place(place(ray), board.widest(ray.set, &label), tall) else {
            continue;
        };
        board.halo(ray.set, room.x, room.y, Anchor::Start, &label);
        board.lines(ray.set, room.x, room.y, Anchor::Start, &label);
    }
}
