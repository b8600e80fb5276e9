use super::Hundredths;
use crate::lesson::{Canvas, Lesson};
use crate::plan::{CanvasPlan, rule_film};
use crate::quantity::units::{in_g_per_ml, in_gram, in_square_cm, in_square_inch, ml, us_fl_oz};
use crate::quantity::{Length, UnitSystem};

/// How far paint goes in an exercise: so much area with so much paint.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Coverage {
    pub by: CoverageBy,
    /// Square inches, or square centimetres.
    pub area: Hundredths,
    /// One fluid ounce, or 100 millilitres.
    pub paint: Hundredths,
}

/// Who says how far paint goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CoverageBy {
    /// The trade's rule of thumb.
    Rule,
    /// The technique of this canvas of the lesson.
    Canvas(usize),
}

/// A coverage with the cups that go with it.
pub(super) struct Pour {
    pub coverage: Coverage,
    /// Never empty.
    pub cups: Vec<Cup>,
}

/// A colour, and what a fluid ounce or a millilitre of it weighs in grams.
#[derive(Clone)]
pub(super) struct Cup {
    pub colour: String,
    pub weight: Hundredths,
}

/// Areas that one fluid ounce covers in exercises, in square inches: enough canvases of
/// friendly sizes give figures that come out.
const US: [i64; 23] =
    [8, 9, 10, 12, 15, 16, 18, 20, 24, 25, 30, 32, 36, 40, 45, 48, 50, 60, 72, 75, 80, 90, 100];
/// The same for 100 mL, in square centimetres.
const METRIC: [i64; 27] = [
    150, 160, 180, 200, 240, 250, 300, 320, 360, 400, 450, 480, 500, 540, 600, 640, 720, 750, 800,
    900, 1000, 1200, 1250, 1500, 1600, 1800, 2000,
];

/// A film whose coverage is further off than this from all of them is left out of exercises.
const FURTHEST: f64 = 0.13;

/// The rule of thumb.
pub(super) fn rule(units: UnitSystem) -> Option<Coverage> {
    coverage(CoverageBy::Rule, rule_film(), units)
}

/// The ways of pouring of a lesson, each once, with their colours. Where none of their films
/// can be had in friendly figures, the colours are poured by the rule of thumb.
pub(super) fn pours(lesson: &Lesson, canvases: &[CanvasPlan]) -> Vec<Pour> {
    let units = lesson.print.units;
    let mut pours: Vec<Pour> = Vec::new();
    let mut known: Vec<&Canvas> = Vec::new();
    for (at, (canvas, plan)) in lesson.canvases.iter().zip(canvases).enumerate() {
        if known.iter().any(|other| is_poured_alike(other, canvas)) {
            continue;
        }
        known.push(canvas);
        let film = plan.paint.typical() / plan.areas.painted;
        let cups = cups(plan, units);
        if let Some(coverage) = coverage(CoverageBy::Canvas(at), film, units)
            && !cups.is_empty()
        {
            pours.push(Pour { coverage, cups });
        }
    }
    if pours.is_empty()
        && let (Some(coverage), Some(first)) = (rule(units), canvases.first())
    {
        pours.push(Pour { coverage, cups: cups(first, units) });
    }
    pours
}

fn is_poured_alike(one: &Canvas, other: &Canvas) -> bool {
    let mixes = |canvas: &Canvas| -> Vec<String> {
        canvas.layers.iter().map(|layer| layer.mix.name.clone()).collect()
    };
    one.technique.name == other.technique.name && mixes(one) == mixes(other)
}

/// The friendly coverage next to that of a film, by ratio.
fn coverage(by: CoverageBy, film: Length, units: UnitSystem) -> Option<Coverage> {
    let (known, paint, exactly): (&[i64], _, _) = match units {
        UnitSystem::Us => (&US, 1, in_square_inch(us_fl_oz(1.0) / film)),
        UnitSystem::Metric => (&METRIC, 100, in_square_cm(ml(100.0) / film)),
    };
    let off = |area: i64| (area as f64 / exactly).ln().abs();
    let area = known.iter().copied().min_by(|one, other| off(*one).total_cmp(&off(*other)))?;
    (off(area) <= FURTHEST).then(|| Coverage {
        by,
        area: Hundredths::whole(area),
        paint: Hundredths::whole(paint),
    })
}

/// The colours of a canvas, each once, in whole grams a fluid ounce or tenths of a gram a
/// millilitre.
fn cups(plan: &CanvasPlan, units: UnitSystem) -> Vec<Cup> {
    let mut cups: Vec<Cup> = Vec::new();
    for cup in plan.layers.iter().flat_map(|layer| &layer.cups) {
        let tenths = match units {
            UnitSystem::Us => in_gram(us_fl_oz(1.0) * cup.density()).round() * 10.0,
            UnitSystem::Metric => (in_g_per_ml(cup.density()) * 10.0).round(),
        };
        let weight = Hundredths::new(tenths as i64 * 10);
        if cups.iter().all(|known| known.colour != cup.colour.name) && weight > Hundredths::ZERO {
            cups.push(Cup { colour: cup.colour.name.clone(), weight });
        }
    }
    cups
}
