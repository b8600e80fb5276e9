use super::super::desk::Desk;
use super::super::field::At;
use super::super::limits;
use super::super::model::{Canvas, Class, Students};
use super::super::problem::ProblemKind;
use super::super::raw;
use super::super::tree::NodeId;
use std::num::NonZeroU32;

/// Sees that what is made of a class has an end: cups to fill and weigh, sheets to print.
pub(super) fn bounded(desk: Desk<'_>, root: NodeId, class: &Class, canvases: &[Canvas]) {
    let students = match &class.students {
        Students::Count(count) => count.get(),
        Students::Named(names) => u32::try_from(names.len()).unwrap_or(u32::MAX),
    };
    let sets = u64::from(students) + u64::from(class.demonstrations) + u64::from(class.spares);
    let of_canvas = |canvas: &Canvas| {
        let cups = canvas.layers.iter().map(|layer| layer.colours.len() as u64).sum::<u64>();
        u64::from(canvas.each.get()) * cups
    };
    let cups = sets * canvases.iter().map(of_canvas).sum::<u64>();
    let node = desk.tree.under(root, "class").and_then(|class| desk.tree.under(class, "students"));
    let node = node.unwrap_or(root);
    if cups > limits::CUPS {
        desk.fault(node, ProblemKind::TooManyCups { cups });
    }
    if let Students::Named(names) = &class.students
        && names.len() * canvases.len() > limits::SHEETS
    {
        let sheets = names.len() * canvases.len();
        desk.fault(node, ProblemKind::TooManySheets { sheets });
    }
}

/// Students who share a table when nothing is said (common practice, no source).
const PER_TABLE: u32 = 4;

/// Who comes.
pub(super) fn class(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<Class> {
    let At { node, value: raw } = desk.need(root, "class", &raw.class)?;
    let students = desk.need(*node, "students", &raw.students).and_then(|at| students(desk, at));
    let demonstrations = desk.bounded_or(&raw.demonstrations, &limits::EXTRA_SETS, 0);
    let spares = desk.bounded_or(&raw.spares, &limits::EXTRA_SETS, 0);
    let youngest_age = match &raw.youngest_age {
        super::Field::Absent => Some(None),
        super::Field::Broken => None,
        super::Field::Present(written) => {
            let age = desk.bounded(written, &limits::AGE);
            age.and_then(|age| u8::try_from(age).ok()).map(Some)
        }
    };
    let per_table = desk.bounded_or(&raw.per_table, &limits::PER_TABLE, PER_TABLE);
    Some(Class {
        students: students?,
        demonstrations: demonstrations?,
        spares: spares?,
        youngest_age: youngest_age?,
        per_table: NonZeroU32::new(per_table?)?,
    })
}

fn students(desk: Desk<'_>, at: &At<raw::Students>) -> Option<Students> {
    match &at.value {
        raw::Students::Count(written) => {
            let count = desk.bounded(written, &limits::STUDENTS)?;
            NonZeroU32::new(count).map(Students::Count)
        }
        raw::Students::Named(items) => {
            let count = items.0.len() as f64;
            if items.0.is_empty() {
                desk.fault(at.node, ProblemKind::NoStudents);
                return None;
            }
            if count > limits::STUDENTS.high() {
                desk.fault(at.node, ProblemKind::TooManyStudents);
            }
            let names = super::distinct(desk, items, student_twice, |written| desk.read(written));
            Some(Students::Named(names.into_iter().map(|(_, name)| name).collect()))
        }
    }
}

fn student_twice(name: String) -> ProblemKind {
    ProblemKind::StudentTwice { name }
}
