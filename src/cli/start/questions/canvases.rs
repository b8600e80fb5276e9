use super::super::answers::{Answers, Board};
use super::super::ask::{Complaint, Question, Stop};
use super::super::given::GivenCanvases;
use super::super::interview::Interview;
use super::super::reading::{board, line};
use crate::quantity::UnitSystem;

/// What each of them paints on: one kind of canvas after the other.
pub(in super::super) fn canvases(
    interview: &mut Interview<'_>,
    given: &GivenCanvases,
) -> Result<(), Stop> {
    let mut lines = given.canvas.iter().map(String::as_str);
    canvas(interview, first(interview.answers.sheets.units), lines.next(), 0)?;
    if given.canvas.is_empty() {
        let mut kinds = 1;
        // Enter ends it.
        while canvas(interview, another(), None, kinds)? {
            kinds += 1;
        }
    } else {
        for line in lines {
            let at = interview.answers.canvases.len();
            canvas(interview, another(), Some(line), at)?;
        }
    }
    interview.tell_paint();
    Ok(())
}

fn first(units: UnitSystem) -> Question {
    Question {
        option: "canvas",
        words: "What do they paint on?".to_owned(),
        help: "outline, size, depth, how many: round 12 in, 3/4 in deep, 2 each".to_owned(),
        offered: offered(units).to_owned(),
        ..Question::default()
    }
}

/// A usual canvas of the shops.
pub(in super::super) fn offered(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::Us => "square 10 x 10 in, 1/2 in deep",
        UnitSystem::Metric => "square 25 x 25 cm, 1.7 cm deep",
    }
}

fn another() -> Question {
    Question {
        option: "canvas",
        words: "And another kind of canvas?".to_owned(),
        help: "as before; Enter when that was all".to_owned(),
        ..Question::default()
    }
}

/// The canvas of this place, and whether there is one.
fn canvas(
    interview: &mut Interview<'_>,
    question: Question,
    given: Option<&str>,
    at: usize,
) -> Result<bool, Stop> {
    interview.text(question, given, |interview, answers, text| {
        if at > 0 && line(text).is_empty() {
            return Ok(());
        }
        let board = board(text, &interview.offers.outlines)?;
        put(answers, board, at)
    })?;
    Ok(interview.answers.canvases.len() > at)
}

/// A canvas of the same name gets a number; how it is poured is asked later.
fn put(answers: &mut Answers, board: Board, at: usize) -> Result<(), Complaint> {
    let taken = |name: &str| answers.canvases.iter().take(at).any(|c| c.board.name == name);
    let numbered = (2..).map(|nth: usize| format!("{} {nth}", board.name));
    let mut names = std::iter::once(board.name.clone()).chain(numbered);
    let name = names.find(|name| !taken(name)).unwrap_or_default();
    let board = Board { name, ..board };
    match answers.canvases.get_mut(at) {
        Some(canvas) => canvas.board = board,
        None => {
            if let Some(like) = answers.canvases.last().cloned() {
                answers.canvases.push(super::super::answers::CanvasAnswer { board, ..like });
            }
        }
    }
    Ok(())
}
