//! Mixed paint against painted area: a line a technique, the lesson's canvases marked.

use plotters::element::Polygon;
use plotters::series::LineSeries;
use plotters::style::Color;

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::labels::{Field, Wish, spread};
use super::outline::ellipse;
use super::plot::{self, Plot, Plotted, Scale, TICK};
use super::style::{
    HAIRLINE, INK, LABEL, LEADING, QUIET, QUIET_LINE, QUIET_TEXT, SMALL, STRONG, TITLE, WHITE, tint,
};
use crate::handout::{Coverage, CoverageLine, CoverageMark, DecimalMark, Weight};
use crate::ink::{Colour, Dash, Face, Faces, Point, Rect, Stroke};

const HEADING: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const AXIS: Type = Type { face: Face::Regular, size: SMALL, colour: INK };
const NAME: Type = Type { face: Face::Bold, size: LABEL, colour: INK };
const CONTEXT: Type = Type { face: Face::Regular, size: SMALL, colour: QUIET_TEXT };

/// Radius of a canvas's dot in points.
const DOT: f32 = 2.6;

/// With more canvases the lines down to the axes would hide the chart.
const DROPPED: usize = 4;

/// A line as it is drawn.
struct Drawn<'a> {
    line: &'a CoverageLine,
    colour: Colour,
    dash: Dash,
    /// Points.
    width: f32,
    set: Type,
    /// The label in lines.
    label: Vec<String>,
}

pub(super) fn draw(data: &Coverage, width: f32, decimal: DecimalMark, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let title = board.wrap(HEADING, width, &data.title);
    let heading = board.lines(HEADING, 0.0, 0.0, Anchor::Start, &title) + 4.0;

    let lines = dress(data, width, &board);
    let x_end = plot::end(data.marks.iter().map(|mark| mark.x * 1.05).chain([data.x_max]), 1.0);
    let reach = lines.iter().flat_map(|drawn| match drawn.line.emphasis {
        Weight::Strong => drawn.line.slope,
        Weight::Quiet => [drawn.line.slope[1]; 3],
    });
    let heights = reach.map(|slope| slope * x_end).chain(data.marks.iter().map(|mark| mark.y));
    let y_end = plot::end(heights, 1.03);

    let left = board.measure(AXIS, &plot::widest_number(y_end)) + 2.0 * TICK;
    let labels = lines.iter().map(|drawn| board.widest(drawn.set, &drawn.label));
    let right = labels.fold(0.0, f32::max) + 9.0;
    let top = heading + say_axis(&mut board, data, &lines, width, (heading, width - right)) + 5.0;
    let height = (width * 0.5).clamp(120.0, 250.0);
    let area = Rect { x: left, y: top, width: width - left - right, height };
    let below = area.y + area.height + 2.0 * TICK + board.capitals(AXIS) + 4.0;
    let x_label = board.wrap(AXIS, width, &data.x_label);
    let total = below + SMALL * LEADING * x_label.len() as f32;

    let plot = Plot::new(board);
    let plotted = plot.chart((width, total), area, (x_end, y_end), |chart| {
        bands(chart, &lines, x_end)?;
        plot::mesh(chart, 6, decimal)?;
        // Quiet lines first, so that those that matter lie on top.
        let (quiet, strong): (Vec<&Drawn<'_>>, Vec<&Drawn<'_>>) =
            lines.iter().partition(|drawn| drawn.line.emphasis == Weight::Quiet);
        for drawn in quiet.into_iter().chain(strong) {
            let ends = [(0.0, 0.0), (x_end, drawn.line.slope[1] * x_end)];
            plot.dash.set(drawn.dash);
            chart.draw_series(LineSeries::new(ends, plot::line(drawn.colour, drawn.width)))?;
        }
        plot.dash.set(Dash::Solid);
        Ok(())
    });
    let mut board = plot.into_board();
    if let Ok((scale, ())) = plotted {
        let x = area.x + area.width;
        board.lines(AXIS, x, below, Anchor::End, &x_label);
        name_lines(&mut board, &lines, scale, x_end, (heading, total));
        name_canvases(&mut board, &data.marks, &lines, scale, x_end);
    }
    board.finish(width, total)
}

/// Writes what the upright axis counts and, quietly, what the bands are: in one line if
/// the second ends before the field does. The height that they take.
fn say_axis(
    board: &mut Board<'_>,
    data: &Coverage,
    lines: &[Drawn<'_>],
    width: f32,
    (top, end): (f32, f32),
) -> f32 {
    let label = board.wrap(AXIS, width, &data.y_label);
    let tall = board.lines(AXIS, 0.0, top, Anchor::Start, &label);
    let mut bands = lines.iter().filter(|drawn| drawn.line.emphasis == Weight::Strong);
    if !bands.any(|drawn| drawn.line.slope[0] < drawn.line.slope[2]) {
        return tall;
    }
    let wide = board.widest(AXIS, &label) + 12.0 + board.measure(CONTEXT, &data.band_label);
    if label.len() == 1 && wide <= end {
        let band = [data.band_label.clone()];
        tall.max(board.lines(CONTEXT, end, top, Anchor::End, &band))
    } else {
        let band = board.wrap(CONTEXT, width, &data.band_label);
        tall + board.lines(CONTEXT, 0.0, top + tall, Anchor::Start, &band)
    }
}

/// Gives every line its colour, pattern and label, none twice among its kind.
fn dress<'a>(data: &'a Coverage, width: f32, board: &Board<'_>) -> Vec<Drawn<'a>> {
    let (mut strong, mut quiet) = (STRONG.iter().cycle(), QUIET.iter().cycle());
    let room = width * 0.3;
    data.lines
        .iter()
        .filter_map(|line| {
            let (colour, dash, weight, set) = match line.emphasis {
                Weight::Strong => strong.next().map(|&(c, dash)| (c, dash, 1.8, NAME))?,
                Weight::Quiet => {
                    quiet.next().map(|&(dash, weight)| (QUIET_LINE, dash, weight, CONTEXT))?
                }
            };
            let label = board.wrap(set, room, &line.label);
            Some(Drawn { line, colour, dash, width: weight, set, label })
        })
        .collect()
}

/// Where a line that matters may lie, from low to high.
fn bands(chart: &mut plot::Chart<'_, '_>, lines: &[Drawn<'_>], x_end: f64) -> Plotted<()> {
    let strong = || lines.iter().filter(|drawn| drawn.line.emphasis == Weight::Strong);
    for drawn in strong() {
        let [low, _, high] = drawn.line.slope;
        let corners = [(0.0, 0.0), (x_end, low * x_end), (x_end, high * x_end)];
        let ground = plot::rgb(tint(drawn.colour, 0.14)).filled();
        chart.draw_series([Polygon::new(corners, ground)])?;
    }
    // The edges after all grounds, so that bands that overlap stay apart.
    for drawn in strong() {
        let [low, _, high] = drawn.line.slope;
        for slope in [low, high] {
            let edge = plot::line(tint(drawn.colour, 0.55), 0.4);
            chart.draw_series(LineSeries::new([(0.0, 0.0), (x_end, slope * x_end)], edge))?;
        }
    }
    Ok(())
}

/// Writes the label of each line at its end. Where there is no room for all, lines of
/// context go without: the lesson is about the others.
fn name_lines(
    board: &mut Board<'_>,
    lines: &[Drawn<'_>],
    scale: Scale,
    x_end: f64,
    (low, high): (f32, f32),
) {
    let mut named: Vec<&Drawn<'_>> = lines.iter().collect();
    let end = |drawn: &Drawn<'_>| scale.place(x_end, drawn.line.slope[1] * x_end);
    let centres = loop {
        let wishes: Vec<Wish> = named
            .iter()
            .map(|drawn| Wish {
                centre: end(drawn).y,
                size: drawn.set.size * LEADING * drawn.label.len() as f32,
            })
            .collect();
        match spread(&wishes, 2.0, low, high) {
            Some(centres) => break centres,
            None => {
                let last = named.iter().rposition(|drawn| drawn.line.emphasis == Weight::Quiet);
                named.remove(last.unwrap_or(named.len() - 1));
            }
        }
    };
    for (drawn, centre) in named.into_iter().zip(centres) {
        let from = end(drawn);
        if (from.y - centre).abs() > 2.5 {
            let from = Point { x: from.x + 1.5, ..from };
            let to = Point { x: from.x + 5.0, y: centre };
            board.line(from, to, Stroke { colour: QUIET_LINE, ..HAIRLINE });
        }
        let top = centre - drawn.set.size * LEADING * drawn.label.len() as f32 / 2.0;
        board.lines(drawn.set, from.x + 9.0, top, Anchor::Start, &drawn.label);
    }
}

/// Marks each canvas and writes its name where it hides nothing.
fn name_canvases(
    board: &mut Board<'_>,
    marks: &[CoverageMark],
    lines: &[Drawn<'_>],
    scale: Scale,
    x_end: f64,
) {
    let places: Vec<Point> = marks.iter().map(|mark| scale.place(mark.x, mark.y)).collect();
    let dots = places.iter().map(|at| Rect {
        x: at.x - DOT - 1.0,
        y: at.y - DOT - 1.0,
        width: 2.0 * DOT + 2.0,
        height: 2.0 * DOT + 2.0,
    });
    let origin = scale.place(0.0, 0.0);
    let mut crossed: Vec<(Point, Point, f32)> = lines
        .iter()
        .map(|drawn| {
            let end = scale.place(x_end, drawn.line.slope[1] * x_end);
            match drawn.line.emphasis {
                Weight::Strong => (origin, end, 26.0),
                Weight::Quiet => (origin, end, 6.0),
            }
        })
        .collect();
    if marks.len() <= DROPPED {
        let dropped = Stroke { width: 0.6, dash: Dash::Dotted, ..HAIRLINE };
        for at in &places {
            for foot in [Point { y: origin.y, ..*at }, Point { x: origin.x, ..*at }] {
                board.line(*at, foot, dropped);
                crossed.push((*at, foot, 6.0));
            }
        }
    }
    let mut field = Field { area: scale.field(), taken: dots.collect(), lines: crossed };
    for at in &places {
        let outline = Some(Stroke { colour: WHITE, width: 0.8, dash: Dash::Solid });
        board.path(ellipse(*at, DOT + 0.4, DOT + 0.4), Some(INK), outline);
    }
    for (mark, at) in marks.iter().zip(places) {
        let label = board.wrap(NAME, scale.field().width * 0.45, &mark.label);
        let height = NAME.size * LEADING * label.len() as f32;
        let Some(room) = field.place(at, board.widest(NAME, &label), height) else { continue };
        let near = Point {
            x: at.x.clamp(room.x, room.x + room.width),
            y: at.y.clamp(room.y, room.y + room.height),
        };
        if (near.x - at.x).hypot(near.y - at.y) > 12.0 {
            board.line(at, short_of(near, at, 2.0), HAIRLINE);
        }
        board.halo(NAME, room.x, room.y, Anchor::Start, &label);
        board.lines(NAME, room.x, room.y, Anchor::Start, &label);
    }
}

/// A place so far before the end of a line from `from` to `to`.
fn short_of(to: Point, from: Point, by: f32) -> Point {
    let length = (to.x - from.x).hypot(to.y - from.y).max(by);
    let share = by / length;
    Point { x: to.x + (from.x - to.x) * share, y: to.y + (from.y - to.y) * share }
}
