//! Three upright scales: a straight line across them multiplies.
//!
//! Area and film are divided by ratios over the same height H. With the decades a and f that
//! they span, the volume is read where the line meets an upright at f / (a + f) of the way from
//! area to film: there, heights add up as logarithms do, and its a + f decades fill H as well.
//! (An N or Z chart would need linear scales, on which small canvases cannot be read.)

use super::Drawing;
use super::board::{Anchor, Board, Type};
use super::labels::{Wish, spread};
use super::log_scale::{LogScale, Numbers, Side, divide, width};
use super::style::{ACCENT, HAIRLINE, INK, LABEL, LEADING, QUIET_LINE, SMALL, WHITE};
use crate::handout::{DecimalMark, Division, FilmMark, Nomogram, Scale, Weight};
use crate::ink::{Dash, Face, Faces, Point, Stroke};

const LINE: Stroke = Stroke { colour: INK, width: 0.8, dash: Dash::Solid };
const READING: Stroke = Stroke { colour: ACCENT, width: 1.0, dash: Dash::Dashed };

/// Height of the scales, in parts of the width.
const HEIGHT: f32 = 0.95;

/// In large print, its texts grow by so much at most: else scales would be too short for their
/// divisions.
const GROWS: f32 = 1.5;

/// Between the numbers of neighbouring scales at least, and from the film to its marks.
const APART: f32 = 24.0;
const LEADER: f32 = 16.0;
const AIR: f32 = 4.0;

/// From the foot of titles to the scales, and below these.
const HEAD: f32 = 8.0;
const FOOT: f32 = 6.0;

const DOT: f32 = 2.2;

/// A title is broken into lines of this width, or of its longest word.
const TITLE: f32 = 70.0;

/// A scale in its place.
struct Upright<'a> {
    data: &'a Scale,
    scale: LogScale,
    x: f32,
}

/// How texts are set.
#[derive(Clone, Copy)]
struct Types {
    numbers: Type,
    titles: Type,
    decimal: DecimalMark,
}

impl Types {
    fn on_scales(self) -> Numbers {
        Numbers { set: self.numbers, decimal: self.decimal }
    }
}

pub(super) fn draw(
    data: &Nomogram,
    room: f32,
    larger: f32,
    decimal: DecimalMark,
    faces: &Faces,
) -> Drawing {
    let larger = larger.min(GROWS);
    let mut board = Board::new(faces);
    let types = Types {
        numbers: Type { face: Face::Regular, size: SMALL * larger, colour: INK },
        titles: Type { face: Face::Bold, size: LABEL * larger, colour: INK },
        decimal,
    };
    let mut scales = abreast(&board, data, types);
    let head = title(&mut board, &scales, types);
    let top = head + HEAD;
    let foot = top + room * HEIGHT;
    for upright in &mut scales {
        upright.scale = LogScale { foot, top, ..upright.scale };
        upright.draw(&mut board, types.on_scales());
    }
    if let Some(example) = data.example {
        read(&mut board, example, &scales);
    }
    let [.., film] = &scales;
    // The names of marks, and what stands over them, clear of the title of the film.
    let x = film.x + AIR + LEADER.max(half_title(&board, film.data, types) + AIR);
    let names = board.wrap(types.titles, room - x, &data.marks_title);
    let above = head - types.numbers.size * LEADING;
    let above = (above - types.titles.size * LEADING * names.len() as f32).max(0.0);
    board.lines(types.titles, x, above, Anchor::Start, &names);
    name_marks(&mut board, &data.marks, film, (x, room), types.numbers);
    board.finish(room, foot + FOOT)
}

/// Area, volume and film beside each other. The middle scale stands where its decades say, and
/// both gaps have room for their numbers.
fn abreast<'a>(board: &Board<'_>, data: &'a Nomogram, types: Types) -> [Upright<'a>; 3] {
    let flat = |(low, high): (f64, f64)| LogScale { low, high, foot: 1.0, top: 0.0 };
    let (area, film) = (flat(data.area_ends), flat(data.film_ends));
    let volume = flat((area.low * film.low, area.high * film.high));
    let beside =
        |scale, division: &Division| width(board, (scale, division.size), types.on_scales());
    let right = |scale, of: &Scale| of.right.as_ref().map_or(0.0, |unit| beside(scale, unit));
    let share = (film.decades() / (area.decades() + film.decades())) as f32;
    let first = right(area, &data.area) + APART + beside(volume, &data.volume.left);
    let second = right(volume, &data.volume) + APART + beside(film, &data.film.left);
    let across = (first / share).max(second / (1.0 - share));
    let x = beside(area, &data.area.left).max(half_title(board, &data.area, types)) + AIR;
    [
        Upright { data: &data.area, scale: area, x },
        Upright { data: &data.volume, scale: volume, x: x + across * share },
        Upright { data: &data.film, scale: film, x: x + across },
    ]
}

/// How far a title reaches to either side of its scale; it has a word a line at least.
fn half_title(board: &Board<'_>, scale: &Scale, types: Types) -> f32 {
    board.widest(types.titles, &board.wrap(types.titles, TITLE, &scale.title)) / 2.0
}

/// Titles and units over the scales; the height that they take.
fn title(board: &mut Board<'_>, scales: &[Upright<'_>], types: Types) -> f32 {
    let step = types.titles.size * LEADING;
    let wrap = |upright: &Upright<'_>| board.wrap(types.titles, TITLE, &upright.data.title);
    let titles: Vec<Vec<String>> = scales.iter().map(wrap).collect();
    let units = step * titles.iter().map(Vec::len).max().unwrap_or(0) as f32;
    for (Upright { data, x, .. }, title) in scales.iter().zip(&titles) {
        let above = units - step * title.len() as f32;
        board.lines(types.titles, *x, above, Anchor::Middle, title);
        unit(board, &data.left, (x - AIR, Anchor::End), units, types.numbers);
        if let Some(division) = &data.right {
            unit(board, division, (x + AIR, Anchor::Start), units, types.numbers);
        }
    }
    units + types.numbers.size * LEADING
}

/// The name of a unit beside the head of its line.
fn unit(
    board: &mut Board<'_>,
    division: &Division,
    (x, anchor): (f32, Anchor),
    top: f32,
    set: Type,
) {
    board.lines(set, x, top, anchor, std::slice::from_ref(&division.unit));
}

impl Upright<'_> {
    fn draw(&self, board: &mut Board<'_>, numbers: Numbers) {
        let end = |y| Point { x: self.x, y };
        board.line(end(self.scale.top), end(self.scale.foot), LINE);
        let left = (self.scale, self.data.left.size);
        divide(board, left, (self.x, Side::Left), numbers);
        if let Some(division) = &self.data.right {
            divide(board, (self.scale, division.size), (self.x, Side::Right), numbers);
        }
    }

    fn point(&self, value: f64) -> Point {
        Point { x: self.x, y: self.scale.place(value) }
    }
}

/// The straight line of a reading, with a dot on each scale.
fn read(board: &mut Board<'_>, (area, film): (f64, f64), scales: &[Upright<'_>; 3]) {
    let [from, middle, to] = scales;
    let (from, to) = (from.point(area), to.point(film));
    board.line(from, to, READING);
    let edge = Stroke { dash: Dash::Solid, ..READING };
    for at in [from, middle.point(area * film), to] {
        let dot = super::outline::ellipse(at, DOT, DOT);
        board.path(dot, Some(WHITE), Some(edge));
    }
}

/// Marks on the film, each with its name as near as the others let it. Where there is no room
/// for all names, the strong ones come first.
fn name_marks(
    board: &mut Board<'_>,
    marks: &[FilmMark],
    film: &Upright<'_>,
    (x, end): (f32, f32),
    set: Type,
) {
    let room = film.scale.foot - film.scale.top;
    let strong = |mark: &FilmMark| mark.weight == Weight::Strong;
    let face = |mark: &FilmMark| {
        let face = if strong(mark) { Face::Bold } else { Face::Regular };
        Type { face, ..set }
    };
    let inside = |mark: &&FilmMark| mark.film >= film.scale.low && mark.film <= film.scale.high;
    let by_weight = marks.iter().filter(|mark| strong(mark));
    let by_weight = by_weight.chain(marks.iter().filter(|mark| !strong(mark))).filter(inside);
    let mut filled = 0.0;
    let mut named: Vec<(&FilmMark, Vec<String>)> = Vec::new();
    for mark in by_weight {
        let lines = board.wrap(face(mark), end - x, &mark.label);
        let tall = lines.len() as f32 * set.size * LEADING;
        if filled + tall <= room {
            filled += tall;
            named.push((mark, lines));
        }
    }
    let tall = |lines: &[String]| lines.len() as f32 * set.size * LEADING;
    let wishes: Vec<Wish> = named
        .iter()
        .map(|(mark, lines)| Wish { centre: film.scale.place(mark.film), size: tall(lines) })
        .collect();
    let Some(centres) = spread(&wishes, 0.0, film.scale.top, film.scale.foot) else { return };
    for ((mark, lines), centre) in named.iter().zip(centres) {
        let at = film.point(mark.film);
        let bend = Point { x: at.x + LEADER / 2.0, ..at };
        let stroke =
            if strong(mark) { HAIRLINE } else { Stroke { colour: QUIET_LINE, ..HAIRLINE } };
        board.line(at, bend, stroke);
        board.line(bend, Point { x: x - 2.0, y: centre }, stroke);
        board.lines(face(mark), x, centre - tall(lines) / 2.0, Anchor::Start, lines);
    }
}
