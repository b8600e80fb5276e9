//! What templates can say: the plan as formatted text.
//!
//! In: a plan and the words of a language. Out: plain values for Tera. Every
//! number is already text; templates calculate nothing.

mod adding;
mod batch;
mod canvas;
mod caution;
mod compare;
mod concern;
mod exercise;
mod money;
mod order;
mod range;
mod reasons;
mod reserve;
mod room;
mod step;
mod technique;
mod thin_paint;
mod timetable;
mod tools;
mod weigh;

use super::words::{Words, fill};
use crate::lesson::{Edition, Practice};
use crate::plan::{Errand, Plan, YOUNG, practices};
use crate::quantity::show::Show;
use crate::quantity::units::gram;
use crate::quantity::{Date, Mass, UnitSystem};
use jiff::ToSpan;
use serde::Serialize;

pub(super) use adding::canvas_paint;
pub use batch::BatchText;
pub(super) use batch::consistency;
pub use canvas::CanvasText;
pub(super) use canvas::{consistencies, shape_word, size};
pub use caution::{CautionText, LabelText};
pub use concern::ConcernText;
pub(super) use exercise::{ExerciseSheetText, exercises};
pub use money::{CostText, FeesText};
pub use order::{OrderText, SupplyText};
pub(super) use order::{amount, order};
pub use reserve::{ReserveLineText, ReserveText};
pub use room::RoomText;
pub(super) use step::{operand_of, result_of};
pub use technique::{ColourText, MixText, TechniqueText};
pub(super) use thin_paint::thin_paint;
pub use timetable::TimetableText;
pub(super) use tools::tools;
pub(super) use weigh::weigh;

/// Days after which a pour is dry through (common practice, no source).
pub(super) const DRY_THROUGH: u32 = 14;

/// Weight of an empty mixing jug, in grams, rather more than less (common practice, no source).
const JUG_G: f64 = 250.0;
/// Scales are told apart by so many grams.
const SCALE_STEP_G: f64 = 500.0;

/// Everything that every template may name.
#[derive(Debug, Clone, Serialize)]
pub struct Context {
    pub title: String,
    pub subtitle: String,
    pub teacher: String,
    pub place: String,
    pub date: String,
    /// The day of the class and the days after it, as many as a canvas takes to dry through;
    /// nothing in a lesson without a date.
    pub dates: Vec<String>,
    pub note: String,
    pub units: UnitSystem,
    /// Whether it is set in large print: tables there have room for less.
    pub large_print: bool,
    pub students: String,
    pub sets: String,
    pub demonstrations: String,
    pub spares: String,
    pub tables: String,
    pub youngest_age: String,
    /// Whether somebody in the room leaves heat, alcohol and silicone to an adult.
    pub young: bool,
    /// What is done in the lesson that needs care, by the words of lesson files.
    pub practices: Vec<&'static str>,
    pub rule: RuleText,
    /// Where the amounts come from; none when nothing of the lesson has been weighed.
    pub weighed: Option<WeighedText>,
    /// What stays in each cup and on its stick.
    pub cup_loss: String,
    /// The heaviest thing that stands on the scale, and what a scale should hold for it.
    pub heaviest_batch: String,
    pub scale_reach: String,
    /// What the class takes out of jars; empty when that is nothing.
    pub from_jars: String,
    pub student_paint: String,
    pub class_paint: String,
    pub canvases: Vec<CanvasText>,
    pub techniques: Vec<TechniqueText>,
    pub mixes: Vec<MixText>,
    pub colours: Vec<ColourText>,
    pub batches: Vec<BatchText>,
    pub reserve: ReserveText,
    pub order: OrderText,
    pub supplies: Vec<SupplyText>,
    pub cost: CostText,
    pub timetable: Option<TimetableText>,
    pub room: RoomText,
    pub cautions: Vec<CautionText>,
    /// What the labels of colours and materials warn of, as the lesson says.
    pub labels: Vec<LabelText>,
    /// What a colleague would say of the lesson and nobody accepted.
    pub concerns: Vec<ConcernText>,
    /// What is right all the same, as the lesson says.
    pub accepted: Vec<ConcernText>,
    pub all_cautions: Vec<CautionText>,
}

/// What weighings the amounts come from.
#[derive(Debug, Clone, Serialize)]
pub struct WeighedText {
    pub cups: String,
    pub canvases: String,
    pub classes: String,
    /// Whether some layer of the lesson has not been weighed.
    pub part: bool,
}

/// The trade's rule of thumb in the units of the lesson.
#[derive(Debug, Clone, Serialize)]
pub struct RuleText {
    pub area: String,
    pub paint: String,
    pub film: String,
}

impl Context {
    /// The plan as text.
    pub fn of(plan: &Plan, words: &Words) -> Self {
        let print = &plan.lesson.print;
        let heading = &plan.lesson.heading;
        let class = &plan.lesson.class;
        let show = words.show(print);
        let advice = plan.advice();
        Self {
            title: heading.title.clone(),
            subtitle: heading.subtitle.clone().unwrap_or_default(),
            teacher: heading.teacher.clone().unwrap_or_default(),
            place: heading.place.clone().unwrap_or_default(),
            date: heading.date.map(|date| spelled(date, words)).unwrap_or_default(),
            dates: heading.date.map(|date| days_from(date, words)).unwrap_or_default(),
            note: heading.note.clone().unwrap_or_default(),
            units: print.units,
            large_print: print.edition == Edition::LargePrint,
            students: plan.heads.students.to_string(),
            sets: plan.heads.sets().to_string(),
            demonstrations: plan.heads.demonstrations.to_string(),
            spares: plan.heads.spares.to_string(),
            tables: plan.heads.tables.to_string(),
            youngest_age: class.youngest_age.map(|age| age.to_string()).unwrap_or_default(),
            young: class.youngest_age.is_some_and(|age| age < YOUNG),
            practices: practices(&plan.lesson).into_iter().map(Practice::word).collect(),
            rule: rule(&show),
            weighed: weighed(plan),
            cup_loss: show.volume(plan.lesson.mixing.cup_loss),
            heaviest_batch: show.mass(heaviest(plan)),
            scale_reach: show.mass(scale_reach(heaviest(plan))),
            from_jars: batch::unless_nothing(
                plan.mixing.iter().map(|batch| batch.from_jars).sum(),
                &show,
            ),
            student_paint: show.volume_both(plan.student_paint.typical()),
            class_paint: show.measured_both(plan.to_mix()),
            canvases: canvas::canvases(plan, words, &show),
            techniques: technique::techniques(plan, words, &show),
            mixes: technique::mixes(plan, words, &show),
            colours: technique::colours(plan, &show),
            batches: batch::class_batches(plan, words, &show),
            reserve: reserve::reserve(plan, words, &show),
            order: order::order(&Errand::of(plan), words, &show),
            supplies: order::supplies(plan, words),
            cost: money::cost(plan, &show),
            timetable: plan.timetable.as_ref().map(|plan| timetable::timetable(plan, words, &show)),
            room: room::room(plan, words, &show),
            cautions: plan.cautions.iter().map(caution::caution).collect(),
            labels: caution::labels(&plan.lesson),
            concerns: concern::open(&advice, words),
            accepted: concern::accepted(&advice, words),
            all_cautions: plan.lesson.cautions.iter().map(caution::caution).collect(),
        }
    }
}

/// The days from one on until paint is dry through, spelled.
fn days_from(first: Date, words: &Words) -> Vec<String> {
    let days = (0..=i64::from(DRY_THROUGH)).map_while(|days| first.checked_add(days.days()).ok());
    days.map(|day| spelled(day, words)).collect()
}

/// The heaviest batch, with what comes out of a jar on top.
fn heaviest(plan: &Plan) -> Mass {
    let batches = plan.mixing.iter().map(|batch| batch.mass + batch.from_jars * batch.density);
    batches.fold(Mass::default(), |most, mass| if mass > most { mass } else { most })
}

/// What a scale should hold: a batch in its jug, in steps in which scales are sold (common
/// practice, no source).
fn scale_reach(batch: Mass) -> Mass {
    let step = gram(SCALE_STEP_G);
    step * ((batch + gram(JUG_G)) / step).value.ceil()
}

fn weighed(plan: &Plan) -> Option<WeighedText> {
    let basis = plan.weighed()?;
    let canvases = plan.lesson.canvases.iter();
    let mut layers = canvases
        .flat_map(|canvas| canvas.technique.layers.iter().zip(&canvas.layers))
        .map(|(layer, poured)| layer.weighed(poured.mix.consistency));
    Some(WeighedText {
        cups: basis.cups.to_string(),
        canvases: basis.canvases.to_string(),
        classes: basis.classes.to_string(),
        part: layers.any(|weighed| weighed.is_none()),
    })
}

fn rule(show: &Show) -> RuleText {
    use crate::plan::{rule_film, rule_of_thumb};
    use crate::quantity::units::ml;
    let film = rule_film();
    let (area, paint) = rule_of_thumb();
    match show.units() {
        UnitSystem::Us => {
            RuleText { area: show.area(area), paint: show.volume(paint), film: show.film(film) }
        }
        UnitSystem::Metric => RuleText {
            area: show.area(ml(100.0) / film),
            paint: show.volume(ml(100.0)),
            film: show.film(film),
        },
    }
}

/// The name of the month of a date.
pub(super) fn month(date: Date, words: &Words) -> &str {
    let month = usize::try_from(date.month()).ok();
    month.and_then(|month| words.months.get(month.checked_sub(1)?)).map_or("", String::as_str)
}

/// A date with the name of its month.
pub(super) fn spelled(date: Date, words: &Words) -> String {
    fill(
        &words.date,
        &[
            ("day", &date.day().to_string()),
            ("month", month(date, words)),
            ("year", &date.year().to_string()),
        ],
    )
}
