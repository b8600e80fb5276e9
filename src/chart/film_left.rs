//! The film that is left on a board against time: a curve a paint, named at its end.

use plotters::series::LineSeries;

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::ending::{self, AIR, Ending};
use super::plot::{self, Foot, Plot, TICK};
use super::style::{INK, LABEL, SMALL, STRONG, TITLE};
use crate::handout::{DecimalMark, FilmLeft};
use crate::ink::{Dash, Face, Faces, Rect};

const HEADING: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const AXIS: Type = Type { face: Face::Regular, size: SMALL, colour: INK };
const NAME: Type = Type { face: Face::Bold, size: LABEL, colour: INK };

/// Width of a curve in points.
const CURVE: f32 = 1.8;

pub(super) fn draw(data: &FilmLeft, width: f32, decimal: DecimalMark, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let title = board.wrap(HEADING, width, &data.title);
    let heading = board.lines(HEADING, 0.0, 0.0, Anchor::Start, &title) + 4.0;

    let points = || data.lines.iter().flat_map(|line| &line.points);
    // The curves run to the edge of the field, so that their names stand at their ends.
    let x_end = plot::end(points().map(|(time, _)| *time), 1.0);
    let y_end = plot::end(points().map(|(_, film)| *film), 1.05);
    let names: Vec<Vec<String>> =
        data.lines.iter().map(|line| board.wrap(NAME, width * 0.25, &line.label)).collect();
    let left = board.measure(AXIS, &plot::widest_number(y_end)) + 2.0 * TICK;
    let right = names.iter().map(|name| board.widest(NAME, name)).fold(0.0, f32::max) + AIR;
    let y_label = board.wrap(AXIS, width, &data.y_label);
    let said = heading + board.lines(AXIS, 0.0, heading, Anchor::Start, &y_label);
    let height = (width * 0.42).clamp(110.0, 200.0);
    let area = Rect { x: left, y: said + 5.0, width: width - left - right, height };
    let Foot { below, x_label, total } = Foot::of(&board, AXIS, area, (width, &data.x_label));

    let plot = Plot::new(board);
    let plotted = plot.chart((width, total), area, (x_end, y_end), |chart| {
        plot::mesh(chart, 7, decimal)?;
        for (line, (colour, dash)) in data.lines.iter().zip(STRONG.into_iter().cycle()) {
            plot.dash.set(dash);
            let curve = line.points.iter().copied();
            chart.draw_series(LineSeries::new(curve, plot::line(colour, CURVE)))?;
        }
        plot.dash.set(Dash::Solid);
        Ok(())
    });
    let mut board = plot.into_board();
    if let Ok((scale, ())) = plotted {
        board.lines(AXIS, area.x + area.width, below, Anchor::End, &x_label);
        let endings: Vec<Ending> = data
            .lines
            .iter()
            .zip(names)
            .filter_map(|(line, name)| {
                let (time, film) = *line.points.last()?;
                Some(Ending { name, set: NAME, at: scale.place(time, film) })
            })
            .collect();
        ending::name(&mut board, &endings, (heading, total));
    }
    board.finish(width, total)
}
