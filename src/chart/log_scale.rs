//! Upright scales divided by ratios.

use super::board::{Anchor, Board, Type};
use super::style::INK;
use crate::handout::DecimalMark;
use crate::ink::{Dash, Point, Stroke};

const TICK: Stroke = Stroke { colour: INK, width: 0.3, dash: Dash::Solid };

/// Lengths of ticks in points: of whole first digits, in between, and the finest.
const WHOLE: f32 = 9.0;
const MIDDLE: f32 = 6.5;
const FINE: f32 = 4.0;

/// From a tick to its number, and between two numbers as a share of their height.
const AIR: f32 = 2.5;
const CLEAR: f32 = 1.6;

/// First digits, those that are numbered first in front.
const NUMBERED: [i32; 10] = [100, 200, 500, 300, 150, 400, 700, 600, 800, 900];

/// How the numbers of scales are set.
#[derive(Debug, Clone, Copy)]
pub(super) struct Numbers {
    pub set: Type,
    pub decimal: DecimalMark,
}

/// Where values from one to another lie along a height, equal ratios over equal lengths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LogScale {
    pub low: f64,
    pub high: f64,
    /// Of the low and of the high end.
    pub foot: f32,
    pub top: f32,
}

impl LogScale {
    pub fn place(&self, value: f64) -> f32 {
        let share = (value / self.low).ln() / (self.high / self.low).ln();
        self.foot + (self.top - self.foot) * share as f32
    }

    /// How many times ten the upper end is of the lower.
    pub fn decades(&self) -> f64 {
        (self.high / self.low).log10()
    }

    /// The same scale in a unit of some size.
    fn in_unit(&self, size: f64) -> Self {
        Self { low: self.low / size, high: self.high / size, ..*self }
    }
}

/// A division: `hundredths` of a power of ten.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Tick {
    hundredths: i32,
    power: i32,
}

impl Tick {
    fn value(self) -> f64 {
        f64::from(self.hundredths) * 10_f64.powi(self.power - 2)
    }

    fn length(self) -> f32 {
        match self.hundredths {
            whole if whole % 100 == 0 => WHOLE,
            tenth if tenth < 200 && tenth % 10 == 0 => MIDDLE,
            half if half < 400 && half % 50 == 0 => MIDDLE,
            _ => FINE,
        }
    }

    /// As short as it is exact.
    fn number(self, decimal: DecimalMark) -> String {
        let places = usize::try_from(2 - self.power).unwrap_or(0);
        let text = format!("{:.places$}", self.value());
        match text.contains('.') {
            true => decimal.put(text.trim_end_matches('0').trim_end_matches('.').to_owned()),
            false => text,
        }
    }
}

/// Divisions between two values: each is at most a twentieth more than the one before, so that
/// a reader who takes the nearest misses by less than 3 %.
fn ticks(low: f64, high: f64) -> Vec<Tick> {
    let powers = low.log10().floor() as i32..=high.log10().floor() as i32;
    let one = || (100..200).step_by(5).chain((200..400).step_by(10)).chain((400..1000).step_by(20));
    let all = powers.flat_map(|power| one().map(move |hundredths| Tick { hundredths, power }));
    let inside =
        |tick: &Tick| tick.value() >= low * (1.0 - 1e-9) && tick.value() <= high * (1.0 + 1e-9);
    all.filter(inside).collect()
}

/// On which side of its line a scale is divided.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Left,
    Right,
}

/// Ticks along a line at `x`, in a unit of some size, with as many numbers as keep apart.
pub(super) fn divide(
    board: &mut Board<'_>,
    (scale, size): (LogScale, f64),
    (x, side): (f32, Side),
    numbers: Numbers,
) {
    let scale = scale.in_unit(size);
    let outwards = match side {
        Side::Left => -1.0,
        Side::Right => 1.0,
    };
    let anchor = match side {
        Side::Left => Anchor::End,
        Side::Right => Anchor::Start,
    };
    let all = ticks(scale.low, scale.high);
    for tick in &all {
        let y = scale.place(tick.value());
        let to = Point { x: x + outwards * tick.length(), y };
        board.line(Point { x, y }, to, TICK);
    }
    let capitals = board.capitals(numbers.set);
    let mut taken: Vec<f32> = Vec::new();
    for first in NUMBERED {
        for tick in all.iter().filter(|tick| tick.hundredths == first) {
            let y = scale.place(tick.value());
            if taken.iter().all(|other| (other - y).abs() >= capitals * CLEAR) {
                taken.push(y);
                let at = Point { x: x + outwards * (WHOLE + AIR), y: y + capitals / 2.0 };
                board.text(numbers.set, at, anchor, &tick.number(numbers.decimal));
            }
        }
    }
}

/// Width that ticks and numbers between two values take beside the line.
pub(super) fn width(board: &Board<'_>, (scale, size): (LogScale, f64), numbers: Numbers) -> f32 {
    let scale = scale.in_unit(size);
    let numbered = ticks(scale.low, scale.high);
    let widths = numbered
        .iter()
        .filter(|tick| NUMBERED.contains(&tick.hundredths))
        .map(|tick| board.measure(numbers.set, &tick.number(numbers.decimal)));
    WHOLE + AIR + widths.fold(0.0, f32::max)
}

#[cfg(test)]
mod tests {
    use super::{DecimalMark, ticks};

    #[test]
    fn the_nearest_division_is_less_than_three_percent_off() {
        let values: Vec<f64> = ticks(0.15, 3000.0).iter().map(|tick| tick.value()).collect();
        assert!(values.windows(2).all(|pair| {
            let [low, high] = pair else { return false };
            high > low && high / low <= 1.05 + 1e-9
        }));
        assert!(values.len() > 150);
    }

    #[test]
    fn numbers_are_as_short_as_they_are_exact() {
        let numbers = |low, high, decimal| -> Vec<String> {
            ticks(low, high).iter().map(|tick| tick.number(decimal)).collect()
        };
        let written = numbers(0.04, 0.05, DecimalMark::Comma);
        assert_eq!(written, ["0,04", "0,042", "0,044", "0,046", "0,048", "0,05"]);
        let numbers = |low, high| numbers(low, high, DecimalMark::Point);
        assert_eq!(numbers(0.04, 0.05), ["0.04", "0.042", "0.044", "0.046", "0.048", "0.05"]);
        assert_eq!(
            numbers(900.0, 1100.0),
            ["900", "920", "940", "960", "980", "1000", "1050", "1100"]
        );
    }
}
