//! What a parser's complaint most likely means to the person who wrote the file.

/// A slip of the pen in YAML.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum YamlSlip {
    /// A tab where spaces belong.
    Tab,
    /// A bracket that was opened and not closed.
    OpenBracket,
    /// A quotation mark that was opened and not closed.
    OpenQuote,
    /// A second colon in a line.
    ColonInText,
    /// A line without its colon, or without the space after it.
    NoColon,
    /// A text that starts with a sign of YAML.
    SignFirst,
    /// Columns that do not match.
    Columns,
    /// A backslash in double quotes.
    Backslash,
    Other,
}

/// The slip behind what the parser `said` about byte `at`, and the byte to point to.
pub(super) fn slip(said: &str, text: &str, at: usize) -> (YamlSlip, usize) {
    let start = text.get(..at).and_then(|before| before.rfind('\n')).map_or(0, |line| line + 1);
    let line = text.get(start..).unwrap_or_default().lines().next().unwrap_or_default();
    if let Some(tab) = tab_of_indent(text, start)
        && (said.contains("tab") || said.contains("indent") || tab < start + line.len())
    {
        return (YamlSlip::Tab, tab);
    }
    let says = |words: &[&str]| words.iter().any(|word| said.contains(word));
    let slip = if says(&["flow mapping", "flow sequence", "flow construct"]) {
        YamlSlip::OpenBracket
    } else if says(&["end of stream", "document indicator", "indentation in quoted", "eof"]) {
        YamlSlip::OpenQuote
    } else if says(&["escape", "hexadecimal"]) {
        YamlSlip::Backslash
    } else if says(&["unexpected character", "anchor", "tag", "directive", "cannot start with"]) {
        YamlSlip::SignFirst
    } else if says(&["mapping values"]) {
        let before = text.get(start..at).unwrap_or_default();
        if before.contains(": ") {
            YamlSlip::ColonInText
        } else if is_deeper_than_entry_above(text, start) {
            YamlSlip::Columns
        } else {
            YamlSlip::NoColon
        }
    } else if says(&["simple key"]) {
        YamlSlip::NoColon
    } else if says(&["block mapping", "block collection", "indentation", "not allowed"]) {
        YamlSlip::Columns
    } else {
        YamlSlip::Other
    };
    (slip, at)
}

/// The line at `start` is further in than the entry with a value in the line above.
fn is_deeper_than_entry_above(text: &str, start: usize) -> bool {
    let indent = |line: &str| line.len() - line.trim_start().len();
    let line = text.get(start..).and_then(|rest| rest.lines().next());
    let above = text.get(..start).and_then(|before| before.lines().next_back());
    match (above, line) {
        (Some(above), Some(line)) => above.contains(": ") && indent(line) > indent(above),
        _ => false,
    }
}

/// A tab among the spaces before a line: this line or one of the next two, for the
/// parser notices it late.
fn tab_of_indent(text: &str, start: usize) -> Option<usize> {
    let mut line_start = start;
    for line in text.get(start..)?.split('\n').take(3) {
        let indent = line.len() - line.trim_start().len();
        if let Some(tab) = line.get(..indent)?.find('\t') {
            return Some(line_start + tab);
        }
        line_start += line.len() + 1;
    }
    None
}
