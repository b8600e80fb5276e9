//! Exercises of students, in words and figures.

use super::canvas::consistencies;
use super::range::RangeText;
use crate::handout::words::{Words, fill};
use crate::lesson::Students;
use crate::plan::Plan;
use crate::plan::exercise::{
    ColourTask, Coverage, CoverageBy, Exercise, Exercises, FRIENDLY_PI, FriendlyOutline,
    Hundredths, OutlineKind, Task,
};
use crate::quantity::UnitSystem;
use crate::quantity::show::{Show, with_unit};
use crate::quantity::units::{inch, mm};
use serde::Serialize;

/// The sheet of one student.
#[derive(Debug, Clone, Serialize)]
pub struct ExerciseSheetText {
    /// A name, or the number among those who have none.
    pub student: String,
    pub named: bool,
    pub exercises: Vec<ExerciseText>,
    /// The outlines among them, with their formulas.
    pub outlines: Vec<OutlineText>,
    /// Pi as it is taken; empty where nothing is round.
    pub pi: String,
}

/// How an outline is worked out.
#[derive(Debug, Clone, Serialize)]
pub struct OutlineText {
    pub name: String,
    pub face: String,
    pub way_round: String,
}

/// One exercise, with its results; what does not belong to it is empty.
#[derive(Debug, Clone, Default, Serialize)]
pub struct ExerciseText {
    pub number: String,
    /// `area`, `paint`, `colour` or `panel`.
    pub kind: &'static str,
    pub canvas: String,
    /// Of the painted edge.
    pub depth: String,
    /// Technique and consistency; empty for the rule of thumb.
    pub by: String,
    pub covers: String,
    pub covers_with: String,
    pub colour: String,
    pub share: String,
    pub weight: String,
    /// Of the panel.
    pub width: String,
    pub face: String,
    pub way_round: String,
    pub edge: String,
    pub painted: String,
    pub paint: String,
    pub colour_paint: String,
    pub grams: String,
    /// Of the panel.
    pub height: String,
    /// In which the last answer is plausible.
    pub range: RangeText,
}

/// The sheets of a class, in the order of its students.
pub(in crate::handout) fn exercises(
    plan: &Plan,
    exercises: &Exercises,
    words: &Words,
    show: &Show,
) -> Vec<ExerciseSheetText> {
    let writer = Writer { plan, words, show };
    let sheets = exercises.sheets.iter().enumerate();
    sheets.map(|(at, sheet)| writer.sheet(at, sheet)).collect()
}

struct Writer<'a> {
    plan: &'a Plan,
    words: &'a Words,
    show: &'a Show,
}

impl Writer<'_> {
    fn sheet(&self, at: usize, sheet: &[Exercise]) -> ExerciseSheetText {
        let name = match &self.plan.lesson.class.students {
            Students::Named(names) => names.get(at).cloned(),
            Students::Count(_) => None,
        };
        let number = (at + 1).to_string();
        let named = name.is_some();
        let student =
            name.unwrap_or_else(|| fill(&self.words.weigh.student, &[("number", &number)]));
        let mut kinds: Vec<OutlineKind> =
            sheet.iter().map(|exercise| exercise.canvas().outline().kind()).collect();
        kinds.sort();
        kinds.dedup();
        let numbered = sheet.iter().zip(1_u32..);
        let round = kinds.contains(&OutlineKind::Round);
        ExerciseSheetText {
            student,
            named,
            exercises: numbered.map(|(exercise, number)| self.exercise(exercise, number)).collect(),
            pi: if round { self.number(FRIENDLY_PI) } else { String::new() },
            outlines: kinds.into_iter().map(|kind| self.outline(kind)).collect(),
        }
    }

    fn outline(&self, kind: OutlineKind) -> OutlineText {
        let (shapes, steps) = (&self.words.shapes, &self.words.steps);
        let (name, face, way_round) = match kind {
            OutlineKind::Rectangle => {
                (&shapes.rectangle, &steps.face_rectangle, &steps.perimeter_rectangle)
            }
            OutlineKind::Round => (&shapes.round, &steps.face_round, &steps.perimeter_round),
            OutlineKind::Hexagon => {
                (&shapes.hexagon, &steps.face_polygon, &steps.perimeter_polygon)
            }
        };
        let (name, face, way_round) = (name.clone(), face.clone(), way_round.clone());
        OutlineText { name, face, way_round }
    }

    fn exercise(&self, exercise: &Exercise, number: u32) -> ExerciseText {
        let canvas = exercise.canvas();
        let flat = canvas.depth().value() == 0.0;
        let text = ExerciseText {
            number: number.to_string(),
            canvas: self.canvas(canvas.outline()),
            depth: if flat { String::new() } else { self.size(canvas.depth()) },
            face: self.area(canvas.face()),
            way_round: self.length(canvas.way_round()),
            edge: self.area(canvas.edge()),
            painted: self.area(canvas.painted()),
            ..ExerciseText::default()
        };
        let text = match exercise.task() {
            Task::Area => ExerciseText { kind: "area", ..text },
            Task::Paint { coverage, paint } => ExerciseText {
                kind: "paint",
                paint: self.volume(*paint),
                ..self.covered(coverage, text)
            },
            Task::Colour { coverage, paint, colour } => ExerciseText {
                kind: "colour",
                paint: self.volume(*paint),
                ..self.coloured(colour, self.covered(coverage, text))
            },
            Task::Panel { coverage, paint, width, height } => ExerciseText {
                kind: "panel",
                paint: self.volume(*paint),
                width: self.size(*width),
                height: self.length(*height),
                ..self.covered(coverage, text)
            },
        };
        self.expected(exercise, text)
    }

    fn covered(&self, coverage: &Coverage, text: ExerciseText) -> ExerciseText {
        let by = match coverage.by {
            CoverageBy::Rule => None,
            CoverageBy::Canvas(at) => self.plan.lesson.canvases.get(at),
        };
        let by = by.map(|canvas| {
            let consistency = consistencies(canvas, self.words);
            let blanks = [("technique", &canvas.technique.name), ("consistency", &consistency)];
            fill(&self.words.exercises.by, &blanks.map(|(name, value)| (name, value.as_str())))
        });
        ExerciseText {
            by: by.unwrap_or_default(),
            covers: self.area(coverage.area),
            covers_with: self.volume(coverage.paint),
            ..text
        }
    }

    fn coloured(&self, colour: &ColourTask, text: ExerciseText) -> ExerciseText {
        ExerciseText {
            colour: colour.colour.clone(),
            share: with_unit(&self.number(colour.share), "%"),
            weight: with_unit(&self.number(colour.weight), "g"),
            colour_paint: self.volume(colour.paint),
            grams: with_unit(&self.number(colour.grams), "g"),
            ..text
        }
    }

    /// A range for the last answer, in its unit.
    fn expected(&self, exercise: &Exercise, text: ExerciseText) -> ExerciseText {
        let unit = match exercise.task() {
            Task::Area => self.show.area_unit().to_owned(),
            Task::Paint { .. } => self.volume_unit(),
            Task::Colour { .. } => "g".to_owned(),
            Task::Panel { .. } => self.show.length_unit().to_owned(),
        };
        ExerciseText {
            range: RangeText::around(exercise.result().value(), &unit, self.show),
            ..text
        }
    }

    fn canvas(&self, outline: FriendlyOutline) -> String {
        let (shapes, sizes) = (&self.words.shapes, &self.words.sizes);
        let (shape, size) = match outline {
            FriendlyOutline::Rectangle { width, height } => {
                let (width, height) = (self.number(width), self.size(height));
                let size = fill(&sizes.rectangle, &[("width", &width), ("height", &height)]);
                (&shapes.rectangle, size)
            }
            FriendlyOutline::Round { across } => {
                (&shapes.round, fill(&sizes.round, &[("width", &self.size(across))]))
            }
            FriendlyOutline::Hexagon { side, middle } => {
                let (side, middle) = (self.length(side), self.length(middle));
                let size = fill(&sizes.polygon_middle, &[("side", &side), ("middle", &middle)]);
                (&shapes.hexagon, size)
            }
        };
        fill(&self.words.exercises.canvas, &[("shape", shape), ("size", &size)])
    }

    /// A length that is given, as on a tape measure.
    fn size(&self, length: Hundredths) -> String {
        match self.show.units() {
            UnitSystem::Us => self.show.length(inch(length.value())),
            UnitSystem::Metric => self.show.length(mm(length.value() * 10.0)),
        }
    }

    /// A length that is worked out.
    fn length(&self, length: Hundredths) -> String {
        with_unit(&self.number(length), self.show.length_unit())
    }

    fn area(&self, area: Hundredths) -> String {
        with_unit(&self.number(area), self.show.area_unit())
    }

    fn volume(&self, volume: Hundredths) -> String {
        with_unit(&self.number(volume), &self.volume_unit())
    }

    /// With the decimals that it has.
    fn number(&self, figure: Hundredths) -> String {
        self.show.trimmed(figure.value(), 2)
    }

    fn volume_unit(&self) -> String {
        self.show.volume_unit().replace(' ', "\u{a0}")
    }
}
