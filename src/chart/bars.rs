//! Horizontal bars of one or more parts, labelled directly.

use plotters::element::Rectangle;
use plotters::style::Color;

use super::Drawing;
use super::backend::steps;
use super::board::{Anchor, Board, Type};
use super::hatch::{Slant, hatch};
use super::labels::{Wish, spread};
use super::plot::{self, Plot, Scale, TICK};
use super::style::{
    ACCENT, HAIRLINE, INK, LABEL, LEADING, QUIET_LINE, SMALL, TITLE, WHITE, text_on, tint,
};
use crate::handout::{Bar, BarPart, Bars, DecimalMark};
use crate::ink::{Colour, Dash, Face, Faces, Point, Rect, Stroke};

const HEADING: Type = Type { face: Face::Bold, size: TITLE, colour: INK };
const NAME: Type = Type { face: Face::Bold, size: LABEL, colour: INK };
const AXIS: Type = Type { face: Face::Regular, size: SMALL, colour: INK };
const PART: Type = Type { face: Face::Regular, size: 8.5, colour: INK };

/// Height in points of a bar with words in it.
const THICK: f32 = 15.0;
/// Height in points of a bar that its name says all about.
const THIN: f32 = 8.0;
/// How far the tick of a mark stands out of its bar.
const OUT: f32 = 3.0;
/// Air beside a label within a part.
const AIR: f32 = 3.5;
/// Left edge of all that is drawn: the number at nought, centred below its tick, stays in
/// the drawing.
const EDGE: f32 = 2.7;
/// From a bar to the labels below it.
const DROP: f32 = 7.0;
/// From the end of a leader to the letters that it leads to.
const SHORT: f32 = 2.0;

/// How far beyond its own edge a label below a bar may stand from what it names.
const STRAY: f32 = 12.0;

/// The axis ends with the longest bar; the least more, so that a number there is written.
const END: f64 = 1.0005;

/// Names of bars stand beside them where the longest takes no more than this part of the
/// width.
const BESIDE: f32 = 0.2;

/// From a name to the bar that it stands beside.
const SPACE: f32 = 6.0;

/// Where the names of the bars are written.
#[derive(Clone, Copy, PartialEq)]
enum Names {
    Above,
    Beside,
}

/// How a part is filled.
struct Look {
    ground: Colour,
    hatch: Option<Slant>,
}

/// Where the label of a part or mark is written.
enum Home {
    Within,
    Beside,
    /// Below, with its centre here.
    Below(f32),
    /// In a list of small samples below.
    Listed,
}

/// A bar with all that must be known to draw it.
struct Row<'a> {
    bar: &'a Bar,
    /// Top of its name.
    top: f32,
    name: Vec<String>,
    names: Names,
    homes: Vec<Home>,
    /// Lines of samples: parts by number.
    list: Vec<Vec<usize>>,
    below: f32,
}

impl Row<'_> {
    fn bar_top(&self) -> f32 {
        match self.names {
            Names::Above => self.top + NAME.size * LEADING * self.name.len() as f32 + 1.0,
            Names::Beside => self.top,
        }
    }

    fn thick(&self) -> f32 {
        if self.bar.parts.iter().all(|part| part.label.is_empty()) { THIN } else { THICK }
    }

    fn bottom(&self) -> f32 {
        self.bar_top() + self.thick() + self.below
    }
}

pub(super) fn draw(data: &Bars, width: f32, decimal: DecimalMark, faces: &Faces) -> Drawing {
    let mut board = Board::new(faces);
    let title = board.wrap(HEADING, width - EDGE, &data.title);
    let top = board.lines(HEADING, EDGE, 0.0, Anchor::Start, &title) + 5.0;

    let sums = data.bars.iter().map(|bar| bar.parts.iter().map(size).sum::<f64>());
    let marks = data.bars.iter().filter_map(|bar| bar.mark.as_ref()).map(size);
    let end = plot::end(sums.chain(marks), END);
    // The last number of the axis is centred below it.
    let inner = width - board.measure(AXIS, &plot::widest_number(end)) / 2.0;

    let widest = data.bars.iter().map(|bar| board.measure(NAME, &bar.label)).fold(0.0, f32::max);
    let (names, left) = if data.bars.len() > 1 && widest <= BESIDE * width {
        (Names::Beside, EDGE + widest + SPACE)
    } else {
        (Names::Above, EDGE)
    };

    let mut rows = Vec::with_capacity(data.bars.len());
    let mut next = top;
    for bar in &data.bars {
        let row = settle(bar, next, names, (left, inner, end), &board);
        next = row.bottom() + 8.0;
        rows.push(row);
    }
    let area = Rect { x: left, y: top, width: inner - left, height: next - top };
    let below = next + 2.0 * TICK + board.capitals(AXIS) + 3.0;
    let axis = board.wrap(AXIS, width, &data.axis);
    let total = below + SMALL * LEADING * axis.len() as f32;

    let plot = Plot::new(board);
    let height = f64::from(area.height);
    let plotted = plot.chart((width, total), area, (end, height), |chart| {
        chart
            .configure_mesh()
            .disable_y_mesh()
            .disable_y_axis()
            .y_labels(0)
            .x_labels(6)
            .max_light_lines(1)
            .light_line_style(plotters::style::TRANSPARENT)
            .bold_line_style(plot::grid())
            .axis_style(plot::line(INK, 0.6))
            .label_style(plot::numbers())
            .set_all_tick_mark_size(steps(TICK))
            .x_label_formatter(&|value| plot::number(*value, decimal))
            .draw()?;
        for row in &rows {
            let y = height - f64::from(row.bar_top() - top);
            let mut from = 0.0;
            for (index, part) in row.bar.parts.iter().enumerate() {
                let to = from + size(part);
                let corners = [(from, y), (to, y - f64::from(row.thick()))];
                let ground = plot::rgb(look(part, index).ground).filled();
                chart.draw_series([Rectangle::new(corners, ground)])?;
                from = to;
            }
        }
        Ok(())
    });
    let mut board = plot.into_board();
    if let Ok((scale, ())) = plotted {
        board.lines(AXIS, inner, below, Anchor::End, &axis);
        for row in &rows {
            finish(&mut board, row, scale, (left, inner));
        }
    }
    board.finish(width, total)
}

/// Decides where everything of a bar is written, on an axis from `axis`, where nought is, to
/// `inner`, where `end` is.
fn settle<'a>(
    bar: &'a Bar,
    top: f32,
    names: Names,
    (axis, inner, end): (f32, f32, f64),
    board: &Board<'_>,
) -> Row<'a> {
    let name = board.wrap(NAME, inner - EDGE, &bar.label);
    let x = |value: f64| axis + (value / end) as f32 * (inner - axis);
    let mark = bar.mark.as_ref().map(|mark| x(size(mark)));
    let mut homes = Vec::new();
    let mut from = 0.0;
    for (index, part) in bar.parts.iter().enumerate() {
        let (left, right) = (x(from), x(from + size(part)));
        from += size(part);
        let room = board.measure(PART, &part.label) + 2.0 * AIR;
        let cut = |a: f32, b: f32| mark.is_some_and(|at| at > a - 1.0 && at < b + 1.0);
        let last = index + 1 == bar.parts.len();
        let middle = (left + right) / 2.0;
        let lies = look(part, index).hatch.is_none()
            && room <= right - left
            && !cut(middle - room / 2.0, middle + room / 2.0);
        homes.push(if part.label.is_empty() || lies {
            Home::Within
        } else if last && right + room <= inner && !cut(right, right + room) {
            Home::Beside
        } else {
            Home::Below(middle)
        });
    }
    let mut row = Row { bar, top, name, names, homes, list: Vec::new(), below: 0.0 };
    hang(&mut row, mark, (axis, inner), board);
    row
}

/// Spreads the labels below a bar over one line, or lists the parts where that has no
/// room for all.
fn hang(row: &mut Row<'_>, mark: Option<f32>, (axis, inner): (f32, f32), board: &Board<'_>) {
    let width = |part: &BarPart| board.measure(PART, &part.label);
    let hung = |homes: &[Home]| -> Vec<(usize, Wish)> {
        let parts = homes.iter().zip(&row.bar.parts).enumerate();
        let parts = parts.filter_map(|(index, (home, part))| match home {
            Home::Below(centre) => Some((index, Wish { centre: *centre, size: width(part) })),
            _ => None,
        });
        let mark = row.bar.mark.as_ref().zip(mark).filter(|(part, _)| !part.label.is_empty());
        let mark = mark.map(|(part, centre)| (homes.len(), Wish { centre, size: width(part) }));
        parts.chain(mark).collect()
    };
    let mut below = hung(&row.homes);
    let wishes = |below: &[(usize, Wish)]| below.iter().map(|(_, wish)| *wish).collect::<Vec<_>>();
    let mut centres = spread(&wishes(&below), 8.0, axis - EDGE, inner);
    let strays = |centres: &Vec<f32>| {
        let pairs = centres.iter().zip(&below);
        pairs
            .into_iter()
            .any(|(centre, (_, wish))| (centre - wish.centre).abs() > STRAY + wish.size / 2.0)
    };
    if centres.as_ref().is_none_or(strays) && row.homes.iter().any(|h| matches!(h, Home::Below(_)))
    {
        for home in &mut row.homes {
            if matches!(home, Home::Below(_)) {
                *home = Home::Listed;
            }
        }
        below = hung(&row.homes);
        centres = spread(&wishes(&below), 8.0, axis - EDGE, inner);
        row.list = list(row, inner - (axis - EDGE), board);
    }
    let step = PART.size * LEADING;
    let line = if below.is_empty() { 0.0 } else { DROP + step };
    row.below = line + step * row.list.len() as f32;
    if !row.list.is_empty() && below.is_empty() {
        row.below += DROP;
    }
    for ((index, _), centre) in below.iter().zip(centres.unwrap_or_default()) {
        match row.homes.get_mut(*index) {
            Some(home) => *home = Home::Below(centre),
            None => row.homes.push(Home::Below(centre)),
        }
    }
}

/// Parts by number, in as many lines as their samples and labels need.
fn list(row: &Row<'_>, inner: f32, board: &Board<'_>) -> Vec<Vec<usize>> {
    let mut lines: Vec<Vec<usize>> = Vec::new();
    let mut used = inner;
    for (index, (home, part)) in row.homes.iter().zip(&row.bar.parts).enumerate() {
        if !matches!(home, Home::Listed) {
            continue;
        }
        let room = SAMPLE + board.measure(PART, &part.label) + 12.0;
        match lines.last_mut() {
            Some(line) if used + room <= inner + 12.0 => line.push(index),
            _ => {
                lines.push(vec![index]);
                used = 0.0;
            }
        }
        used += room;
    }
    lines
}

/// Width of a sample with the air after it.
const SAMPLE: f32 = 11.0;

/// Outlines, hatching, ticks and labels of a bar.
fn finish(board: &mut Board<'_>, row: &Row<'_>, scale: Scale, (axis, inner): (f32, f32)) {
    let (top, thick) = (row.bar_top(), row.thick());
    match row.names {
        Names::Above => {
            // The grid lines are there already, and may not run through the words.
            board.halo(NAME, EDGE, row.top, Anchor::Start, &row.name);
            board.lines(NAME, EDGE, row.top, Anchor::Start, &row.name);
        }
        Names::Beside => {
            let y = top + (thick + board.capitals(NAME)) / 2.0;
            board.text(NAME, Point { x: axis - SPACE, y }, Anchor::End, &row.bar.label);
        }
    }
    let middle = top + (thick + board.capitals(PART)) / 2.0;
    let baseline = top + thick + DROP + (PART.size * LEADING + board.capitals(PART)) / 2.0 - 1.0;
    let hang_at = top + thick + DROP;
    let mut from = 0.0;
    for (index, (part, home)) in row.bar.parts.iter().zip(&row.homes).enumerate() {
        let (left, right) = (scale.place(from, 0.0).x, scale.place(from + size(part), 0.0).x);
        from += size(part);
        let area = Rect { x: left, y: top, width: right - left, height: thick };
        let look = look(part, index);
        cover(board, area, &look);
        match *home {
            Home::Within => {
                let set = Type { colour: text_on(look.ground), ..PART };
                let at = Point { x: (left + right) / 2.0, y: middle };
                board.text(set, at, Anchor::Middle, &part.label);
            }
            Home::Beside => {
                let at = Point { x: right + AIR, y: middle };
                halo(board, at, Anchor::Start, &part.label);
                board.text(PART, at, Anchor::Start, &part.label);
            }
            Home::Below(centre) => {
                let foot = Point { x: (left + right) / 2.0, y: top + thick };
                let to = Point { x: centre, y: hang_at - SHORT };
                let at = Point { x: centre, y: baseline };
                halo(board, at, Anchor::Middle, &part.label);
                board.line(foot, to, Stroke { colour: QUIET_LINE, ..HAIRLINE });
                board.text(PART, at, Anchor::Middle, &part.label);
            }
            Home::Listed => {}
        }
    }
    if let Some(mark) = &row.bar.mark {
        let x = scale.place(size(mark), 0.0).x.min(inner);
        let (high, low) = (Point { x, y: top - OUT }, Point { x, y: top + thick + OUT });
        board.line(high, low, Stroke { colour: WHITE, width: 3.2, dash: Dash::Solid });
        board.line(high, low, Stroke { colour: INK, width: 1.6, dash: Dash::Solid });
        if let Some(Home::Below(centre)) = row.homes.get(row.bar.parts.len()) {
            let to = Point { x: *centre, y: hang_at - SHORT };
            let at = Point { x: *centre, y: baseline };
            halo(board, at, Anchor::Middle, &mark.label);
            board.line(low, to, HAIRLINE);
            board.text(PART, at, Anchor::Middle, &mark.label);
        }
    }
    let step = PART.size * LEADING;
    for (index, line) in row.list.iter().enumerate() {
        let top = row.bottom() - step * (row.list.len() - index) as f32;
        let mut x = axis;
        for (number, part) in line.iter().filter_map(|&n| Some((n, row.bar.parts.get(n)?))) {
            let area = Rect { x, y: top + 2.0, width: 7.5, height: 7.0 };
            let look = look(part, number);
            board.rectangle(area, Some(look.ground), None);
            cover(board, area, &look);
            let y = top + (step + board.capitals(PART)) / 2.0;
            let at = Point { x: x + SAMPLE, y };
            halo(board, at, Anchor::Start, &part.label);
            board.text(PART, at, Anchor::Start, &part.label);
            x += SAMPLE + board.measure(PART, &part.label) + 12.0;
        }
    }
}

/// White behind the label of a part, over grid lines.
fn halo(board: &mut Board<'_>, at: Point, anchor: Anchor, label: &str) {
    let top = at.y - (PART.size * LEADING + board.capitals(PART)) / 2.0;
    board.halo(PART, at.x, top, anchor, &[label.to_owned()]);
}

/// Hatching and outline over the ground of a part: light paint shows on white paper,
/// and neighbours stay apart in grey.
fn cover(board: &mut Board<'_>, area: Rect, look: &Look) {
    if let Some(slant) = look.hatch {
        let thin = Stroke { colour: ACCENT, width: 0.7, dash: Dash::Solid };
        board.path(hatch(area, slant, 4.0), None, Some(thin));
    }
    board.rectangle(area, None, Some(Stroke { width: 0.7, ..HAIRLINE }));
}

/// A paint has its own colour; other parts differ by their place in the bar.
fn look(part: &BarPart, index: usize) -> Look {
    let plain = |ground| Look { ground, hatch: None };
    match (part.swatch, index % 4) {
        (Some(swatch), _) => plain(swatch),
        (None, 0) => plain(ACCENT),
        (None, 1) => plain(tint(ACCENT, 0.2)),
        (None, 2) => Look { ground: WHITE, hatch: Some(Slant::Rising) },
        (None, _) => Look { ground: tint(ACCENT, 0.2), hatch: Some(Slant::Falling) },
    }
}

fn size(part: &BarPart) -> f64 {
    if part.value.is_finite() { part.value.max(0.0) } else { 0.0 }
}
