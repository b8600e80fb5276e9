//! Timetable and room as JSON.

use crate::lesson::Life;
use crate::plan::{DryingPlan, RoomPlan, Stands, StepTime, TimetablePlan, WashingPlan};
use crate::quantity::Time;
use crate::quantity::units::{in_ml, in_mm, in_square_cm};
use serde_json::{Value, json};

pub(super) fn timetable(plan: &TimetablePlan) -> Value {
    json!({
        "start": clock(plan.start),
        "end": clock(plan.end),
        "length_minutes": plan.minutes,
        "booked_until": plan.booking.map(|booking| clock(booking.until)),
        "spare_minutes": plan.booking.map(|booking| booking.spare_minutes),
        "steps": plan.steps.iter().map(step).collect::<Vec<_>>(),
    })
}

fn step(step: &StepTime) -> Value {
    json!({
        "name": step.name,
        "start": clock(step.start),
        "end": clock(step.end),
        "length_minutes": step.minutes,
    })
}

fn clock(time: Time) -> String {
    format!("{:02}:{:02}", time.hour(), time.minute())
}

pub(super) fn room(plan: &RoomPlan) -> Value {
    json!({
        "tables": plan.tables.iter().map(|kind| json!({
            "students": kind.students,
            "tables": kind.tables,
        })).collect::<Vec<_>>(),
        "setting": plan.setting.iter().map(|set| json!({
            "item": set.item,
            "kind": match set.what {
                Stands::Canvas => "canvas",
                Stands::Supply(Life::UsedUp) => "used up",
                Stands::Supply(Life::Washable) => "washable",
            },
            "each_table": set.each_table,
            "teacher": set.teacher,
            "pieces": set.pieces,
        })).collect::<Vec<_>>(),
        "drying": drying(&plan.drying),
        "washing": washing(&plan.washing),
    })
}

fn drying(plan: &DryingPlan) -> Value {
    json!({
        "places": plan.places.iter().map(|place| json!({
            "canvas": place.canvas,
            "pieces": place.pieces,
            "width_mm": in_mm(place.extent.width),
            "height_mm": in_mm(place.extent.height),
            "each_cm2": in_square_cm(place.each),
            "area_cm2": in_square_cm(place.area),
        })).collect::<Vec<_>>(),
        "gap_mm": in_mm(plan.gap),
        "area_cm2": in_square_cm(plan.area),
        "level_surface_cm2": plan.level_surface.map(in_square_cm),
        "fits": plan.fits(),
        "on_tables": plan.on_tables.map(|lying| json!({
            "length_mm": in_mm(lying.table.length),
            "width_mm": in_mm(lying.table.width),
            "tables": lying.tables,
        })),
        "days": plan.days,
        "from": plan.from.map(|date| date.to_string()),
        "until": plan.until.map(|date| date.to_string()),
        "finishes": plan.finishes.iter().map(|finish| json!({
            "canvas": finish.canvas,
            "finish": finish.finish,
            "coats": finish.coats,
            "after_days": finish.after_days,
            "date": finish.date.map(|date| date.to_string()),
        })).collect::<Vec<_>>(),
    })
}

fn washing(plan: &WashingPlan) -> Value {
    json!({
        "washed": plan.washed.iter().map(|washed| json!({
            "item": washed.item,
            "pieces": washed.pieces,
            "water_ml": in_ml(washed.water),
        })).collect::<Vec<_>>(),
        "batches": plan.batches,
        "jug_water_ml": in_ml(plan.jug_water),
        "water_ml": in_ml(plan.water),
        "bucket_ml": in_ml(plan.bucket),
        "buckets": plan.buckets,
        "cups": plan.cups,
        "left_in_cups_ml": in_ml(plan.left_in_cups),
        "left_in_jugs_ml": in_ml(plan.left_in_jugs),
    })
}
