//! Sums with other numbers for each student.
//!
//! In: the lesson and its canvases as planned. Out: for each student a sheet of exercises in
//! friendly figures, each with its results. All figures are exact, none is rounded but grams,
//! and all follow from the seed, so that the sheets can be made again on any machine.

mod canvas;
mod chance;
mod coverage;
mod deck;
mod hundredths;
mod task;

pub use canvas::{FRIENDLY_PI, FriendlyCanvas, FriendlyOutline, OutlineKind, decimals};
pub use coverage::{Coverage, CoverageBy};
pub use hundredths::Hundredths;
pub use task::{ColourTask, Exercise, Task};

use super::{CanvasPlan, Heads};
use crate::lesson::{ExerciseLevel, ExerciseRule, Lesson, Shape};
use chance::Chance;
use coverage::Pour;
use deck::Deck;

/// The exercises of a class.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Exercises {
    /// The text that they were made from.
    pub seed: String,
    /// One for each student, in the order of the class.
    pub sheets: Vec<Vec<Exercise>>,
}

/// Shares of a colour, in percent.
const SHARES: [i64; 6] = [10, 20, 25, 30, 40, 50];

/// The levels, the easiest first.
const LEVELS: [ExerciseLevel; 3] =
    [ExerciseLevel::Area, ExerciseLevel::Paint, ExerciseLevel::Colours];

/// The exercises that a lesson wants; `None` when it wants none.
pub(super) fn exercises(
    lesson: &Lesson,
    canvases: &[CanvasPlan],
    heads: Heads,
) -> Option<Exercises> {
    let rule = lesson.exercises.as_ref()?;
    let mut dealer = Dealer::new(rule, lesson, canvases)?;
    let sheets = (0..heads.students).map(|_| dealer.sheet()).collect();
    Some(Exercises { seed: rule.seed.clone(), sheets })
}

struct Dealer {
    count: usize,
    level: Option<ExerciseLevel>,
    decimals: u32,
    chance: Chance,
    deck: Deck,
    outlines: Turns<OutlineKind>,
    coverages: Turns<Coverage>,
    pours: Turns<Pour>,
    /// Whether the next exercise of the last level goes back from paint to a panel.
    backwards: Turns<bool>,
}

impl Dealer {
    fn new(rule: &ExerciseRule, lesson: &Lesson, canvases: &[CanvasPlan]) -> Option<Self> {
        let units = lesson.print.units;
        let count = usize::try_from(rule.count.get()).ok()?;
        let mut chance = Chance::from_seed(&rule.seed);
        let deck = Deck::shuffled(units, count, &mut chance);
        let pours = coverage::pours(lesson, canvases);
        let mut coverages = vec![coverage::rule(units)?];
        let ways = pours.iter().map(|pour| &pour.coverage);
        coverages.extend(ways.filter(|way| way.by != CoverageBy::Rule).cloned());
        Some(Self {
            count,
            level: rule.level,
            decimals: decimals(units),
            chance,
            deck,
            outlines: Turns::over(outlines(lesson))?,
            coverages: Turns::over(coverages)?,
            pours: Turns::over(pours)?,
            backwards: Turns::over(vec![false, true])?,
        })
    }

    fn sheet(&mut self) -> Vec<Exercise> {
        (0..self.count).filter_map(|at| self.exercise(at)).collect()
    }

    fn exercise(&mut self, at: usize) -> Option<Exercise> {
        let rising = LEVELS.get(at * LEVELS.len() / self.count).copied();
        match self.level.or(rising)? {
            ExerciseLevel::Area => self.deal(|canvas| Some(Exercise::area(canvas))),
            ExerciseLevel::Paint => {
                let coverage = self.coverages.next()?.clone();
                let decimals = self.decimals;
                self.deal(|canvas| Exercise::paint(canvas, &coverage, decimals))
            }
            ExerciseLevel::Colours => {
                if *self.backwards.next()? {
                    self.panel()
                } else {
                    self.colour()
                }
            }
        }
    }

    /// By the pour of the colour before it; the next colour has the next pour.
    fn panel(&mut self) -> Option<Exercise> {
        let coverage = self.pours.next()?.coverage.clone();
        let decimals = self.decimals;
        self.deck.deal(|canvas| Exercise::panel(canvas, &coverage, decimals))
    }

    fn colour(&mut self) -> Option<Exercise> {
        let pour = self.pours.now()?;
        let coverage = pour.coverage.clone();
        let cup = pour.cups.get(self.chance.below(pour.cups.len()))?.clone();
        let decimals = self.decimals;
        // Not every share comes out with every coverage.
        let first = self.chance.below(SHARES.len());
        let shares = SHARES.iter().cycle().skip(first).take(SHARES.len());
        let shares: Vec<Hundredths> = shares.copied().map(Hundredths::whole).collect();
        self.deal(|canvas| {
            shares.iter().find_map(|share| {
                let colour = (cup.colour.as_str(), *share, cup.weight);
                Exercise::colour(canvas, &coverage, colour, decimals)
            })
        })
    }

    /// On a canvas of the outline whose turn it is; on a rectangle where there is none.
    fn deal(&mut self, exercise: impl Fn(FriendlyCanvas) -> Option<Exercise>) -> Option<Exercise> {
        let wished = *self.outlines.next()?;
        [wished, OutlineKind::Rectangle].into_iter().find_map(|kind| {
            self.deck.deal(|canvas| (canvas.outline().kind() == kind).then(|| exercise(canvas))?)
        })
    }
}

/// Rectangles, and the outlines of the lesson that have friendly figures.
fn outlines(lesson: &Lesson) -> Vec<OutlineKind> {
    let own = lesson.canvases.iter().filter_map(|canvas| match canvas.shape {
        Shape::Rectangle { .. } => Some(OutlineKind::Rectangle),
        Shape::Round { .. } => Some(OutlineKind::Round),
        Shape::Polygon { sides: 6, .. } => Some(OutlineKind::Hexagon),
        Shape::Oval { .. } | Shape::Polygon { .. } => None,
    });
    let mut kinds: Vec<OutlineKind> = own.chain([OutlineKind::Rectangle]).collect();
    kinds.sort();
    kinds.dedup();
    kinds
}

/// Things that take turns; never empty.
struct Turns<T> {
    all: Vec<T>,
    next: usize,
}

impl<T> Turns<T> {
    fn over(all: Vec<T>) -> Option<Self> {
        (!all.is_empty()).then_some(Self { all, next: 0 })
    }

    fn now(&self) -> Option<&T> {
        self.all.get(self.next)
    }

    fn next(&mut self) -> Option<&T> {
        let at = self.next;
        self.next = (at + 1) % self.all.len();
        self.all.get(at)
    }
}
