//! Orders as a table for spreadsheets (RFC 4180), in numbers and units apart.

use super::words::Words;
use crate::lesson::{Amount, harmless};
use crate::plan::{Errand, OrderItem, OrderLine, PackCount, Purchase};
use crate::quantity::units::{in_gram, in_ml, in_us_fl_oz};
use crate::quantity::{Mass, UnitSystem, Volume};

/// Header of the table, in the order of the columns.
const COLUMNS: [&str; 16] = [
    "delivery",
    "shop",
    "kind",
    "item",
    "unit",
    "needed",
    "reserve",
    "in stock",
    "to buy",
    "packs",
    "pack size",
    "pack unit",
    "cost",
    "currency",
    "left over",
    "note",
];

/// A row by its columns.
#[derive(Default)]
struct Row {
    shop: String,
    kind: &'static str,
    item: String,
    unit: &'static str,
    needed: String,
    reserve: String,
    in_stock: String,
    to_buy: String,
    packs: String,
    pack_size: String,
    pack_unit: &'static str,
    cost: String,
    left_over: String,
    note: String,
}

/// Orders as CSV with CRLF line ends: a row for each pack, and for each charge for delivery.
/// What an item needs stands in its first row only, so that columns can be added up. Volumes
/// are in fluid ounces or millilitres, as the lesson has it, masses in grams; a cell that a
/// spreadsheet would take for a formula is made a text.
pub fn order_csv(errands: &[Errand], words: &Words) -> Result<Vec<u8>, csv::Error> {
    let mut table =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    table.write_record(COLUMNS)?;
    for errand in errands {
        let Some(first) = errand.lessons.first().map(|plan| &plan.lesson) else { continue };
        let day = errand.day.or(first.heading.date).map(|day| day.to_string()).unwrap_or_default();
        let currency = first.print.currency.code();
        let clerk = Clerk { units: first.print.units, words };
        let bills = &errand.order.bills;
        let shop_name = |at: usize| {
            bills.iter().find(|bill| bill.shop == at).map_or("", |bill| bill.name.as_str())
        };
        let lines = errand.order.lines.iter().flat_map(|line| clerk.rows(line, &shop_name));
        for row in lines.chain(clerk.charges(errand)) {
            table.write_record([
                day.as_str(),
                &harmless(&row.shop),
                row.kind,
                &harmless(&row.item),
                row.unit,
                &row.needed,
                &row.reserve,
                &row.in_stock,
                &row.to_buy,
                &row.packs,
                &row.pack_size,
                row.pack_unit,
                &row.cost,
                currency,
                &row.left_over,
                &harmless(&row.note),
            ])?;
        }
    }
    table.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}

struct Clerk<'a> {
    units: UnitSystem,
    words: &'a Words,
}

impl Clerk<'_> {
    fn rows<'n>(&self, line: &OrderLine, shop_name: &impl Fn(usize) -> &'n str) -> Vec<Row> {
        let head = Row {
            kind: match &line.what {
                OrderItem::Material(_) => "material",
                OrderItem::Supply(_) => "supply",
            },
            item: line.item.clone(),
            unit: self.unit(&line.needed),
            needed: self.number(&line.needed),
            reserve: self.number(&line.reserve),
            in_stock: self.number(&line.in_stock),
            to_buy: self.number(&line.to_buy),
            ..Row::default()
        };
        let words = &self.words.order;
        match &line.purchase {
            Purchase::Nothing => {
                // What is still to be had without buying runs from the tap.
                let is_missing = match line.to_buy {
                    Amount::Volume(volume) => volume > Volume::default(),
                    Amount::Mass(mass) => mass > Mass::default(),
                    Amount::Pieces(pieces) => pieces > 0,
                };
                let note = if is_missing { &words.tap } else { &words.in_cupboard };
                vec![Row { note: note.clone(), ..head }]
            }
            Purchase::Elsewhere => vec![Row { note: words.elsewhere.clone(), ..head }],
            Purchase::NoPrice => vec![Row { note: words.no_price.clone(), ..head }],
            Purchase::Packs { packs, left_over, .. } => {
                let (kind, item) = (head.kind, head.item.clone());
                let head = Row { left_over: self.number(left_over), ..head };
                let more = || Row { kind, item: item.clone(), ..Row::default() };
                let rows = std::iter::once(head).chain(std::iter::repeat_with(more));
                let rows = packs.iter().zip(rows);
                rows.map(|(pack, row)| self.pack(row, pack, shop_name(pack.shop))).collect()
            }
        }
    }

    fn pack(&self, row: Row, pack: &PackCount, shop: &str) -> Row {
        Row {
            shop: shop.to_owned(),
            packs: pack.count.to_string(),
            pack_size: self.number(&pack.size),
            pack_unit: self.unit(&pack.size),
            cost: (pack.price * pack.count).amount().to_string(),
            ..row
        }
    }

    fn charges(&self, errand: &Errand) -> Vec<Row> {
        let charged = errand.order.bills.iter().filter(|bill| !bill.delivery.amount().is_zero());
        let rows = charged.map(|bill| Row {
            shop: bill.name.clone(),
            kind: "delivery",
            item: self.words.order.delivery.clone(),
            cost: bill.delivery.amount().to_string(),
            ..Row::default()
        });
        rows.collect()
    }

    fn number(&self, amount: &Amount) -> String {
        match amount {
            Amount::Volume(volume) => match self.units {
                UnitSystem::Us => format!("{:.2}", in_us_fl_oz(*volume)),
                UnitSystem::Metric => format!("{:.1}", in_ml(*volume)),
            },
            Amount::Mass(mass) => format!("{:.1}", in_gram(*mass)),
            Amount::Pieces(pieces) => pieces.to_string(),
        }
    }

    fn unit(&self, amount: &Amount) -> &'static str {
        match amount {
            Amount::Volume(_) => match self.units {
                UnitSystem::Us => "fl oz",
                UnitSystem::Metric => "mL",
            },
            Amount::Mass(_) => "g",
            Amount::Pieces(_) => "pieces",
        }
    }
}
