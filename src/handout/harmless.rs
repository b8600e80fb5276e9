//! Texts that no spreadsheet runs.

/// The text; a leading sign of a formula gets an apostrophe.
pub(super) fn harmless(text: &str) -> String {
    match text.chars().next() {
        Some('=' | '+' | '-' | '@' | '\t' | '\r') => format!("'{text}"),
        _ => text.to_string(),
    }
}
