//! The engine: a lesson becomes a plan.
//!
//! In: a checked [`Lesson`]. Out: a [`Plan`] with every number of the class, or the reason
//! why there is none. The stages, each in its file, in the order in which they use each
//! other:
//!
//! ```text
//! area -> film -> batch -> layers -> class -> demand -> provision -> order -> reserve -> money
//!                      provision: jars, supplies; order: measure, buy
//!                      worked, exercise, cautions, timetable; room: setting, drying, washing
//!                      course: plans one after the other
//!                      stock_sizes: paint for canvases as shops have them
//!                      advice: what a good colleague would say of a plan
//!                      weighed: a plan against what it would be without weighings
//! ```
//!
//! `flow` stands apart: it explains how films of paint thin, and no plan rests on it.
//!
//! This room must not know how a number is printed, in which words, or on what paper; it
//! reads no files. Amounts are computed at full precision; `rounding` is where amounts to
//! mix and scale readings become measurable, `worked` is where figures get their digits.

mod advice;
mod area;
mod batch;
pub mod buy;
mod cautions;
mod class;
mod count;
mod course;
mod demand;
pub mod exercise;
mod film;
pub mod flow;
mod household;
mod impossible;
mod jars;
mod layers;
pub mod learn;
mod measure;
mod model;
mod money;
mod order;
mod plausible;
mod provision;
mod reserve;
mod room;
mod rounding;
mod stock_sizes;
mod supplies;
mod timetable;
mod weighed;
mod worked;

pub use advice::{
    Advice, Cause, ELBOW_ROOM_MM, LIMIT_OF_ERROR, Matter, Needy, Product, Scales, Warning, YOUNG,
};
pub use cautions::practices;
pub use course::course;
pub use film::{rule_film, rule_of_thumb, technique_film};
pub use impossible::{Counted, Impossible};
pub use model::*;
pub use money::{Balance, CanvasCost, ClassFee, ColourCost, Fees, LayerCost, Split, Takings, fees};
pub use plausible::plausible;
pub use room::{
    DryingPlace, DryingPlan, Extent, FinishDay, Lying, RoomPlan, Setting, Stands, TableKind,
    Washed, WashingPlan,
};
pub use stock_sizes::{StockPaint, stock_area};
pub use timetable::{Booking, StepTime, TimetablePlan};
pub use weighed::{Compared, ComparedLayer, WeighedBasis};
pub use worked::Formula;

use crate::lesson::Lesson;
use buy::Effort;
use order::{Cupboard, Street};
use provision::Provision;
use reserve::Margin;

/// Works a lesson out.
///
/// # Errors
///
/// [`Impossible`] when a count runs over, the drops of a mix fill the cup, stock or packs of an
/// item cannot be compared with what is needed of it, or the timetable runs past midnight.
pub fn plan(lesson: Lesson) -> Result<Plan, Impossible> {
    let heads = class::heads(&lesson)?;
    let canvases = lesson
        .canvases
        .iter()
        .map(|canvas| layers::canvas_plan(canvas, &lesson))
        .collect::<Result<Vec<_>, _>>()?;
    let student_paint = class::set_paint(&lesson, &canvases);
    let class_paint = student_paint.map_rising(|paint| paint * f64::from(heads.sets()));
    let demand = demand::of_class(&lesson, &canvases, heads)?;
    let margin = Margin::argued(&lesson.reserve);
    let provision = provision::provision(&lesson, heads, &demand, margin)?;
    let habit = provision::provision(&lesson, heads, &demand, Margin::habit(&lesson.reserve))?;
    let street = Street { shops: &lesson.shops, elsewhere: &lesson.elsewhere };
    let mut cupboard = Cupboard::new(&lesson.stock);
    let (habit_total, _) = order::price(habit.needs(), &cupboard, street, Effort::Whole)?;
    let order = order::order(&[provision.needs()], &mut cupboard, street)?;
    let by_habit = (&habit, habit_total);
    let reserve = reserve::reserve(&lesson.reserve, &demand, &provision, by_habit);
    let Provision { mixing, finishing, supplies, materials } = provision;
    let leftovers = jars::leftovers(&lesson, &mixing);
    let cost = money::cost(&lesson, heads, (&canvases, &mixing), &order)?;
    let worked = worked::examples(&lesson, &canvases);
    let exercises = exercise::exercises(&lesson, &canvases, heads);
    let cautions = cautions::cautions(&lesson);
    let timetable = lesson.timetable.as_ref().map(timetable::timetable).transpose()?;
    let room = room::room(&lesson, heads, &supplies, &mixing, &leftovers)?;
    Ok(Plan {
        lesson,
        heads,
        canvases,
        student_paint,
        class_paint,
        mixing,
        finishing,
        materials,
        supplies,
        leftovers,
        reserve,
        order,
        cost,
        worked,
        exercises,
        cautions,
        timetable,
        room,
    })
}
