//! What spreadsheets take for a formula, and how a text is kept from it: by an apostrophe before
//! it, which is taken off again when a table is read.

/// Signs that begin a formula: those of ASCII, and the full-width ones that importers read alike.
const SIGNS: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// The text, with an apostrophe before it where a spreadsheet would run it. Numbers that a table
/// is to count with do not come through here.
pub fn harmless(text: &str) -> String {
    if is_formula(text.trim_start_matches('\'')) { format!("'{text}") } else { text.to_owned() }
}

/// The text that was kept harmless.
pub(super) fn shown(cell: &str) -> &str {
    match cell.strip_prefix('\'') {
        Some(text) if is_formula(text.trim_start_matches('\'')) => text,
        _ => cell,
    }
}

/// Whether the first letter is a sign that begins a formula, also behind space and characters
/// that nobody sees, which importers leave out; or the text begins with a tab or a line end,
/// which moves it into another cell.
fn is_formula(text: &str) -> bool {
    let unheeded = |c: char| c.is_whitespace() || c.is_control() || is_unseen(c);
    text.trim_start_matches(unheeded).starts_with(SIGNS) || text.starts_with(['\t', '\r', '\n'])
}

/// Marks that take no room: of byte order, of joining, of the direction of writing.
fn is_unseen(c: char) -> bool {
    let unseen = ['\u{200b}'..='\u{200f}', '\u{202a}'..='\u{202e}', '\u{2060}'..='\u{206f}'];
    matches!(c, '\u{ad}' | '\u{feff}') || unseen.iter().any(|marks| marks.contains(&c))
}

#[cfg(test)]
mod tests {
    use super::{harmless, shown};

    #[test]
    fn formulas_become_texts_and_texts_stay() {
        let formulas = [
            "=1+1",
            "+1",
            "-1",
            "@SUM(A1)",
            "\t=1",
            "\r=1",
            "\n=1",
            " =1",
            "\u{a0}=1",
            "\u{feff}=1",
            "\u{200b}=1",
            "\u{202e}=1",
            "＝1",
            "＋1",
            "－1",
            "＠1",
            "\tblue",
            "\rblue",
            "\nblue",
            "=cmd|' /C calc'!A0",
            "=HYPERLINK(\"x\")",
            "-",
            "'=1",
            "''-1",
        ];
        for formula in formulas {
            assert_eq!(harmless(formula), format!("'{formula}"));
            assert_eq!(shown(&harmless(formula)), formula);
        }
        for text in ["", " ", "blue", "8-in tile", "a=b", "½", "'quoted", "'", "−5", "Ana +1"] {
            assert_eq!(harmless(text), text);
            assert_eq!(shown(text), text);
        }
    }
}
