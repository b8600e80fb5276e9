//! The order as a table for spreadsheets (RFC 4180), in numbers and units apart.

use super::words::Words;
use crate::lesson::Amount;
use crate::plan::{OrderItem, Plan, Purchase};
use crate::quantity::units::{in_gram, in_ml};

/// Header of the table, in the order of the columns.
const COLUMNS: [&str; 10] = [
    "kind",
    "item",
    "unit",
    "needed",
    "in stock",
    "to buy",
    "packs",
    "cost",
    "currency",
    "left over",
];

/// The order as CSV with CRLF line ends. Volumes are in millilitres, masses in
/// grams; a cell that a spreadsheet would take for a formula is made a text.
pub fn order_csv(plan: &Plan, words: &Words) -> Result<Vec<u8>, csv::Error> {
    let mut table =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    table.write_record(COLUMNS)?;
    let currency = plan.lesson.print.currency;
    for line in &plan.order.lines {
        let kind = match &line.what {
            OrderItem::Material(_) => "material",
            OrderItem::Supply(_) => "supply",
        };
        let (packs, cost, left_over) = match &line.purchase {
            Purchase::Nothing => (String::new(), String::new(), String::new()),
            Purchase::NoPrice => (words.order.no_price.clone(), String::new(), String::new()),
            Purchase::Elsewhere => (words.order.elsewhere.clone(), String::new(), String::new()),
            Purchase::Packs { packs, cost, left_over } => {
                let packs: Vec<String> = packs
                    .iter()
                    .map(|pack| {
                        format!("{} x {} {}", pack.count, number(&pack.size), unit(&pack.size))
                    })
                    .collect();
                (packs.join(" + "), cost.amount().to_string(), number(left_over))
            }
        };
        table.write_record([
            kind,
            &harmless(&line.item),
            unit(&line.needed),
            &number(&line.needed),
            &number(&line.in_stock),
            &number(&line.to_buy),
            &harmless(&packs),
            &cost,
            currency.code(),
            &left_over,
        ])?;
    }
    table.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}

fn number(amount: &Amount) -> String {
    match amount {
        Amount::Volume(volume) => format!("{:.1}", in_ml(*volume)),
        Amount::Mass(mass) => format!("{:.1}", in_gram(*mass)),
        Amount::Pieces(pieces) => pieces.to_string(),
    }
}

fn unit(amount: &Amount) -> &'static str {
    match amount {
        Amount::Volume(_) => "mL",
        Amount::Mass(_) => "g",
        Amount::Pieces(_) => "pieces",
    }
}

/// A text that no spreadsheet runs: a leading sign of a formula gets an apostrophe.
fn harmless(text: &str) -> String {
    match text.chars().next() {
        Some('=' | '+' | '-' | '@' | '\t' | '\r') => format!("'{text}"),
        _ => text.to_string(),
    }
}
