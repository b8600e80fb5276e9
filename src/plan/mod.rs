//! The engine: a lesson becomes a plan.
//!
//! In: a checked [`Lesson`]. Out: a [`Plan`] with every number of the class, or the reason
//! why there is none. The stages, each in its file, in the order in which they use each
//! other:
//!
//! ```text
//! area -> film -> batch -> layers -> class -> supplies -> order (measure, buy) -> cost
//!                                      worked, cautions
//! ```
//!
//! This room must not know how a number is printed, in which words, or on what paper; it
//! reads no files. Amounts are computed at full precision; `rounding` is where amounts to
//! mix and scale readings become measurable, `worked` is where figures get their digits.

mod area;
mod batch;
pub mod buy;
mod cautions;
mod class;
mod cost;
mod count;
mod film;
mod impossible;
mod layers;
mod measure;
mod model;
mod order;
mod rounding;
mod supplies;
mod worked;

pub use cautions::practices;
pub use film::{rule_film, rule_of_thumb, technique_film};
pub use impossible::{Counted, Impossible};
pub use model::*;
pub use worked::Formula;

use crate::lesson::Lesson;

/// Works a lesson out.
///
/// # Errors
///
/// [`Impossible`] when a count runs over, the drops of a mix fill the cup, or stock or
/// packs of an item cannot be compared with what is needed of it.
pub fn plan(lesson: Lesson) -> Result<Plan, Impossible> {
    let heads = class::heads(&lesson)?;
    let canvases = lesson
        .canvases
        .iter()
        .map(|canvas| layers::canvas_plan(canvas, &lesson))
        .collect::<Result<Vec<_>, _>>()?;
    let student_paint = class::set_paint(&lesson, &canvases);
    let class_paint = student_paint.map_rising(|paint| paint * f64::from(heads.sets()));
    let mixing = class::class_batches(&lesson, &canvases, heads)?;
    let finishing = class::finishing(&lesson, &canvases, heads)?;
    let materials = class::materials(&mixing, &finishing);
    let supplies = supplies::supplies(&lesson, &mixing, heads)?;
    let order = order::order(&lesson, &materials, &supplies)?;
    let cost = cost::cost(&lesson, &order, heads);
    let worked = worked::examples(&lesson, &canvases);
    let cautions = cautions::cautions(&lesson);
    Ok(Plan {
        lesson,
        heads,
        canvases,
        student_paint,
        class_paint,
        mixing,
        finishing,
        supplies,
        order,
        cost,
        worked,
        cautions,
    })
}
