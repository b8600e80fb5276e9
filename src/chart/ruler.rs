//! Divisions at true size: millimetres, and sixteenths of an inch.

use super::board::{Anchor, Board, Type};
use super::style::{INK, MM};
use crate::ink::{Dash, Point, Stroke};

const TICK: Stroke = Stroke { colour: INK, width: 0.35, dash: Dash::Solid };

/// Millimetres in an inch, exactly (NIST SP 811, 2008, App. B.8).
const INCH: f32 = 25.4;

/// Lengths of ticks in points, the finest first.
const TICKS: [f32; 5] = [4.5, 6.0, 7.5, 9.5, 12.5];

/// From a tick to its number.
const AIR: f32 = 2.0;

/// What is divided, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    Millimetre,
    Sixteenth,
}

impl Unit {
    /// In points.
    fn step(self) -> f32 {
        match self {
            Self::Millimetre => MM,
            Self::Sixteenth => INCH / 16.0 * MM,
        }
    }

    /// How long the tick of a step is.
    fn tick(self, step: u32) -> f32 {
        let [finest, fine, middle, coarse, whole] = TICKS;
        match self {
            Self::Millimetre => match step % 10 {
                0 => whole,
                5 => coarse,
                _ => fine,
            },
            Self::Sixteenth => match step % 16 {
                0 => whole,
                8 => coarse,
                4 | 12 => middle,
                even if even % 2 == 0 => fine,
                _ => finest,
            },
        }
    }

    /// The number at a step, if one stands there.
    fn number(self, step: u32) -> Option<String> {
        let number = match self {
            Self::Millimetre => (step.is_multiple_of(10)).then_some(step),
            Self::Sixteenth => (step.is_multiple_of(16)).then_some(step / 16),
        };
        number.map(|number| number.to_string())
    }
}

/// Which way the ticks of a scale point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Left,
    Right,
    Below,
    Above,
}

/// A divided line from its zero on, to the right for ticks above or below and down for others.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ruler {
    pub unit: Unit,
    pub side: Side,
    pub zero: Point,
    /// Points.
    pub length: f32,
    pub numbers: Type,
}

impl Ruler {
    /// What ticks and numbers take across the line.
    pub fn depth(board: &Board<'_>, numbers: Type) -> f32 {
        TICKS.into_iter().fold(0.0, f32::max) + AIR + board.capitals(numbers)
    }

    pub fn draw(&self, board: &mut Board<'_>) {
        let steps = (self.length / self.unit.step() + 1e-3) as u32;
        for step in 0..=steps {
            let along = self.unit.step() * step as f32;
            let at = match self.side {
                Side::Left | Side::Right => Point { y: self.zero.y + along, ..self.zero },
                Side::Below | Side::Above => Point { x: self.zero.x + along, ..self.zero },
            };
            let tick = self.unit.tick(step);
            board.line(at, self.beside(at, tick), TICK);
            if let Some(number) = self.unit.number(step).filter(|_| step > 0) {
                self.number(board, at, tick, &number);
            }
        }
    }

    fn beside(&self, at: Point, by: f32) -> Point {
        match self.side {
            Side::Left => Point { x: at.x - by, ..at },
            Side::Right => Point { x: at.x + by, ..at },
            Side::Below => Point { y: at.y + by, ..at },
            Side::Above => Point { y: at.y - by, ..at },
        }
    }

    /// A number behind its tick, unless it would stand over the end of the ruler.
    fn number(&self, board: &mut Board<'_>, at: Point, tick: f32, number: &str) {
        let capitals = board.capitals(self.numbers);
        let place = self.beside(at, tick + AIR);
        let (anchor, place, reach) = match self.side {
            Side::Left => (Anchor::End, Point { y: place.y + capitals / 2.0, ..place }, capitals),
            Side::Right => {
                (Anchor::Start, Point { y: place.y + capitals / 2.0, ..place }, capitals)
            }
            Side::Below => {
                let reach = board.measure(self.numbers, number);
                (Anchor::Middle, Point { y: place.y + capitals, ..place }, reach)
            }
            Side::Above => (Anchor::Middle, place, board.measure(self.numbers, number)),
        };
        let along = match self.side {
            Side::Left | Side::Right => at.y - self.zero.y,
            Side::Below | Side::Above => at.x - self.zero.x,
        };
        if along + reach / 2.0 + 1.0 <= self.length {
            board.text(self.numbers, place, anchor, number);
        }
    }
}
