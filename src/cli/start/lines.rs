//! Texts on a terminal, word by word.

/// Widest text, in characters, where the terminal is as wide, and how far it is set in.
const WIDTH: usize = 80;
const INDENT: &str = "  ";

/// A text set in from the left; lines that go on are set in as far as they began.
pub(super) fn set_in(text: &str) -> String {
    let width = textwrap::termwidth().min(WIDTH);
    let lines: Vec<String> = text
        .lines()
        .map(|line| {
            let own = line.chars().take_while(|c| *c == ' ').count();
            let further = format!("{INDENT}{}", " ".repeat(own));
            let options =
                textwrap::Options::new(width).initial_indent(INDENT).subsequent_indent(&further);
            textwrap::fill(line, options)
        })
        .collect();
    lines.join("\n")
}

/// Names in lines of a note, each of them after `before`.
pub(super) fn noted(names: &str, before: &str) -> String {
    textwrap::fill(names, textwrap::Options::new(WIDTH + 20).subsequent_indent(before))
}
