//! What a class costs, on the terminal.

use super::plan::table;
use super::say::println;
use crate::handout::{CostText, FeesText};
use comfy_table::Table;

/// The tables of what is used up, what is paid, and what other classes would pay; each only
/// where something is known.
pub(super) fn print(cost: &CostText, fees: &FeesText) {
    if !cost.canvases.is_empty() {
        println!("\nWhat is used up, reserve included\n{}", used(cost));
        println!("\nThe same paint by colour\n{}", colours(cost));
    }
    if cost.total.is_empty() {
        return;
    }
    println!("\nWhat is paid\n{}", paid(cost));
    if cost.fee.is_empty() {
        println!("\nFee with which a class pays for itself\n{}", classes(fees, ""));
        return;
    }
    println!("\nFee with which a class pays for itself, beside the {} asked", cost.fee);
    println!("{}", classes(fees, &cost.fee));
    if fees.pays_from.is_empty() {
        println!("the fee asked pays for no class up to {}", fees.last);
    } else {
        println!("the fee asked pays from     {}", fees.pays_from);
        if !fees.fails_again.is_empty() {
            println!("but again not with          {}", fees.fails_again.join(", "));
        }
    }
}

fn used(cost: &CostText) -> Table {
    let mut table = table(["canvas", "layer", "colour", "paint", "added", "in all"], 3);
    for canvas in &cost.canvases {
        for layer in &canvas.layers {
            for colour in &layer.colours {
                let line = [&canvas.name, &layer.name, &colour.name, &colour.paint, &colour.added];
                table.add_row(line.into_iter().chain([&colour.total]));
            }
        }
        if !canvas.finishes.is_empty() {
            table.add_row([&canvas.name, "finishes", "", "", "", &canvas.finishes]);
        }
        let all = format!("{} canvases, {} each", canvas.count, canvas.one);
        table.add_row([&canvas.name, "", &all, "", "", &canvas.total]);
    }
    if !cost.supplies.is_empty() {
        table.add_row(["", "", "supplies", "", "", &cost.supplies]);
    }
    let all = format!("all, {} a student", cost.used_per_student);
    table.add_row(["", "", &all, "", "", &cost.used]);
    table
}

fn colours(cost: &CostText) -> Table {
    let mut table = table(["colour", "paint", "added", "in all"], 1);
    for colour in &cost.colours {
        table.add_row([&colour.name, &colour.paint, &colour.added, &colour.total]);
    }
    table
}

fn paid(cost: &CostText) -> Table {
    let mut table = table(["", "class", "student"], 1);
    if !cost.order.is_empty() {
        table.add_row(["packs and delivery", &cost.order, &cost.per_student]);
    }
    for charge in cost.fixed.iter().chain(&cost.each) {
        table.add_row([&charge.what, &charge.total, &charge.per_student]);
    }
    table.add_row(["in all", &cost.total, &cost.total_per_student]);
    if !cost.budget.is_empty() {
        table.add_row(["budget", &cost.budget, ""]);
    }
    if !cost.fee.is_empty() {
        table.add_row(["fees", &cost.income, &cost.fee]);
    }
    for (what, amount) in [("surplus", &cost.surplus), ("loss", &cost.loss)] {
        if !amount.is_empty() {
            table.add_row([what, amount, ""]);
        }
    }
    table
}

fn classes(fees: &FeesText, asked: &str) -> Table {
    let mut table = table(["students", "packs", "in all", "fee", ""], 0);
    for class in &fees.classes {
        let pays = if class.pays || asked.is_empty() { "" } else { "more than asked" };
        let note = match (class.here, pays) {
            (true, "") => "this class".to_string(),
            (true, pays) => format!("this class, {pays}"),
            (false, pays) => pays.to_string(),
        };
        table.add_row([&class.students, &class.bought, &class.total, &class.fee, &note]);
    }
    table
}
