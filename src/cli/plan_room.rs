//! Timetable and room on the terminal.

use super::plan::table;
use super::say::println;
use crate::handout::Context;
use comfy_table::Table;

/// When, where and how it is washed up.
pub(super) fn print(context: &Context) {
    if let Some(timetable) = &context.timetable {
        println!("\nTimetable\n{}", steps(context));
        let booked = &timetable.booked_until;
        match (timetable.over.as_str(), timetable.spare.as_str()) {
            ("", "") if booked.is_empty() => {}
            ("", "") => println!("booked until {booked}: not a minute to spare"),
            ("", spare) => println!("booked until {booked}: {spare} to spare"),
            (over, _) => println!("booked until {booked}: the steps take {over} more"),
        }
    }
    let drying = &context.room.drying;
    println!("\nDrying, {} apart\n{}", drying.gap, places(context));
    match (drying.short.as_str(), drying.spare.as_str()) {
        ("", "") => {}
        ("", spare) => println!("level surface {}: {spare} to spare", drying.level_surface),
        (short, _) => println!("level surface {}: {short} too little", drying.level_surface),
    }
    match (drying.table.as_str(), drying.tables.as_str()) {
        ("", _) => {}
        (table, "") => println!("a canvas is larger than a table of {table}"),
        (table, tables) => println!("tables of {table} for all of them: {tables}"),
    }
    match (drying.from.as_str(), drying.until.as_str()) {
        ("", _) | (_, "") => println!("dry to the touch after {} days", drying.days),
        (from, until) => println!("from {from} until {until}"),
    }
    for finish in &drying.finishes {
        let when = if finish.date.is_empty() {
            format!("after {} days", finish.days)
        } else {
            format!("from {}", finish.date)
        };
        let (name, coats) = (&finish.finish, &finish.coats);
        println!("{when}: {name} on {}, coats {coats}", finish.canvas);
    }
    let washing = &context.room.washing;
    println!("\nWashing up\n{}", washed(context));
    println!("buckets of {} that hold the used water: {}", washing.bucket, washing.buckets);
    if !washing.left_in_cups.is_empty() {
        println!("paint left in {} cups: {}", washing.cups, washing.left_in_cups);
    }
    if !washing.left_in_jugs.is_empty() {
        println!("mixed paint left in the jugs: {}", washing.left_in_jugs);
    }
}

fn steps(context: &Context) -> Table {
    let mut table = table(["from", "to", "step", "takes"], 3);
    for step in context.timetable.iter().flat_map(|timetable| &timetable.steps) {
        table.add_row([&step.start, &step.end, &step.name, &step.length]);
    }
    table
}

fn places(context: &Context) -> Table {
    let drying = &context.room.drying;
    let mut table = table(["canvas", "size", "pieces", "level surface"], 2);
    for place in &drying.places {
        table.add_row([&place.canvas, &place.size, &place.pieces, &place.area]);
    }
    if drying.places.len() > 1 {
        table.add_row(["all", "", &drying.canvases, &drying.area]);
    }
    table
}

fn washed(context: &Context) -> Table {
    let washing = &context.room.washing;
    let mut table = table(["what", "pieces", "water"], 1);
    table.add_row(["jug, after each batch", &washing.batches, &washing.jug_water]);
    for washed in &washing.washed {
        table.add_row([&washed.item, &washed.pieces, &washed.water]);
    }
    table.add_row(["all", "", &washing.water]);
    table
}
