//! Level surface, tables, days and hours.

use super::{ELBOW_ROOM_MM, Matter, Warning, path, written};
use crate::lesson::TableSize;
use crate::plan::{FinishDay, Plan, count};
use crate::quantity::Length;
use crate::quantity::units::mm;

/// What there is to say of time and room.
pub(super) fn warnings(plan: &Plan) -> impl Iterator<Item = Warning> + '_ {
    let single = [drying(plan), crowded(plan), over_booking(plan)];
    single.into_iter().flatten().chain(early_finishes(plan))
}

fn drying(plan: &Plan) -> Option<Warning> {
    let drying = &plan.room.drying;
    let there = drying.level_surface.filter(|_| drying.fits() == Some(false))?;
    let pieces: u32 = drying.places.iter().map(|place| place.pieces).sum();
    let part = (there / drying.area).value;
    let fit = count::whole((f64::from(pieces) * part).floor()).unwrap_or(0);
    let matter = Matter::DryingRoom { area: drying.area, there, pieces, fit };
    Some(Warning { matter, path: path(["room", "level surface"]) })
}

fn crowded(plan: &Plan) -> Option<Warning> {
    let table = plan.lesson.room.table?;
    let students = plan.room.tables.first()?.students;
    let seats = seats(table);
    if students <= seats {
        return None;
    }
    let lesson = &plan.lesson;
    let path = written(lesson, [path(["class", "per table"]), path(["room", "table"])]);
    Some(Warning { matter: Matter::CrowdedTables { students, seats, table }, path })
}

/// Room for elbows along both long sides; a table that is narrower than that has one. The ends
/// stay free to pass cups.
fn seats(table: TableSize) -> u32 {
    let elbows = mm(ELBOW_ROOM_MM);
    let (long, short) = match table.length >= table.width {
        true => (table.length, table.width),
        false => (table.width, table.length),
    };
    let times = |length: Length| count::whole(((length / elbows).value + 1e-9).floor());
    let sides = if short >= elbows { 2 } else { 1 };
    times(long).unwrap_or(u32::MAX).saturating_mul(sides)
}

fn over_booking(plan: &Plan) -> Option<Warning> {
    let timetable = plan.timetable.as_ref()?;
    let booking = timetable.booking.filter(|booking| !booking.holds())?;
    let minutes = u32::try_from(-booking.spare_minutes).ok()?;
    let matter = Matter::OverBooking { minutes, end: timetable.end, until: booking.until };
    Some(Warning { matter, path: path(["timetable", "booked until"]) })
}

/// Each finish once, whatever it goes on.
fn early_finishes(plan: &Plan) -> impl Iterator<Item = Warning> + '_ {
    let drying = &plan.room.drying;
    let is_early = |finish: &&FinishDay| finish.after_days < drying.days;
    let mut early: Vec<&FinishDay> = drying.finishes.iter().filter(is_early).collect();
    let mut told = Vec::new();
    early.retain(|finish| {
        let new = !told.contains(&finish.finish.as_str());
        told.push(finish.finish.as_str());
        new
    });
    early.into_iter().map(move |day| {
        let matter = Matter::EarlyFinish {
            finish: day.finish.clone(),
            after_days: day.after_days,
            drying_days: drying.days,
        };
        let path = written(
            &plan.lesson,
            [
                path(["finishes", &day.finish, "after"]),
                path(["room", "drying"]),
                path(["canvases", &day.canvas, "finishes"]),
            ],
        );
        Warning { matter, path }
    })
}
