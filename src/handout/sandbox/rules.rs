//! What a tag may say.

use super::tags::{Piece, PieceKind};
use super::tokens::{Token, tokens};
use super::{Include, Refused, Texts};
use crate::quantity::nearest::nearest;
use std::ops::Range;

/// Longest tag, in bytes; ours need 140.
const LONGEST: usize = 1_000;
/// Most signs and words that connect values in one tag, for the engine descends into each.
const CONNECTED: usize = 30;
/// Deepest brackets in one tag. The engine tries several readings of each pair.
const BRACKETS: usize = 3;
/// Longest number, in digits.
const DIGITS: usize = 9;

/// Tags that are allowed.
const TAGS: [&str; 12] = [
    "if",
    "elif",
    "else",
    "endif",
    "for",
    "endfor",
    "set",
    "set_global",
    "include",
    "break",
    "continue",
    "raw",
];
/// Filters that are allowed: none of them makes more of what it gets.
pub(super) const FILTERS: [&str; 16] = [
    "capitalize",
    "default",
    "figure",
    "filter",
    "first",
    "join",
    "last",
    "length",
    "lower",
    "map",
    "nth",
    "reverse",
    "safe",
    "title",
    "trim",
    "upper",
];
/// Tests that are allowed behind "is".
const TESTS: [&str; 7] =
    ["defined", "undefined", "odd", "even", "containing", "starting_with", "ending_with"];
/// The one function.
const RANGE: &str = "range";

/// What a tag means for those around it.
pub(super) enum Tag {
    For,
    EndFor,
    If,
    EndIf,
    /// The name that gets a value.
    Set(String),
    Include(Vec<Include>),
    Plain,
}

type Tokens<'t> = [(Token<'t>, Range<usize>)];

/// Holds a tag against what is allowed.
pub(super) fn check(text: &str, piece: &Piece, known: &Texts<'_>) -> Result<Tag, Refused> {
    if piece.inner.len() > LONGEST {
        return Err(Refused::new(
            piece.outer.start..piece.outer.start + 2,
            format!("this tag is longer than {LONGEST} characters"),
            "a tag holds one value or one condition; the words stand outside of it",
        ));
    }
    let tokens = tokens(text, piece.inner.clone());
    let (tag, said) = match (piece.kind, tokens.split_first()) {
        (PieceKind::Variable, _) => (Tag::Plain, tokens.as_slice()),
        (PieceKind::Tag, Some(((Token::Name(word), span), rest))) => {
            (tag(word, span, rest, known)?, rest)
        }
        (PieceKind::Tag, _) => return Err(unknown_tag("", piece.outer.clone())),
    };
    if !matches!(tag, Tag::Include(_)) {
        values(said)?;
    }
    Ok(tag)
}

fn tag(
    word: &str,
    span: &Range<usize>,
    rest: &Tokens<'_>,
    known: &Texts<'_>,
) -> Result<Tag, Refused> {
    Ok(match word {
        "for" => Tag::For,
        "endfor" => Tag::EndFor,
        "if" => Tag::If,
        "endif" => Tag::EndIf,
        "set" | "set_global" => match rest.first() {
            Some((Token::Name(name), _)) => Tag::Set((*name).to_owned()),
            _ => Tag::Plain,
        },
        "include" => Tag::Include(included(rest, known)?),
        "elif" | "else" | "break" | "continue" => Tag::Plain,
        _ => return Err(unknown_tag(word, span.clone())),
    })
}

fn unknown_tag(word: &str, span: Range<usize>) -> Refused {
    let help = match word {
        "macro" | "endmacro" | "import" => {
            "put what comes again into a file of its own and include it".to_owned()
        }
        "extends" | "block" | "endblock" => {
            "a template stands alone; what it shares with others it can include".to_owned()
        }
        "filter" | "endfilter" => {
            "filters go behind single values: {{ canvas.name | upper }}".to_owned()
        }
        "endraw" => "it ends {% raw %}, which is not open here".to_owned(),
        _ => match nearest(word, TAGS) {
            Some(nearest) => format!("did you mean \"{nearest}\"?"),
            None => format!("tags are {}", TAGS.join(", ")),
        },
    };
    Refused::new(span, format!("templates have no tag \"{word}\""), help)
}

/// The names behind `include`. Only templates of the program and of the folder have names.
fn included(rest: &Tokens<'_>, known: &Texts<'_>) -> Result<Vec<Include>, Refused> {
    let mut names = Vec::new();
    for (token, span) in rest {
        let Token::Text(name) = token else { continue };
        if !known.contains_key(name) {
            let help = match nearest(name, known.keys().copied()) {
                Some(nearest) => format!("did you mean \"{nearest}\"?"),
                None => "a template includes files of its own folder and built-in ones, by their \
                         names alone"
                    .to_owned(),
            };
            return Err(Refused::new(span.clone(), "there is no template of this name", help));
        }
        names.push(((*name).to_owned(), span.clone()));
    }
    Ok(names)
}

/// Holds the values of a tag against what is allowed.
fn values(tokens: &Tokens<'_>) -> Result<(), Refused> {
    let mut open: Vec<bool> = Vec::new();
    let mut connected = 0;
    for (at, (token, span)) in tokens.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|at| tokens.get(at)).map(|(token, _)| *token);
        let calls = matches!(tokens.get(at + 1), Some((Token::Sign("("), _)));
        match token {
            Token::Name(name) => self::name(name, span, before, calls)?,
            Token::Number => number(span)?,
            Token::Text(_) => {}
            Token::Sign(sign) => {
                match *sign {
                    "(" | "[" => {
                        let is_index = matches!(before, Some(Token::Name(_) | Token::Sign("]")));
                        open.push(*sign == "[" && !is_index);
                    }
                    ")" | "]" => {
                        open.pop();
                    }
                    _ => self::sign(sign, span)?,
                }
                if open.len() > BRACKETS {
                    return Err(Refused::new(
                        span.clone(),
                        "too many brackets stand in each other here",
                        "set a name to the inner value first: {% set name = … %}",
                    ));
                }
            }
        }
        let names_value = matches!(token, Token::Name(name) if !["true", "false"].contains(name));
        if open.last() == Some(&true) && (names_value || *token == Token::Sign("|")) {
            return Err(Refused::new(
                span.clone(),
                "a list in a template holds texts and numbers only",
                "lists of the plan have names of their own: canvases, batches, supplies",
            ));
        }
        let connects = matches!(token, Token::Name("and" | "or" | "not" | "in" | "is"))
            || matches!(token, Token::Sign(sign) if !matches!(*sign, "(" | ")" | "[" | "]" | ","));
        connected += usize::from(connects);
        if connected > CONNECTED {
            return Err(Refused::new(
                span.clone(),
                "too much is connected in this tag",
                "ask for one thing after the other, with {% if … %} in {% if … %}",
            ));
        }
    }
    Ok(())
}

fn number(span: &Range<usize>) -> Result<(), Refused> {
    if span.len() <= DIGITS {
        return Ok(());
    }
    Err(Refused::new(span.clone(), "this number is too long", "numbers have up to 9 digits"))
}

fn name(
    name: &str,
    span: &Range<usize>,
    before: Option<Token<'_>>,
    calls: bool,
) -> Result<(), Refused> {
    let known = |what: &str, known: &[&str]| {
        if known.contains(&name) {
            return Ok(());
        }
        let help = match nearest(name, known.iter().copied()) {
            Some(nearest) => format!("did you mean \"{nearest}\"?"),
            None => format!("there are {}", known.join(", ")),
        };
        Err(Refused::new(span.clone(), format!("templates have no {what} \"{name}\""), help))
    };
    match before {
        Some(Token::Sign("|")) => known("filter", &FILTERS),
        Some(Token::Name("is")) if name != "not" => known("test", &TESTS),
        // Behind "is not"; "not" alone negates a value, and a value called is a function.
        Some(Token::Name("not")) if calls && TESTS.contains(&name) => Ok(()),
        _ if calls && !matches!(name, "and" | "or" | "not" | "in" | "is") => match name {
            RANGE => Ok(()),
            _ => Err(Refused::new(
                span.clone(),
                format!("templates cannot call \"{name}\""),
                "they see the plan and nothing of the machine; the only function is range(end=…)",
            )),
        },
        _ if name.starts_with("__tera") || name == "super" => Err(Refused::new(
            span.clone(),
            format!("templates have no value \"{name}\""),
            "the names of values stand in templates/README.md",
        )),
        _ => Ok(()),
    }
}

fn sign(sign: &str, span: &Range<usize>) -> Result<(), Refused> {
    let (message, help) = match sign {
        "~" => (
            "templates do not join texts with ~",
            "write the values one after the other: {{ one }}{{ other }}",
        ),
        "+" | "-" | "*" | "/" | "%" => (
            "templates print numbers and do not compute",
            "every number that a handout needs has a name: see templates/README.md",
        ),
        "::" => (
            "templates have no macros",
            "put what comes again into a file of its own and include it",
        ),
        _ => return Ok(()),
    };
    Err(Refused::new(span.clone(), message, help))
}
