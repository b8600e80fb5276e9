//! Somebody who answers as written down beforehand, and presses Enter where nothing is.

use puddlebook::cli::start::{
    Ask, Begun, Choice, Complaint, Given, Next, Question, Stop, interview,
};
use std::collections::{BTreeMap, VecDeque};
use std::path::Path;

#[derive(Debug, Default)]
pub struct Script {
    answers: BTreeMap<&'static str, VecDeque<String>>,
    leaves_at: Option<&'static str>,
    /// The options of all questions that were asked.
    pub asked: Vec<&'static str>,
    /// What followed, as it was said.
    pub heard: Vec<String>,
    /// Options whose answer was wrong, and why.
    pub wrong: Vec<(&'static str, String)>,
}

impl Script {
    pub fn of(answers: &[(&'static str, &str)]) -> Self {
        let mut script = Self::default();
        for (option, answer) in answers {
            script.answers.entry(option).or_default().push_back((*answer).to_owned());
        }
        script
    }

    /// Leaves at this question.
    pub fn leaving_at(mut self, option: &'static str) -> Self {
        self.leaves_at = Some(option);
        self
    }

    fn next(&mut self, question: &Question) -> Result<Option<String>, Stop> {
        self.asked.push(question.option);
        assert!(self.asked.len() < 60, "asked without end: {:?}", self.wrong);
        if self.leaves_at == Some(question.option) {
            return Err(Stop::Left);
        }
        Ok(self.answers.get_mut(question.option).and_then(VecDeque::pop_front))
    }
}

impl Ask for Script {
    fn text(&mut self, question: &Question) -> Result<String, Stop> {
        Ok(self.next(question)?.unwrap_or_else(|| question.offered.clone()))
    }

    fn choose(
        &mut self,
        question: &Question,
        choices: &[Choice],
        offered: usize,
    ) -> Result<usize, Stop> {
        assert!(offered < choices.len());
        Ok(match self.next(question)? {
            Some(name) => choices
                .iter()
                .position(|choice| choice.name.contains(&name))
                .unwrap_or_else(|| panic!("no choice {name} of {choices:?}")),
            None => offered,
        })
    }

    fn wrong(&mut self, question: &Question, _: &str, complaint: &Complaint) -> Next {
        self.wrong.push((question.option, complaint.to_string()));
        Next::AskAgain
    }

    fn say(&mut self, text: &str) {
        self.heard.push(text.to_owned());
    }
}

/// The lesson of these answers, its text, and how it was asked.
pub fn begun(answers: &[(&'static str, &str)]) -> (Begun, String, Script) {
    let mut script = Script::of(answers);
    let begun = interview(&mut script, &Given::default(), "en_US.UTF-8").unwrap();
    let text = begun.text(Path::new("my-class.yaml")).unwrap();
    (begun, text, script)
}
