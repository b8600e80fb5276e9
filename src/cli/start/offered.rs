//! Nobody is asked: what was not given takes the offered answer, and that is said.

use super::ask::{Ask, Choice, Complaint, Next, Question, Stop};
use super::lines::set_in;
use crate::cli::say::println;

/// Takes what is offered.
#[derive(Debug, Default)]
pub struct Offered {
    complaints: Vec<String>,
}

impl Offered {
    /// What is wrong with the options that were given, all of it; nothing when they are right.
    pub fn complaints(&self) -> &[String] {
        &self.complaints
    }
}

impl Ask for Offered {
    fn text(&mut self, question: &Question) -> Result<String, Stop> {
        if !question.offered.is_empty() {
            taken(question, &question.offered);
        }
        Ok(question.offered.clone())
    }

    fn choose(
        &mut self,
        question: &Question,
        choices: &[Choice],
        offered: usize,
    ) -> Result<usize, Stop> {
        if let Some(choice) = choices.get(offered) {
            taken(question, &choice.name);
        }
        Ok(offered)
    }

    fn wrong(&mut self, question: &Question, answer: &str, complaint: &Complaint) -> Next {
        let mut text = format!("error: --{} \"{answer}\": {}\n", question.option, complaint.wrong);
        for right in &complaint.right {
            text.push_str(&format!("  = help: {right}\n"));
        }
        self.complaints.push(text);
        Next::GoOn
    }

    fn say(&mut self, text: &str) {
        println!("{}", set_in(text));
    }
}

fn taken(question: &Question, answer: &str) {
    println!("{} {answer} (--{})", question.words, question.option);
}
