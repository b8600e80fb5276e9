//! `plan`: the numbers of a lesson on the terminal.

use super::failure::Failure;
use super::say::println;
use super::{advice, args, costs, json, lessons, plan_room};
use crate::handout::{Context, FeesText, ReserveLineText, Templates};
use crate::lesson::Language;
use crate::plan::{Plan, fees};
use crate::quantity::show::Show;
use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, presets};
use std::collections::BTreeMap;

/// Widest table when the terminal does not say how wide it is.
const WIDTH: u16 = 100;

pub(super) fn plan(arguments: &args::Plan) -> Result<(), Failure> {
    let mut lesson = lessons::read(&arguments.lesson)?;
    lesson.print.units = arguments.units.unwrap_or(lesson.print.units);
    let plan = lessons::work_out(&arguments.lesson, lesson)?;
    if arguments.json {
        println!("{}", json::json(&plan));
        return Ok(());
    }
    // The terminal speaks English.
    let templates = Templates::new(Language::English, &BTreeMap::new())?;
    let context = Context::of(&plan, templates.words());
    println!("{}", context.title);
    println!(
        "students {}, demonstrations {}, spares {}; sets {}, tables {}",
        context.students, context.demonstrations, context.spares, context.sets, context.tables
    );
    println!("\nWhat one canvas takes\n{}", canvases(&context));
    println!("\nCups of one student\n{}", cups(&context));
    println!("\nTo mix for the class\n{}", batches(&context));
    println!(
        "\nReserve: each colour is enough in {}\n{}",
        context.reserve.level,
        reserve(&context)
    );
    println!("\nTo buy\n{}", order(&context));
    compared(&plan, &Show::new(plan.lesson.print.units, plan.lesson.print.currency));
    costs::print(&context.cost, &FeesText::of(&plan, &fees(&plan), templates.words()));
    plan_room::print(&context);
    println!("\npaint for each student  {}", context.student_paint);
    println!("paint to mix in all     {}", context.class_paint);
    if !context.order.total.is_empty() {
        println!("to buy                  {}", context.order.total);
        println!("cost of each student    {}", context.cost.per_student);
    }
    by_habit(&context);
    advice::print(&plan.lesson, &plan.advice());
    Ok(())
}

/// A table with the columns from `first_number` on to the right.
pub(super) fn table<const N: usize>(head: [&str; N], first_number: usize) -> Table {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(WIDTH)
        .set_header(head);
    for (index, column) in table.column_iter_mut().enumerate().skip(first_number) {
        column.set_cell_alignment(CellAlignment::Right);
        // A number is not parted from its unit; the last may be of several words.
        if index + 1 < N {
            column.set_constraint(ColumnConstraint::ContentWidth);
        }
    }
    table
}

fn canvases(context: &Context) -> Table {
    let head =
        ["canvas", "size", "technique", "mix", "painted", "low", "typical", "high", "covers"];
    let mut table = table(head, 4);
    for canvas in &context.canvases {
        table.add_row([
            &canvas.name,
            &canvas.size,
            &canvas.technique,
            &canvas.consistency,
            &canvas.painted,
            &canvas.paint_low,
            &canvas.paint,
            &canvas.paint_high,
            &canvas.coverage,
        ]);
    }
    table
}

fn cups(context: &Context) -> Table {
    let mut table =
        table(["canvas", "layer", "colour", "share", "paint", "in the cup", "weighs"], 3);
    for canvas in &context.canvases {
        for layer in &canvas.layers {
            for cup in &layer.cups {
                table.add_row([
                    &canvas.name,
                    &layer.name,
                    &cup.colour,
                    &cup.share,
                    &cup.paint,
                    &cup.fill_volume,
                    &cup.fill_mass,
                ]);
            }
        }
    }
    table
}

fn batches(context: &Context) -> Table {
    let mut table = table(["colour", "mix", "cups", "to mix", "ingredient", "weighs", "scale"], 2);
    for batch in &context.batches {
        for (at, ingredient) in batch.ingredients.iter().enumerate() {
            let head = [&batch.colour, &batch.mix, &batch.cups, &batch.volume];
            let head = head.map(|text| if at == 0 { text.as_str() } else { "" });
            let tail = [&ingredient.name, &ingredient.mass, &ingredient.reading];
            table.add_row(head.into_iter().chain(tail.map(String::as_str)));
        }
    }
    table
}

/// Colours and their sum, then finishes.
fn reserve(context: &Context) -> Table {
    let reserve = &context.reserve;
    let by_habit = format!("with {} each", reserve.habit.extra);
    let head = ["colour or finish", "mix", "expected", "reserve", "in all", &by_habit];
    let mut table = table(head, 2);
    let sum = ReserveLineText { name: "all colours".to_string(), ..reserve.paint.clone() };
    for line in reserve.colours.iter().chain([&sum]).chain(&reserve.finishes) {
        table.add_row([
            &line.name,
            &line.mix,
            &line.expected,
            &line.reserve,
            &line.volume,
            &line.habit,
        ]);
    }
    table
}

/// What the weighed films change.
fn compared(plan: &Plan, show: &Show) {
    let Some(compared) = plan.compared() else { return };
    let head =
        ["canvas", "layer", "weighed", "film before", "film now", "paint before", "paint now"];
    let mut table = table(head, 2);
    for layer in &compared.layers {
        table.add_row([
            layer.canvas,
            layer.layer,
            &format!("{} cups", layer.weighed.cups),
            &show.film(layer.film_before),
            &show.film(layer.film_now),
            &show.volume(layer.paint_before),
            &show.volume(layer.paint_now),
        ]);
    }
    let [before, now] = [compared.class_before, compared.class_now].map(|v| show.volume(v));
    table.add_row(["whole class", "", "", "", "", &before, &now]);
    println!(
        "\nFrom your weighed cups: what was planned with before, and now, for one canvas\n{table}"
    );
}

/// What the usual addition would come to.
fn by_habit(context: &Context) {
    let habit = &context.reserve.habit;
    println!("\nwith {} more for each student, as a habit and not by reserve", habit.extra);
    println!("paint to mix in all     {}", habit.to_mix);
    if !habit.total.is_empty() {
        println!("to buy                  {}", habit.total);
    }
}

fn order(context: &Context) -> Table {
    let head = ["item", "unit", "needed", "in stock", "to buy", "packs", "cost", "left over"];
    let mut table = table(head, 2);
    for line in &context.order.lines {
        table.add_row([
            &line.item,
            &line.unit,
            &line.needed,
            &line.in_stock,
            &line.to_buy,
            &line.packs,
            &line.cost,
            &line.left_over,
        ]);
    }
    table
}
