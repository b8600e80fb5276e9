//! The order as a page shows it, and what a change makes of it.

use crate::handout::Context;
use serde::Serialize;

/// What is ordered, as text in the units of the lesson.
#[derive(Debug, Clone, Default)]
pub(super) struct Order {
    lines: Vec<Line>,
    /// Sums, each with its words.
    sums: Vec<(&'static str, String)>,
}

/// One item.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Line {
    item: String,
    cells: Cells,
}

/// What is said of an item; empty where it is nothing.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub(super) struct Cells {
    needed: String,
    packs: String,
    cost: String,
}

/// An order before and with a change.
#[derive(Debug, Clone, Default, Serialize)]
pub(super) struct Compared {
    sums: Vec<Sum>,
    /// Items that are not what they were.
    changed: Vec<Row>,
    /// How many items are.
    same: usize,
}

/// A sum before and with a change.
#[derive(Debug, Clone, Serialize)]
struct Sum {
    what: &'static str,
    before: String,
    after: String,
}

/// An item before and with a change.
#[derive(Debug, Clone, Serialize)]
struct Row {
    item: String,
    before: Cells,
    after: Cells,
}

impl Order {
    pub(super) fn of(context: &Context) -> Self {
        let lines = context.order.lines.iter().map(|line| Line {
            item: line.item.clone(),
            cells: Cells {
                needed: format!("{} {}", line.needed, line.unit).trim().to_owned(),
                packs: line.packs.clone(),
                cost: line.cost.clone(),
            },
        });
        let sums = [
            ("paint to mix in all", &context.class_paint),
            ("paint for each student", &context.student_paint),
            ("to buy", &context.order.total),
            ("cost of each student", &context.cost.per_student),
        ];
        let known = sums.into_iter().filter(|(_, sum)| !sum.is_empty());
        Self {
            lines: lines.collect(),
            sums: known.map(|(what, sum)| (what, sum.clone())).collect(),
        }
    }

    /// Beside what a change makes of it.
    pub(super) fn beside(&self, after: &Self) -> Compared {
        let find = |order: &Self, item: &str| {
            order.lines.iter().find(|line| line.item == item).map(|line| line.cells.clone())
        };
        let gone = self.lines.iter().filter(|line| find(after, &line.item).is_none());
        let mut rows: Vec<Row> = after
            .lines
            .iter()
            .map(|line| Row {
                item: line.item.clone(),
                before: find(self, &line.item).unwrap_or_default(),
                after: line.cells.clone(),
            })
            .chain(gone.map(|line| Row {
                item: line.item.clone(),
                before: line.cells.clone(),
                after: Cells::default(),
            }))
            .collect();
        let all = rows.len();
        rows.retain(|row| row.before != row.after);
        let sums = after.sums.iter().map(|(what, sum)| Sum {
            what,
            before: self
                .sums
                .iter()
                .find(|(other, _)| other == what)
                .map(|(_, s)| s.clone())
                .unwrap_or_default(),
            after: sum.clone(),
        });
        Compared { sums: sums.collect(), same: all - rows.len(), changed: rows }
    }
}
