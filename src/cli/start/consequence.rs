//! What follows from the answers, in sentences.

use crate::lesson::{Amount, MaterialKind};
use crate::plan::{OrderItem, OrderLine, Plan, Purchase};
use crate::quantity::show::{Show, trimmed};
use crate::quantity::units::{in_ml, in_us_fl_oz};
use crate::quantity::{UnitSystem, Volume};

/// Significant digits of an amount that is only about right.
const DIGITS: i32 = 2;
/// Between number and unit.
const NBSP: char = '\u{A0}';
/// Names of things besides paint that are shown at the end.
const SHOWN: usize = 4;

/// How much paint that is, in all and on one canvas of each kind.
pub(super) fn paint(plan: &Plan) -> String {
    let units = plan.lesson.print.units;
    let each: Vec<String> = plan
        .canvases
        .iter()
        .map(|canvas| match plan.canvases.len() {
            1 => format!("{} a canvas", about(canvas.to_mix, units)),
            _ => format!("{} for {}", about(canvas.to_mix, units), canvas.name),
        })
        .collect();
    let heads = plan.heads;
    let mut sets = vec![counted(heads.students, "person", "people")];
    let extra = [
        (heads.demonstrations, "set that you pour to show", "sets that you pour to show"),
        (heads.spares, "spare set", "spare sets"),
    ];
    let extra = extra.into_iter().filter(|(count, ..)| *count > 0);
    sets.extend(extra.map(|(count, one, many)| counted(count, one, many)));
    format!(
        "That is about {} of mixed paint: {}; for {}, with a reserve.",
        about(plan.to_mix(), units),
        each.join(", "),
        listed(&sets)
    )
}

/// How much of each colour is mixed.
pub(super) fn colours(plan: &Plan) -> String {
    let units = plan.lesson.print.units;
    let mixes = plan.mixing.iter().map(|batch| batch.mix.name.as_str());
    let several = mixes.clone().zip(mixes.skip(1)).any(|(one, next)| one != next);
    let colours = plan.mixing.iter().map(|batch| {
        let mix = if several { format!(" ({})", batch.mix.name) } else { String::new() };
        format!("{}{mix} {}", batch.colour.name, about(batch.volume, units))
    });
    format!("Mixed: {}.", colours.collect::<Vec<_>>().join(", "))
}

/// What the lesson needs of paint and the like, before anything is taken from the cupboard.
pub(super) fn needs(plan: &Plan) -> String {
    let poured = plan.order.lines.iter().filter(|line| is_poured(line) && !is_tap(line));
    let poured = poured.map(|line| format!("{} {}", line.item, amount(line.needed, plan)));
    let things: Vec<&str> =
        plan.order.lines.iter().filter(|line| !is_poured(line)).map(|l| l.item.as_str()).collect();
    format!(
        "This lesson takes {}. Besides: {}.",
        poured.collect::<Vec<_>>().join(", "),
        things.join(", ")
    )
}

/// What the cupboard saves.
pub(super) fn saved(plan: &Plan) -> String {
    let lines = plan.order.lines.iter().filter(|line| is_there(line) && !is_tap(line));
    let there: Vec<&str> = lines.map(|line| line.item.as_str()).collect();
    match there.as_slice() {
        [] => "Nothing of it is enough by itself; the order takes it off all the same.".to_owned(),
        there => format!("Not to be bought: {}.", there.join(", ")),
    }
}

/// The order in a few lines.
pub(super) fn order(plan: &Plan) -> String {
    let lines = || plan.order.lines.iter().filter(|line| !is_there(line));
    let width = lines().filter(|line| is_poured(line)).map(|line| line.item.chars().count());
    let width = width.max().unwrap_or_default();
    let mut text = String::from("To buy:");
    for line in lines().filter(|line| is_poured(line)) {
        text.push_str(&format!("\n  {:width$}  {}", line.item, amount(line.to_buy, plan)));
    }
    let things: Vec<String> = lines()
        .filter(|line| !is_poured(line))
        .map(|line| format!("{} {}", line.item, amount(line.to_buy, plan)))
        .collect();
    match things.get(SHOWN..) {
        Some(more) if !more.is_empty() => {
            let shown = things.get(..SHOWN).unwrap_or_default().join(", ");
            text.push_str(&format!("\n  {shown}, and {} other things", more.len()));
        }
        _ if things.is_empty() => {}
        _ => text.push_str(&format!("\n  {}", things.join(", "))),
    }
    text
}

fn is_poured(line: &OrderLine) -> bool {
    matches!(line.what, OrderItem::Material(_))
}

/// Nothing of it is bought.
fn is_there(line: &OrderLine) -> bool {
    matches!(line.purchase, Purchase::Nothing)
}

/// It is there without being counted: water.
fn is_tap(line: &OrderLine) -> bool {
    match &line.what {
        OrderItem::Material(material) => material.kind == MaterialKind::Water,
        OrderItem::Supply(_) => false,
    }
}

/// As the order prints it.
fn amount(amount: Amount, plan: &Plan) -> String {
    let print = plan.lesson.print;
    let show = Show::new(print.units, print.currency);
    match amount {
        Amount::Volume(volume) => show.volume_both(volume),
        Amount::Mass(mass) => show.mass(mass),
        Amount::Pieces(count) => count.to_string(),
    }
}

/// A volume to two digits, in both systems: `40 fl oz (1.2 L)`.
fn about(volume: Volume, units: UnitSystem) -> String {
    let us = format!("{}{NBSP}fl{NBSP}oz", plain(digits(in_us_fl_oz(volume))));
    let ml = digits(in_ml(volume));
    let metric = if ml >= 1000.0 {
        format!("{}{NBSP}L", plain(ml / 1000.0))
    } else {
        format!("{}{NBSP}mL", plain(ml))
    };
    match units {
        UnitSystem::Us => format!("{us} ({metric})"),
        UnitSystem::Metric => format!("{metric} ({us})"),
    }
}

/// Rounded to [`DIGITS`] digits.
fn digits(value: f64) -> f64 {
    if value <= 0.0 {
        return 0.0;
    }
    let step = 10_f64.powi(value.log10().floor() as i32 + 1 - DIGITS);
    (value / step).round() * step
}

fn plain(value: f64) -> String {
    trimmed(value, 3)
}

fn counted(count: u32, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// `a`, `a and b`, `a, b and c`.
fn listed(parts: &[String]) -> String {
    match parts {
        [all @ .., before, last] => {
            let all: String = all.iter().map(|part| format!("{part}, ")).collect();
            format!("{all}{before} and {last}")
        }
        _ => parts.concat(),
    }
}
