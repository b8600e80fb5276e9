//! Asking on a terminal.

use super::ask::{Ask, Choice, Complaint, Next, Question, Stop};
use super::lines::set_in;
use crate::cli::say::println;
use inquire::{InquireError, Select, Text};
use std::io;

/// Choices that are seen at once.
const SEEN: usize = 9;

/// Asks people.
#[derive(Debug)]
pub(super) struct Terminal;

impl Ask for Terminal {
    fn text(&mut self, question: &Question) -> Result<String, Stop> {
        let mut text = Text::new(&question.words);
        if !question.offered.is_empty() && question.before.is_empty() {
            text = text.with_default(&question.offered);
        }
        if !question.help.is_empty() {
            text = text.with_help_message(&question.help);
        }
        if !question.before.is_empty() {
            text = text.with_initial_value(&question.before);
        }
        let answer = text.prompt().map_err(stop)?;
        Ok(if answer.trim().is_empty() { question.offered.clone() } else { answer })
    }

    fn choose(
        &mut self,
        question: &Question,
        choices: &[Choice],
        offered: usize,
    ) -> Result<usize, Stop> {
        let width = choices.iter().map(|choice| choice.name.chars().count()).max();
        let width = width.unwrap_or_default();
        let line = |choice: &Choice| match choice.meaning.as_str() {
            "" => choice.name.clone(),
            meaning => format!("{:width$}  {meaning}", choice.name),
        };
        let lines: Vec<String> = choices.iter().map(line).collect();
        let name = |answer: inquire::list_option::ListOption<&String>| {
            choices.get(answer.index).map(|choice| choice.name.clone()).unwrap_or_default()
        };
        let select = Select::new(&question.words, lines)
            .with_starting_cursor(offered)
            .with_page_size(SEEN)
            .with_help_message(&question.help)
            .with_formatter(&name);
        select.raw_prompt().map(|answer| answer.index).map_err(stop)
    }

    fn wrong(&mut self, _: &Question, _: &str, complaint: &Complaint) -> Next {
        self.say(&format!("Not right yet: {complaint}"));
        Next::AskAgain
    }

    fn say(&mut self, text: &str) {
        println!("{}", set_in(text));
    }
}

fn stop(error: InquireError) -> Stop {
    match error {
        InquireError::OperationCanceled | InquireError::OperationInterrupted => Stop::Left,
        InquireError::IO(error) => Stop::Broken(error),
        other => Stop::Broken(io::Error::other(other)),
    }
}
