//! Answers in one line, taken apart: which word is a name and which is an amount. Whether the
//! amount is right, the readers of the lesson file say.

mod board;
mod cupboard;
mod shares;

pub(super) use board::board;
pub(super) use cupboard::{jar, stocked};
pub(super) use shares::shares;

use super::ask::Complaint;

/// Longest name, in characters, as in lesson files.
const NAME_LETTERS: usize = 80;

/// One line without spaces around it or twice inside it.
pub(super) fn line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The parts of a list, set apart by commas or semicolons; a comma between two digits is a
/// slip in a number.
pub(super) fn pieces(text: &str) -> Vec<String> {
    let characters: Vec<char> = text.chars().collect();
    let digit =
        |at: Option<usize>| at.and_then(|at| characters.get(at)).is_some_and(char::is_ascii_digit);
    let mut pieces = vec![String::new()];
    for (at, c) in characters.iter().enumerate() {
        let inside = digit(at.checked_sub(1)) && digit(at.checked_add(1));
        if *c == ';' || *c == '\n' || (*c == ',' && !inside) {
            pieces.push(String::new());
        } else if let Some(piece) = pieces.last_mut() {
            piece.push(*c);
        }
    }
    pieces.iter().map(|piece| line(piece)).filter(|piece| !piece.is_empty()).collect()
}

/// A name for a key of the lesson file.
pub(super) fn name(text: &str) -> Result<String, Complaint> {
    let name = line(text);
    if name.chars().count() > NAME_LETTERS {
        let right = format!("up to {NAME_LETTERS} characters");
        return Err(Complaint::new("this name is too long", right));
    }
    if name.chars().any(char::is_control) {
        return Err(Complaint::new(
            "this name holds a character that cannot be printed",
            "write it again by hand, or paste it as plain text",
        ));
    }
    if name.is_empty() {
        return Err(Complaint::new(
            "a name is missing here",
            "for example harbour blue 2, white 1",
        ));
    }
    Ok(name)
}

/// Where a text begins with a number.
fn starts_with_number(text: &str) -> bool {
    text.starts_with(|c: char| c.is_numeric() || c == '.' || c == '-' || c == '\u{2212}')
}

#[cfg(test)]
mod tests {
    use super::pieces;

    #[test]
    fn a_comma_in_a_number_parts_nothing() {
        assert_eq!(
            pieces("10,5 x 10 in, 1/2 in deep;2 each"),
            ["10,5 x 10 in", "1/2 in deep", "2 each"]
        );
        assert_eq!(pieces(" , ;"), Vec::<String>::new());
    }
}
