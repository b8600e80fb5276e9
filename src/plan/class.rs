//! From one canvas to the whole class.

use super::count::product;
use super::impossible::Counted;
use super::{CanvasPlan, Heads, Impossible};
use crate::lesson::{Canvas, Lesson, Students};
use crate::quantity::{Spread, Volume};

/// Counts who paints.
pub(super) fn heads(lesson: &Lesson) -> Result<Heads, Impossible> {
    let too_many = || Impossible::TooMany { what: Counted::Sets };
    let class = &lesson.class;
    let students = match &class.students {
        Students::Count(count) => count.get(),
        Students::Named(names) => u32::try_from(names.len()).map_err(|_| too_many())?,
    };
    let heads = Heads {
        students,
        demonstrations: class.demonstrations,
        spares: class.spares,
        tables: students.div_ceil(class.per_table.get()),
    };
    // Where the sum fits, every later use of it does.
    [class.demonstrations, class.spares]
        .into_iter()
        .try_fold(students, u32::checked_add)
        .ok_or_else(too_many)?;
    Ok(heads)
}

/// Mixed paint of one set (all canvases that one student paints), cup loss included.
pub(super) fn set_paint(lesson: &Lesson, canvases: &[CanvasPlan]) -> Spread<Volume> {
    lesson.canvases.iter().zip(canvases).fold(
        Spread::exactly(Volume::default()),
        |sum, (canvas, plan)| {
            let each = f64::from(canvas.each.get());
            let left_in_cups = plan.to_mix - plan.paint.typical();
            sum + plan.paint.map_rising(|paint| (paint + left_in_cups) * each)
        },
    )
}

/// How many canvases of one kind the class paints, demonstrations and spares included.
pub(super) fn canvases_in_class(canvas: &Canvas, heads: Heads) -> Result<u32, Impossible> {
    product([canvas.each.get(), heads.sets()]).ok_or(Impossible::TooMany { what: Counted::Cups })
}
