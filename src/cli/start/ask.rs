//! What it takes to ask: a terminal, nobody at all, or a script of a test.

use std::fmt::{self, Display, Formatter};
use std::io;

/// One question.
#[derive(Debug, Clone, Default)]
pub struct Question {
    /// The option that answers it on the command line, without its dashes.
    pub option: &'static str,
    /// The question itself.
    pub words: String,
    /// How it may be answered, in one line; may be empty.
    pub help: String,
    /// The answer of somebody who only presses Enter; empty where that is nothing.
    pub offered: String,
    /// The answer that was wrong, to be put right.
    pub before: String,
}

/// One of several answers.
#[derive(Debug, Clone)]
pub struct Choice {
    /// What is taken.
    pub name: String,
    /// What it means, in a few words; may be empty.
    pub meaning: String,
}

/// Why an answer cannot be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Complaint {
    /// What is wrong.
    pub wrong: String,
    /// What would be right, one sentence each.
    pub right: Vec<String>,
}

impl Complaint {
    /// What is wrong, and what would be right.
    pub fn new(wrong: impl Into<String>, right: impl Into<String>) -> Self {
        Self { wrong: wrong.into(), right: vec![right.into()] }
    }
}

impl Display for Complaint {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&self.wrong)?;
        self.right.iter().try_for_each(|right| write!(f, "\n{right}"))
    }
}

/// Why there are no more answers.
#[derive(Debug)]
pub enum Stop {
    /// Esc or Ctrl-C.
    Left,
    /// The terminal is gone.
    Broken(io::Error),
    /// What came with the program makes no lesson.
    Unready(Complaint),
}

/// What follows a wrong answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Next {
    /// The question is asked again.
    AskAgain,
    /// The offered answer is taken, so that the other answers can be looked at.
    GoOn,
}

/// Somebody who answers.
pub trait Ask {
    /// A line of text. Who only presses Enter says what is offered.
    ///
    /// # Errors
    /// [`Stop`] when there is no answer.
    fn text(&mut self, question: &Question) -> Result<String, Stop>;

    /// The place of one of the choices; the offered one stands at `offered`.
    ///
    /// # Errors
    /// [`Stop`] when there is no answer.
    fn choose(
        &mut self,
        question: &Question,
        choices: &[Choice],
        offered: usize,
    ) -> Result<usize, Stop>;

    /// Hears why an answer cannot be taken.
    fn wrong(&mut self, question: &Question, answer: &str, complaint: &Complaint) -> Next;

    /// Hears what follows from the answers so far.
    fn say(&mut self, text: &str);
}
