//! `harbour blue 2, sand 1, white 1`: colours and their shares in one line.

use super::super::answers::Shares;
use super::super::ask::Complaint;
use super::{line, name, pieces};
use crate::quantity::read;
use crate::quantity::show::trimmed;

/// Decimals of a share in percent.
const DECIMALS: usize = 2;

/// How much of one colour.
#[derive(Debug, Clone, PartialEq)]
enum Part {
    /// So many parts.
    Number {
        written: String,
        value: f64,
    },
    /// `40 %`, or whatever stands there before a %.
    Percent(String),
    TheRest,
    Unsaid,
}

/// Reads the line: parts (`blue 2, white 1`, or `blue, white 2:1`), percentages
/// (`blue 40 %, white the rest`), or colours alone, which are then equal.
pub(in super::super) fn shares(text: &str) -> Result<Shares, Complaint> {
    let (ratio, rest) = ratio(text);
    let pieces = pieces(&rest);
    let mut colours = pieces.iter().map(|piece| part(piece)).collect::<Result<Vec<_>, _>>()?;
    if let Some(ratio) = ratio {
        if ratio.len() != colours.len() || colours.iter().any(|(_, part)| *part != Part::Unsaid) {
            let wrong = format!("{} parts for {} colours", ratio.len(), colours.len());
            return Err(Complaint::new(wrong, "one number for each: blue, sand, white 2:1:1"));
        }
        colours.iter_mut().zip(ratio).for_each(|((_, part), number)| *part = number);
    }
    let count = |of: fn(&Part) -> bool| colours.iter().filter(|(_, part)| of(part)).count();
    let numbers = count(|part| matches!(part, Part::Number { .. }));
    let percents = count(|part| matches!(part, Part::Percent(_) | Part::TheRest));
    let unsaid = count(|part| *part == Part::Unsaid);
    match (numbers, percents, unsaid) {
        (0, 0, 0) => Err(Complaint::new(
            "no colour is named here",
            "for example harbour blue 2, sand 1, white 1",
        )),
        (0, 0, _) => Ok(equal(colours)),
        (0, _, 0 | 1) => Ok(in_percent(colours)),
        (_, 0, 0) => in_parts(&colours),
        (0, ..) | (_, 0, _) => Err(Complaint::new(
            "some colours have a share and some have none",
            "a number for each: harbour blue 2, sand 1, white 1",
        )),
        _ => Err(Complaint::new(
            "parts and percentages do not go together",
            "all in parts (blue 2, white 1) or all in percent (blue 40 %, white the rest)",
        )),
    }
}

/// `2:1:1` at the end or the beginning of a line, and the line without it.
fn ratio(text: &str) -> (Option<Vec<Part>>, String) {
    let read = |word: &str| -> Option<Vec<Part>> {
        let numbers: Vec<&str> = word.split(':').collect();
        (numbers.len() > 1).then(|| numbers.into_iter().map(number).collect()).flatten()
    };
    let text = line(text);
    if let Some((before, last)) = text.rsplit_once(' ')
        && let Some(ratio) = read(last)
    {
        return (Some(ratio), before.to_owned());
    }
    if let Some((first, after)) = text.split_once(' ')
        && let Some(ratio) = read(first)
    {
        return (Some(ratio), after.to_owned());
    }
    (None, text)
}

fn number(word: &str) -> Option<Part> {
    let value = read::number(word).ok()?;
    Some(Part::Number { written: word.to_owned(), value })
}

/// A colour and how much of it.
fn part(piece: &str) -> Result<(String, Part), Complaint> {
    let filler = |word: &&str| !matches!(word.to_lowercase().as_str(), "part" | "parts");
    let words: Vec<&str> = piece.split(' ').filter(filler).collect();
    let (colour, part) = apart(&words);
    let colour = name(colour.trim_end_matches(':'))?;
    if colour.contains(',') {
        let right = "decimals take a point; between two colours, put a space after the comma";
        return Err(Complaint::new("this comma can be read in two ways", right));
    }
    let lone = |word: &&str| word.trim_end_matches('%').parse::<f64>().is_ok();
    if let Some(number) = colour.split(' ').find(lone) {
        let before = colour.split(number).next().unwrap_or_default().trim();
        let right = format!("between two colours stands a comma: {before} {number}, …");
        return Err(Complaint::new(format!("\"{colour}\" is more than one colour"), right));
    }
    Ok((colour, part))
}

/// Name and share of the words of one piece, the share last or first.
fn apart(words: &[&str]) -> (String, Part) {
    let joined = |words: &[&str]| words.join(" ");
    match words {
        [name @ .., "the", "rest"] | [name @ .., "rest"] | ["the", "rest", name @ ..] => {
            return (joined(name), Part::TheRest);
        }
        [name @ .., number, "%"] if !name.is_empty() => {
            return (joined(name), Part::Percent(format!("{number} %")));
        }
        [number, "%", name @ ..] => return (joined(name), Part::Percent(format!("{number} %"))),
        [name @ .., last] if !name.is_empty() && last.ends_with('%') => {
            return (joined(name), Part::Percent((*last).to_owned()));
        }
        [first, name @ ..] if first.ends_with('%') => {
            return (joined(name), Part::Percent((*first).to_owned()));
        }
        _ => {}
    }
    if let [name @ .., last] = words
        && let (false, Some(part)) = (name.is_empty(), number(last))
    {
        return (joined(name), part);
    }
    if let [first, name @ ..] = words
        && let (false, Some(part)) = (name.is_empty(), number(first))
    {
        return (joined(name), part);
    }
    (joined(words), Part::Unsaid)
}

fn equal(colours: Vec<(String, Part)>) -> Shares {
    let parts: Vec<(String, f64)> = colours.into_iter().map(|(colour, _)| (colour, 1.0)).collect();
    Shares { colours: hundredths(&parts), parts: String::new() }
}

fn in_percent(colours: Vec<(String, Part)>) -> Shares {
    let share = |part| match part {
        Part::Percent(percent) => percent,
        _ => "the rest".to_owned(),
    };
    let colours = colours.into_iter().map(|(colour, part)| (colour, share(part))).collect();
    Shares { colours, parts: String::new() }
}

fn in_parts(colours: &[(String, Part)]) -> Result<Shares, Complaint> {
    let mut parts = Vec::new();
    let mut said = Vec::new();
    for (colour, part) in colours {
        let Part::Number { written, value } = part else { continue };
        if *value <= 0.0 {
            let wrong = format!("there is no part of \"{colour}\" here");
            return Err(Complaint::new(wrong, "leave it out, or give it a part"));
        }
        parts.push((colour.clone(), *value));
        said.push(written.as_str());
    }
    Ok(Shares { colours: hundredths(&parts), parts: said.join(" : ") })
}

/// Shares in percent that add up: where they do not come out, the last colour takes the rest.
fn hundredths(parts: &[(String, f64)]) -> Vec<(String, String)> {
    let all: f64 = parts.iter().map(|(_, part)| part).sum();
    let percent = |part: f64| 100.0 * part / all;
    let exact = parts.iter().all(|(_, part)| {
        let hundredths = percent(*part) * 100.0;
        (hundredths - hundredths.round()).abs() < 1e-6
    });
    let last = parts.len().saturating_sub(1);
    let share = |(at, (colour, part)): (usize, &(String, f64))| {
        let rest = at == last && !exact;
        let share = format!("{} %", trimmed(percent(*part), DECIMALS));
        (colour.clone(), if rest { "the rest".to_owned() } else { share })
    };
    parts.iter().enumerate().map(share).collect()
}
