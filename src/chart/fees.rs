//! The fee at which a class pays for itself against the number of students, the fee that is
//! asked and this class marked.

use plotters::series::LineSeries;

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::ending::{self, AIR, Ending};
use super::labels::Field;
use super::outline::ellipse;
use super::plot::{self, Foot, Plot, Scale, TICK};
use super::style::{HAIRLINE, INK, LABEL, LEADING, QUIET_TEXT, SMALL, STRONG, TITLE, WHITE};
use crate::handout::{DecimalMark, DotFill, FeeCurve, FeeDot};
use crate::ink::{Dash, Face, Faces, Point, Rect, Stroke};

const HEADING: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const AXIS: Type = Type { face: Face::Regular, size: SMALL, colour: INK };
const NAME: Type = Type { face: Face::Bold, size: LABEL, colour: INK };
const QUIET: Type = Type { face: Face::Regular, size: SMALL, colour: QUIET_TEXT };

/// Radius of the dot of a class, and of this one, in points.
const DOT: f32 = 1.9;
const HERE: f32 = 3.0;
/// How much higher than what matters the chart reaches. A class of one pays for everything
/// alone; its dot would press all others to the ground, so the curve may come in from above.
const REACH: f64 = 1.8;

pub(super) fn draw(data: &FeeCurve, width: f32, decimal: DecimalMark, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let title = board.wrap(HEADING, width, &data.title);
    let heading = board.lines(HEADING, 0.0, 0.0, Anchor::Start, &title) + 4.0;

    let last = data.dots.iter().map(|dot| dot.students).max().unwrap_or(1);
    let x_end = f64::from(last) * 1.02;
    let y_end = top(data);
    let ends = ends(data, width, &board);
    let left = board.measure(AXIS, &plot::widest_number(y_end)) + 2.0 * TICK;
    let right = ends.iter().map(|(_, name)| board.widest(NAME, name)).fold(0.0, f32::max) + AIR;
    let y_label = board.wrap(AXIS, width, &data.y_label);
    let dot_label = board.wrap(QUIET, width, &data.dot_label);
    let mut said = heading + board.lines(AXIS, 0.0, heading, Anchor::Start, &y_label);
    said += board.lines(QUIET, 0.0, said, Anchor::Start, &dot_label);
    let height = (width * 0.45).clamp(120.0, 220.0);
    let area = Rect { x: left, y: said + 5.0, width: width - left - right, height };
    let Foot { below, x_label, total } = Foot::of(&board, AXIS, area, (width, &data.x_label));

    let plot = Plot::new(board);
    let plotted = plot.chart((width, total), area, (x_end, y_end), |chart| {
        plot::mesh(chart, 8, decimal)?;
        let [(curve, solid), (level, dashed), ..] = STRONG;
        if let Some((fee, _)) = data.asked {
            plot.dash.set(dashed);
            chart
                .draw_series(LineSeries::new([(0.0, fee), (x_end, fee)], plot::line(level, 1.4)))?;
        }
        plot.dash.set(solid);
        for run in runs(&data.dots, y_end) {
            chart.draw_series(LineSeries::new(run, plot::line(curve, 1.0)))?;
        }
        Ok(())
    });
    let mut board = plot.into_board();
    if let Ok((scale, ())) = plotted {
        board.lines(AXIS, area.x + area.width, below, Anchor::End, &x_label);
        dots(&mut board, data, scale, y_end);
        let endings: Vec<Ending> = ends
            .into_iter()
            .map(|(fee, name)| Ending { name, set: NAME, at: scale.place(x_end, fee) })
            .collect();
        ending::name(&mut board, &endings, (heading, total));
        name_this(&mut board, data, scale, (x_end, y_end));
    }
    board.finish(width, total)
}

/// The end of the upright axis: all dots, unless the first lie far above what matters.
fn top(data: &FeeCurve) -> f64 {
    let here = data.here.as_ref().and_then(|(at, _)| data.dots.get(*at)).map(|dot| dot.fee);
    let least = data.dots.iter().map(|dot| dot.fee).reduce(f64::min);
    let matters = here.into_iter().chain(least).chain(data.asked.as_ref().map(|(fee, _)| *fee));
    let all = plot::end(data.dots.iter().map(|dot| dot.fee), 1.05);
    let enough = plot::end(matters, REACH);
    let asked = data.asked.as_ref().map_or(0.0, |(fee, _)| fee * 1.1);
    all.min(enough).max(asked)
}

/// The curve as far as it is below the top, in unbroken pieces.
fn runs(dots: &[FeeDot], top: f64) -> Vec<Vec<(f64, f64)>> {
    let place = |dot: &FeeDot| (f64::from(dot.students), dot.fee);
    let mut runs: Vec<Vec<(f64, f64)>> = Vec::new();
    for pair in dots.windows(2) {
        let [from, to] = pair else { continue };
        let (from, to) = (place(from), place(to));
        let crossing = || {
            let share = (top - from.1) / (to.1 - from.1);
            (from.0 + (to.0 - from.0) * share, top)
        };
        match (from.1 <= top, to.1 <= top) {
            (false, false) => {}
            (false, true) => runs.push(vec![crossing(), to]),
            (true, below) => {
                let to = if below { to } else { crossing() };
                match runs.last_mut() {
                    Some(run) if run.last() == Some(&from) => run.push(to),
                    _ => runs.push(vec![from, to]),
                }
            }
        }
    }
    runs
}

fn dots(board: &mut Board<'_>, data: &FeeCurve, scale: Scale, top: f64) {
    let [(curve, _), ..] = STRONG;
    let edge = Some(Stroke { colour: curve, width: 0.9, dash: Dash::Solid });
    for dot in data.dots.iter().filter(|dot| dot.fee <= top) {
        let at = scale.place(f64::from(dot.students), dot.fee);
        let fill = match dot.fill {
            DotFill::Filled => curve,
            DotFill::Open => WHITE,
        };
        board.path(ellipse(at, DOT, DOT), Some(fill), edge);
    }
}

/// The curve is named at its last dot, the fee that is asked at the end of its line.
fn ends(data: &FeeCurve, width: f32, board: &Board<'_>) -> Vec<(f64, Vec<String>)> {
    let named = |fee: f64, label: &str| (fee, board.wrap(NAME, width * 0.27, label));
    let curve = data.dots.last().map(|dot| named(dot.fee, &data.line_label));
    let asked = data.asked.as_ref().map(|(fee, label)| named(*fee, label));
    curve.into_iter().chain(asked).collect()
}

/// Marks this class, leads down to its number, and writes its fee where it hides nothing.
fn name_this(board: &mut Board<'_>, data: &FeeCurve, scale: Scale, (x_end, top): (f64, f64)) {
    let Some((index, label)) = &data.here else { return };
    let Some(dot) = data.dots.get(*index).filter(|dot| dot.fee <= top) else { return };
    let at = scale.place(f64::from(dot.students), dot.fee);
    let foot = Point { y: scale.place(0.0, 0.0).y, ..at };
    board.line(at, foot, Stroke { width: 0.6, dash: Dash::Dotted, ..HAIRLINE });
    // As open or filled as the dots of other classes; larger and darker than they are.
    let (fill, edge) = match dot.fill {
        DotFill::Filled => (INK, Stroke { colour: WHITE, width: 0.8, dash: Dash::Solid }),
        DotFill::Open => (WHITE, Stroke { colour: INK, width: 1.4, dash: Dash::Solid }),
    };
    board.path(ellipse(at, HERE, HERE), Some(fill), Some(edge));

    let mut lines = vec![(at, foot, 6.0)];
    for run in runs(&data.dots, top) {
        let places = run.windows(2).filter_map(|pair| {
            let [from, to] = pair else { return None };
            Some((scale.place(from.0, from.1), scale.place(to.0, to.1), 26.0))
        });
        lines.extend(places);
    }
    if let Some((fee, _)) = data.asked {
        lines.push((scale.place(0.0, fee), scale.place(x_end, fee), 26.0));
    }
    let around = |at: Point, reach: f32| Rect {
        x: at.x - reach,
        y: at.y - reach,
        width: 2.0 * reach,
        height: 2.0 * reach,
    };
    let shown = data.dots.iter().filter(|dot| dot.fee <= top);
    let taken = shown
        .map(|dot| around(scale.place(f64::from(dot.students), dot.fee), DOT + 1.0))
        .chain([around(at, HERE + 1.0)])
        .collect();
    let mut field = Field { area: scale.field(), taken, lines };
    let label = board.wrap(NAME, scale.field().width * 0.6, label);
    let tall = NAME.size * LEADING * label.len() as f32;
    let Some(room) = field.place(at, board.widest(NAME, &label), tall) else { return };
    let near = Point {
        x: at.x.clamp(room.x, room.x + room.width),
        y: at.y.clamp(room.y, room.y + room.height),
    };
    if (near.x - at.x).hypot(near.y - at.y) > 12.0 {
        board.line(at, near, HAIRLINE);
    }
    board.lines(NAME, room.x, room.y, Anchor::Start, &label);
}
