//! Long texts on the terminal or into a pipe.

use comfy_table::{ColumnConstraint, ContentArrangement, Table, presets};

/// Columns of what is printed for people.
const WIDTH: u16 = 80;

/// Words with what they mean beside them, indented and wrapped.
pub(super) fn columns(rows: &[(String, String)]) -> String {
    let mut table = blank();
    for (word, meaning) in rows {
        table.add_row([format!("  {word}"), meaning.replace('\n', " ")]);
    }
    if let Some(words) = table.column_mut(0) {
        words.set_constraint(ColumnConstraint::ContentWidth);
    }
    shown(&table)
}

/// A text wrapped into lines.
pub(super) fn paragraph(text: &str) -> String {
    let mut table = blank();
    table.add_row([text]);
    shown(&table)
}

fn blank() -> Table {
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    table.set_content_arrangement(ContentArrangement::Dynamic).set_width(WIDTH);
    table
}

/// The lines of a table without the room around them.
fn shown(table: &Table) -> String {
    let lines =
        table.lines().map(|line| line.strip_prefix(' ').unwrap_or(&line).trim_end().to_owned());
    lines.map(|line| line + "\n").collect()
}
