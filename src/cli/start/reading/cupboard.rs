//! `pouring medium 16 fl oz`: an item and how much of it; and jars of mixed paint.

use super::super::answers::JarAnswer;
use super::super::ask::Complaint;
use super::{line, name, pieces, starts_with_number};
use crate::quantity::read;

/// Items and amounts, as many as the line has; the amount stands first or last.
pub(in super::super) fn stocked(text: &str) -> Result<Vec<(String, String)>, Complaint> {
    pieces(text).iter().map(|piece| item(piece)).collect()
}

fn item(piece: &str) -> Result<(String, String), Complaint> {
    if let Some((item, amount)) = piece.rsplit_once(':') {
        return Ok((name(item)?, counted(&line(amount))));
    }
    let words: Vec<&str> = piece.split(' ').collect();
    let join = |words: &[&str]| words.join(" ");
    let amounts = |words: &[&str]| read::amount(&words.join(" ")).is_ok();
    // The longest amount that can be read, at the end or at the beginning.
    let end = (1..words.len()).find_map(|at| Some(words.split_at(at)).filter(|(_, a)| amounts(a)));
    if let Some((item, amount)) = end {
        return Ok((name(&join(item))?, join(amount)));
    }
    let start = (1..words.len()).rev();
    let start = start.map(|at| words.split_at(at)).find(|(amount, _)| amounts(amount));
    if let Some((amount, item)) = start {
        return Ok((name(&join(item))?, join(amount)));
    }
    // None can be read: what looks like one goes on, to be told what is wrong with it.
    match words.iter().position(|word| starts_with_number(word)) {
        Some(0) if words.len() > 1 => {
            let (amount, item) = words.split_at(1);
            Ok((name(&join(item))?, counted(&join(amount))))
        }
        Some(at) if at > 0 => {
            let (item, amount) = words.split_at(at);
            Ok((name(&join(item))?, counted(&join(amount))))
        }
        _ => {
            let wrong = format!("how much of \"{piece}\"?");
            Err(Complaint::new(wrong, "for example white acrylic 5 fl oz, apron 10 pieces"))
        }
    }
}

/// A number alone counts pieces.
fn counted(amount: &str) -> String {
    let alone = !amount.is_empty() && amount.chars().all(|c| c.is_ascii_digit());
    if alone { format!("{amount} pieces") } else { amount.to_owned() }
}

/// `white, medium, 300 g, 2026-03-01`: in any order, but the colour before the mix unless
/// only one of them is the name of a mix.
pub(in super::super) fn jar(text: &str, mixes: &[&str]) -> Result<JarAnswer, Complaint> {
    let mut names = Vec::new();
    let (mut amount, mut mixed) = (None, None);
    for piece in pieces(text) {
        let bare = piece.trim_start_matches("mixed ").trim_start_matches("on ").to_owned();
        if !starts_with_number(&bare) {
            names.push(name(&piece)?);
        } else if bare.matches('-').count() == 2 {
            mixed = Some(bare);
        } else {
            amount = Some(bare);
        }
    }
    match (names.as_slice(), amount, mixed) {
        ([one, other], Some(amount), Some(mixed)) => {
            let turned = mixes.contains(&one.as_str()) && !mixes.contains(&other.as_str());
            let (colour, mix) = if turned { (other, one) } else { (one, other) };
            Ok(JarAnswer { colour: colour.clone(), mix: mix.clone(), amount, mixed })
        }
        _ => Err(Complaint::new(
            "a jar has a colour, a mix, an amount and the day it was mixed",
            "for example white, medium, 300 g, 2026-03-01",
        )),
    }
}
