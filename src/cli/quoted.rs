//! Texts for files in YAML.

use std::fmt::Write;

/// Words that programs take for something else than a text.
const NOT_TEXTS: [&str; 8] = ["null", "true", "false", "yes", "no", "on", "off", "y"];

/// A text as a key or a value of YAML on one line, in quotation marks where it is not plain.
pub(super) fn quoted(text: &str) -> String {
    let inside = |c: char| c.is_alphanumeric() || matches!(c, ' ' | '-' | '.' | '/' | '%');
    let plain = text.starts_with(char::is_alphanumeric)
        && text.chars().all(inside)
        && !text.ends_with(' ')
        && !text.contains("---")
        && !NOT_TEXTS.contains(&text.to_lowercase().as_str());
    if plain { text.to_owned() } else { in_marks(text) }
}

/// In quotation marks; what cannot be seen, or would turn the line round, by its number.
fn in_marks(text: &str) -> String {
    let mut marked = String::from('"');
    for c in text.chars() {
        // Writing to a string does not fail.
        let _ = match c {
            '"' | '\\' => write!(marked, "\\{c}"),
            _ if is_hidden(c) => write!(marked, "\\U{:08X}", u32::from(c)),
            _ => write!(marked, "{c}"),
        };
    }
    marked.push('"');
    marked
}

/// Control characters, ends of lines, marks of direction, the mark of byte order, and what is no
/// character.
fn is_hidden(c: char) -> bool {
    c.is_control()
        || matches!(
            u32::from(c),
            0x61C | 0x200E | 0x200F | 0x2028..=0x202E | 0x2066..=0x2069 | 0xFEFF
        )
        || u32::from(c) & 0xFFFE == 0xFFFE
}

#[cfg(test)]
mod tests {
    use super::quoted;

    #[test]
    fn a_plain_text_stays_as_it_is() {
        for text in ["harbour blue", "8", "1/2 in", "40 %", "10.5 cm", "mar alta", "2026-03-14"] {
            assert_eq!(quoted(text), text);
        }
    }

    #[test]
    fn what_yaml_would_take_for_something_else_goes_in_marks() {
        assert_eq!(quoted("Pour: an evening"), "\"Pour: an evening\"");
        assert_eq!(quoted("# one"), "\"# one\"");
        assert_eq!(quoted("a \"b\" \\"), "\"a \\\"b\\\" \\\\\"");
        assert_eq!(quoted("No"), "\"No\"");
        assert_eq!(quoted(""), "\"\"");
        assert_eq!(quoted("a\nb"), "\"a\\U0000000Ab\"");
        assert_eq!(quoted("\u{202E}a"), "\"\\U0000202Ea\"");
    }
}
